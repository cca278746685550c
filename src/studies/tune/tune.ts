/**
 * From the curve that is wanted to the dimensions that give it: several answers, best first, each held against all that must be kept.
 *
 * The search follows the curve and the angles that it can watch at each station (`search.ts`). What it finds is brought onto the steps
 * that free values have, written with the digits that a file gets, and judged on the solved file. An answer that falls short of a demand
 * is mended by least squares over the curve and all demands together. The same file and seed give the same answers.
 */
import type { Definition } from '../../definition/definition.ts';
import type { Answered } from '../../findings/answered.ts';
import { limitOf, type Study } from '../../findings/study.ts';
import { differences } from '../../numeric/differences.ts';
import { leastSquares, type LeastSquares, type Patience } from '../../numeric/leastSquares.ts';
import { greatestOf } from '../../travel/extremes.ts';
import { demandsOf, judge, type Demand, type Judgement } from './demands.ts';
import { designsOf } from './designs.ts';
import { APART, measure, search, type Effort, type Found, type Progress } from './search.ts';
import { createTrial, type FreeDimension, type Guard, type Trial, type TrialCase } from './trial.ts';
import { wantedOf, type Ends, type Wanted } from './wanted.ts';

/** A value that an answer gives. */
export interface TunedValue {
  /** Of `let`. */
  readonly name: string;
  /** SI, with the digits that are written. */
  readonly value: number;
  readonly was: number;
  /** The bound that it stands on; undefined within them. */
  readonly bound: 'from' | 'to' | undefined;
}

export interface TunedAnswer {
  readonly values: readonly TunedValue[];
  /** Greatest weighted distance from the curve, SI of the column, and the pedal travel where it is. */
  readonly error: number;
  readonly at: number;
  /** Of every demand, in their order. */
  readonly judgements: readonly Judgement[];
}

export interface Tuned {
  /** Column that follows the curve. */
  readonly column: string;
  /** SI: as near to the curve as this is on it. */
  readonly enough: number;
  /** As the file stands; undefined where it has no value somewhere along the curve. */
  readonly before: { readonly error: number; readonly at: number } | undefined;
  /** Best first: those that keep all demands, nearest to the curve, then those that fall short least. Empty where nothing can be assembled. */
  readonly answers: readonly TunedAnswer[];
  /** Where the best answer is off the curve: demands on angles without one of which it would come nearer, and how near. */
  readonly obstacles: readonly Obstacle[];
}

export interface Obstacle {
  readonly demand: Demand;
  /** Greatest distance from the curve without it, SI. */
  readonly error: number;
}

export interface TuneOptions {
  readonly seed: number;
  /** Rounds of the search; each is some 300 looks and up to 12 descents. */
  readonly rounds: number;
  /** Answers wanted, at most. */
  readonly answers: number;
}

export const TUNE_DEFAULTS: TuneOptions = { seed: 1, rounds: 24, answers: 3 };

/** The file with the free values written in, solved. @param values SI, in the order of `tune.free` */
export type SolveWith = (values: readonly number[]) => Answered;

/** Undefined where the file cannot be tuned: `whyNotTuned` says why. */
export function* tune(
  study: Study,
  solveWith: SolveWith,
  { seed, rounds, answers: most }: TuneOptions = TUNE_DEFAULTS,
): Generator<Progress, Tuned | undefined> {
  const { definition } = study;
  const demands = demandsOf(definition);
  const setting = settingOf(study, demands);
  if (setting === undefined) return undefined;
  const { trialCase, enough, lever } = setting;
  const trial = createTrial(trialCase);
  const effort: Effort = { seed, rounds, enough, answers: most };
  const drawn = Float64Array.from(trialCase.free, ({ index, from, to }) =>
    within((study.travel.build.values[index]! - from) / (to - from)),
  );
  const designs = lever === undefined ? [drawn] : [drawn, ...designsOf(trialCase, lever)];
  const found = yield* search(trial, designs, effort);
  const candidates = found.map((each) => stepped(trial, each)).filter(({ error }) => Number.isFinite(error));
  const looked: TunedAnswer[] = [];
  for (const candidate of candidates.slice(0, LOOKED_AT)) {
    const first = answerOf(trial, definition, demands, solveWith, candidate.x);
    looked.push(first);
    yield { done: rounds, of: rounds, best: bestOf(looked, enough) };
    if (keepsAll(first)) {
      if (looked.filter((each) => keepsAll(each) && each.error <= enough).length >= most) break;
      continue;
    }
    const mended = mend(trial, demands, solveWith, candidate.x);
    if (mended !== undefined) looked.push(answerOf(trial, definition, demands, solveWith, stepped(trial, measure(trial, mended)).x));
    yield { done: rounds, of: rounds, best: bestOf(looked, enough) };
  }
  const answers = distinct(looked.filter(({ error }) => Number.isFinite(error)).sort(byMerit), trialCase.free).slice(0, most);
  const [best] = answers;
  const isMet = best !== undefined && keepsAll(best) && best.error <= enough;
  const nearer = best === undefined ? Infinity : best.error * NEARER;
  const obstacles = isMet ? [] : (yield* obstaclesOf(setting, demands, designs, effort)).filter(({ error }) => error < nearer);
  return { column: trialCase.column, enough, before: beforeOf(trial, study), answers, obstacles };
}

