/** What many builds came to: percentiles of each outcome, and how many builds keep what judges them. */
import { quantile } from '../../numeric/quantile.ts';
import type { Builds } from './monteCarlo.ts';
import type { Outcome } from './outcomes.ts';

export interface Distribution {
  readonly outcome: Outcome;
  /** Builds in which the outcome has no value: not assembled, say. They count as not kept, and are in none of the figures below. */
  readonly missing: number;
  /** SI; NaN where no build has a value, the standard deviation with fewer than two. */
  readonly mean: number;
  readonly deviation: number;
  /** In the order of `SHARES`. */
  readonly percentiles: readonly number[];
  /** Undefined where nothing judges the outcome: not checked. */
  readonly kept: Yield | undefined;
}

/** Of the builds that keep something. */
export interface Yield {
  /** A fraction; NaN without builds. */
  readonly share: number;
  /** Between these it lies, as sure as 95 %, for builds without number. */
  readonly low: number;
  readonly high: number;
}

export interface Distributions {
  readonly builds: number;
  readonly outcomes: readonly Distribution[];
  /** Builds that keep all that is judged and have every outcome; undefined where nothing is judged: not checked. */
  readonly kept: Yield | undefined;
}

/** The first and the last hold between them what three standard deviations of a normal law do. */
export const SHARES: readonly number[] = [0.00135, 0.025, 0.5, 0.975, 0.99865];

/** Yields as it goes. @param parts in any order, of the same outcomes */
export function* distributionsOf(outcomes: readonly Outcome[], parts: readonly Builds[]): Generator<undefined, Distributions> {
  const rising = [...parts].sort((a, b) => a.from - b.from);
  const builds = rising.reduce((sum, { from, to }) => sum + to - from, 0);
  const judged = outcomes.map(({ least, most }) => least !== undefined || most !== undefined);
  let sound = 0;
  for (const { from, to, values, kept } of rising) {
    for (let k = 0; k < to - from; k++) {
      if (outcomes.every((_, i) => kept[i]![k] === 1 && !Number.isNaN(values[i]![k]!))) sound++;
      if ((k + 1) % PIECE === 0) yield undefined;
    }
  }
  const distributions: Distribution[] = [];
  for (const [i, outcome] of outcomes.entries()) {
    const all = rising.flatMap(({ values }) => [...values[i]!]);
    const kept = rising.reduce((sum, part) => sum + part.kept[i]!.reduce((a, b) => a + b, 0), 0);
    distributions.push({ outcome, ...figuresOf(all), kept: judged[i] ? yieldOf(kept, builds) : undefined });
    yield undefined;
  }
  return {
    builds,
    outcomes: distributions,
    kept: judged.includes(true) ? yieldOf(sound, builds) : undefined,
  };
}

/** Builds between two yields: some hundreds are gone through in less than a millisecond. */
const PIECE = 256;

function figuresOf(all: readonly number[]): Pick<Distribution, 'missing' | 'mean' | 'deviation' | 'percentiles'> {
  const values = Float64Array.from(all.filter((value) => !Number.isNaN(value))).sort();
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    missing: all.length - values.length,
    mean,
    deviation: values.length < 2 ? NaN : Math.sqrt(squares / (values.length - 1)),
    percentiles: SHARES.map((share) => quantile(values, share)),
  };
}

/** E. B. Wilson, Journal of the American Statistical Association 22 (1927) 209, from memory: sound at 0 % and 100 % too. */
export function yieldOf(kept: number, builds: number): Yield {
  const share = kept / builds;
  const z = 1.959963984540054;
  const spread = (z * z) / builds;
  const middle = (share + spread / 2) / (1 + spread);
  const half = (z / (1 + spread)) * Math.sqrt((share * (1 - share)) / builds + spread / (4 * builds));
  return { share, low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}
