/**
 * What would narrow an outcome's spread: dimensions held tighter, and rods that are set after assembly. Linear, from the effects; spread means
 * the root of the sum of squares.
 *
 * A rod that is set until one outcome t stands at its middle takes up what all others did to it. With r the rates and L its length,
 *     δL = −Σ r_ti δᵢ / r_tL,   and any outcome o is then off by   Σ (r_oi − r_oL r_ti / r_tL) δᵢ,
 * the rod's own tolerance gone with the rest. Play is no part of δ: it goes on after the setting as before. So one setting may mend one outcome and spoil another: both are told.
 */
import { createBuild } from '../../kinematics/createBuild.ts';
import type { Mechanism, RodJoint } from '../../kinematics/model.ts';
import type { Outcome } from './outcomes.ts';
import { ratesOf, type OutcomeEffects } from './sensitivity.ts';
import { rootSumSquareOf } from './stack.ts';
import type { Toleranced } from '../../kinematics/toleranced.ts';

/** One dimension's part in the spread of an outcome. */
export interface Tightening {
  readonly of: Toleranced;
  /** Of the variance, a fraction. */
  readonly share: number;
  /** By how much of itself the spread falls with half of this tolerance, a fraction. */
  readonly wonByHalf: number;
}

/** The greatest share first; empty where nothing spreads the outcome, or an effect has no value. */
export function tightenings({ effects }: OutcomeEffects): readonly Tightening[] {
  const variance = rootSumSquareOf(effects.map(({ swing }) => swing)) ** 2;
  if (!(variance > 0) || !Number.isFinite(variance)) return [];
  return effects.map(({ of, swing }) => {
    const share = swing ** 2 / variance;
    return { of, share, wonByHalf: 1 - Math.sqrt(Math.max(0, 1 - 0.75 * share)) };
  });
}

/** A rod set after assembly until one outcome stands at its middle. */
export interface Setting {
  readonly rod: string;
  /** Whether the file lets it be adjusted now. */
  readonly adjustable: boolean;
  /** The outcome by which it is set. */
  readonly by: Outcome;
  /** ±, m: how much its length has to give for that, as the root of the sum of squares. */
  readonly takes: number;
  /** In which the file has its length. */
  readonly unit: string;
  /** Whether that is more than the rod can be turned; undefined where the file does not say how far it can. */
  readonly beyondRange: boolean | undefined;
  /** What becomes of every outcome, in their order. SI. */
  readonly spreads: readonly Spread[];
}

export interface Spread {
  readonly outcome: Outcome;
  readonly before: number;
  readonly after: number;
  /** By how much of itself it falls, a fraction; negative where it grows. NaN where an effect has no value. */
  readonly won: number;
  /** Whether the outcome has a kink in what turns it: the figures then tell little. */
  readonly kinked: boolean;
}

/**
 * One for each rod and each opening or signal by which it can be set; those that win most of that outcome's spread come first. Yields as it
 * goes.
 */
export function* settings(
  mechanism: Mechanism,
  effects: readonly OutcomeEffects[],
  toleranced: readonly Toleranced[],
): Generator<undefined, readonly Setting[]> {
  const outcomes = effects.map(({ outcome }) => outcome);
  const rods = mechanism.joints.flatMap((joint) =>
    joint.kind === 'rod' && joint.lengthDimension !== undefined
      ? [{ joint, length: lengthOf(mechanism, joint.lengthDimension, toleranced) }]
      : [],
  );
  const { parameters } = createBuild(mechanism);
  const byLength = yield* ratesOf(
    mechanism,
    outcomes,
    rods.map(({ length }) => length),
    toleranced,
  );
  yield undefined;
  /** Swing of each toleranced dimension on each outcome. */
  const swings = effects.map((each) => {
    const of = new Map(each.effects.map(({ of: figure, swing }) => [figure, swing]));
    return toleranced.map((figure) => of.get(figure)!);
  });
  return rods
    .flatMap(({ joint }, r) =>
      outcomes.flatMap((by, t): Setting[] => {
        const { rate: lengthRate, kinked: turnsOneWay } = byLength[r]![t]!;
        const own = swings[t]!.map((swing, i) => (toleranced[i]!.play === undefined ? swing : 0));
        const takes = rootSumSquareOf(own) / Math.abs(lengthRate);
        const isReadable = by.reading.kind === 'rotations' || by.reading.kind === 'signal';
        if (!isReadable || turnsOneWay || !(rootSumSquareOf(own) > 0) || !(Math.abs(lengthRate) > NOTHING) || !Number.isFinite(takes))
          return [];
        const spreads = outcomes.map((outcome, o) => {
          const before = rootSumSquareOf(swings[o]!);
          const gain = byLength[r]![o]!.rate / lengthRate;
          const after = rootSumSquareOf(
            swings[o]!.map((swing, i) => (o === t && toleranced[i]!.play === undefined ? 0 : swing - gain * own[i]!)),
          );
          const kinked = byLength[r]![o]!.kinked || effects[o]!.effects.some((each) => each.kinked);
          return { outcome, before, after, won: before === 0 ? 0 : 1 - after / before, kinked };
        });
        return [
          {
            rod: joint.name,
            adjustable: joint.source.adjust !== undefined,
            by,
            takes,
            unit: joint.source.length?.unit ?? '',
            beyondRange: isBeyond(joint, parameters[joint.length]!, takes),
            spreads,
          },
        ];
      }),
    )
    .sort((a, b) => total(b) - total(a));
}

/** A rod's length as a figure that can be moved: the toleranced one where it is that. */
function lengthOf({ dimensions }: Mechanism, index: number, toleranced: readonly Toleranced[]): Toleranced {
  const { path, span, nominal } = dimensions[index]!;
  return toleranced.find((each) => each.index === index) ?? { index, path, span, dimension: 'length', middle: nominal, half: 0 };
}

/** What a setting wins over all outcomes that have a value, those that it spoils taken off. */
function total({ spreads }: Setting): number {
  return spreads.reduce((sum, { won }) => sum + (Number.isFinite(won) ? won : 0), 0);
}

/** @param length as the file has it, m */
function isBeyond({ source: { adjust } }: RodJoint, length: number, takes: number): boolean | undefined {
  if (adjust?.min === undefined || adjust.max === undefined) return undefined;
  return length + takes > adjust.max.nominal || length - takes < adjust.min.nominal;
}

/** SI of the outcome a metre; a rod that does less does nothing. */
const NOTHING = 1e-2;
