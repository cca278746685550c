/**
 * A rod, cable or fork cannot reach the lever it drives.
 *
 * Over the stretch of pedal travel that is named, no position of the driven lever keeps the part together: the rod is too short or
 * too long for where its two arms stand, the cable pulls its pin beyond the housing end's reach, the fork passes its pin by. A real
 * linkage locks or breaks where that stretch begins. What hangs on the lever has no value there and is not reported besides. Where the
 * stretch begins at a dead centre within the travel, it is told beside that one (`toggle-opening`): what is left is mostly a rod of a
 * length that reaches nowhere.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm, length: 10 mm}
 * # ^^^^ error[not-assembled]: cannot reach shaft from 0 % to 100 % of pedal travel
 * ```
 *
 * Cure: give the rod the length that it has as drawn, lengthen or shorten the arms until it reaches, or take less travel. For a cable and a
 * fork no figure is offered: where they reach hangs on two places at once.
 */
import { turnedAt } from '../../kinematics/poseGeometry.ts';
import { minus, vectorAt } from '../../numeric/vector.ts';
import type { CouplingJoint, Joint, RodJoint } from '../../kinematics/model.ts';
import { rangesBelow } from '../../travel/extremes.ts';
import { travelOf } from '../../travel/travel.ts';
import type { Finding } from '../finding.ts';
import { nameOf } from '../jointName.ts';
import { drawnLength, isOffDrawn, lengthToSet, lengthWords, offDrawnWords } from '../rodsBefore.ts';
import { restedWith } from '../restingLength.ts';
import { leverFigure, writeBy, type Study } from '../study.ts';
import { isUndecided } from '../undecidedSide.ts';
import { rangeWords } from '../words.ts';

export function notAssembled(study: Study): readonly Finding[] {
  const { build, mechanism, poseAt, samples } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind === 'coupling' || isUndecided(build, joint)) return [];
    // Where a lever stands follows from where that one does which drives it.
    const reached = leverFigure(study, joint.driven, 'reach', (travel) => {
      const pose = poseAt(travel);
      const driven = pose.rotation[joint.driven]!;
      const driver = joint.driver === undefined ? 0 : pose.rotation[joint.driver]!;
      return Number.isNaN(driven) && !Number.isNaN(driver) ? -1 : 1;
    });
    const ranges = rangesBelow(reached, samples);
    if (ranges.length === 0) return [];
    const driven = mechanism.levers[joint.driven]!.name;
    return [
      {
        code: 'not-assembled',
        severity: 'error',
        part: joint.name,
        span: joint.source.nameSpan,
        message: `${nameOf(joint)} cannot reach ${driven} ${rangeWords(ranges)}: no position of ${driven} keeps it together`,
        cure: reachCure(study, joint, ranges[0]!.from),
        ranges,
        ...(joint.kind === 'rod' && writeBy(joint.source.length, reachingLength(study, joint, ranges[0]!.from))),
      },
    ];
  });
}

const CURES = {
  cable: 'Lengthen the driven arm, move the housing end away from it, or take less pull',
  slot: 'Lessen the offset of the fork, or bring its pin and its pivot to where they meet all the way',
} as const;

/** Whether a rod is too short or too long where it first fails to reach. */
function reachCure(study: Study, joint: Exclude<Joint, CouplingJoint>, travel: number): string {
  const { build, poseAt } = study.travel;
  if (joint.kind !== 'rod') return CURES[joint.kind];
  const p = build.parameters;
  const pin = turnedAt(build, poseAt(travel), joint.driver, joint.driverPin);
  const from = minus(pin, vectorAt(p, joint.drivenPin));
  const tooLong = Math.hypot(...from) < p[joint.length]!;
  if (isOffDrawn(study, joint)) {
    return `The rod is ${offDrawnWords(study, joint)}: set it to ${lengthWords(study, joint, reachingLength(study, joint, travel))}, its length as drawn`;
  }
  return tooLong
    ? 'Shorten the rod, lengthen the driven arm, or take less travel'
    : 'Lengthen the rod or the driven arm, shorten the driving arm, or take less travel';
}

/** As drawn, as round as it still reaches where it does so as drawn, m: at both ends of the travel, and where it fails to now. */
function reachingLength({ travel }: Study, rod: RodJoint, fails: number): number {
  const drawn = drawnLength({ travel }, rod);
  const reaches = (length: number): boolean => {
    const { poseAt } = travelOf(restedWith(travel.build, rod, length));
    return [0, fails, 1].every((at) => !Number.isNaN(poseAt(at).rotation[rod.driven]!));
  };
  return lengthToSet(rod, drawn, reaches(drawn) ? reaches : () => true);
}
