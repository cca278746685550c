/**
 * A place given with two figures, so at z = 0, on a lever that otherwise stands off z = 0.
 *
 * Example: a shaft whose pivot is [0, 0, 40] with a tang at [20, 5]. Cure: write the third figure.
 */
import type { Lever, Place } from '../../definition/definition.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';

export function offPlane(study: Study): readonly Finding[] {
  return study.definition.levers.flatMap((lever): Finding[] => {
    const places = placesOf(lever);
    const away = places.find(({ place }) => place.z !== undefined && place.z.nominal !== 0);
    if (away === undefined) return [];
    return places
      .filter(({ place }) => place.z === undefined)
      .map(({ place, what }) => ({
        code: 'off-plane' as const,
        severity: 'warning' as const,
        part: lever.name,
        span: place.span,
        message: `The ${what} of ${lever.name} is given with two figures, so it stands at z = 0, while its ${away.what} does not`,
        cure: 'Write its third figure',
        related: [{ span: away.place.span, message: `${away.what} of ${lever.name}` }],
      }));
  });
}

function placesOf(lever: Lever): readonly { readonly place: Place; readonly what: string }[] {
  return [
    { place: lever.pivot, what: 'pivot' },
    ...lever.arms.flatMap(({ name, position }) => (position.kind === 'place' ? [{ place: position.place, what: `arm ${name}` }] : [])),
  ];
}
