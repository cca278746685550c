/**
 * A rod is longer or shorter than its adjuster can make it.
 *
 * The length that the file gives, or the one that the drawing asks for, lies beyond the ends of `adjust`. It cannot be set on the
 * bench; forced, the thread has too few turns left to hold.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
 *   shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
 * rods:
 *   link:
 *     from: pedal.out
 *     to: shaft.arm
 *     length: 100 mm
 * #           ^^^^^^ error[rod-out-of-adjustment]: its adjuster ends at 101 mm
 *     adjust: {min: 101 mm, max: 106 mm, pitch: 1 mm}
 * ```
 *
 * Cure: bring the length within the adjuster's range, or make the rod with another one.
 */
import type { Finding } from '../finding.ts';
import { drawnLength, lengthToSet } from '../rodsBefore.ts';
import { writeBy, type Study } from '../study.ts';
import { millimetres, quantityWords } from '../words.ts';

/** m; less is rounding. */
const SAME = 1e-9;

export function rodOutOfAdjustment(study: Study): readonly Finding[] {
  const { mechanism, build } = study.travel;
  return mechanism.joints.flatMap((joint): Finding[] => {
    if (joint.kind !== 'rod') return [];
    const { adjust, length: written, nameSpan } = joint.source;
    const length = build.parameters[joint.length]!;
    const short = adjust?.min !== undefined && length < adjust.min.nominal - SAME;
    const long = adjust?.max !== undefined && length > adjust.max.nominal + SAME;
    const limit = short ? adjust.min : long ? adjust.max : undefined;
    if (limit === undefined || !Number.isFinite(length)) return [];
    const drawn = drawnLength(study, joint);
    const isWithin = (each: number): boolean =>
      each >= (adjust?.min?.nominal ?? 0) - SAME && each <= (adjust?.max?.nominal ?? Infinity) + SAME;
    const fits = isWithin(drawn);
    const wanted = fits ? lengthToSet(joint, drawn, isWithin) : limit.nominal;
    return [
      {
        code: 'rod-out-of-adjustment',
        severity: 'error',
        part: joint.name,
        span: written?.span ?? nameSpan,
        message: `The rod ${joint.name} is ${millimetres(length)} long; its adjuster ends at ${millimetres(limit.nominal)}`,
        cure: fits
          ? `Set it to ${quantityWords(wanted, 'length', written?.unit)}, its length as drawn, or give it another adjuster`
          : `Bring its length within the adjuster's range, or give it another one`,
        worst: { value: length, dimension: 'length', travel: 0 },
        limit: { value: limit.nominal, dimension: 'length', from: 'adjuster of this rod' },
        ...writeBy(written, wanted),
        related: [{ span: limit.span, message: 'end of its adjuster' }],
      },
    ];
  });
}