const LOOKED_AT = 8;
/** A demand without which it comes no nearer than this part of the way is none that stands in the way. */
const NEARER = 0.95;

const within = (share: number): number => Math.min(1, Math.max(0, share));

function bestOf(looked: readonly TunedAnswer[], enough: number): number | undefined {
  const kept = looked.filter(keepsAll).map(({ error }) => Math.max(error, enough));
  return kept.length === 0 ? undefined : Math.min(...kept);
}

export function keepsAll({ judgements }: TunedAnswer): boolean {
  return judgements.every(({ shortfall }) => shortfall === 0);
}

/** What is not checked is no better than what is a whole limit off. */
function shortOf({ judgements }: TunedAnswer): number {
  return judgements.reduce((sum, { shortfall }) => sum + (Number.isNaN(shortfall) ? 1 : shortfall), 0);
}

function byMerit(a: TunedAnswer, b: TunedAnswer): number {
  if (keepsAll(a) !== keepsAll(b)) return keepsAll(a) ? -1 : 1;
  return keepsAll(a) ? a.error - b.error : shortOf(a) - shortOf(b);
}

/** Without what is nearly one that comes before it: mending leads to the same place from several. */
function distinct(answers: readonly TunedAnswer[], free: readonly FreeDimension[]): readonly TunedAnswer[] {
  const like = (a: TunedAnswer, b: TunedAnswer): boolean =>
    free.every(({ from, to }, i) => Math.abs(a.values[i]!.value - b.values[i]!.value) < APART * (to - from));
  return answers.filter((answer, i) => !answers.slice(0, i).some((before) => like(before, answer)));
}

/** The column that follows the curve, and what is wanted of it; undefined where the file cannot be tuned. */
export function wantedIn(study: Study): { readonly column: string; readonly wanted: Wanted } | undefined {
  return settingOf(study, [])?.trialCase;
}

interface Setting {
  readonly trialCase: TrialCase;
  readonly enough: number;
  /** Lever whose opening follows the curve; undefined for other columns. */
  readonly lever: number | undefined;
}

/** Why a file cannot be tuned, in words without a full stop; undefined where it can. */
export function whyNotTuned(study: Study): string | undefined {
  const { tune: block, lets } = study.definition;
  if (block === undefined) return 'The file has no `tune` block';
  if (block.unread.length > 0) return 'Something in the `tune` block is not understood; see the problem with its text';
  if (block.curve === undefined) return 'The `tune` block gives no curve';
  if (block.free.length === 0) return 'The `tune` block leaves nothing free';
  const idle = block.free.find((free) => dimensionOf(study, lets[free.let]!.name) === undefined);
  if (idle !== undefined) return `No part of the linkage uses \`${idle.name}\``;
  const name = nameOfColumn(block.curve.of);
  return study.columns.has(name) ? undefined : `${name} cannot be solved in this file`;
}

function settingOf(study: Study, demands: readonly Demand[]): Setting | undefined {
  const { tune: block } = study.definition;
  if (whyNotTuned(study) !== undefined || block?.curve === undefined) return undefined;
  const name = nameOfColumn(block.curve.of);
  const column = study.columns.get(name)!;
  const { mechanism } = study.travel;
  const free = block.free.map(({ name: of, from, to, step }): FreeDimension => {
    return { name: of, index: dimensionOf(study, of)!, from: from.nominal, to: to.nominal, step: step?.nominal };
  });
  const lever = column.key === 'opening' ? mechanism.leverIndex.get(column.owner) : undefined;
  const wanted = wantedOf(block.curve, endsOf(study, name));
  const heights = wanted.points.map((at) => Math.abs(wanted.value(at)));
  const enough = column.dimension === 'angle' ? ENOUGH_ANGLE : ENOUGH_SHARE * Math.max(...heights);
  return { trialCase: { mechanism, free, column: name, wanted, guards: guardsOf(study, demands) }, enough, lever };
}

