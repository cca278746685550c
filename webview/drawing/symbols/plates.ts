/**
 * Throttle plates in section: the walls of one bore, hatched, and the plate on its shaft. The bore's way is not in the file: it is drawn
 * as upright as the shaft allows. A plate that closes at the seat angle is an ellipse, longer than the bore by 1 / cos(seat).
 */
import type { DrawnPlates } from '../../../src/protocol/picture.ts';
import type { Mark, Pen, Symbol } from '../mark.ts';
import { hatch, polyline, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { MM_PER_M, onPaper, type Spot } from '../projection.ts';
import { acrossAxis, anchoredAt, dialAbout, leverAt, onDial, type Dial, type Sheet } from '../sheet.ts';
import { cross, unit } from '../vector.ts';
import { DRAWING_WORDS as WORDS } from '../../words/drawing.ts';

export function platesSymbol(sheet: Sheet, plates: DrawnPlates): Symbol {
  const key = `plates:${plates.name}`;
  const lever = leverAt(sheet, plates.lever);
  const dial = dialAbout(sheet, lever.pivot, lever.axis);
  const disc = discOf(sheet, plates, dial);
  const plate = (pose: Pose, pen: Pen) => {
    pen.path(disc(pose.rotation[plates.lever]!));
    pen.stands(pose.stands[plates.lever] === 1);
  };
  const half = (MM_PER_M * plates.bore) / 2;
  const top = onDial(dial, 0, WALL * 2 * half);
  const marks: Mark[] = [
    ...boreMarks(sheet, key, dial, lever.axis, half),
    { key: `${key}/plate`, layer: 'plates', tag: 'path', look: 'plate', name: plates.name, moves: true, place: plate },
  ];
  if (dial.isTrue) {
    const place = (_pose: Pose, pen: Pen) => pen.circle(dial.centre.x, dial.centre.y, (MM_PER_M * plates.shaft) / 2);
    marks.push({ key: `${key}/shaft`, layer: 'plates', tag: 'circle', look: 'shaft', moves: false, place });
  }
  return {
    key,
    part: { kind: 'plates', name: plates.name },
    note: WORDS.platesNote(plates.count),
    marks,
    grip: plate,
    anchor: anchoredAt({ x: top.x + half, y: top.y }),
  };
}

/** Half the length of the wall drawn, as a share of the bore. */
const WALL = 0.78;

/** Path of the plate at a rotation of its lever, rad. */
export function discOf(sheet: Sheet, plates: DrawnPlates, dial: Dial): (rotation: number) => string {
  const lever = leverAt(sheet, plates.lever);
  const half = (MM_PER_M * plates.bore) / 2;
  const long = half / Math.cos(plates.seat);
  const across = onPaper(sheet.view, lever.axis);
  const wide: Spot = { x: (across.x / MM_PER_M) * half, y: (across.y / MM_PER_M) * half };
  return (rotation) => {
    const end = onDial(dial, Math.PI / 2 + lever.sense * plates.drawnAngle + rotation, long);
    const dx = end.x - dial.centre.x;
    const dy = end.y - dial.centre.y;
    if (dial.isTrue) return segment(dial.centre.x - dx, dial.centre.y - dy, end.x, end.y);
    const spots = Array.from({ length: CHORDS }, (_, i): Spot => {
      const c = Math.cos((2 * Math.PI * i) / CHORDS);
      const s = Math.sin((2 * Math.PI * i) / CHORDS);
      return { x: dial.centre.x + c * dx + s * wide.x, y: dial.centre.y + c * dy + s * wide.y };
    });
    return polyline(spots, true);
  };
}

const CHORDS = 48;

function boreMarks(sheet: Sheet, key: string, dial: Dial, axis: readonly [number, number, number], half: number): readonly Mark[] {
  const { up, side } = acrossAxis(axis);
  const length = 2 * half * WALL;
  const still = { layer: 'plates', tag: 'path', moves: false } as const;
  const marks: Mark[] = [];
  const outwards = unit(cross(up, sheet.view.towards));
  if (outwards !== undefined) {
    const out = onPaper(sheet.view, outwards);
    const wall: Spot = { x: (out.x / MM_PER_M) * half, y: (out.y / MM_PER_M) * half };
    const rise: Spot = { x: dial.up.x * length, y: dial.up.y * length };
    const { x, y } = dial.centre;
    const seen = Math.hypot(dial.up.x, dial.up.y);
    const along: Spot = { x: dial.up.x / (seen || 1), y: dial.up.y / (seen || 1) };
    const wallPath = (way: 1 | -1, { pixel: u, isSmall }: Pose) => {
      const wx = x + way * wall.x;
      const wy = y + way * wall.y;
      const outer: Spot = { x: (way * wall.x) / half, y: (way * wall.y) / half };
      const line = segment(wx - rise.x, wy - rise.y, wx + rise.x, wy + rise.y);
      return isSmall ? line : line + hatch(wx, wy, along, outer, 2 * length * seen, 5 * u, 5 * u);
    };
    marks.push(
      { ...still, key: `${key}/walls`, look: 'wall', place: (pose, pen) => pen.path(wallPath(1, pose) + wallPath(-1, pose)) },
      {
        ...still,
        key: `${key}/centre`,
        look: 'axis',
        place: (_pose, pen) => pen.path(segment(x - rise.x * 1.15, y - rise.y * 1.15, x + rise.x * 1.15, y + rise.y * 1.15)),
      },
    );
  }
  if (!dial.isTrue) {
    const a = onPaper(sheet.view, axis);
    const s = onPaper(sheet.view, side);
    const rim = (way: 1 | -1) =>
      polyline(
        Array.from({ length: CHORDS }, (_, i): Spot => {
          const c = (Math.cos((2 * Math.PI * i) / CHORDS) * half) / MM_PER_M;
          const t = (Math.sin((2 * Math.PI * i) / CHORDS) * half) / MM_PER_M;
          return {
            x: dial.centre.x + way * dial.up.x * length + c * a.x + t * s.x,
            y: dial.centre.y + way * dial.up.y * length + c * a.y + t * s.y,
          };
        }),
        true,
      );
    const text = rim(1) + rim(-1);
    marks.push({ ...still, key: `${key}/rims`, look: 'wall', place: (_pose, pen) => pen.path(text) });
  }
  return marks;
}
