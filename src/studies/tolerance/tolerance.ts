/** What a file's tolerances do to what matters: effects, stacks, corners, random builds and advice, in one go for every face. */
import { FIGURE_UNIT_SI, type Dimension } from '../../definition/dimensions.ts';
import { parseUnit, toSi } from '../../definition/quantity/units.ts';
import { linkageValues, valuesIn } from '../../definition/values.ts';
import type { NotChecked } from '../../findings/finding.ts';
import { findNotChecked, isOfFailures, LEFT_TO_BUILDS } from '../../findings/notChecked.ts';
import type { Study } from '../../findings/study.ts';
import { saying } from '../saying.ts';
import { settings, tightenings, type Setting, type Tightening } from './advice.ts';
import { distributionsOf, SHARES, yieldOf, type Distribution, type Yield } from './distribution.ts';
import { randomBuilds, type Builds, type Law } from './monteCarlo.ts';
import { outcomesOf } from './outcomes.ts';
import { effectsOn, ranked, ratesOf, type Effect, type OutcomeEffects } from './sensitivity.ts';
import { requiredYields, type RequiredYield } from './required.ts';
import { ruleYields, type RuleYield } from './rules.ts';
import { createPlacing } from './placing.ts';
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
  /** Where its stop is, with every figure in its middle, SI; NaN where it has none. */
  readonly stoppedAt: number;
  /** The greatest share first. */
  readonly advice: readonly Tightening[];
  /** Of dimensions that `tune` leaves free and that have no tolerance, for about a unit of each; the greatest first. */
  readonly free: readonly Effect[];
}

export interface ToleranceStudy {
  readonly options: ToleranceOptions;
  /** All that varies, play among it; where there is nothing, there are no builds, and nothing is known of what they keep. */
  readonly toleranced: readonly Toleranced[];
  readonly outcomes: readonly OutcomeTolerance[];
  /** Builds that keep the limits of all outcomes; undefined where nothing judges them. */
  readonly kept: Yield | undefined;
  /** Of each rule of the check that judges builds, those that most builds do not keep first. */
  readonly rules: readonly RuleYield[];
  /** Of each line of `require`. */
  readonly required: readonly RequiredYield[];
  /** Builds that keep all of it, of those that were gone through by all of it. */
  readonly together: { readonly builds: number; readonly kept: Yield };
  readonly settings: readonly Setting[];
  /** What the check could not look at in the file, and in no build either. */
  readonly unchecked: readonly NotChecked[];
  /** Paths of figures with a tolerance that no build varies: they stand as the file has them. */
  readonly still: readonly string[];
}

/** Why there is nothing to study, a sentence without a full stop; undefined where there is. */
export function whyNoTolerance(study: Study): string | undefined {
  if (variedFigures(study.travel.mechanism).length === 0 && freeFigures(study, []).length === 0) {
    return 'No dimension of the file has a tolerance, and no rod end or slot any play; write a tolerance behind a figure, such as `32 mm ± 0.1 mm`';
  }
  return outcomesOf(study).length === 0 ? 'The file has no plates, sensors, springs or rods whose figures could vary' : undefined;
}

/**
 * Yields as it goes; whoever asks for the next step decides whether to go on. Where nothing has a tolerance, nothing is built at random: there
 * are then the effects of what `tune` leaves free, and no yields.
 */
export function* tolerances(study: Study, options: ToleranceOptions = TOLERANCE_DEFAULTS): Generator<Progress, ToleranceStudy> {
  const { mechanism } = study.travel;
  const outcomes = outcomesOf(study);
  const units = linkageValues(study.definition);
  const toleranced = variedFigures(mechanism).map((each): Toleranced => ({ ...each, unit: units.get(each.path)?.unit ?? '' }));
  const begun = (): Progress => ({ done: 0, of: options.builds });
  const effects = yield* saying(effectsOn(mechanism, outcomes, toleranced), begun);
  const free = freeFigures(study, toleranced);
  const freeRates = yield* saying(ratesOf(mechanism, outcomes, free, toleranced), begun);
  const freeEffects = outcomes.map((_, i) => ranked(free.map((of, j): Effect => ({ of, ...freeRates[j]![i]!, swing: freeRates[j]![i]!.rate * of.half })))); // prettier-ignore
  if (toleranced.length === 0) return ofFreeAlone(study, options, effects, freeEffects);
  const ranges = yield* corners(mechanism, outcomes, toleranced);
  const builds = yield* randomBuilds(mechanism, outcomes, toleranced, { ...options, from: 0, to: options.builds });
  const required = yield* requiredYields(study.definition, mechanism, toleranced, { ...options, most: options.builds });
  const { rules, kept: byRules } = yield* ruleYields(study, toleranced, { ...options, most: options.builds });
  const built = (): Progress => ({ done: options.builds, of: options.builds });
  const { outcomes: distributions, kept } = yield* saying(distributionsOf(outcomes, [builds]), built);
  const { parameters } = createPlacing(mechanism, toleranced, false).build;
  const set = yield* saying(settings(mechanism, effects, toleranced), built);
  return {
    options,
    toleranced,
    outcomes: effects.map((each, i) => ({
      ...each,
      stack: stackOf(each.effects),
      corners: ranges?.[i],
      distribution: distributions[i]!,
      stoppedAt: each.outcome.stop === undefined ? NaN : parameters[each.outcome.stop.parameter]!,
      advice: tightenings(each),
      free: freeEffects[i]!,
    })),
    kept,
    rules,
    required: required.lines,
    together: together(builds, [byRules, ...(required.kept === undefined ? [] : [required.kept])]),
    settings: set,
    unchecked: uncheckedIn(study),
    still: stillIn(study, toleranced),
  };
}

