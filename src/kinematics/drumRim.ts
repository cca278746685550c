/**
 * The rim of a drum whose effective radius r is given against its lever's opening o, and where its inner meets it.
 *
 * The inner runs straight from the housing end, at D from the axis, so that it passes the axis at r. In the lever's own frame its normal
 * stands at
 *     θ = β + asin(s r / D) − s π/2 − φ,   φ = ± o the lever's rotation, s the way a pull turns the drum, β the housing end's angle,
 * and the rim is what all these lines touch, the envelope of a support function (Santaló, Integral Geometry and Geometric Probability,
 * ch. 1, from memory):
 *     R = r n(θ) + (dr/dθ) t(θ),   dr/dθ = r′ / (s r′ / √(D² − r²) − (± 1)),   r′ = dr/do, t = n turned by +90°.
 * A drum on which no cable lies is drawn for one that comes from far away.
 */
import type { Build } from './build.ts';
import { axisOf, pivotOf } from './drawnAxis.ts';
import { drumAt, type DrumPoint } from './joints/drum.ts';
import type { CableJoint, DrumModel } from './model.ts';
import type { Pose } from './pose.ts';
import { innerAt } from './poseGeometry.ts';
import { anySquare, cross, dot, minus, plus, size, unit, vectorAt, type Vector } from '../numeric/vector.ts';

/** One end of a cable that lies on a drum. */
export interface RimEnd {
  readonly joint: CableJoint;
  /** Whose parameters the joint speaks of. */
  readonly build: Build;
  readonly which: 'leaves' | 'enters';
}

/**
 * Places of the rim as drawn, from the first point of the profile to the last, m; none where it has no place.
 * @param end the cable that lies on it @param between how many places from one point of the profile to the next
 */
export function rimOf(build: Build, drum: DrumModel, end: RimEnd | undefined, between: number): readonly Vector[] {
  const { form, lever } = drum;
  if (form.kind === 'round') return [];
  const pivot = pivotOf(build, lever);
  const axis = axisOf(build, lever);
  const { toward, distance } = housingSeen(end, pivot, axis);
  const across = cross(axis, toward);
  const sense = build.mechanism.senses[lever]!;
  const side = sideOf(drum, end?.which ?? 'enters');
  const at = (opening: number, onwards: number): Vector => {
    drumAt(drum, build.parameters, opening, point, onwards);
    const { radius, slope } = point;
    const angle = Math.asin((side * radius) / distance) - (side * Math.PI) / 2 - sense * opening;
    const drift = driftOf(slope, side, sense, Math.sqrt(distance * distance - radius * radius));
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    return plus(plus(pivot, toward, radius * c - drift * s), across, radius * s + drift * c);
  };
  const openings = spread(Array.from(build.parameters.subarray(form.openings, form.openings + form.count)), between);
  // At its last point a profile ends; what its slope is there is asked from before it.
  const places = openings.map((opening, i) => at(opening, i === openings.length - 1 ? -1 : 1));
  return places.every((place) => place.every(Number.isFinite)) ? places : [];
}

/** Where the free inner meets the rim of its drum; undefined where that cannot be told. Drawn frame, m. */
export function rimMeetsInner({ joint, build, which }: RimEnd, pose: Pose): Vector | undefined {
  const end = which === 'leaves' ? joint.driverEnd : joint.drivenEnd;
  const inner = innerAt(build, pose, joint, which);
  if (end?.kind !== 'drum' || inner === undefined) return undefined;
  const { drum } = end;
  const foot = plus(vectorAt(build.parameters, end.housing), inner);
  if (drum.form.kind === 'round') return foot;
  const axis = axisOf(build, drum.lever);
  const flat = plus(inner, axis, -dot(inner, axis));
  const free = size(flat);
  const sense = build.mechanism.senses[drum.lever]!;
  drumAt(drum, build.parameters, sense * pose.rotation[drum.lever]!, point, sense * pose.rate[drum.lever]!);
  const side = sideOf(drum, which);
  return plus(foot, flat, (-side * driftOf(point.slope, side, sense, free)) / free);
}

function spread(openings: readonly number[], between: number): readonly number[] {
  return openings.flatMap((opening, i) => {
    const next = openings[i + 1];
    return next === undefined ? [opening] : Array.from({ length: between }, (_, k) => opening + ((next - opening) * k) / between);
  });
}

/** +1 where a pull on the inner turns the drum counter-clockwise about its axis. */
function sideOf({ wraps }: DrumModel, which: 'leaves' | 'enters'): number {
  return which === 'enters' ? wraps : -wraps;
}

/** dr/dθ, m/rad. */
function driftOf(slope: number, side: number, sense: number, free: number): number {
  return slope / ((side * slope) / free - sense);
}

/** Direction from the axis to the housing end, square to the axis, and how far it is; infinitely far where there is none. */
function housingSeen(end: RimEnd | undefined, pivot: Vector, axis: Vector): { readonly toward: Vector; readonly distance: number } {
  const cableEnd = end?.which === 'leaves' ? end.joint.driverEnd : end?.joint.drivenEnd;
  if (end !== undefined && cableEnd !== undefined) {
    const from = minus(vectorAt(end.build.parameters, cableEnd.housing), pivot);
    const flat = plus(from, axis, -dot(from, axis));
    if (size(flat) > 0) return { toward: unit(flat), distance: size(flat) };
  }
  return { toward: anySquare(axis), distance: Infinity };
}

const point: DrumPoint = { radius: 0, slope: 0, integral: 0 };
