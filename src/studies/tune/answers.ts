/** An answer of the search as the file would have it: written with the digits that it gets, solved, and judged. */
import type { Definition } from '../../definition/definition.ts';
import type { Answered } from '../../findings/answered.ts';
import { judge, type Demand, type Judgement } from './demands.ts';
import { APART, measure } from './search.ts';
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

export interface TunedAnswer {
  readonly values: readonly TunedValue[];
  /** Greatest weighted distance from the curve, SI of the column, and the pedal travel where it is. */
  readonly error: number;
  readonly at: number;
  /** Of every demand, in their order. */
  readonly judgements: readonly Judgement[];
}

/** The file with the free values written in, solved. @param values SI, in the order of `tune.free` */
export type SolveWith = (values: readonly number[]) => Answered;

/** Yields before what takes long. @param x in parts of the bounds */
export function* answerOf(
  trial: Trial,
  definition: Definition,
  demands: readonly Demand[],
  solveWith: SolveWith,
  x: Float64Array,
): Generator<undefined, TunedAnswer> {
  const { free } = trial.case;
  const values = [...trial.valuesAt(x)].map((value, i) => written(value, free[i]!));
  const { error, at } = measure(
    trial,
    Float64Array.from(values, (value, i) => (value - free[i]!.from) / (free[i]!.to - free[i]!.from)),
  );
  yield undefined;
  const answered = solveWith(values);
  yield undefined;
  return {
    values: values.map((value, i): TunedValue => {
      const { from, to, name } = free[i]!;
      const slop = ON_BOUND * (to - from);
      const bound = value <= from + slop ? 'from' : value >= to - slop ? 'to' : undefined;
      return { name, value, was: nominalOf(definition, name), bound };
    }),
    error,
    at,
    judgements: judge(answered, demands),
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

/** What was not checked is not kept. */
export function keepsAll({ judgements }: TunedAnswer): boolean {
  return judgements.every(({ shortfall }) => shortfall === 0);
}

/** What is not checked is no better than what is a whole limit off. */
function shortOf({ judgements }: TunedAnswer): number {
  return judgements.reduce((sum, { shortfall }) => sum + (Number.isNaN(shortfall) ? 1 : shortfall), 0);
}

/** For sorting: those that keep all demands, nearest to the curve, then those that fall short least. */
export function byMerit(a: TunedAnswer, b: TunedAnswer): number {
  if (keepsAll(a) !== keepsAll(b)) return keepsAll(a) ? -1 : 1;
  return keepsAll(a) ? a.error - b.error : shortOf(a) - shortOf(b);
}

/** Without what is nearly one that comes before it: mending leads to the same place from several. */
export function distinct(answers: readonly TunedAnswer[], free: readonly FreeDimension[]): readonly TunedAnswer[] {
  const like = (a: TunedAnswer, b: TunedAnswer): boolean =>
    free.every(({ from, to }, i) => Math.abs(a.values[i]!.value - b.values[i]!.value) < APART * (to - from));
  return answers.filter((answer, i) => !answers.slice(0, i).some((before) => like(before, answer)));
}
