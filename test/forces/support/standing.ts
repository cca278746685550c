/** How the cables of a solved linkage stand, from its rotations and the drawn places. */
import { isPin, profileRadius, type Closure, type Rotations } from '../../support/closure.ts';
import { leverNamed } from '../../support/sketch.ts';
import type { CableSketch, CableStand, Stand } from './freeBody.ts';
import type { SolvedSprung, SprungSketch } from './sprung.ts';

/** Undefined at the very edge of a cable's slack or stretch where what comes next does not decide it. */
export function standAt(closure: Closure, sketch: SprungSketch, solved: SolvedSprung, travel: number): Stand | undefined {
  const rotations = solved.rotationsAt(travel);
  const onwards = Math.min(1, travel + AHEAD);
  const next = solved.rotationsAt(onwards);
  const stands = new Map<string, CableStand | undefined>();
  for (const joint of sketch.joints) {
    if (joint.kind === 'cable') stands.set(joint.name, cableStand(closure, joint, rotations, travel, next, onwards));
  }
  if ([...stands.values()].includes(undefined)) return undefined;
  return { rotations, senses: solved.senses, cable: (joint) => stands.get(joint.name)! };
}

/** Of the pedal's travel: where a cable at the edge is looked at. */
const AHEAD = 1e-6;
/** mm; nearer to the edge a cable is at it. */
const EDGE = 1e-8;

function cableStand(
  closure: Closure,
  joint: CableSketch,
  rotations: Rotations,
  travel: number,
  next: Rotations,
  onwards: number,
): CableStand | undefined {
  const free = closure.pullOf(joint, rotations, travel) - joint.slack;
  const later = closure.pullOf(joint, next, onwards) - joint.slack;
  if (Number.isNaN(free)) return { stretch: NaN };
  if (Math.abs(free) <= EDGE && !(Math.abs(later) > EDGE)) return undefined;
  if (free < -EDGE || (free <= EDGE && later < 0)) return 'loose';
  const residual = closure.residual(joint, rotations, travel);
  const { radius } = isPin(closure.sketch, joint.to) ? { radius: 0 } : leverNamed(closure.sketch, joint.to.lever).drums[joint.to.part]!;
  const drum = typeof radius === 'number' ? radius : profileRadius(radius, 0);
  const stretch = isPin(closure.sketch, joint.to) ? residual * closure.lengthOf(joint) : -residual * drum;
  return { stretch: stretch > EDGE ? stretch : 0 };
}
