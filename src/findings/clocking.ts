/**
 * Clocking as a mend: turning an arm on its lever, so that it meets its rod, cable or fork nearer to square.
 *
 * A part of a given length that joins the same two pins meets the driven arm at the same angle however that arm is clocked on its
 * lever; only the lever stands elsewhere. So the driven arm is a mend only where the part takes its length from the drawing: a cable
 * always, a rod whose `length` is left out, a fork never. The driving arm is one everywhere; but where the part does not follow the
 * drawing, all that it drives then rests off its drawn position, and a closed stop there would be missed: the mend would trade one
 * fault for another, and is none.
 */
import type { CouplingJoint, Joint } from '../kinematics/model.ts';
import type { Mend } from './finding.ts';
import { mendBy, type Study } from './study.ts';

export type AngledJoint = Exclude<Joint, CouplingJoint>;

/**
 * Clocking the arm at the side where the angle is measured, until the least of the angle is `target`; nothing where the file has no
 * such angle of its own or turning it would not help.
 * @param angle `transmission` at the driven arm, `drive` at the driving one
 * @param target rad
 */
export function clockingMend(study: Study, joint: AngledJoint, angle: 'transmission' | 'drive', target: number): { readonly mend?: Mend } {
  const unknown = angle === 'transmission' ? drivenAngle(joint) : drivingAngle(study, joint);
  return unknown === undefined ? {} : mendBy(study, unknown, { kind: 'least', column: `${joint.name}.${angle}` }, target);
}

function drivenAngle(joint: AngledJoint): string | undefined {
  if (joint.kind === 'slot' || !followsDrawing(joint) || (joint.kind === 'cable' && joint.source.to.kind === 'drum')) return undefined;
  return armAngle(joint.source.to);
}

function drivingAngle(study: Study, joint: AngledJoint): string | undefined {
  if (!followsDrawing(joint) && drivesStop(study, joint)) return undefined;
  switch (joint.kind) {
    case 'rod':
      return armAngle(joint.source.from);
    case 'cable':
      return joint.source.from?.kind === 'arm' ? armAngle(joint.source.from) : undefined;
    case 'slot':
      return joint.source.drives === 'fork' ? armAngle(joint.source.pin) : `slots.${joint.name}.angle`;
  }
}

/** Whether the part is as long as it is drawn, however its pins are moved in the drawing. */
function followsDrawing(joint: AngledJoint): boolean {
  return joint.kind === 'cable' || (joint.kind === 'rod' && joint.source.length === undefined);
}

/** Whether a lever with a closed stop is moved by the joint, without a cable between. */
function drivesStop({ travel: { mechanism } }: Study, joint: AngledJoint): boolean {
  return mechanism.levers.some((lever) => {
    if (lever.closedStop === undefined) return false;
    for (let at = lever.driver; at !== undefined;) {
      const driver = mechanism.joints[at]!;
      if (driver === joint) return true;
      if (driver.kind === 'cable') return false;
      at = mechanism.levers[driver.driver]!.driver;
    }
    return false;
  });
}

/** Path of the angle at which an arm is drawn, where it is given so. */
function armAngle({ lever, part }: { readonly lever: string; readonly part: string }): string {
  return `levers.${lever}.arms.${part}.angle`;
}
