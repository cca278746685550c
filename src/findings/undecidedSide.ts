/** Whether the drawing leaves open on which side of its dead centre a part works. */
import type { Build } from '../kinematics/build.ts';
import type { Joint } from '../kinematics/model.ts';
import { trigValue } from '../numeric/trigPolynomial.ts';
import { slotForm } from '../travel/jointForms.ts';

/**
 * Whether a part stands drawn at its dead centre, so that nothing says on which side it works. A fork too far off its pin to meet it
 * at all has no side either, and is no such case.
 */
export function isUndecided(build: Build, joint: Joint): boolean {
  if (joint.kind === 'coupling' || (joint.kind === 'cable' && joint.drivenEnd.kind === 'drum')) return false;
  const p = build.parameters;
  if (!Number.isNaN(p[joint.side]!)) return false;
  return joint.kind !== 'slot' || !(trigValue(slotForm(joint, p), 0) < -MISSED * sizeOf(slotForm(joint, p)));
}

/** Squared sine of the angle within which a fork at its dead centre counts as meeting its pin. */
const MISSED = 1e-12;

function sizeOf(form: readonly number[]): number {
  return Math.max(...form.map(Math.abs));
}
