/** Pages of studies: what they say of a file, held to the guards of the page, and their figures against other ways to the same. */
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { diffOf, editsOfWrites } from '../../src/picture/studies/blocks.ts';
import { tunePage } from '../../src/picture/studies/tunePage.ts';
import type { StudyBlock, StudyFound } from '../../src/protocol/studies.ts';
import { isFound, isProgress } from '../../src/protocol/studiesGuards.ts';
import { solve } from '../../src/solve.ts';
import { finished } from '../../src/studies/finished.ts';
import { BAND_SHARES } from '../../src/studies/tolerance/bands.ts';
import { studyText, type StudyAsk } from '../../src/studyText.ts';
import { editsOfValues, tuneText } from '../../src/tuneText.ts';
import { benchText, TEN } from '../studies/fit/bench.ts';
import { example } from '../support/editorRequests.ts';

const TUNE = example('tune-a-bellcrank');

function found(text: string, ask: StudyAsk): StudyFound {
  const steps = studyText(text, ask);
  for (;;) {
    const { done, value } = steps.next();
    if (done !== true) {
      expect(isProgress(value)).toBe(true);
      continue;
    }
    if (value.kind === 'refused') throw new Error(value.why);
    // As it comes out of a thread.
    expect(isFound(structuredClone(value.found))).toBe(true);
    return value.found;
  }
}

const ofKind = <Kind extends StudyBlock['kind']>({ blocks }: StudyFound, kind: Kind) =>
  blocks.filter((block): block is Extract<StudyBlock, { readonly kind: Kind }> => block.kind === kind);

