/** What many requirements cost, counted in positions solved and columns read. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import type { Definition } from '../../src/definition/definition.ts';
import { findFacts } from '../../src/findings/facts.ts';
import { findAll } from '../../src/findings/findings.ts';
import { createStudy } from '../../src/findings/study.ts';
import { compileMechanism } from '../../src/kinematics/compile.ts';
import { decideRequirements } from '../../src/requirements/decide.ts';
import type { RequirementAnswer } from '../../src/requirements/requirement.ts';
import { solve } from '../../src/solve.ts';
import type { Column } from '../../src/table/column.ts';
import { solveTravel, type Travel } from '../../src/travel/travel.ts';

const SAMPLE = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8').replace(/^require:[\s\S]*/m, '');

interface Counted {
  readonly text: string;
  readonly definition: Definition;
  readonly travel: Travel;
  readonly columns: readonly Column[];
  readonly count: { reads: number; positions: number };
}

/** The sample, with its columns counting how often they are read, and at how many positions one after the other. */
function counted(requirements: readonly string[]): Counted {
  const text = `${SAMPLE}require:\n${requirements.map((line, i) => `  line ${i}: '${line}'\n`).join('')}`;
  const { definition, loadPath, columns, problems } = solve(text);
  expect(problems).toEqual([]);
  const mechanism = definition && loadPath && compileMechanism(definition, loadPath);
  if (definition === undefined || mechanism === undefined) throw new Error('The sample is not solved');
  const count = { reads: 0, positions: 0 };
  let before = NaN;
  const counting = columns.map((column): Column => ({
    ...column,
    read(build, pose) {
      count.reads++;
      if (pose.travel !== before) count.positions++;
      before = pose.travel;
      return column.read(build, pose);
    },
  }));
  return { text, definition, travel: solveTravel(mechanism), columns: counting, count };
}

const decideAll = ({ text, definition, travel, columns }: Counted): readonly RequirementAnswer[] =>
  decideRequirements({ text, definition, problems: [], travel, columns });

const NAMES = [
  'shaft_a.opening',
  'shaft_b.opening',
  'bellcrank.opening',
  'link_a.transmission',
  'link_b.drive',
  'main.pull',
  'rotor.opening',
];

/** In turn over the travel, at a place, and searched for. */
const LINES = Array.from({ length: 200 }, (_, i) => {
  const name = NAMES[i % NAMES.length] ?? '';
  const unit = name === 'main.pull' ? 'mm' : 'deg';
  return [
    `max(${name}) >= ${i % 50} ${unit}`,
    `at(${(i * 37) % 101}%, ${name}) <= ${i} ${unit} or min(${name}) < 3 ${unit}`,
    `where(${name} >= ${(i % 30) + 0.5} ${unit}) <= ${i % 90} %`,
    `at(where(${name} > ${(i % 9) + 0.25} ${unit}), shaft_a.opening) < 80 deg`,
  ][i % 4]!;
});

it('are solved once a station for all columns, and hardly ever besides', () => {
  const few = counted(LINES.slice(0, NAMES.length * 4));
  const many = counted(LINES);
  expect(decideAll(few)).toHaveLength(28);
  const answers = decideAll(many);
  expect(answers).toHaveLength(200);
  expect(new Set(answers.map(({ outcome }) => outcome))).toEqual(new Set(['passed', 'failed']));
  // Stations are at least 1 001; a refinement takes a few dozen positions.
  expect(few.count.positions).toBeGreaterThan(1000);
  expect(many.count.positions).toBeLessThan(few.count.positions + 200 * 100);
  const stations = 1001 + many.travel.samples.length;
  expect(many.count.reads).toBeLessThan(stations * NAMES.length + 200 * 120);

  // The rest of the answers on the same file, in the same measure.
  const rest = counted([]);
  const study = createStudy(rest.definition, rest.travel, rest.columns);
  findAll(study);
  findFacts(study);
  expect(many.count.reads).toBeLessThan(5 * rest.count.reads);
});

it('that look at single places do not solve the whole travel', () => {
  const places = counted(['at(100%, shaft_a.opening) >= 75 deg', 'at(25%, shaft_b.opening) <= 30 deg']);
  expect(decideAll(places).map(({ outcome }) => outcome)).toEqual(['passed', 'passed']);
  expect(places.count.reads).toBe(2);
});

it.each(['max(COLUMN) < 9 rad', 'where(COLUMN > 9 rad) < 1'])('like %s solve each station once for all their columns', (line) => {
  const angles = NAMES.filter((name) => name !== 'main.pull');
  const { count, travel, ...rest } = counted(angles.map((name) => line.replace('COLUMN', name)));
  expect(decideAll({ count, travel, ...rest })).toHaveLength(angles.length);
  const stations = 1001 + travel.samples.length;
  expect(count.positions).toBeGreaterThan(1000);
  // A refinement takes a few dozen positions.
  expect(count.positions).toBeLessThan(stations + angles.length * 100);
});

it('work out once what is the same at every position', () => {
  const fixed = counted(['where(shaft_a.opening > at(37.37%, shaft_b.opening) + at(37.31%, rotor.rotation)) > 0']);
  expect(decideAll(fixed)[0]?.comparisons[0]?.actual).toBeDefined();
  const opening = counted(['where(shaft_a.opening > 37 deg) > 0']);
  expect(decideAll(opening)[0]?.comparisons[0]?.actual).toBeDefined();
  expect(fixed.count.reads).toBeLessThan(opening.count.reads + 300);
});

it('that ask for more than is computed for one file are told so', () => {
  // Each position asked for lies between two stations, so that none is known already.
  const lines = Array.from({ length: 900 }, (_, i) => `where(at(pedal.travel * 0.${9000 + i}1, shaft_a.opening) > 90 deg) < 1`);
  const heavy = counted([...lines, 'at(51.37%, shaft_a.opening) > 3 deg', 'max(shaft_b.opening) > 3 deg']);
  const answers = decideAll(heavy);
  expect(answers[0]).toMatchObject({ outcome: 'failed' });
  for (const answer of answers.slice(-3)) {
    expect(answer).toMatchObject({
      outcome: 'undecided',
      reason: 'The requirements of this file ask for more computing than is done for one',
    });
  }
  expect(heavy.count.reads).toBeLessThan(1_500_000);
});
