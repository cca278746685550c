/**
 * With one spring off, little is left over the friction that holds a shaft or the pedal.
 *
 * A spring breaks, and the others must still bring the throttle back. Each is taken off in turn, and what is left is set against all that
 * rubs on the way (`friction-lock` says what that is), anywhere in the travel. Under twice the friction it is a warning, under the
 * friction itself an error: common practice, no source; both can be set under `limits: {closing_margin: …}`. Grease stiffens in the cold
 * and bushes run dry, so that friction is the least certain figure of the file. Where nothing closes once a spring is off, that is told
 * of the spring (`single-return-spring`); where friction holds it with all springs on, only that is told. It is looked for as `friction-lock` is,
 * where a place comes within twice the limit: what is found however narrow it is, and what is not proved, stands there.
 *
 * ```yaml
 * format: 1
 * levers:
 *   shaft:
 * # ^^^^^ warning[closing-margin]: With first off, the closing torque at shaft is only 1.67 times the friction
 *     pivot: [100, 0]
 *     drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
 *     stops: {open: 82.5 deg}
 *     friction: 90 N*mm
 * pedal: {cable: main, pull: 35.55 mm}
 * cables: {main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}}
 * plates: {bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 1.5 deg}}
 * springs:
 *   first: {lever: shaft, rate: 2 N*mm/deg, preload: 150 N*mm}
 *   second: {lever: shaft, rate: 2 N*mm/deg, preload: 150 N*mm}
 * ```
 *
 * Cure: more preload of the springs that are left, or less friction. Where each of two springs alone is too weak, both need it.
 */
import type { Finding } from '../finding.ts';
import { frictionUnits, isLocked } from '../frictionUnits.ts';
import { limitOf, type Study } from '../study.ts';
import { weakestMargin, weakestWords } from '../weakestMargin.ts';
import { decimal, rangeWords } from '../words.ts';

export function closingMargin(study: Study): readonly Finding[] {
  const limit = limitOf(study, 'closing_margin');
  return frictionUnits(study).flatMap((unit): Finding[] => {
    if (isLocked(study, unit)) return [];
    const weakest = weakestMargin(study, unit, limit);
    if (weakest === undefined) return [];
    const { off, spring } = weakest;
    const { severity, worst, ranges, limit: held } = off;
    const { lever } = unit;
    return [
      {
        code: 'closing-margin',
        severity,
        part: lever.name,
        span: lever.source.nameSpan,
        message: `${weakestWords(weakest)}; it is under ${decimal(limit.warning)} times ${rangeWords(ranges)}`,
        cure: 'More preload of the springs that are left, or less friction',
        ranges,
        worst: { ...worst, dimension: 'number' },
        limit: { value: held, dimension: 'number', from: limit.from },
        ...(spring && { without: spring.name }),
        ...(spring && { related: [{ span: spring.source.nameSpan, message: `${spring.name} is the one taken off` }] }),
      },
    ];
  });
}
