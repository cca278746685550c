/**
 * A drum with a profile turns beyond the openings that its profile describes.
 *
 * There its radius is only taken as that of the nearest point, so what is shown for that stretch is a guess about metal that is not
 * drawn.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {snail: {profile: [[0 deg, 18 mm], [50 deg, 24 mm]], wraps: counterclockwise}}
 * #                            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning[profile-left]: its radius is taken as constant there
 * pedal: {cable: main, pull: 23 mm}
 * cables:
 *   main: {enters: [40, 20], to: shaft.snail, slack: 1 mm}
 * ```
 *
 * Cure: give the profile points over the whole of the opening. No figure is offered: how the drum goes on there, only its drawing knows.
 */
import { following, leastOf, rangesBelow } from '../../travel/extremes.ts';
import type { Finding } from '../finding.ts';
import { along, type Study } from '../study.ts';
import { usedDrums, type UsedDrum } from '../usedDrums.ts';
import { degrees, rangeWords } from '../words.ts';

/** rad; less is rounding. */
const SAME = 1e-9;

export function profileLeft(study: Study): readonly Finding[] {
  return usedDrums(study).flatMap((used) => profileLeftBy(study, used));
}

function profileLeftBy(study: Study, { drum, lever, source }: UsedDrum): readonly Finding[] {
  const { build, samples } = study.travel;
  const { form } = drum;
  if (form.kind !== 'profile' || source.form.kind !== 'profile') return [];
  const first = build.parameters[form.openings]!;
  const last = build.parameters[form.openings + form.count - 1]!;
  const opening = along(study, `${lever.name}.opening`);
  const inside = following(opening, (value) => Math.min(value - first, last - value), `within ${first} and ${last}`);
  const worst = leastOf(inside, samples);
  if (worst === undefined || worst.value >= -SAME) return [];
  const ranges = rangesBelow((travel) => inside(travel) + SAME, samples);
  return [
    {
      code: 'profile-left',
      severity: 'warning',
      part: `${lever.name}.${drum.name}`,
      span: source.form.span,
      message: `${lever.name} leaves the profile of ${drum.name} by ${degrees(-worst.value)} (${rangeWords(ranges)}): its radius is taken as constant there`,
      cure: `Give the profile points from ${degrees(Math.min(first, opening(worst.travel)))} to ${degrees(Math.max(last, opening(worst.travel)))}`,
      ranges,
      worst: { value: opening(worst.travel), dimension: 'angle', travel: worst.travel },
      limit: { value: opening(worst.travel) < first ? first : last, dimension: 'angle', from: 'profile of this drum' },
    },
  ];
}
