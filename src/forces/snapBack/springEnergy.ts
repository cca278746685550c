/**
 * What a spring holds, J: its work from where it is free, or from the drawn position where it is wound about a lever.
 *     torsion       M₀ o + k o²/2
 *     extension     T₀ x + k x²/2 with x = ℓ − ℓ₀ > 0
 *     compression   k x²/2 with x = ℓ₀ − ℓ > 0
 */
import type { Build } from '../../kinematics/build.ts';
import type { Pose } from '../../kinematics/pose.ts';
import { springSpan } from '../springs.ts';
import { rateOf } from '../wire/rate.ts';

/** Of all springs. */
export function springEnergy(build: Build, pose: Pose): number {
  const { mechanism, parameters: p } = build;
  let sum = 0;
  for (const spring of mechanism.attached.springs) {
    const rate = rateOf(build, spring);
    if (spring.kind === 'torsion') {
      const opening = mechanism.senses[spring.lever]! * pose.rotation[spring.lever]!;
      sum += (p[spring.preload]! + (rate * opening) / 2) * opening;
      continue;
    }
    const extension = springSpan(build, pose, spring).length - (spring.freeLength === undefined ? NaN : p[spring.freeLength]!);
    if (spring.kind === 'compression') sum += extension < 0 ? (rate * extension * extension) / 2 : 0;
    else sum += extension > 0 ? (p[spring.initialTension]! + (rate * extension) / 2) * extension : 0;
  }
  return sum;
}