/** Without builds, and so without anything that is known of them. */
function ofFreeAlone(
  study: Study,
  options: ToleranceOptions,
  effects: readonly OutcomeEffects[],
  free: readonly (readonly Effect[])[],
): ToleranceStudy {
  const none = yieldOf(0, 0);
  const { parameters } = createPlacing(study.travel.mechanism, [], false).build;
  return {
    options: { ...options, builds: 0 },
    toleranced: [],
    outcomes: effects.map((each, i) => ({
      ...each,
      stack: stackOf([]),
      corners: undefined,
      distribution: { outcome: each.outcome, missing: 0, mean: NaN, deviation: NaN, percentiles: SHARES.map(() => NaN), kept: undefined },
      stoppedAt: each.outcome.stop === undefined ? NaN : parameters[each.outcome.stop.parameter]!,
      advice: [],
      free: free[i]!,
    })),
    kept: undefined,
    rules: [],
    required: [],
    together: { builds: 0, kept: none },
    settings: [],
    unchecked: uncheckedIn(study),
    still: stillIn(study, []),
  };
}

/** What `tune` leaves free and no build varies, each as if it were off by about a unit of its kind. */
function freeFigures({ definition, travel: { mechanism } }: Study, varied: readonly Toleranced[]): readonly Toleranced[] {
  const paths = new Set((definition.tune?.free ?? []).map(({ name }) => `let.${name}`));
  const units = linkageValues(definition);
  return mechanism.dimensions.flatMap(({ index, path, span, dimension, nominal }): Toleranced[] => {
    const isFree = paths.has(path) && !varied.some((each) => each.index === index);
    const unit = units.get(path)?.unit ?? '';
    return isFree ? [{ index, path, span, dimension, middle: nominal, half: aboutOne(dimension, unit), unit }] : [];
  });
}

/** The power of ten of the unit in which a figure is written that is next below the unit of its kind: 1 mm, 0.01 inch. SI. */
function aboutOne(dimension: Dimension, unit: string): number {
  const [own, parsed] = [FIGURE_UNIT_SI[dimension], unit === '' ? undefined : parseUnit(unit)];
  if (parsed === undefined) return own;
  const written = toSi(1, parsed);
  const power = Math.floor(Math.log10(own / written) + WHOLE);
  return power < 0 ? written / 10 ** -power : written * 10 ** power;
}

/** Of a power; less is rounding. */
const WHOLE = 1e-9;

/** @param others of each build whether it keeps something else, 1 or 0 */
function together({ kept }: Builds, others: readonly Uint8Array[]): ToleranceStudy['together'] {
  const all = [...kept, ...others];
  const builds = Math.min(...all.map(({ length }) => length));
  let sound = 0;
  for (let k = 0; k < builds; k++) if (all.every((each) => each[k] === 1)) sound++;
  return { builds, kept: yieldOf(sound, builds) };
}

/** Of readings no build knows. */
function uncheckedIn(study: Study): readonly NotChecked[] {
  const { measured: _, ...definition } = study.definition;
  return findNotChecked(definition, study).filter((each) => !LEFT_TO_BUILDS.has(each.message) && !isOfFailures(each));
}

/** Figures of the linkage and its limits alone: what is demanded, tuned or measured is not built. */
function stillIn({ definition, travel: { mechanism } }: Study, varied: readonly Toleranced[]): readonly string[] {
  const { requirements: _, tune: _tune, measured: _measured, ...parts } = definition;
  const known = new Set([...mechanism.dimensions, ...varied].map(({ path }) => path));
  const paths = [...valuesIn(parts)].flatMap(({ path, tolerance }) => (tolerance === undefined || known.has(path) ? [] : [path]));
  return [...new Set(paths)];
}
