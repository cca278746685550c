/**
 * A lever, rod, cable or spring reaches into a keep-out.
 *
 * What stands there stops the throttle, or the throttle saws at it. Looked at are the arms of a lever as broad as its `width`, its round drums, its
 * `outline`, rods as broad as their `width`, inners of cables between housing end and pin or drum as thick as their `diameter`, and extension and
 * compression springs as thick as the coil of their `wire`, over the whole travel, seen along z and on the layer of the keep-out: the least gap
 * is found to half a micron, and not sampled. The depth is the least shift that would part the two; of an outline that stands in somewhere, or a
 * keep-out that does, it is that of the deepest two convex pieces, and may be less than the whole. A spring is taken to be as thick as its coil
 * to its very ends, so that what touches it is a warning.
 *
 * A lever that turns about another direction than z, and what is joined to it, is held against the keep-outs that say by `from` and `to` where
 * along z they stand, in space and whatever their layer: its arms as round bars as thick as they are broad, so that a gap is never told greater
 * than it is. What turns about z goes by layers alone, whatever `from` and `to` say. The tilted lever's drums and outline, whose thickness the file does not give, keep-outs without both ends, and parts without a width are not
 * checked.
 *
 * ```yaml
 * format: 1
 * levers:
 *   pedal:
 * # ^^^^^ error[touches-keep-out]: The arm pedal.out reaches 2 mm into bonnet at 100 % of pedal travel
 *     pivot: [0, 0]
 *     width: 12 mm
 *     arms: {out: {radius: 40 mm, angle: 30 deg}}
 * pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
 * keep_out:
 *   bonnet: {polygon: [[-60, 44], [60, 44], [60, 60], [-60, 60]]}
 * ```
 *
 * Cure: shorten or clock the arm, lead the rod another way, or move what stands there.
 */
import { clearanceOf } from '../../clearance/clearance.ts';
import type { Finding } from '../finding.ts';
import { narrower, rangesNearer, spanOf, TOUCHES, touchWords } from '../gaps.ts';
import type { Study } from '../study.ts';
import { rangeWords } from '../words.ts';

export function touchesKeepOut(study: Study): readonly Finding[] {
  return clearanceOf(study.travel).keepOuts.flatMap((gap): Finding[] => {
    const { one, other } = gap;
    const asked = other.source.clearance?.nominal ?? 0;
    const { least } = gap.search(Math.max(asked, TOUCHES));
    if (least === undefined || least.gap > TOUCHES) return [];
    const ranges = rangesNearer(study, gap, least, TOUCHES);
    return [
      {
        code: 'touches-keep-out',
        // What is thicker than the spring is may touch alone.
        severity: one.kind === 'spring' ? 'warning' : 'error',
        part: one.name,
        span: spanOf(one),
        message: `${touchWords(least)} (${rangeWords(ranges)})`,
        cure:
          one.kind === 'lever'
            ? 'Shorten or clock what reaches into it, or move what stands there'
            : 'Lead it another way, or move what stands there',
        ranges,
        worst: { value: least.gap, dimension: 'length', travel: least.travel },
        limit: { value: 0, dimension: 'length', from: 'what overlaps touches' },
        related: [{ span: spanOf(other), message: `${other.name} is here` }],
        ...narrower(gap, least, asked),
      },
    ];
  });
}
