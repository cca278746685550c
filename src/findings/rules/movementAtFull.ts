/**
 * A movement of the engine changes how far the throttle opens at full pedal.
 *
 * A note, since a few degrees at wide open cost little air. It is an error where the moved linkage cannot follow the pedal to the
 * floor at all: then rocking on a hard pull strains the cable or tears a rod off. Up to 0.01° is taken as none: common practice, no
 * source. What the linkage cannot do unmoved is not blamed on the movement.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {closed: 0 deg}
 * pedal: {cable: main, pull: 36.1 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel, slack: 2 mm}
 * plates:
 *   bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 4 deg}
 * # ^^^^ warning[plate-past-square]: up to 1.41° past 90°
 * movements:
 *   rock: {moves: [main.enters], shift: [2, 0]}
 * # ^^^^ note[movement-at-full]: changes the opening of shaft at full pedal by
 * ```
 *
 * Cure: fix housing end and shaft to the same thing, so that they move together.
 */
import { lowest, movedLevers, openingAt, STILL } from '../movedLinkage.ts';
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { degrees } from '../words.ts';

export function movementAtFull(study: Study): readonly Finding[] {
  return movedLevers(study).flatMap(({ movement, lever, moved }): Finding[] => {
    const unmoved = openingAt(study.travel, lever, lowest(study.travel));
    // What the linkage cannot do unmoved is no fault of the movement.
    const full = Number.isNaN(unmoved) ? 0 : openingAt(moved, lever, lowest(moved)) - unmoved;
    const torn = Number.isNaN(full);
    if (!torn && Math.abs(full) <= STILL) return [];
    return [
      {
        code: 'movement-at-full',
        severity: torn ? 'error' : 'note',
        part: movement.name,
        span: movement.nameSpan,
        message: torn
          ? `With the movement ${movement.name}, ${lever.name} cannot follow the pedal to the floor`
          : `The movement ${movement.name} changes the opening of ${lever.name} at full pedal by ${degrees(full)}`,
        ...(!torn && { worst: { value: full, dimension: 'angle' as const, travel: 1 } }),
        related: [{ span: lever.source.nameSpan, message: lever.name }],
      },
    ];
  });
}
