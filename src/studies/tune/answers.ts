/** An answer of the search as the file would have it: written with the digits that it gets, solved, and judged. */
import type { Definition } from '../../definition/definition.ts';
import type { Answered } from '../../findings/answered.ts';
import { merge } from '../../travel/places.ts';
import { judge, type Demand, type Judgement } from './demands.ts';
import { errorsOf, newsOf, type News } from './news.ts';
import { APART, distanceOf, type Distance } from './search.ts';
import type { FreeDimension, Trial } from './trial.ts';

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

export interface TunedAnswer extends Distance {
  readonly values: readonly TunedValue[];
  /** Of every demand, in their order. */
  readonly judgements: readonly Judgement[];
  readonly news: News;
}

/** The file with the free values written in, solved. @param values SI, in the order of `tune.free` */
export type SolveWith = (values: readonly number[]) => Answered;

/** What answers are held against. */
export interface Court {
  readonly trial: Trial;
  readonly definition: Definition;
  readonly demands: readonly Demand[];
  readonly solveWith: SolveWith;
  /** Answers about the file as it stands. */
  readonly standing: Answered;
}

/** Yields before what takes long. @param x in parts of the bounds */
export function* answerOf({ trial, definition, demands, solveWith, standing }: Court, x: Float64Array): Generator<undefined, TunedAnswer> {
  const { free } = trial.case;
  const was = free.map(({ name }) => nominalOf(definition, name));
  const values = [...trial.valuesAt(x)].map((value, i) => written(value, free[i]!, was[i]!));
  const answered = solveWith(values);
  yield undefined;
  const { error, at, weighted } = distanceIn(trial, answered) ?? NOWHERE;
  yield undefined;
  const judgements = judge(answered, demands);
  yield undefined;
  return {
    values: values.map((value, i): TunedValue => {
      const { from, to, name } = free[i]!;
      const slop = ON_BOUND * (to - from);
      const bound = value <= from + slop ? 'from' : value >= to - slop ? 'to' : undefined;
      return { name, value, was: was[i]!, bound };
    }),
    error,
    at,
    weighted,
    judgements,
    news: newsOf(answered, standing, judgements),
  };
}

/**
 * How far a solved file is off the curve: at the stations of the search, and wherever a lever meets a stop, a cable comes taut or a part turns.
 * Undefined where its column has no value somewhere along the curve.
 */
export function distanceIn({ case: { wanted, column }, stations }: Trial, { study }: Pick<Answered, 'study'>): Distance | undefined {
  const figure = study?.columns.get(column);
  if (study === undefined || figure === undefined) return undefined;
  const { build, poseAt, samples } = study.travel;
  const own = samples.filter((sample) => sample > wanted.from && sample < wanted.to);
  return distanceOf(wanted, merge(stations, own), (at) => figure.read(build, poseAt(at)) - wanted.value(at));
}

const NOWHERE: Distance = { error: NaN, at: NaN, weighted: NaN };

/** Of the bounds. */
const ON_BOUND = 1e-4;

function nominalOf({ lets }: Definition, name: string): number {
  return lets.find((each) => each.name === name)!.value.nominal;
}

/** To a micron of a metre's linkage, a thousandth of a degree: finer than anything is cut. Steps are exact, and bounds not passed. */
function written(value: number, { from, to, step }: FreeDimension, was: number): number {
  if (Math.abs(value - was) <= AS_WAS * (to - from)) return was;
  if (step !== undefined) return value;
  return Math.min(to, Math.max(from, Number(value.toPrecision(DIGITS))));
}

const DIGITS = 6;
/** Of the bounds: a value is left as it is written. */
const AS_WAS = 1e-9;

/** What was not checked is not kept. */
export function keepsAll({ judgements }: TunedAnswer): boolean {
  return judgements.every(({ shortfall }) => shortfall === 0);
}

/** It keeps all demands and brings no error that the file as it stands does not have. */
export function isSound(answer: TunedAnswer): boolean {
  return keepsAll(answer) && errorsOf(answer.news) === 0;
}

/** It is the file as it stands. */
export function isUnchanged({ values }: TunedAnswer): boolean {
  return values.every(({ value, was }) => value === was);
}

/** What is not checked is no better than what is a whole limit off. */
export function shortOf({ judgements }: TunedAnswer): number {
  return judgements.reduce((sum, { shortfall }) => sum + (Number.isNaN(shortfall) ? 1 : shortfall), 0);
}

/**
 * For sorting: those that bring no new error first; of them those that keep all demands, nearest to the curve by its weights, then those that
 * fall short least.
 */
export function byMerit(a: TunedAnswer, b: TunedAnswer): number {
  const errs = (answer: TunedAnswer): number => Math.min(1, errorsOf(answer.news));
  if (errs(a) !== errs(b)) return errs(a) - errs(b);
  if (keepsAll(a) !== keepsAll(b)) return keepsAll(a) ? -1 : 1;
  return keepsAll(a) ? a.weighted - b.weighted : alike(shortOf(a)) - alike(shortOf(b)) || a.weighted - b.weighted;
}

/** What falls short by as much but for rounding falls as short: the nearer to the curve goes first then. */
const alike = (short: number): number => Math.round(short / SAME_SHORT);

/** In parts of the limit. */
const SAME_SHORT = 1e-6;

/** Without what is nearly one that comes before it: mending leads to the same place from several. */
export function distinct(answers: readonly TunedAnswer[], free: readonly FreeDimension[]): readonly TunedAnswer[] {
  const like = (a: TunedAnswer, b: TunedAnswer): boolean =>
    free.every(({ from, to }, i) => Math.abs(a.values[i]!.value - b.values[i]!.value) < APART * (to - from));
  return answers.filter((answer, i) => !answers.slice(0, i).some((before) => like(before, answer)));
}

/** Without what another is better than in everything: as near to the curve or nearer, and giving up nothing that this one does not as much. */
export function undominated(answers: readonly TunedAnswer[]): readonly TunedAnswer[] {
  const short = ({ shortfall }: Judgement): number => (Number.isNaN(shortfall) ? Infinity : shortfall);
  const beats = (a: TunedAnswer, b: TunedAnswer): boolean =>
    a.error < b.error &&
    errorsOf(a.news) <= errorsOf(b.news) &&
    a.judgements.every((each, i) => short(each) <= short(b.judgements[i]!)) &&
    a.judgements.some((each, i) => short(each) < short(b.judgements[i]!));
  return answers.filter((answer) => !answers.some((other) => beats(other, answer)));
}
