/**
 * Plates as a build and a pose have them. The angle of a plate from square to the bore is seat + idle + opening of its lever.
 */
import type { PlatesModel } from '../kinematics/attached.ts';
import type { Build } from '../kinematics/build.ts';
import type { Pose } from '../kinematics/pose.ts';
import type { Cause } from '../travel/causes.ts';
import { following, zerosOf, type Along } from '../travel/extremes.ts';
import { oncePer } from '../travel/once.ts';
import { merge } from '../travel/places.ts';
import type { Travel } from '../travel/travel.ts';
import { greatestOpenArea, openArea, openAreaSlope, shadowAngle, type PlateShape } from './openArea.ts';

export function plateShape({ parameters }: Build, { bore, shaft, seat }: PlatesModel): PlateShape {
  return { bore: parameters[bore]!, shaft: parameters[shaft]!, seat: parameters[seat]! };
}

/** Opening of a lever, rad; NaN where it cannot be assembled. */
export function openingAt({ mechanism }: Build, pose: Pose, lever: number): number {
  return mechanism.senses[lever]! * pose.rotation[lever]!;
}

/** Angle of the plates from square to the bore, rad. */
export function plateAngleAt(build: Build, pose: Pose, plates: PlatesModel): number {
  return plateAngleWhen(build, plates, openingAt(build, pose, plates.lever));
}

/** The same at an opening of its lever, rad. */
function plateAngleWhen({ parameters }: Build, { seat, idle }: PlatesModel, opening: number): number {
  return parameters[seat]! + parameters[idle]! + opening;
}

/** Open area of one plate, m²; NaN where its lever cannot be assembled. */
export function areaAt(build: Build, pose: Pose, plates: PlatesModel): number {
  return areaWhen(build, plates, openingAt(build, pose, plates.lever));
}

/** The same at an opening of its lever, rad. */
export function areaWhen(build: Build, plates: PlatesModel, opening: number): number {
  return openArea(plateShape(build, plates), plateAngleWhen(build, plates, opening));
}

/** Open area of one plate of its greatest possible, a fraction. */
export function fractionAt(build: Build, pose: Pose, plates: PlatesModel): number {
  return fractionWhen(build, plates, openingAt(build, pose, plates.lever));
}

/** The same at an opening of its lever, rad. */
export function fractionWhen(build: Build, plates: PlatesModel, opening: number): number {
  return areaWhen(build, plates, opening) / greatestOpenArea(plateShape(build, plates));
}

/** Change of one plate's open area with the opening of its lever, m²/rad. */
export function areaSlopeAt(build: Build, pose: Pose, plates: PlatesModel): number {
  return openAreaSlope(plateShape(build, plates), plateAngleAt(build, pose, plates));
}

/**
 * The samples to their lever and every place at which the area turns or has a corner though the lever goes on: where a plate leaves its
 * seat, stands along the bore or is hidden by the shaft. Between two of these the area only rises or only falls.
 */
export const areaSamples = oncePer((travel: Travel, plates: PlatesModel): readonly number[] => {
  const { memory } = travel;
  const cause = platesCause(travel, plates);
  const make = (): readonly number[] => searchCorners(travel, plates);
  return memory === undefined || cause === undefined ? make() : memory.kept(`area samples ${plates.name}`, cause, make);
});

/** What opening and area of plates follow from; undefined where nothing is remembered. */
export function platesCause({ build, memory }: Travel, { name, lever, bore, shaft, seat, idle }: PlatesModel): Cause | undefined {
  const way = memory?.levers[lever];
  const figures = [bore, shaft, seat, idle].map((at) => build.parameters[at]!);
  return way && memory.cause(`plates ${name}`, { after: [way], words: '', figures });
}

/** Angle of plates along the pedal, rad; NaN where their lever cannot be assembled. */
export function plateAngle(travel: Travel, plates: PlatesModel): Along {
  const { build, poseAt, memory } = travel;
  const angle: Along = (at) => plateAngleAt(build, poseAt(at, plates.lever), plates);
  return memory?.remember(angle, `angle of ${plates.name}`, platesCause(travel, plates)) ?? angle;
}

function searchCorners(travel: Travel, plates: PlatesModel): readonly number[] {
  const { build } = travel;
  const samples = travel.samplesTo(plates.lever);
  const shape = plateShape(build, plates);
  const hidden = shadowAngle(shape);
  const angle = plateAngle(travel, plates);
  const corners = [shape.seat, hidden, Math.PI / 2, Math.PI - hidden, Math.PI - shape.seat];
  const past = (corner: number): Along => following(angle, (at) => at - corner);
  return merge(samples, ...corners.map((corner) => zerosOf(past(corner), samples)));
}
