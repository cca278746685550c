/**
 * Two levers on one layer reach into each other, or a rod into a lever or rod that it is not joined to.
 *
 * They jam, or rattle and wear. Looked at are arms as broad as the `width` of their lever, round drums, outlines, and rods as broad as their
 * `width`, over the whole travel, seen along z. Levers on different layers pass each other. Levers about one axis sit beside each other on
 * it, the pin of a slot lies in its fork, and a rod beside the levers that it joins: these are left out. The format gives a rod no layer: it is
 * taken to lie on that of the levers that it joins, and because it may pass beside what it seems to touch, that is a warning only; between
 * two layers it is not checked.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal:
 * # ^^^^^ error[parts-touch]: The arm pedal.out reaches 6 mm into the drum idler.wheel at 100 % of pedal travel
 *     pivot: [0, 0]
 *     width: 12 mm
 *     arms: {out: {radius: 40 mm, angle: 30 deg}}
 *   idler: {pivot: [0, 60], drums: {wheel: {radius: 20 mm, wraps: clockwise}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
 * couplings: {pair: {from: pedal, to: idler}}
 * ```
 *
 * Cure: bring the two on different layers, or further from each other.
 */
import { clearanceOf } from '../../clearance/clearance.ts';
import type { Finding } from '../finding.ts';
import { rangesNearer, spanOf, TOUCHES, touchWords } from '../gaps.ts';
import type { Study } from '../study.ts';
import { rangeWords } from '../words.ts';

export function partsTouch(study: Study): readonly Finding[] {
  return clearanceOf(study.travel).parts.flatMap((gap): Finding[] => {
    const { one, other } = gap;
    const { least } = gap.search(TOUCHES);
    if (least === undefined) return [];
    const ranges = rangesNearer(study, gap, least, TOUCHES);
    const isSure = one.kind === 'lever' && other.kind === 'lever';
    return [
      {
        code: 'parts-touch',
        severity: isSure ? 'error' : 'warning',
        part: one.name,
        span: spanOf(one),
        message: `${touchWords(least)} (${rangeWords(ranges)})${isSure ? '' : ', if it does not pass beside it: a rod has no layer of its own'}`,
        cure: isSure
          ? 'Put the two on different layers, or bring them further from each other'
          : 'Lead the rod another way, or put what it passes on another layer',
        ranges,
        worst: { value: least.gap, dimension: 'length', travel: least.travel },
        limit: { value: 0, dimension: 'length', from: 'what overlaps touches' },
        related: [{ span: spanOf(other), message: `${other.name} is here` }],
      },
    ];
  });
}