describe('dimensions for a curve', () => {
  const answers = solve(TUNE);
  const outcome = finished(tuneText(TUNE, { seed: 1, rounds: 2, answers: 2 }));
  if (outcome.kind !== 'tuned') throw new Error(outcome.why);
  const page = tunePage(answers, outcome);

  test('are drawn with the curve that the file wants, through its points', () => {
    expect(isFound(page)).toBe(true);
    const [charts] = ofKind(page, 'charts');
    const wanted = charts!.charts[0]!.curves.find(({ label }) => label === 'wanted')!;
    // As the example has them.
    for (const [travel, degrees] of [
      [0.05, 1.3],
      [0.25, 15.9],
      [0.75, 59.9],
      [0.95, 80.5],
    ] as const) {
      expect(wanted.values[charts!.stations.findIndex((at) => Math.abs(at - travel) < 1e-12)]).toBeCloseTo(degrees, 9);
    }
  });

  test('are drawn as the file gives them with the answer written in, and no further off than is told', () => {
    const [charts] = ofKind(page, 'charts');
    const [, off] = charts!.charts;
    const [answer] = ofKind(page, 'answer');
    const written = solve(applyEdits(TUNE, editsOfWrites(TUNE, answers.study!, answer!.writes)!));
    const curve = charts!.charts[0]!.curves.find(({ label }) => label === 'answer 1')!;
    const [column] = written.table([...charts!.stations], ['shaft.opening']).columns;
    expect([...curve.values]).toEqual(column!.values.map((value) => expect.closeTo(value!, 9) as number));
    const worst = Math.max(
      ...off!.curves
        .find(({ label }) => label === 'answer 1')!
        .values.filter((value) => !Number.isNaN(value))
        .map(Math.abs),
    );
    expect(worst).toBeLessThanOrEqual((outcome.answers[0]!.error * 180) / Math.PI + 1e-9);
  });

  test('change the lines of the free values alone, and keep tolerances', () => {
    const [answer] = ofKind(page, 'answer');
    const lines = TUNE.split('\n');
    const changed = outcome.answers[0]!.values.filter(({ value, was }) => value !== was).map(({ name }) => name);
    expect(changed.length).toBeGreaterThan(1);
    expect(answer!.diff.map(({ line, was }) => [lines[line - 1]!.trim(), was.split(':')[0]])).toEqual(
      changed.map((name) => [lines.find((line) => line.startsWith(`  ${name}:`))!.trim(), name]),
    );
    for (const { is } of answer!.diff)
      expect(is).toMatch(/^(?:(?:crank|shaft)_reach: [\d.]+ mm ± 0\.1 mm|spread: [\d.]+ mm # of the two pivots, along)$/);
  });

  test('are more than one, each on the curve, keeping all, and another linkage', () => {
    expect(outcome.answers.length).toBeGreaterThanOrEqual(2);
    for (const { error, judgements, values } of outcome.answers) {
      expect((error * 180) / Math.PI).toBeLessThan(0.1);
      expect(judgements.filter(({ shortfall }) => shortfall !== 0)).toEqual([]);
      const written = solve(
        applyEdits(
          TUNE,
          editsOfValues(
            TUNE,
            answers.definition!,
            values.map(({ value }) => value),
          ),
        ),
      );
      expect(written.findings.map(({ code }) => code)).toEqual(answers.findings.map(({ code }) => code));
    }
    const [one, other] = outcome.answers.map(({ values }) => values.map(({ value }) => value));
    expect(Math.abs(one![0]! - other![0]!)).toBeGreaterThanOrEqual(1e-3 - 1e-12);
    expect(Math.abs(one![2]! - other![2]!)).toBeGreaterThan(1e-3);
  });

  test('say what stands in the way where nothing is on the curve', () => {
    const steep = TUNE.replace('[25 %, 15.9 deg]', '[25 %, 45 deg]').replace('[50 %, 36.9 deg]', '[50 %, 46 deg]');
    const away = finished(tuneText(steep, { seed: 1, rounds: 1, answers: 1 }));
    if (away.kind !== 'tuned') throw new Error(away.why);
    const shown = tunePage(solve(steep), away);
    expect(shown.standing).toBe('failed');
    expect(ofKind(shown, 'lines').map(({ title }) => title)).toContain('What stands in the way');
  });
});

describe('the lines that an answer changes', () => {
  test('are found where a figure is added that the file leaves out', () => {
    const { study } = solve(TUNE);
    const diff = diffOf(TUNE, study!, [{ path: 'rods.link.length', value: 0.11 }]);
    expect(diff).toHaveLength(1);
    expect(diff[0]).toMatchObject({ was: '', is: 'length: 110 mm' });
  });

  test('are none where the figure cannot be written, or is the same', () => {
    const { study } = solve(TUNE);
    expect(diffOf(TUNE, study!, [{ path: 'let.crank_reach', value: 0.038 }])).toEqual([]);
    expect(diffOf(TUNE, study!, [{ path: 'levers.bellcrank.arms.out.radius', value: 0.038 }])).toEqual([]);
  });
});

describe('one figure', () => {
  test('is told with every value at which the demand is just met, each to be written', () => {
    const page = found(TUNE, { kind: 'solve', question: { change: 'crank_reach', demand: 'at(50%, shaft.opening) == 40 deg' } });
    const answersFound = ofKind(page, 'answer');
    expect(answersFound.length).toBeGreaterThan(0);
    const { study } = solve(TUNE);
    for (const { writes } of answersFound) {
      const written = solve(applyEdits(TUNE, editsOfWrites(TUNE, study!, writes)!));
      const [column] = written.table([0.5], ['shaft.opening']).columns;
      expect(column!.values[0]).toBeCloseTo(40, 6);
    }
  });

  test('is refused with the reason and the cure', () => {
    const steps = studyText(TUNE, { kind: 'solve', question: { change: 'crank', demand: 'opens fully' } });
    expect(finished(steps)).toMatchObject({ kind: 'refused', why: expect.stringContaining('no figure `crank`') as string });
  });
});

describe('what tolerances do', () => {
  const page = found(TUNE, { kind: 'tolerance' });

  test('tells every outcome once, and what moves each, the most first', () => {
    const [ranges, ...causes] = ofKind(page, 'table');
    expect(ranges!.rows.map(({ name }) => name)).toContain('least transmission angle of link');
    for (const { rows } of causes.filter(({ rows: all }) => all.some(({ share }) => share !== undefined))) {
      const shares = rows.map(({ share }) => share!);
      expect(shares).toEqual([...shares].sort((a, b) => b - a));
    }
  });

  /** Without friction, and with a tolerance on one dimension alone. */
  const one = TUNE.replace('shaft_reach: 32 mm ± 0.1 mm', 'shaft_reach: 32 mm')
    .replace('misalignment: 12 deg, pin: 6 mm, ', '')
    .replace(/^ +friction: .*\n/gm, '')
    .replace(', friction: 0.1}', '}');
  const pageOfOne = found(one, { kind: 'tolerance' });

  // A quantile goes with what rises or falls steadily: of one dimension alone a twentieth of the openings lies where one of the dimension does.
  test('shades between the figures of the twentieths of a dimension, where it is the only one', () => {
    const { spread } = pageOfOne;
    const band = spread!.columns.find(({ column }) => column === 'shaft.opening')!;
    // The fifth percentile of the normal law is 1.6449 standard deviations down (any table of it), of which a tolerance is three.
    const offset = (1.6449 / 3) * 0.1;
    // A percentile of 1000 draws lies within √(p(1−p)/n)/φ(z) of its own: 0.067 standard deviations; four of these.
    const slack = 4 * 0.067 * (1 / 1.6449);
    const at = spread!.stations.indexOf(0.5);
    const opening = (reach: number): number => {
      const text = one.replace('38 mm ± 0.1 mm', `${reach} mm ± 0.1 mm`);
      return (100 * Number(solve(text).table([0.5], ['shaft.opening']).columns[0]!.values[0])) / 82;
    };
    const ends = [opening(38 - offset), opening(38 + offset)].sort((a, b) => a - b);
    const width = ends[1]! - ends[0]!;
    expect(BAND_SHARES.low).toBe(0.05);
    expect(Math.abs(band.low[at]! - ends[0]!)).toBeLessThan((slack * width) / 2);
    expect(Math.abs(band.high[at]! - ends[1]!)).toBeLessThan((slack * width) / 2);
    expect(width).toBeGreaterThan(0.05);
  });

  test('shades effort, torques and margins with a spring off too, and says which friction counts', () => {
    const { spread } = page;
    const names = spread!.columns.map(({ column }) => column);
    expect(names).toEqual(expect.arrayContaining(['pedal.effort', 'pedal.release', 'shaft.closing', 'shaft.margin']));
    expect(names).toEqual(expect.arrayContaining(['shaft.margin without return_front', 'shaft.margin without return_rear']));
    const effort = spread!.columns.find(({ column }) => column === 'pedal.effort')!;
    const [column] = solve(TUNE).table([0.5], ['pedal.effort']).columns;
    const at = spread!.stations.indexOf(0.5);
    expect(effort.low[at]!).toBeLessThan(column!.values[0]!);
    expect(effort.high[at]!).toBeGreaterThan(column!.values[0]!);
    expect(spread!.words).toContain('Effort counts the friction that the file gives.');
    expect(spread!.words).not.toContain('Not shaded');
    expect(pageOfOne.spread!.words).toContain('Friction is left out of the effort: the file gives none.');
  });

  const bare = TUNE.replaceAll(' ± 0.1 mm', '').replace('pin: 6 mm, ', '');

  test('is refused where the file has no tolerance and leaves nothing free', () => {
    const [untuned = ''] = bare.split('\ntune:');
    expect(finished(studyText(`${untuned}\n`, { kind: 'tolerance' }))).toMatchObject({ kind: 'refused' });
  });

  test('without a tolerance has what is free alone, undecided, and no bands', () => {
    const outcome = finished(studyText(bare, { kind: 'tolerance' }));
    if (outcome.kind !== 'found') throw new Error(outcome.why);
    expect([outcome.found.standing, outcome.found.spread, ofKind(outcome.found, 'table')]).toEqual(['undecided', undefined, []]);
    expect(outcome.found.verdict).toContain('no tolerance is given');
    const told = JSON.stringify(outcome.found);
    expect(told).toMatch(/free: let\.spread \+ 1 mm: [+-][\d.]+/);
    expect(told).not.toMatch(/NaN|kept by|at random/);
  });
});

describe('the car as built', () => {
  const page = found(TUNE, { kind: 'fit', beside: [] });

  test('has every dimension that is to be found, each with its place', () => {
    const [dimensions] = ofKind(page, 'table');
    expect(dimensions!.rows.map(({ name }) => name)).toEqual(['crank_reach', 'shaft_reach', 'tps.at_closed', 'main.slack']);
    expect(TUNE.slice(dimensions!.rows[0]!.place!.start, dimensions!.rows[0]!.place!.end)).toContain('38 mm');
  });

  test('is not said to be so where the fit did not settle', () => {
    const [settled] = ofKind(page, 'table');
    expect(settled!.title).toBe('As the car is, ± one standard error');
    // Millivolts written as volts: no dimensions give such readings.
    const columns = ['pedal.travel', 'tps.signal'];
    const text = benchText({ columns, at: TEN, fit: ['main.slack', 'tps.at_closed'], noise: ['0.004 V'] }).replace(/ V\]/g, ' mV]');
    const [stopped] = ofKind(found(text, { kind: 'fit', beside: [] }), 'table');
    expect(stopped!.title).toBe('Where the fit stopped, not to be relied on');
  });

  test('draws what was read beside what is found, with the misses between two noises', () => {
    const charts = ofKind(page, 'charts');
    expect(charts.length).toBeGreaterThan(0);
    for (const {
      charts: [read, misses],
    } of charts) {
      expect(read!.curves.map(({ label }) => label)).toEqual(['read', 'found', 'in the file']);
      expect(misses!.bands.map(({ from, to }) => [from, to])).toEqual([
        [2, undefined],
        [undefined, -2],
      ]);
    }
  });

  test('can be written into the file, which then is read as the same car', () => {
    const answer = ofKind(page, 'answer')[0]!;
    const { study } = solve(TUNE);
    const written = applyEdits(TUNE, editsOfWrites(TUNE, study!, answer.writes)!);
    expect(solve(written).problems).toEqual([]);
    expect(written).not.toBe(TUNE);
  });

  test('says so where a CSV file is not there', () => {
    const csv = TUNE.replace(/runs:\n[\s\S]*$/, 'runs:\n    bench: {file: bench.csv}\n');
    expect(finished(studyText(csv, { kind: 'fit', beside: [] }))).toMatchObject({
      kind: 'refused',
      why: 'There is no file `bench.csv` beside this one',
    });
  });
});
