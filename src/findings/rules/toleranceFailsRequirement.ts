/**
 * Within its tolerances the linkage may not do what the file requires.
 *
 * With every toleranced dimension in its middle the line of `require` is met, and with all of them against it at once it is not. It is a
 * warning where as much as the root of the sum of squares is enough for that, so that about one build in a thousand may miss it where each
 * tolerance is three standard deviations (common practice, no source); a note where it takes all of them at once. Each dimension is taken to
 * both of its ends, and the line is decided anew with all of them at the worse one. Lines that speak of what acts, such as the effort, and
 * play of pins are left to `pedal-to-plate tolerance`, which builds at random. It is told once typing rests.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm ± 0.3 mm, wraps: counterclockwise}}
 * pedal: {cable: main, pull: 33.6 mm}
 * cables:
 *   main: {enters: [40, 24], to: shaft.wheel}
 * require:
 *   opens far: at(100%, shaft.opening) >= 80 deg
 * # ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ warning[tolerance-fails-requirement]: `opens far` is met as drawn and not with levers.shaft.drums.wheel.radius at an end of its tolerance
 * ```
 *
 * Cure: hold the dimension that is named first tighter, or make it one that is set after assembly; else ask for less.
 */
import type { Finding } from '../finding.ts';
import type { Study } from '../study.ts';
import { toleranceMisses, type ToleranceMiss } from '../toleranceMisses.ts';
import { listed, percent } from '../words.ts';

export function toleranceFailsRequirement(study: Study): readonly Finding[] {
  return toleranceMisses(study).get().map(findingOf);
}

const MOST_CAUSES = 3;

function findingOf({ line: { name, span }, likely, causes }: ToleranceMiss): Finding {
  const told = causes
    .slice(0, MOST_CAUSES)
    .map(({ path, part }) => `${path.replace(/^let\./, '')}${causes.length === 1 ? '' : ` (${percent(part)})`}`);
  const [first] = causes;
  const most = causes.length === 1 ? `${told.join('')} at an end of its tolerance` : `all tolerances against it: most by ${listed(told)}`;
  return {
    code: 'tolerance-fails-requirement',
    severity: likely < 0 ? 'warning' : 'note',
    part: name,
    span,
    message: `\`${name}\` is met as drawn and not with ${most}`,
    ...(first !== undefined && { cure: `Hold ${first.path.replace(/^let\./, '')} tighter, or ask for less` }),
  };
}
