/**
 * A place of two figures stands on a lever that otherwise lies off z = 0.
 *
 * Two figures mean z = 0. Where the lever's other places have a height, that is most often a figure forgotten, and the rod that goes
 * there would be solved as a slanting one.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0, 8], arms: {out: {at: [20, 34.6]}}}
 * #                                            ^^^^^^^^^^ warning[off-plane]: so it stands at z = 0
 *   shaft: {pivot: [100, 0, 8], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
 * rods:
 *   link: {from: pedal.out, to: shaft.arm}
 * ```
 *
 * Cure: write the third figure. None is offered: at which height the place is, only the drawing knows.
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
