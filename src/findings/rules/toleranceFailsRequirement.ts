/**
 * Within its tolerances the linkage may not do what the file requires.
 *
 * With every toleranced dimension in its middle the line of `require` is met, and with all of them against it at once it is not. It is a
 * warning where as much as the root of the sum of squares is enough for that, so that about one build in a thousand may miss it where each
 * tolerance is three standard deviations (common practice, no source); a note where it takes all of them at once. Each dimension is taken to
 * both of its ends, and the line is decided anew with all of them at the worse one. Lines that speak of what acts, such as the effort, and
 * play of pins are left to `pedal-to-plate tolerance`, which builds at random. It is told once typing rests.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm ± 0.3 mm, wraps: counterclockwise}}
 * pedal: {cable: main, pull: 33.6 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel}
 * require:
 *   opens far: at(100%, shaft.opening) >= 80 deg
 * # ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning[tolerance-fails-requirement]: `opens far` is met as drawn and not with levers.shaft.drums.wheel.radius at an end of its tolerance
 * ```
 *
 * Cure: hold the dimension that is named first tighter, or make it one that is set after assembly; else ask for less.
 */
import type { Requirement } from '../../definition/formula/formula.ts';
import { createBuild, putDimensions } from '../../kinematics/createBuild.ts';
import { middleValues, tolerancedDimensions, type Toleranced } from '../../kinematics/toleranced.ts';
import { decideOnBuild, speaksOf } from '../../requirements/onBuild.ts';
import type { RequirementAnswer } from '../../requirements/requirement.ts';
import { settleStops } from '../../travel/stops.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { listed, percent } from '../words.ts';

export function toleranceFailsRequirement(study: Study): readonly Finding[] {
  const { definition, travel, columns } = study;
  const { mechanism } = travel;
  const toleranced = tolerancedDimensions(mechanism);
  if (toleranced.length === 0 || toleranced.length > MOST) return [];
  const acting = new Set([...columns.values()].filter(({ forces }) => forces === true).map(({ name }) => name));
  const lines = definition.requirements.filter(({ expression }) => expression !== undefined && !speaksOf(expression, acting));
  if (lines.length === 0) return [];
  const middle = middleValues(mechanism);
  const build = createBuild(mechanism, middle);
  const values = Float64Array.from(middle);
  const decideAt = (of: readonly Requirement[]): readonly RequirementAnswer[] => {
    putDimensions(build, values);
    settleStops(build);
    return decideOnBuild(definition, of, build);
  };
  const drawn = decideAt(lines);
  const met = lines.filter((_, i) => drawn[i]!.outcome === 'passed');
  if (met.length === 0) return [];
  const margins = drawn.filter(({ outcome }) => outcome === 'passed').map(marginsOf);
  /** Of each dimension the margins of each line, with it as great and as small as it may be. */
  const ends = toleranced.map(({ index, half }) =>
    [half, -half].map((off) => {
      values[index] = middle[index]! + off;
      const found = decideAt(met).map(marginsOf);
      values[index] = middle[index]!;
      return found;
    }),
  );
  return met.flatMap((line, i): Finding[] => {
    const found = margins[i]!.map((margin, c) => worstOf(margin, toleranced, (j) => ends[j]!.map((end) => end[i]?.[c] ?? NaN)));
    const [worst] = found.filter(({ left }) => !(left >= 0)).sort((a, b) => a.left - b.left);
    if (worst === undefined) return [];
    toleranced.forEach(({ index, half }, j) => (values[index] = middle[index]! + worst.sides[j]! * half));
    const fails = decideAt([line])[0]!.outcome === 'failed';
    values.set(middle);
    return fails ? [findingOf(line, worst)] : [];
  });
}

/** More would take too long between two words; `pedal-to-plate tolerance` takes any number. */
const MOST = 40;

function marginsOf({ comparisons }: RequirementAnswer): readonly number[] {
  return comparisons.map(({ margin }) => margin?.value ?? NaN);
}

interface Worst {
  /** Of the margin, with everything against it and by the root of the sum of squares; SI of the comparison. NaN where an end has no value. */
  readonly left: number;
  readonly likely: number;
  /** The end at which each dimension does most against it: 1, −1, or 0 where neither does anything. */
  readonly sides: readonly number[];
  /** Those that do something, the greatest part first, each with its part of what all do. */
  readonly causes: readonly { readonly path: string; readonly part: number }[];
}

function worstOf(margin: number, toleranced: readonly Toleranced[], endsOf: (dimension: number) => readonly number[]): Worst {
  const lost = toleranced.map((_, j) => {
    const [grown = NaN, shrunk = NaN] = endsOf(j);
    // An end without a value is as bad as can be.
    const [up, down] = [grown, shrunk].map((each) => (Number.isNaN(each) && !Number.isNaN(margin) ? Infinity : Math.max(0, margin - each)));
    return up! >= down! ? { by: up!, side: up === 0 ? 0 : 1 } : { by: down!, side: -1 };
  });
  const all = lost.reduce((sum, { by }) => sum + by, 0);
  const causes = toleranced
    .map(({ path }, j) => ({ path, part: lost[j]!.by === Infinity ? 1 : lost[j]!.by / all }))
    .filter(({ part }) => part >= TOLD)
    .sort((a, b) => b.part - a.part);
  return { left: margin - all, likely: margin - Math.hypot(...lost.map(({ by }) => by)), sides: lost.map(({ side }) => side), causes };
}

/** Part of what all do; less is not told. */
const TOLD = 0.05;
const MOST_CAUSES = 3;

function findingOf({ name, span }: Requirement, { likely, causes }: Worst): Finding {
  const told = causes
    .slice(0, MOST_CAUSES)
    .map(({ path, part }) => `${path.replace(/^let\./, '')}${causes.length === 1 ? '' : ` (${percent(part)})`}`);
  const [first] = causes;
  const most = causes.length === 1 ? `${told.join('')} at an end of its tolerance` : `all tolerances against it: most by ${listed(told)}`;
  return {
    code: 'tolerance-fails-requirement',
    severity: likely < 0 ? 'warning' : 'note',
    part: name,
    span,
    message: `\`${name}\` is met as drawn and not with ${most}`,
    ...(first !== undefined && { cure: `Hold ${first.path.replace(/^let\./, '')} tighter, or ask for less` }),
  };
}
