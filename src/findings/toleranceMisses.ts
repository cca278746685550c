/**
 * Which lines of `require` are met as drawn and not with the tolerances against them. Each dimension is taken to both of its ends, and the
 * line is decided anew with all of them at the worse one.
 */
import type { Requirement } from '../definition/formula/formula.ts';
import { inPieces, type InPieces } from '../failures/inPieces.ts';
import { createBuild, putDimensions } from '../kinematics/createBuild.ts';
import { middleValues, tolerancedDimensions, type Toleranced } from '../kinematics/toleranced.ts';
import { decideOnBuild, speaksOf } from '../requirements/onBuild.ts';
import type { RequirementAnswer } from '../requirements/requirement.ts';
import { once } from '../travel/once.ts';
import { settleStops } from '../travel/stops.ts';
import type { Study } from './study.ts';

export interface ToleranceMiss extends Worst {
  readonly line: Requirement;
}

/** One build of the linkage from one piece to the next. Made once for a study. */
export const toleranceMisses = once((study: Study): InPieces<readonly ToleranceMiss[]> => inPieces(() => missesOf(study)));

function* missesOf(study: Study): Generator<void, readonly ToleranceMiss[]> {
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
  const ends: (readonly (readonly number[])[])[][] = [];
  for (const { index, half } of toleranced) {
    const own: (readonly (readonly number[])[])[] = [];
    for (const off of [half, -half]) {
      yield;
      values[index] = middle[index]! + off;
      own.push(decideAt(met).map(marginsOf));
      values[index] = middle[index]!;
    }
    ends.push(own);
  }
  const misses: ToleranceMiss[] = [];
  for (const [i, line] of met.entries()) {
    yield;
    const found = margins[i]!.map((margin, c) => worstOf(margin, toleranced, (j) => ends[j]!.map((end) => end[i]?.[c] ?? NaN)));
    // Each of several comparisons has ends of its own that are against it.
    const worst = found.find(({ left, sides }) => {
      if (!(left < 0)) return false;
      toleranced.forEach(({ index, half }, j) => (values[index] = middle[index]! + sides[j]! * half));
      const fails = decideAt([line])[0]!.outcome === 'failed';
      values.set(middle);
      return fails;
    });
    if (worst !== undefined) misses.push({ line, ...worst });
  }
  return misses;
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
