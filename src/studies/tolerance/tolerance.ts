/** What a file's tolerances do to what matters: effects, stacks, corners, random builds and advice, in one go for every face. */
import type { Study } from '../../findings/study.ts';
import { saying } from '../saying.ts';
import { settings, tightenings, type Setting, type Tightening } from './advice.ts';
import { distributionsOf, type Distribution, type Yield } from './distribution.ts';
import { randomBuilds, type Law } from './monteCarlo.ts';
import { outcomesOf } from './outcomes.ts';
import { effectsOn, type OutcomeEffects } from './sensitivity.ts';
import { requiredYields, type RequiredYield } from './required.ts';
import { corners, stackOf, type CornerRange, type Progress, type Stack } from './stack.ts';
import { variedFigures, type Toleranced } from '../../kinematics/toleranced.ts';

export interface ToleranceOptions {
  /** Whole, from 0 to 2³² − 1. */
  readonly seed: number;
  readonly law: Law;
  readonly builds: number;
}

export const TOLERANCE_DEFAULTS: ToleranceOptions = { seed: 1, law: 'normal', builds: 10_000 };

export interface OutcomeTolerance extends OutcomeEffects {
  readonly stack: Stack;
  /** Undefined with too many dimensions. */
  readonly corners: CornerRange | undefined;
  readonly distribution: Distribution;
  /** The greatest share first. */
  readonly advice: readonly Tightening[];
}

export interface ToleranceStudy {
  readonly options: ToleranceOptions;
  /** All that varies, play among it. */
  readonly toleranced: readonly Toleranced[];
  readonly outcomes: readonly OutcomeTolerance[];
  /** Builds that keep all that is judged; undefined where nothing is: not checked. */
  readonly kept: Yield | undefined;
  /** Of each line of `require`. */
  readonly required: readonly RequiredYield[];
  readonly settings: readonly Setting[];
}

/** Why there is nothing to study, a sentence without a full stop; undefined where there is. */
export function whyNoTolerance(study: Study): string | undefined {
  if (variedFigures(study.travel.mechanism).length === 0) {
    return 'No dimension of the file has a tolerance, and no rod end or slot any play; write a tolerance behind a figure, such as `32 mm ± 0.1 mm`';
  }
  return outcomesOf(study).length === 0 ? 'The file has no plates, sensors, springs or rods whose figures could vary' : undefined;
}

/** Yields as it goes; whoever asks for the next step decides whether to go on. */
export function* tolerances(study: Study, options: ToleranceOptions = TOLERANCE_DEFAULTS): Generator<Progress, ToleranceStudy> {
  const { mechanism } = study.travel;
  const outcomes = outcomesOf(study);
  const toleranced = variedFigures(mechanism);
  const begun = (): Progress => ({ done: 0, of: options.builds });
  const effects = yield* saying(effectsOn(mechanism, outcomes, toleranced), begun);
  const ranges = yield* corners(mechanism, outcomes, toleranced);
  const builds = yield* randomBuilds(mechanism, outcomes, toleranced, { ...options, from: 0, to: options.builds });
  const required = yield* requiredYields(study.definition, mechanism, toleranced, { ...options, most: options.builds });
  const built = (): Progress => ({ done: options.builds, of: options.builds });
  const { outcomes: distributions, kept } = yield* saying(distributionsOf(outcomes, [builds]), built);
  const set = yield* saying(settings(mechanism, effects, toleranced), built);
  return {
    options,
    toleranced,
    outcomes: effects.map((each, i) => ({
      ...each,
      stack: stackOf(each.effects),
      corners: ranges?.[i],
      distribution: distributions[i]!,
      advice: tightenings(each),
    })),
    kept,
    required,
    settings: set,
  };
}
