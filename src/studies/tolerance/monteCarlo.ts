/**
 * Linkages built at random within their tolerances, each solved as one that is drawn.
 *
 * `normal`: a tolerance is three standard deviations about its middle, and a few builds lie beyond it, as they do where parts are cut so.
 * `uniform`: evenly over the tolerance's whole width. Play is taken up evenly by either law: nothing brings a pin to
 * the middle of it. All vary independently. Build number k is the same for a seed however
 * the builds are shared out, since its draws follow from its number alone (`numeric/random.ts`).
 */
import type { Mechanism } from '../../kinematics/model.ts';
import { randomOf } from '../../numeric/random.ts';
import { createGauge } from './gauge.ts';
import type { Outcome } from './outcomes.ts';
import { createPlacing } from './placing.ts';
import type { Progress } from './stack.ts';
import type { Toleranced } from '../../kinematics/toleranced.ts';

export type Law = 'normal' | 'uniform';

export interface BuildsRequest {
  /** Whole, from 0 to 2³² − 1. */
  readonly seed: number;
  readonly law: Law;
  /** Numbers of the builds, the last one not among them. */
  readonly from: number;
  readonly to: number;
}

/** What some builds came to. Plain data, so that it can come from another thread. */
export interface Builds {
  readonly from: number;
  readonly to: number;
  /** Of each outcome one value a build, SI, NaN where it has none. */
  readonly values: readonly Float64Array[];
  /** Likewise 1 where it keeps its limits, 0 where it does not or has no value. */
  readonly kept: readonly Uint8Array[];
}

/** Yields after each build; whoever asks for the next step decides whether to go on. */
export function* randomBuilds(
  mechanism: Mechanism,
  outcomes: readonly Outcome[],
  toleranced: readonly Toleranced[],
  { seed, law, from, to }: BuildsRequest,
): Generator<Progress, Builds> {
  const draw = drawsOf(seed, law, toleranced);
  const count = Math.max(0, to - from);
  const values = outcomes.map(() => new Float64Array(count));
  const kept = outcomes.map(() => new Uint8Array(count));
  const { build, put } = createPlacing(mechanism, toleranced, true);
  const offsets = new Float64Array(toleranced.length);
  const gauge = createGauge(build, outcomes);
  const found = new Float64Array(outcomes.length);
  for (let k = 0; k < count; k++) {
    for (let j = 0; j < toleranced.length; j++) offsets[j] = draw(from + k, j);
    put(offsets);
    gauge.read(found);
    for (let i = 0; i < outcomes.length; i++) {
      const outcome = outcomes[i]!;
      const value = found[i]!;
      values[i]![k] = value;
      const keeps = value >= (outcome.least?.(build) ?? -Infinity) - SAME && value <= (outcome.most?.(build) ?? Infinity) + SAME;
      kept[i]![k] = keeps ? 1 : 0;
    }
    yield { done: k + 1, of: count };
  }
  return { from, to: from + count, values, kept };
}

/** How far a figure of a build, each by its number, is off its middle, SI. */
export function drawsOf(seed: number, law: Law, varied: readonly Toleranced[]): (build: number, figure: number) => number {
  const random = randomOf(seed, STREAM);
  return (k, j) => {
    const { half, play } = varied[j]!;
    return law === 'normal' && play === undefined ? (half * random.normal(k, j)) / 3 : half * (2 * random.uniform(k, j) - 1);
  };
}

/** SI; a figure drawn exactly on its limit keeps it, as in the check. */
const SAME = 1e-12;

/** Keeps these draws apart from those of other studies. */
const STREAM = 7;
