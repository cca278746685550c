/** Rods on the way from the pedal to a lever. */
import { createPose } from '../kinematics/pose.ts';
import { turnedAt } from '../kinematics/poseGeometry.ts';
import type { RodJoint } from '../kinematics/model.ts';
import { minus } from '../numeric/vector.ts';
import type { Study } from './study.ts';
import { roundFigure } from '../definition/quantity/roundFigures.ts';
import { decimal, millimetres, quantityWords } from './words.ts';

/** Those within its group, nearest to the lever first. */
export function rodsBefore({ travel: { mechanism } }: Study, lever: number): readonly RodJoint[] {
  const { joints, levers } = mechanism;
  const rods: RodJoint[] = [];
  for (let at = levers[lever]!.driver; at !== undefined;) {
    const joint = joints[at]!;
    if (joint.kind === 'cable') break;
    if (joint.kind === 'rod') rods.push(joint);
    at = levers[joint.driver]!.driver;
  }
  return rods;
}

export function isOffDrawn(study: Study, rod: RodJoint): boolean {
  return Math.abs(drawnLength(study, rod) - study.travel.build.parameters[rod.length]!) > AS_DRAWN;
}

/** How a rod differs from its drawn length, e.g. `1 mm longer than drawn`. */
export function offDrawnWords(study: Study, rod: RodJoint): string {
  const more = study.travel.build.parameters[rod.length]! - drawnLength(study, rod);
  return `${millimetres(Math.abs(more))} ${more > 0 ? 'longer' : 'shorter'} than drawn`;
}

/** The roundest length near one that a rod should have, with which all is well, m: its fix writes the same. */
export const lengthToSet = ({ source }: RodJoint, wanted: number, isWell: (length: number) => boolean): number =>
  roundFigure(wanted, 'length', source.length?.unit ?? '', isWell);

/** A length to set a rod to, in the unit of the file, with the turns of its adjuster, e.g. `110.19 mm (1 turn shorter)`. */
export function lengthWords({ travel: { build } }: Study, rod: RodJoint, wanted: number): string {
  const change = wanted - build.parameters[rod.length]!;
  const pitch = rod.source.adjust?.pitch?.nominal;
  const turns = pitch === undefined ? '' : decimal(Math.abs(change / pitch));
  const way = change > 0 ? 'longer' : 'shorter';
  return `${quantityWords(wanted, 'length', rod.source.length?.unit)}${pitch === undefined ? '' : ` (${turns} ${turns === '1' ? 'turn' : 'turns'} ${way})`}`;
}

/** How far apart its pins are drawn, m. */
export function drawnLength({ travel: { build, mechanism } }: Pick<Study, 'travel'>, rod: RodJoint): number {
  const drawn = createPose(mechanism);
  const from = turnedAt(build, drawn, rod.driver, rod.driverPin);
  const to = turnedAt(build, drawn, rod.driven, rod.drivenPin);
  return Math.hypot(...minus(to, from));
}

/** m; a length written rounded to a micrometre is as drawn. */
const AS_DRAWN = 1e-6;
