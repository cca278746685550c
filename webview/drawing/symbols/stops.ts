/** Stops of a lever: a hatched tick across the way of its longest arm, at closed and at open, where the arm's line meets it. */
import type { DrawnLever } from '../../../src/protocol/picture.ts';
import type { Mark } from '../mark.ts';
import { hatch, polyline, segment } from '../path.ts';
import type { Sheet } from '../sheet.ts';
import { xTurned, yTurned, type Point } from '../turning.ts';
import type { Arm } from './lever.ts';

/** None where the lever has no arm in this view to meet them. */
export function stopMarks(sheet: Sheet, key: string, lever: DrawnLever, arms: readonly Arm[]): readonly Mark[] {
  const reach = ({ pin }: Arm) => Math.hypot(pin.px, pin.py) + Math.hypot(pin.cx, pin.cy);
  const arm = [...arms].sort((a, b) => reach(b) - reach(a))[0];
  if (arm === undefined || reach(arm) < sheet.ornament / 4) return [];
  const { pin } = arm;
  const at: Point = { ...pin, px: ALONG * pin.px, py: ALONG * pin.py, cx: ALONG * pin.cx, cy: ALONG * pin.cy };
  const marks: Mark[] = [];
  const { closed, open } = lever.stops;
  if (closed !== undefined) marks.push(tick(`${key}/stop/closed`, `${lever.name}.stops.closed`, at, lever.sense * closed, -lever.sense));
  if (open !== undefined) marks.push(tick(`${key}/stop/open`, `${lever.name}.stops.open`, at, lever.sense * open, lever.sense));
  if (closed !== undefined && open !== undefined) marks.push(sweep(`${key}/stop/sweep`, at, lever.sense * closed, lever.sense * open));
  return marks;
}

/** Share of the arm at which its stops stand. */
const ALONG = 0.55;

/** @param way +1 where the lever comes to it by turning counter-clockwise about its axis */
function tick(key: string, name: string, at: Point, rotation: number, way: number): Mark {
  const x = xTurned(at, rotation);
  const y = yTurned(at, rotation);
  const ahead = {
    x: way * (Math.cos(rotation) * at.cx - Math.sin(rotation) * at.px),
    y: way * (Math.cos(rotation) * at.cy - Math.sin(rotation) * at.py),
  };
  const length = Math.hypot(ahead.x, ahead.y) || 1;
  const onward = { x: ahead.x / length, y: ahead.y / length };
  const across = { x: -onward.y, y: onward.x };
  return {
    key,
    layer: 'ground',
    tag: 'path',
    look: 'stop',
    name,
    moves: false,
    place: ({ pixel: u, isSmall }, pen) => {
      const x0 = x + onward.x * 2 * u;
      const y0 = y + onward.y * 2 * u;
      const text = segment(x0 - across.x * 7 * u, y0 - across.y * 7 * u, x0 + across.x * 7 * u, y0 + across.y * 7 * u);
      pen.path(isSmall ? text : text + hatch(x0, y0, across, onward, 14 * u, 4.5 * u, 4 * u));
    },
  };
}

function sweep(key: string, at: Point, from: number, to: number): Mark {
  const spots = Array.from({ length: CHORDS + 1 }, (_, i) => {
    const rotation = from + ((to - from) * i) / CHORDS;
    return { x: xTurned(at, rotation), y: yTurned(at, rotation) };
  });
  return { key, layer: 'traces', tag: 'path', look: 'sweep', moves: false, place: (_pose, pen) => pen.path(polyline(spots)) };
}

const CHORDS = 32;
