/**
 * Decides requirements whose outcome is written under each, with how it stands in words:
 *
 *     opens fully: at(100%, shaft.opening) >= 75 deg
 *   # passed: 80° ≥ 75° (5° to spare, at 100 %)
 *
 * Every requirement must have such a line, and the words must be the whole of what is told. Columns may be given other figures, as
 * functions of pedal travel, so that any course of a figure can be tried.
 */
import { expect } from 'vitest';
import type { Definition } from '../../src/definition/definition.ts';
import { findLoadPath } from '../../src/definition/loadPath.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { answerText } from '../../src/outputs/requirementText.ts';
import { decideRequirements } from '../../src/requirements/decide.ts';
import type { Comparison, RequirementAnswer } from '../../src/requirements/requirement.ts';
import { solve } from '../../src/solve.ts';
import { columnsOf } from '../../src/table/columns.ts';
import { compileMechanism } from '../../src/kinematics/compile.ts';
import { solveTravel, type Travel } from '../../src/travel/travel.ts';

const DEGREE = Math.PI / 180;

/** A shaft that turns 80° with the pedal, twice as fast; plates on it, and a lever that nothing drives. */
export const GEARED = `format: 1
let: {reach: 38 mm, lead: 10 deg, half: lead / 2, share: 25 %}
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0], opens: counterclockwise}
  stray: {pivot: [100, 80]}
pedal: {lever: pedal, opens: counterclockwise, travel: 40}
couplings: {gear: {from: pedal, to: shaft, ratio: 2}}
`;

export interface RequirementSetting {
  /** The file above its `require`; `GEARED` where absent. */
  readonly file?: string;
  /** What columns read instead, SI, by pedal travel; null takes a column away. */
  readonly figures?: Readonly<Record<string, ((travel: number) => number) | null>>;
}

/** SI of an angle in degrees. */
export const degrees = (angle: number): number => angle * DEGREE;

export function decide(lines: string, { file = GEARED, figures = {} }: RequirementSetting = {}): readonly RequirementAnswer[] {
  const text = `${file}require:\n${lines}\n`;
  const answers = solve(text);
  const { definition } = answers;
  if (definition === undefined) throw new Error(`Nothing is understood of\n${text}`);
  if (Object.keys(figures).length === 0) return answers.requirements;
  const columns = answers.columns.flatMap((column) => {
    const figure = figures[column.name];
    if (figure === null) return [];
    return [figure === undefined ? column : { ...column, read: (_: unknown, pose: { readonly travel: number }) => figure(pose.travel) }];
  });
  return decideRequirements({ text, definition, problems: answers.problems, travel: travelOf(definition, answers.loadPath), columns });
}

/** What is demanded of `GEARED`, which is solved but once. @param demands lines of the file, `require` first */
export function decideOfGeared(demands: string): readonly RequirementAnswer[] {
  const text = `${GEARED}${demands}`;
  const { definition, problems } = readDefinition(text);
  if (definition === undefined) throw new Error(`Nothing is understood of\n${text}`);
  geared ??= travelOf(definition, findLoadPath(definition).path);
  return decideRequirements({ text, definition, problems, travel: geared, columns: columnsOf(geared) });
}

let geared: Travel | undefined;

function travelOf(definition: Definition, loadPath: ReturnType<typeof solve>['loadPath']): Travel {
  const mechanism = loadPath && compileMechanism(definition, loadPath);
  if (mechanism === undefined) throw new Error('There is nothing to solve');
  return solveTravel(mechanism);
}

/** One requirement by its expression. */
export function decideOne(expression: string, setting?: RequirementSetting): RequirementAnswer {
  const [answer, ...more] = decide(`  it: '${expression}'`, setting);
  if (answer === undefined || more.length > 0) throw new Error(`${more.length} answers more than one`);
  return answer;
}

/** The only comparison of one requirement. */
export function compareOne(expression: string, setting?: RequirementSetting): Comparison {
  const { comparisons, reason } = decideOne(expression, setting);
  const [comparison, ...more] = comparisons;
  if (comparison === undefined || more.length > 0) throw new Error(`${comparisons.length} comparisons: ${reason ?? ''}`);
  return comparison;
}

const WORDS = { passed: 'passed', failed: 'failed', undecided: 'not decidable' } as const;

export function checkRequirements(annotated: string, setting?: RequirementSetting): readonly RequirementAnswer[] {
  const lines = annotated.split('\n').filter((line) => line.trim() !== '');
  const expected = lines.filter((line) => line.trim().startsWith('#')).map((line) => line.trim().replace(/^# */, ''));
  const answers = decide(lines.map((line) => `  ${line.trim()}`).join('\n'), setting);
  expect(answers.map((answer) => `${WORDS[answer.outcome]}: ${answerText(answer)}`)).toEqual(expected);
  for (const answer of answers) {
    // A reason is told of all that is undecided, and a figure of all that is not.
    if (answer.outcome === 'undecided') expect(answer.reason).toBeTruthy();
    expect(answer.comparisons.every(({ reason, margin }) => reason !== undefined || margin !== undefined)).toBe(true);
  }
  return answers;
}
