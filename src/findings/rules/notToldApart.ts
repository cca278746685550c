/**
 * The readings of the built car cannot tell two of the dimensions that they are to tell from each other.
 *
 * Each reading that the file holds says how it would change with each dimension named in `fit`. Where only a sum, a difference or another
 * combination of two shows, a fit finds that combination and leaves each of them as its tolerance has it, or as drawn. That is a warning. Where
 * they are told, and hardly from each other, so that their errors go together by more than 0.95 of 1 (common practice, no source), it is a
 * note. It is worked out at the dimensions of the file, once typing rests; readings in a CSV file are left to `pedal-to-plate fit`.
 *
 * ```yaml
 * format: 1
 * let:
 *   full: 30 mm
 *   wheel: 24 mm
 * levers:
 *   shaft:
 *     pivot: [100, 0]
 *     drums: {groove: {radius: wheel, wraps: counterclockwise}}
 * pedal: {cable: main, pull: full}
 * cables:
 *   main: {enters: [40, 24], to: shaft.groove}
 * measured:
 *   fit: [full, wheel]
 * #       ^^^^ warning[not-told-apart]: These readings cannot tell full from wheel: they would be the same with both changed together
 *   runs:
 *     bench:
 *       columns: [pedal.travel, shaft.opening]
 *       rows: [[50 %, 35.8 deg], [75 %, 53.6 deg], [100 %, 71.5 deg]]
 * ```
 *
 * Cure: take all but one of them out of `fit`, or read something that moves with one of them alone.
 */
import type { Finding } from '../finding.ts';
import type { Study, UntoldDimensions } from '../study.ts';
import { listed } from '../words.ts';

export function notToldApart({ untold }: Study): readonly Finding[] {
  return untold?.().map(findingOf) ?? [];
}

function findingOf({ dimensions, correlation }: UntoldDimensions): Finding {
  const [first, ...others] = dimensions;
  const names = listed(others.map(({ name }) => name));
  const { name, span } = first!;
  const why =
    correlation === undefined
      ? `cannot tell ${name} from ${names}: they would be the same with ${others.length === 1 ? 'both' : 'all of them'} changed together`
      : `hardly tell ${name} from ${names}: their ${correlation < 0 ? 'sum' : 'difference'} is known far more closely than either`;
  return {
    code: 'not-told-apart',
    severity: correlation === undefined ? 'warning' : 'note',
    part: name,
    span,
    message: `These readings ${why}`,
    cure: `Take ${others.length === 1 ? 'one of them' : 'all but one of them'} out of \`fit\`, or read something that moves with one of them alone`,
    related: others.map((other) => ({ span: other.span, message: `${other.name} stands here` })),
  };
}
