/**
 * Where two things come nearest to each other: a dimension line between their nearest points. It is seen while one of the two is chosen, and
 * by itself where the pedal is at the place of the least gap. Its figure is written over the drawing (`overlay.ts`).
 */
import type { DrawnGap } from '../../../src/protocol/picture.ts';
import type { Mark } from '../mark.ts';
import { ring, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { onPaper } from '../projection.ts';
import { keyOfPart, type Sheet } from '../sheet.ts';

export function gapMarks(sheet: Sheet): readonly Mark[] {
  return sheet.picture.gaps.flatMap((gap): readonly Mark[] => {
    const [one, other] = gap.between.map((part) => keyOfPart(sheet.picture, part)) as [string, string];
    const key = `gap:${one}/${other}`;
    const line = lineOf(sheet, gap);
    const common = { layer: 'gaps', tag: 'path', moves: true } as const;
    const look = `gap ${kindOf(gap)}`;
    return [
      { ...common, key, look, lights: [one, other], place: (pose, pen) => pen.path(line(pose)) },
      { ...common, key: `${key}/here`, look: `${look} here`, place: (pose, pen) => pen.path(isHere(gap, pose.travel) ? line(pose) : '') },
    ];
  });
}

/** `deep` where the two overlap, `short` where less stays free than should, `free` else. */
export function kindOf({ gap, clearance }: DrawnGap): 'deep' | 'short' | 'free' {
  return gap <= TOUCHES ? 'deep' : gap < clearance - TOUCHES ? 'short' : 'free';
}

/** m */
const TOUCHES = 1e-9;

/** Whether the pedal is where the gap is least, to half of the last figure of the slider. */
export const isHere = ({ travel }: DrawnGap, at: number): boolean => Math.abs(travel - at) <= 0.0005;

/** With a stroke square to it at either end; a ring where it has no length to be seen. */
function lineOf({ view }: Sheet, { from, to }: DrawnGap): (pose: Pose) => string {
  const [a, b] = [onPaper(view, from), onPaper(view, to)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return ({ pixel }) => {
    if (length < pixel) return ring(a.x, a.y, RING_PX * pixel);
    const stroke = STROKE_PX * pixel;
    const [nx, ny] = [(-(b.y - a.y) / length) * stroke, ((b.x - a.x) / length) * stroke];
    return segment(a.x, a.y, b.x, b.y) + segment(a.x - nx, a.y - ny, a.x + nx, a.y + ny) + segment(b.x - nx, b.y - ny, b.x + nx, b.y + ny);
  };
}

const STROKE_PX = 5;
const RING_PX = 5;