/** rad */
const ENOUGH_ANGLE = (0.1 * Math.PI) / 180;
/** Of the curve's greatest value. */
const ENOUGH_SHARE = 0.005;

const nameOfColumn = ({ owner, column }: { readonly owner: string; readonly column: string }): string => `${owner}.${column}`;

function dimensionOf({ travel: { mechanism } }: Study, name: string): number | undefined {
  return mechanism.dimensions.find(({ path }) => path === `let.${name}`)?.index;
}

/** Where a curve given by its slopes begins and ends: closed, and fully open, as the file has it. */
export function endsOf(study: Study, name: string): Ends {
  const column = study.columns.get(name)!;
  const { build, poseAt, mechanism, samples } = study.travel;
  const read = (at: number): number => column.read(build, poseAt(at));
  const fullOf = column.lever === undefined ? undefined : mechanism.levers[column.lever]!.fullOpening;
  const closed = read(0);
  if (column.key === 'opening' && fullOf !== undefined) return { closed: 0, full: build.parameters[fullOf]! };
  return { closed, full: greatestOf(read, samples)?.value ?? NaN };
}

function guardsOf(study: Study, demands: readonly Demand[]): readonly Guard[] {
  return demands.flatMap(({ kept }): readonly Guard[] => {
    if (kept.kind !== 'limit' || (kept.key !== 'transmission' && kept.key !== 'drive')) return [];
    const { key } = kept;
    const least = limitOf(study, key).warning;
    return study.travel.mechanism.joints.flatMap(({ name }) =>
      study.columns.has(`${name}.${key}`) ? [{ column: `${name}.${key}`, least }] : [],
    );
  });
}

function beforeOf(trial: Trial, study: Study): Tuned['before'] {
  const { wanted, column } = trial.case;
  const { build, poseAt } = study.travel;
  const figure = study.columns.get(column)!;
  const off = (at: number): number => wanted.weight(at) * Math.abs(figure.read(build, poseAt(at)) - wanted.value(at));
  if (!trial.stations.every((at) => Number.isFinite(off(at)))) return undefined;
  const greatest = greatestOf(off, trial.stations);
  return greatest && { error: greatest.value, at: greatest.travel };
}

/** With the values that have steps on one of them: first all to the nearest, then each to its neighbour as long as that is better. */
function stepped(trial: Trial, found: Found): Found {
  const { free } = trial.case;
  const chosen = free.flatMap(({ step }, i) => (step === undefined ? [] : [i]));
  if (chosen.length === 0) return found;
  const settle = (start: Float64Array): Found => {
    const from = new Float64Array(free.length);
    const to = new Float64Array(free.length).fill(1);
    for (const i of chosen) from[i] = to[i] = start[i]!;
    const problem = { ...trial.problem(trial.ownWeights), from, to };
    const x = chosen.length === free.length ? start : (leastSquares(problem, start, AFTER_STEP)?.x ?? start);
    return measure(trial, x);
  };
  const onStep = (x: Float64Array, i: number, by: number): Float64Array => {
    const next = Float64Array.from(x);
    next[i] = stepNear(free[i]!, x[i]!, by);
    return next;
  };
  let x = found.x;
  for (const i of chosen) x = onStep(x, i, 0);
  let best = settle(x);
  for (let pass = 0; pass < STEP_PASSES; pass++) {
    const before = best;
    for (const i of chosen) {
      for (const by of [-1, 1]) {
        const next = settle(onStep(best.x, i, by));
        if (!(best.error <= next.error) && next.trespass <= Math.max(0, best.trespass)) best = next;
      }
    }
    if (best === before) break;
  }
  return best;
}

const AFTER_STEP: Patience = { steps: 20, enough: 1e-16, still: 1e-9 };
const STEP_PASSES = 6;

