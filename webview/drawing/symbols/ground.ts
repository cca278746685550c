/**
 * A revolute pair to the frame, after ISO 3952-1: a small circle that stands on hatched ground; seen from the side of its axis, a shaft in
 * two bearings. The symbol keeps its size on the screen.
 */
import type { Triple } from '../../../src/protocol/picture.ts';
import type { Mark } from '../mark.ts';
import { hatch, line, move, polyline, segment } from '../path.ts';
import { onPaper, type Spot } from '../projection.ts';
import { alongDial, dialAbout, type Sheet } from '../sheet.ts';
import { dot } from '../vector.ts';

/** @param key what the keys of its marks begin with */
export function groundMarks(sheet: Sheet, key: string, pivot: Triple, axis: Triple): readonly Mark[] {
  const facing = Math.abs(dot(axis, sheet.view.towards));
  return facing > MOSTLY ? standMarks(sheet, key, pivot, axis) : bearingMarks(sheet, key, pivot, axis);
}

/** Beyond 60° from the line of sight an axis is read as a line. */
const MOSTLY = 0.5;

const CIRCLE_PX = 5;

/** Circle, two legs, ground line and its hatching. */
function standMarks(sheet: Sheet, key: string, pivot: Triple, axis: Triple): readonly Mark[] {
  const dial = dialAbout(sheet, pivot, axis);
  const { x, y } = dial.centre;
  const from = [x, y, dial.up.x, dial.up.y, dial.side.x, dial.side.y];
  return [
    {
      key: `${key}/ground`,
      layer: 'ground',
      tag: 'path',
      look: 'ground',
      moves: false,
      from,
      place: ({ pixel: u }, pen) =>
        pen.path(
          move(x, y) +
            line(x - 7 * u, y + 13 * u) +
            move(x, y) +
            line(x + 7 * u, y + 13 * u) +
            segment(x - 12 * u, y + 13 * u, x + 12 * u, y + 13 * u) +
            hatch(x, y + 13 * u, RIGHT, DOWN, 24 * u, 5 * u, 5 * u),
        ),
    },
    {
      key: `${key}/pivot`,
      layer: 'pins',
      tag: 'path',
      look: 'pivot',
      moves: false,
      from,
      place: ({ pixel: u }, pen) => pen.path(polyline(alongDial(dial, 0, 2 * Math.PI, CIRCLE_PX * u), true)),
    },
  ];
}

const RIGHT: Spot = { x: 1, y: 0 };
const DOWN: Spot = { x: 0, y: 1 };

/** The axis as a chain line, a bearing to either side of it, hatched. */
function bearingMarks(sheet: Sheet, key: string, pivot: Triple, axis: Triple): readonly Mark[] {
  const { x, y } = onPaper(sheet.view, pivot);
  const way = onPaper(sheet.view, axis);
  const length = Math.hypot(way.x, way.y);
  const along: Spot = { x: way.x / length, y: way.y / length };
  const out: Spot = { x: -along.y, y: along.x };
  const back: Spot = { x: along.y, y: -along.x };
  return [
    {
      key: `${key}/axis`,
      layer: 'ground',
      tag: 'path',
      look: 'axis',
      moves: false,
      place: ({ pixel: u }, pen) =>
        pen.path(segment(x - along.x * 22 * u, y - along.y * 22 * u, x + along.x * 22 * u, y + along.y * 22 * u)),
    },
    {
      key: `${key}/ground`,
      layer: 'ground',
      tag: 'path',
      look: 'ground',
      moves: false,
      place: ({ pixel: u }, pen) => {
        let text = '';
        for (const side of [out, back]) {
          const sx = x + side.x * 5 * u;
          const sy = y + side.y * 5 * u;
          text += segment(sx - along.x * 8 * u, sy - along.y * 8 * u, sx + along.x * 8 * u, sy + along.y * 8 * u);
          text += hatch(sx, sy, along, side, 16 * u, 5 * u, 5 * u);
        }
        pen.path(text);
      },
    },
  ];
}
