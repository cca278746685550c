/**
 * A lever, rod, cable or spring comes nearer to a keep-out than its `clearance` allows.
 *
 * Engines rock on their mounts, rods bow and bushes wear: what misses by little on the drawing touches on the road. The limit is the
 * `clearance` of the keep-out. What is looked at and how is told under `touches-keep-out`.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal: {pivot: [0, 0], width: 12 mm, arms: {out: {radius: 40 mm, angle: 30 deg}}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
 * keep_out:
 *   bonnet: {polygon: [[-60, 50], [60, 50], [60, 60], [-60, 60]], clearance: 6 mm}
 * #                                                                          ^^^^ warning[keep-out-clearance]: The arm pedal.out comes within 4 mm of bonnet at 100 %
 * ```
 *
 * Cure: a narrower or shorter arm, another clocking, or another way for the rod.
 */
import { clearanceOf } from '../../clearance/clearance.ts';
import type { Finding } from '../finding.ts';
import { narrower, pieceWords, rangesNearer, spanOf, TOUCHES } from '../gaps.ts';
import type { Study } from '../study.ts';
import { millimetres, percent, rangeWords } from '../words.ts';

export function keepOutClearance(study: Study): readonly Finding[] {
  return clearanceOf(study.travel).keepOuts.flatMap((gap): Finding[] => {
    const { one, other } = gap;
    const { clearance } = other.source;
    if (clearance === undefined) return [];
    const asked = clearance.nominal;
    const { least } = gap.search(Math.max(asked, TOUCHES));
    if (least === undefined || least.gap <= TOUCHES || least.gap >= asked - TOUCHES) return [];
    const ranges = rangesNearer(study, gap, least, asked - TOUCHES);
    const words = pieceWords(least.pieces[0]);
    const what = words.startsWith('the ') ? `T${words.slice(1)}` : words;
    return [
      {
        code: 'keep-out-clearance',
        severity: 'warning',
        part: one.name,
        span: clearance.span,
        message: `${what} comes within ${millimetres(least.gap)} of ${other.name} at ${percent(least.travel)} of pedal travel, and ${millimetres(asked)} should stay free (${rangeWords(ranges)})`,
        cure: one.kind === 'lever' ? 'Shorten, narrow or clock what comes so near' : 'Lead it another way',
        ranges,
        worst: { value: least.gap, dimension: 'length', travel: least.travel },
        limit: { value: asked, dimension: 'length', from: 'clearance of this keep-out' },
        related: [{ span: spanOf(one), message: `${one.name} is here` }],
        ...narrower(gap, least, asked),
      },
    ];
  });
}