/** The step nearest to a share of the bounds, and so many further on; within the bounds. */
function stepNear({ from, to, step }: FreeDimension, x: number, by: number): number {
  const size = step! / (to - from);
  const most = Math.floor(1 / size + STEP_SLOP);
  return Math.min(most, Math.max(0, Math.round(x / size) + by)) * size;
}

/** Of a step: bounds that are a whole number of steps apart may miss by rounding. */
const STEP_SLOP = 1e-9;

function answerOf(trial: Trial, definition: Definition, demands: readonly Demand[], solveWith: SolveWith, x: Float64Array): TunedAnswer {
  const { free } = trial.case;
  const values = [...trial.valuesAt(x)].map((value, i) => written(value, free[i]!));
  const { error, at } = measure(
    trial,
    Float64Array.from(values, (value, i) => (value - free[i]!.from) / (free[i]!.to - free[i]!.from)),
  );
  return {
    values: values.map((value, i): TunedValue => {
      const { from, to, name } = free[i]!;
      const slop = ON_BOUND * (to - from);
      const bound = value <= from + slop ? 'from' : value >= to - slop ? 'to' : undefined;
      return { name, value, was: nominalOf(definition, name), bound };
    }),
    error,
    at,
    judgements: judge(solveWith(values), demands),
  };
}

/** Of the bounds. */
const ON_BOUND = 1e-4;

function nominalOf({ lets }: Definition, name: string): number {
  return lets.find((each) => each.name === name)!.value.nominal;
}

/** To a micron of a metre's linkage, a thousandth of a degree: finer than anything is cut. Steps are exact, and bounds not passed. */
function written(value: number, { from, to, step }: FreeDimension): number {
  if (step !== undefined) return value;
  return Math.min(to, Math.max(from, Number(value.toPrecision(DIGITS))));
}

const DIGITS = 6;

/** Towards keeping all demands while following the curve; undefined where it comes no nearer. */
function mend(trial: Trial, demands: readonly Demand[], solveWith: SolveWith, start: Float64Array): Float64Array | undefined {
  const curve = trial.problem(trial.ownWeights);
  const count = curve.count + demands.length;
  const evaluate = (x: Float64Array, into: Float64Array): boolean => {
    if (!curve.evaluate(x, into.subarray(0, curve.count))) return false;
    judge(solveWith([...trial.valuesAt(x)]), demands).forEach(({ shortfall }, i) => {
      into[curve.count + i] = DEMAND_WEIGHT * (Number.isNaN(shortfall) ? 1 : shortfall);
    });
    return true;
  };
  const { from, to } = curve;
  const problem: LeastSquares = {
    count,
    from,
    to,
    evaluate,
    differentiate: (x, residuals, jacobian) => differences(evaluate, x, residuals, { from, to, step: MEND_DIFFERENCE }, jacobian),
  };
  const residuals = new Float64Array(count);
  const before = evaluate(start, residuals) ? squares(residuals) : Infinity;
  const found = leastSquares(problem, start, MENDING);
  return found !== undefined && 2 * found.cost < before ? found.x : undefined;
}

const MENDING: Patience = { steps: 8, enough: 1e-12, still: 1e-6 };
/** A demand missed by its whole limit weighs as much as three heights of the curve. */
const DEMAND_WEIGHT = 3;
/** Of the bounds; findings have edges, which a finer difference would not see past. */
const MEND_DIFFERENCE = 1e-4;

const squares = (values: Float64Array): number => values.reduce((sum, each) => sum + each * each, 0);

/** What the search gives with the angles of one demand left out of it. */
function* obstaclesOf(
  { trialCase, enough }: Setting,
  demands: readonly Demand[],
  designs: readonly Float64Array[],
  effort: Effort,
): Generator<Progress, readonly Obstacle[]> {
  const obstacles: Obstacle[] = [];
  for (const demand of demands) {
    const { kept } = demand;
    if (kept.kind !== 'limit') continue;
    const guards = trialCase.guards.filter(({ column }) => !column.endsWith(`.${kept.key}`));
    if (guards.length === trialCase.guards.length) continue;
    const trial = createTrial({ ...trialCase, guards });
    const [best] = yield* search(trial, designs, { ...effort, rounds: Math.min(effort.rounds, OBSTACLE_ROUNDS), answers: 1, enough });
    if (best !== undefined) obstacles.push({ demand, error: best.error });
  }
  return obstacles;
}

const OBSTACLE_ROUNDS = 4;
