/** How near the linkage comes to each keep-out. */
import { clearanceOf, nearestTo } from '../../clearance/clearance.ts';
import type { Fact } from '../finding.ts';
import { pieceWords } from '../gaps.ts';
import type { Study } from '../study.ts';

/** Of each keep-out the least gap to what is held against it; none for one to which nothing has a shape on its layer. */
export function clearanceFacts(study: Study): readonly Fact[] {
  const clearance = clearanceOf(study.travel);
  return clearance.bodies.keepOuts.flatMap((body): readonly Fact[] => {
    const least = nearestTo(clearance, body)?.least;
    if (least === undefined) return [];
    const { gap, travel, pieces } = least;
    const what = pieceWords(pieces[0]);
    const label = gap > 0 ? `least gap of ${body.name}, to ${what}` : `depth of ${what} in ${body.name}`;
    return [{ key: 'keep-out-gap', part: body.name, label, figure: { value: Math.abs(gap), dimension: 'length' }, travel }];
  });
}
