/**
 * A drum whose radius changes, as what its cable lies on: bounded by the rim that the inner touches between the first point of the profile and
 * the last, and by two straight lines from its ends to the axis. What it is like elsewhere the profile does not say. A groove that is hollow
 * anywhere is bounded in it as a taut inner could not lie, and is no shape here.
 *
 * Between its places the rim bulges beyond the chord; the pieces are rounded by the most that it does, so that a gap is never told too great.
 */
import { rimOf, type RimEnd } from '../kinematics/drumRim.ts';
import type { Build } from '../kinematics/build.ts';
import type { DrumModel } from '../kinematics/model.ts';
import { convexPieces } from '../numeric/convexPieces.ts';
import { faultOf, turn, type Corner } from '../numeric/polygon.ts';
import { UNITS } from './piece.ts';

/** Seen along z as drawn, mm. */
export interface RimShape {
  /** Convex, each. */
  readonly pieces: readonly (readonly Corner[])[];
  /** What they are rounded by. */
  readonly radius: number;
}

/** Undefined where no cable lies on it, or what the profile bounds is no area. @param most corners that a piece may have */
export function rimShape(build: Build, drum: DrumModel, pivot: Corner, most: number): RimShape | undefined {
  const end = endOn(build, drum);
  const rim = (end === undefined ? [] : rimOf(build, drum, end, BETWEEN)).map(([x, y]): Corner => [UNITS * x, UNITS * y]);
  // Every other place is a corner, those between say how far the rim bulges; of each stretch there is an even number.
  const corners = rim.filter((_, i) => i % 2 === 0);
  const area = [pivot, ...corners];
  if (corners.length < 2 || isHollow(corners) || faultOf(area) !== undefined) return undefined;
  const pieces = convexPieces(area, most);
  if (pieces === undefined) return undefined;
  let bulge = 0;
  for (let i = 1; i < rim.length; i += 2) bulge = Math.max(bulge, awayFrom(rim[i - 1]!, rim[i + 1]!, rim[i]!));
  return { pieces, radius: SAFE * bulge };
}

/** Places between two of a profile; an even number. */
const BETWEEN = 32;
/** The greatest of a bulge may lie beside the place that is looked at. */
const SAFE = 1.1;

/** The cable end that lies on it: of one that it is turned by before one that it pulls. */
function endOn(build: Build, { name, lever }: DrumModel): RimEnd | undefined {
  const { cables } = build.mechanism;
  for (const which of ['enters', 'leaves'] as const) {
    for (const joint of cables) {
      const end = which === 'enters' ? joint.drivenEnd : joint.driverEnd;
      if (end?.kind === 'drum' && end.drum.lever === lever && end.drum.name === name) return { joint, build, which };
    }
  }
  return undefined;
}

/** Whether it turns both ways. */
function isHollow(corners: readonly Corner[]): boolean {
  const turns = corners.slice(2).map((corner, i) => Math.sign(turn(corners[i]!, corners[i + 1]!, corner)));
  return turns.includes(1) && turns.includes(-1);
}

/** How far a place lies from the line through two others. */
function awayFrom(a: Corner, b: Corner, at: Corner): number {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return length > 0 ? Math.abs(turn(a, b, at)) / length : 0;
}
