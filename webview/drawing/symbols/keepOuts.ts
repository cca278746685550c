/** What must stay free, hatched, and the line that its clearance draws around it. Given in the plane of the front view. */
import type { DrawnKeepOut, Triple } from '../../../src/protocol/picture.ts';
import type { Mark, Symbol } from '../mark.ts';
import { polyline } from '../path.ts';
import { onPaper, type Spot } from '../projection.ts';
import { anchoredAt, type Sheet } from '../sheet.ts';
import { plus } from '../vector.ts';

export function keepOutSymbol(sheet: Sheet, keepOut: DrawnKeepOut): Symbol {
  const key = `keep-out:${keepOut.name}`;
  const paper = (places: readonly Triple[]) => places.map((place) => onPaper(sheet.view, place));
  const shape = polyline(paper(outlineOf(keepOut, 0)), true);
  const clear = polyline(paper(outlineOf(keepOut, keepOut.clearance)), true);
  const still = { layer: 'keepOuts', tag: 'path', moves: false } as const;
  const marks: Mark[] = [
    { ...still, key: `${key}/shape`, look: 'keep-out', name: keepOut.name, place: (_pose, pen) => pen.path(shape) },
    ...(keepOut.clearance > 0
      ? [{ ...still, key: `${key}/clearance`, look: 'clearance', place: (_pose, pen) => pen.path(clear) } satisfies Mark]
      : []),
  ];
  return {
    key,
    part: { kind: 'keep-out', name: keepOut.name },
    note: undefined,
    marks,
    grip: (_pose, pen) => pen.path(shape),
    anchor: anchoredAt(middle(paper(outlineOf(keepOut, 0)))),
  };
}

const middle = (spots: readonly Spot[]): Spot => ({
  x: spots.reduce((sum, { x }) => sum + x, 0) / spots.length,
  y: spots.reduce((sum, { y }) => sum + y, 0) / spots.length,
});

/** Corners of the shape grown by `clearance`, m; round where a corner stands out, sharp where it stands in. */
export function outlineOf({ shape }: DrawnKeepOut, clearance: number): readonly Triple[] {
  if (shape.kind === 'circle') return arc(shape.centre, shape.radius + clearance, 0, 2 * Math.PI, false);
  const { corners } = shape;
  if (clearance === 0 || corners.length < 3) return corners;
  const way = area(corners) >= 0 ? 1 : -1;
  return corners.flatMap((corner, i): readonly Triple[] => {
    const before = heading(corners[(i + corners.length - 1) % corners.length]!, corner);
    const after = heading(corner, corners[(i + 1) % corners.length]!);
    const turn = way * Math.atan2(Math.sin(after - before), Math.cos(after - before));
    const out = before - way * (Math.PI / 2);
    if (turn > 0) return arc(corner, clearance, out, out + way * turn, true);
    const middle = out + (way * turn) / 2;
    return [plus(corner, [Math.cos(middle), Math.sin(middle), 0], clearance / Math.max(Math.cos(turn / 2), SHARPEST))];
  });
}

/** A corner that stands in sharper than this, as a cosine, is cut off. */
const SHARPEST = 0.2;

const heading = (a: Triple, b: Triple): number => Math.atan2(b[1] - a[1], b[0] - a[0]);

/** Twice the area, positive where the corners go counter-clockwise. */
const area = (corners: readonly Triple[]): number =>
  corners.reduce((sum, a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    return sum + a[0] * b[1] - b[0] * a[1];
  }, 0);

function arc(centre: Triple, radius: number, from: number, to: number, hasEnd: boolean): readonly Triple[] {
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / (Math.PI / 30)));
  return Array.from({ length: steps + (hasEnd ? 1 : 0) }, (_, i) => {
    const angle = from + ((to - from) * i) / steps;
    return plus(centre, [Math.cos(angle), Math.sin(angle), 0], radius);
  });
}
