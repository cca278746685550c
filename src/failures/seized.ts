/**
 * A seized cable: its inner stands still in its housing, wherever along the pedal that happens.
 *
 * What it draws can then go on open, since the inner only pulls, but not back: the length of inner between housing end and lever is what it
 * was. So the lever is held at the opening that it had, and with it all that it drives: rods and slots hold both ways, one-way couplings
 * and further cables pass on what opens, and free play lies already on the side that the springs press it to. Nothing in the file's format
 * lets plates close past it, so every shaft behind the cable stays where it is, unless the cable was slack or the shaft still at rest.
 * The foot's side of the cable goes slack as the pedal comes back: to whatever else the pedal drives, it is a cable lost.
 */
import { isBehind } from '../kinematics/isBehind.ts';
import type { CableJoint } from '../kinematics/model.ts';
import { CableState } from '../kinematics/pose.ts';
import { greatestOf } from '../travel/extremes.ts';
import type { Travel } from '../travel/travel.ts';
import type { PlatesClosing } from './failure.ts';
import { listed } from './words.ts';

/** Of the shafts behind a cable that close together; undefined where the cable does not hold them from anywhere. */
export function heldBySeized(travel: Travel, cable: CableJoint, { levers }: PlatesClosing): PlatesClosing | undefined {
  const { mechanism, poseAt, samples } = travel;
  const shaft = mechanism.leverIndex.get(levers[0] ?? '');
  if (shaft === undefined || !isBehind(mechanism, cable, mechanism.levers[shaft]!)) return undefined;
  const sense = mechanism.senses[shaft]!;
  const rest = sense * poseAt(0).rotation[shaft]!;
  const held = greatestOf((at) => {
    const pose = poseAt(at);
    return pose.cableState[cable.cable] === CableState.slack ? NaN : sense * pose.rotation[shaft]!;
  }, samples);
  if (held === undefined) return undefined;
  if (!(held.value - rest > SHUT)) return undefined;
  return {
    levers,
    outcome: 'stays-open',
    why: `the cable ${cable.name} holds ${listed(levers)} where it seizes`,
    weakest: undefined,
    heldAt: held.value,
  };
}

/** rad (0.001°); plates held that little open pass no more air than their seat lets by. Common practice, no source. */
const SHUT = 0.001 * (Math.PI / 180);
