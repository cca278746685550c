/** Springs: about a shaft, or between two places. */
import type { LinearSpringModel } from '../kinematics/attached.ts';
import { vectorAt } from '../numeric/vector.ts';
import type { DrawnSpring, PinPlace, Triple } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';
import { pinPlace } from './turning.ts';

export function drawSprings(drawable: Drawable): readonly DrawnSpring[] {
  const { mechanism, build, placeOf } = drawable;
  return mechanism.attached.springs.flatMap((spring): DrawnSpring[] => {
    const { name } = spring;
    if (spring.kind === 'torsion') {
      const lever = placeOf(spring.lever);
      return lever === undefined ? [] : [{ name, form: { kind: 'torsion', lever } }];
    }
    const from = startOf(drawable, spring);
    const to = pinPlace(drawable, build, spring.lever, spring.to);
    return from === undefined || to === undefined ? [] : [{ name, form: { kind: spring.kind, from, to } }];
  });
}

function startOf(drawable: Drawable, { from }: LinearSpringModel): Triple | PinPlace | undefined {
  const { build } = drawable;
  if (from.kind === 'pin') return pinPlace(drawable, build, from.lever, from.pin);
  const place = vectorAt(build.parameters, from.place);
  return place.every(Number.isFinite) ? place : undefined;
}
