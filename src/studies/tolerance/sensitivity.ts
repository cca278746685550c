/**
 * What each toleranced dimension does to each outcome, to the first order.
 *
 * Openings, and differences of openings, have theirs in closed form (`kinematics/sensitivity.ts`), but where the place at which the pedal
 * stops moves with the dimensions; all other outcomes by differences. Either way both sides are taken: at a stop that is just met, or a
 * cable that just comes taut, what a dimension does when it grows is not the reverse of what it does when it shrinks, and a sum of
 * such effects means little.
 */
import type { Build } from '../../kinematics/build.ts';
import { advance } from '../../kinematics/advance.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { createPose } from '../../kinematics/pose.ts';
import { alongDimensions, rotationRatesAlong } from '../../kinematics/sensitivity.ts';
import { createGauge } from './gauge.ts';
import type { Outcome } from './outcomes.ts';
import { createPlacing } from './placing.ts';
import type { Toleranced } from '../../kinematics/toleranced.ts';

/** Change of an outcome by one dimension, SI of the one per SI of the other. */
export interface Rate {
  /** The mean of both sides; NaN where the outcome has no value on a side. */
  readonly rate: number;
  /** As the dimension grows, and as it shrinks: both have the sign of `rate` where the outcome has no kink. */
  readonly growing: number;
  readonly shrinking: number;
  /** Whether both sides differ: what is summed up linearly is then not to be trusted. */
  readonly kinked: boolean;
}

/** A rate of a toleranced dimension. */
export interface Effect extends Rate {
  readonly of: Toleranced;
  /** What half of the tolerance's width does, SI of the outcome, with its sign. */
  readonly swing: number;
}

export interface OutcomeEffects {
  readonly outcome: Outcome;
  /** With every dimension in its middle, SI; NaN where it has no value. */
  readonly middle: number;
  /** Of every toleranced dimension, the greatest size of `swing` first; those without a value before all others. */
  readonly effects: readonly Effect[];
}

/** In the order of the outcomes. Yields after each figure. */
export function* effectsOn(
  mechanism: Mechanism,
  outcomes: readonly Outcome[],
  toleranced: readonly Toleranced[],
): Generator<undefined, readonly OutcomeEffects[]> {
  const middles = new Float64Array(outcomes.length);
  createGauge(createPlacing(mechanism, toleranced, false).build, outcomes).read(middles);
  const rates = yield* ratesOf(mechanism, outcomes, toleranced);
  return outcomes.map((outcome, i) => ({
    outcome,
    middle: middles[i]!,
    effects: ranked(
      toleranced.map((of, j): Effect => {
        const each = rates[j]![i]!;
        return { of, ...each, swing: each.rate * of.half };
      }),
    ),
  }));
}

/** The greatest first; those without a value before all others. */
export function ranked(effects: readonly Effect[]): readonly Effect[] {
  return [...effects].sort((a, b) => rank(b) - rank(a));
}

function rank({ swing }: Effect): number {
  return Number.isFinite(swing) ? Math.abs(swing) : Infinity;
}

/**
 * Rates with every figure in its middle. Yields after each figure.
 * @param wanted what is moved: figures that vary, or other dimensions with the same in their middles
 * @param varied where it is not those, all that varies
 * @returns for each of them those of every outcome
 */
export function* ratesOf(
  mechanism: Mechanism,
  outcomes: readonly Outcome[],
  wanted: readonly Toleranced[],
  varied: readonly Toleranced[] = wanted,
): Generator<undefined, readonly (readonly Rate[])[]> {
  const all = [...varied, ...wanted.filter((each) => !varied.includes(each))];
  const { build } = createPlacing(mechanism, all, false);
  const inClosedForm = closedForm(build, outcomes);
  // Other figures are put into a build of their own: the closed forms are those of this one.
  const byDifferences = differences(mechanism, outcomes, all);
  const ratesBy = (each: Toleranced): readonly Rate[] => {
    const differenced = byDifferences(all.indexOf(each));
    const { index } = each;
    if (index < 0) return differenced;
    const [up, down] = [inClosedForm(index, 1), inClosedForm(index, -1)];
    const scale = scaleOf(each);
    return outcomes.map((_, i) => (up[i] !== undefined && down[i] !== undefined ? bothSides(up[i], down[i], scale) : differenced[i]!));
  };
  const rates: (readonly Rate[])[] = [];
  for (const each of wanted) {
    yield undefined;
    rates.push(ratesBy(each));
  }
  return rates;
}

