/** A rod between its two pins. Where its driven end cannot be assembled it stays, both ends, as it was last. */
import type { DrawnRod } from '../../../src/protocol/picture.ts';
import type { Mark, Pen, Symbol } from '../mark.ts';
import { bar, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { isEndOn, MM_PER_M } from '../projection.ts';
import { leverAt, type Sheet } from '../sheet.ts';
import { turningPoint, xAt, xTurned, yAt, yTurned, type Point } from '../turning.ts';

export function rodSymbol(sheet: Sheet, rod: DrawnRod): Symbol {
  const key = `rod:${rod.name}`;
  const ends = rodEnds(sheet, rod);
  const axis = (pose: Pose, pen: Pen) => {
    const { x1, y1, x2, y2, stands } = ends(pose);
    pen.path(segment(x1, y1, x2, y2));
    pen.stands(stands);
  };
  const marks: Mark[] = [{ key: `${key}/line`, layer: 'links', tag: 'path', look: 'rod', name: rod.name, moves: true, place: axis }];
  const half = (MM_PER_M * (rod.width ?? 0)) / 2;
  const isFlat = [rod.from, rod.to].every(({ lever }) => isEndOn(sheet.view, leverAt(sheet, lever).axis));
  if (half > 0 && isFlat) {
    const place = (pose: Pose, pen: Pen) => {
      const { x1, y1, x2, y2, stands } = ends(pose);
      pen.path(bar(x1, y1, x2, y2, half));
      pen.stands(stands);
    };
    marks.unshift({ key: `${key}/body`, layer: 'links', tag: 'path', look: 'body', moves: true, place });
  }
  return {
    key,
    part: { kind: 'rod', name: rod.name },
    note: undefined,
    marks,
    grip: axis,
    anchor: (pose, out) => {
      const { x1, y1, x2, y2 } = ends(pose);
      out.x = (x1 + x2) / 2;
      out.y = (y1 + y2) / 2;
    },
  };
}

/** Where the ends of a rod are on the paper, mm: the same object filled anew at each call. */
export function rodEnds(sheet: Sheet, rod: DrawnRod): (pose: Pose) => RodEnds {
  const from = turningPoint(sheet.view, rod.from.lever, rod.from.at);
  const to = turningPoint(sheet.view, rod.to.lever, rod.to.at);
  const ends = { x1: 0, y1: 0, x2: 0, y2: 0, stands: false };
  return (pose) => {
    ends.stands = pose.stands[from.lever] === 1 || pose.stands[to.lever] === 1;
    if (ends.stands) {
      const station = Math.min(pose.known[from.lever]!, pose.known[to.lever]!);
      const rotation = (point: Point) => leverAt(sheet, point.lever).rotation[station] ?? 0;
      ends.x1 = xTurned(from, rotation(from));
      ends.y1 = yTurned(from, rotation(from));
      ends.x2 = xTurned(to, rotation(to));
      ends.y2 = yTurned(to, rotation(to));
    } else {
      ends.x1 = xAt(from, pose);
      ends.y1 = yAt(from, pose);
      ends.x2 = xAt(to, pose);
      ends.y2 = yAt(to, pose);
    }
    return ends;
  };
}

export interface RodEnds {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly stands: boolean;
}
