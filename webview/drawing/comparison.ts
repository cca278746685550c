/** The other state of the file, as one outline behind this one, at the same pedal travel. */
import type { Picture } from '../../src/protocol/picture.ts';
import type { Mark } from './mark.ts';
import { line, move, ring, segment } from './path.ts';
import { createPose, poseAt } from './pose.ts';
import { MM_PER_M, onPaper } from './projection.ts';
import type { Sheet } from './sheet.ts';
import { armsOf } from './symbols/lever.ts';
import { rodEnds } from './symbols/rod.ts';
import { xAt, yAt } from './turning.ts';

export function otherMark(sheet: Sheet, other: Picture): Mark {
  const there: Sheet = { ...sheet, picture: other };
  const pose = createPose(other);
  const arms = other.levers.flatMap((_, index) => armsOf(there, index));
  const rods = other.rods.map((rod) => rodEnds(there, rod));
  const still = [
    ...other.levers.map(({ pivot }) => ring(onPaper(sheet.view, pivot).x, onPaper(sheet.view, pivot).y, HUB_MM)),
    ...other.cables.flatMap(({ leaves, enters }) =>
      [leaves, enters].map((end) =>
        end === undefined ? '' : ring(onPaper(sheet.view, end.housing).x, onPaper(sheet.view, end.housing).y, HUB_MM),
      ),
    ),
  ].join('');
  return {
    key: 'other',
    layer: 'other',
    tag: 'path',
    look: 'other',
    moves: true,
    place: ({ travel }, pen) => {
      // Of a motion of its own the other state has none.
      if (Number.isNaN(travel)) return pen.path('');
      poseAt(pose, other, travel);
      let text = still;
      for (const { root, pin } of arms) text += move(root.x, root.y) + line(xAt(pin, pose), yAt(pin, pose));
      for (const endsAt of rods) {
        const { x1, y1, x2, y2 } = endsAt(pose);
        text += segment(x1, y1, x2, y2);
      }
      pen.path(text);
    },
  };
}

const HUB_MM = 0.002 * MM_PER_M;