/** @param scale of the dimension, SI: what a change by all of it does is nothing where it is rounding */
function bothSides(up: number, down: number, scale: number): Rate {
  const size = Math.max(Math.abs(up), Math.abs(down));
  if (size * scale <= ROUNDING) return { rate: 0, growing: 0, shrinking: 0, kinked: false };
  return { rate: (up + down) / 2, growing: up, shrinking: down, kinked: Math.abs(up - down) > KINK * size + ROUNDING / scale };
}

/** Of a figure, SI: a metre or a radian, or of what is neither its own size. */
function scaleOf({ dimension, middle }: Toleranced): number {
  return dimension === 'length' || dimension === 'angle' ? 1 : Math.max(Math.abs(middle), LEAST_SCALE);
}

/** Relative; a kink makes more of a difference, and the error of one-sided differences less, but next to a toggle. */
const KINK = 1e-2;
/** SI; what differences make of rounding, and less than any part can be cut to. */
const ROUNDING = 1e-5;

/** Rates of the outcomes that are rotations; undefined for all others. */
function closedForm(build: Build, outcomes: readonly Outcome[]): (index: number, way: 1 | -1) => readonly (number | undefined)[] {
  const { mechanism } = build;
  const [rest, full] = [createPose(mechanism), createPose(mechanism)];
  advance(build, 0, rest);
  advance(build, 1, full);
  // A pedal that a stop holds goes as far as that stop lets it, which may change itself.
  const { drive } = mechanism;
  const hasWholeTravel = drive.kind === 'cable' || build.bounds.pedalStop > build.parameters[drive.travel]! * (1 + NEAR);
  const direction = new Float64Array(mechanism.dimensions.length);
  const rates = { rest: new Float64Array(mechanism.levers.length), full: new Float64Array(mechanism.levers.length) };
  return (index, way) => {
    direction.fill(0);
    direction[index] = way;
    const along = alongDimensions(build, direction);
    rotationRatesAlong(build, rest, along, rates.rest);
    rotationRatesAlong(build, full, along, rates.full);
    return outcomes.map(({ reading }) => {
      if (reading.kind !== 'rotations' || (reading.at === 'full' && !hasWholeTravel)) return undefined;
      return way * reading.of.reduce((sum, { lever, times }) => sum + times * rates[reading.at][lever]!, 0);
    });
  };
}

/** Of the pedal's travel; a stop nearer than this to its end may hold the pedal in one build and not in the next. */
const NEAR = 1e-6;

/** Rates of all outcomes by differences to both sides, for a figure by its number. */
function differences(
  mechanism: Mechanism,
  outcomes: readonly Outcome[],
  varied: readonly Toleranced[],
): (number: number) => readonly Rate[] {
  const { build, put } = createPlacing(mechanism, varied, false);
  const gauge = createGauge(build, outcomes);
  const offsets = new Float64Array(varied.length);
  const [short, middle, beyond] = [0, 0, 0].map(() => new Float64Array(outcomes.length)) as [Float64Array, Float64Array, Float64Array];
  gauge.read(middle);
  return (number) => {
    const scale = scaleOf(varied[number]!);
    const step = STEP * scale;
    const readAt = (offset: number, into: Float64Array): void => {
      offsets[number] = offset;
      put(offsets);
      gauge.read(into);
    };
    readAt(step, beyond);
    readAt(-step, short);
    offsets[number] = 0;
    return outcomes.map((_, i) => bothSides((beyond[i]! - middle[i]!) / step, (middle[i]! - short[i]!) / step, scale));
  };
}

/** Of a dimension's scale. */
const STEP = 1e-6;
/** SI; the scale of a figure that is nothing. */
const LEAST_SCALE = 1e-3;
