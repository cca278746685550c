/**
 * A cable: the free inner from each housing end to its pin or drum, to scale; the ends of the housing as small tubes; and the housing
 * between them as a curve that leaves them the way they point. How the housing really runs, the file does not say. An inner that still has
 * slack hangs: a shallow arch that is longer than its chord by the slack is as deep as √(3/8 · chord · slack).
 */
import type { DrawnCable, HousingEnd } from '../../../src/protocol/picture.ts';
import { figureAt } from '../interpolate.ts';
import type { Mark, Pen, Symbol } from '../mark.ts';
import { figure, line, move, segment } from '../path.ts';
import type { Pose } from '../pose.ts';
import { MM_PER_M, onPaper, type Spot } from '../projection.ts';
import { leverAt, type Sheet } from '../sheet.ts';
import { turningPoint, xAt, yAt } from '../turning.ts';
import { DRAWING_WORDS as WORDS } from '../../words/drawing.ts';

export function cableSymbol(sheet: Sheet, cable: DrawnCable): Symbol {
  const key = `cable:${cable.name}`;
  const ends = cable.leaves === undefined ? [cable.enters] : [cable.leaves, cable.enters];
  const inners = ends.map((end) => innerOf(sheet, end, end === cable.enters ? cable.slack : undefined));
  const inner = (pose: Pose, pen: Pen) => {
    let text = '';
    let stands = false;
    for (const { pathAt, lever } of inners) {
      text += pathAt(pose);
      stands ||= pose.stands[lever] === 1;
    }
    pen.path(text);
    pen.stands(stands);
  };
  const tubes = ends.map((end) => tubeOf(sheet, end));
  const housing = (pose: Pose) => housingPath(tubes, pose.pixel);
  const names = cable.leaves === undefined ? [`${cable.name}.enters`] : [`${cable.name}.leaves`, `${cable.name}.enters`];
  const entry = tubes[tubes.length - 1]!;
  const still = { layer: 'cables', tag: 'path', moves: false } as const;
  const marks: Mark[] = [
    { ...still, key: `${key}/housing`, look: 'housing', place: (pose, pen) => pen.path(housing(pose)) },
    { ...still, key: `${key}/bore`, look: 'housing-core', place: (pose, pen) => pen.path(housing(pose)) },
    ...tubes.map((tube, i): Mark => ({
      ...still,
      key: `${key}/end/${i}`,
      look: 'tube',
      name: names[i]!,
      place: ({ pixel }, pen) => pen.path(tubePath(tube, pixel)),
    })),
    { ...still, key: `${key}/inner`, look: 'inner', moves: true, place: inner },
  ];
  return {
    key,
    part: { kind: 'cable', name: cable.name },
    note: WORDS.housingNote,
    marks,
    grip: (pose, pen) => inner(pose, { ...pen, path: (text) => pen.path(text + housing(pose)) }),
    anchor: (_pose, out) => {
      out.x = entry.at.x;
      out.y = entry.at.y;
    },
  };
}

interface Tube {
  readonly at: Spot;
  /** From housing to free inner, of length 1 on the paper. */
  readonly way: Spot;
}

function tubeOf(sheet: Sheet, end: HousingEnd): Tube {
  const at = onPaper(sheet.view, end.housing);
  const given = end.along && onPaper(sheet.view, end.along);
  const towards = given !== undefined && Math.hypot(given.x, given.y) > SEEN ? given : towardsInner(sheet, end, at);
  const length = Math.hypot(towards.x, towards.y) || 1;
  return { at, way: { x: towards.x / length, y: towards.y / length } };
}

/** Of a direction 1000 long: one that points at the person who looks has no way on the paper. */
const SEEN = 50;

/** Where the file gives no direction the end looks at where its inner goes at first. */
function towardsInner(sheet: Sheet, { inner }: HousingEnd, at: Spot): Spot {
  if (inner.kind === 'pin') {
    const pin = turningPoint(sheet.view, inner.lever, inner.at);
    return { x: pin.x + pin.px - at.x, y: pin.y + pin.py - at.y };
  }
  const first = inner.rim.findIndex((figure) => !Number.isNaN(figure));
  if (first < 0) return { x: 1, y: 0 };
  const rim = onPaper(sheet.view, [inner.rim[first]!, inner.rim[first + 1]!, inner.rim[first + 2]!]);
  return { x: rim.x - at.x, y: rim.y - at.y };
}

const TUBE_PX = 15;
const TUBE_HALF_PX = 3.2;

function tubePath({ at, way }: Tube, u: number): string {
  const back = { x: at.x - way.x * TUBE_PX * u, y: at.y - way.y * TUBE_PX * u };
  const nx = -way.y * TUBE_HALF_PX * u;
  const ny = way.x * TUBE_HALF_PX * u;
  return `${segment(at.x + nx, at.y + ny, at.x - nx, at.y - ny)}${line(back.x - nx, back.y - ny)}${line(back.x + nx, back.y + ny)}Z`;
}

/** Spots on the housing's curve, which goes beyond its ends; the length of the tubes, which is the screen's, is left out. */
export function housingSpots(sheet: Sheet, cable: DrawnCable): readonly Spot[] {
  if (cable.leaves === undefined) return [onPaper(sheet.view, cable.enters.housing)];
  const a = tubeOf(sheet, cable.leaves);
  const b = tubeOf(sheet, cable.enters);
  const bow = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y) * BOW;
  return Array.from({ length: SAMPLES + 1 }, (_, i) => {
    const t = i / SAMPLES;
    const [w0, w1, w2, w3] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
    const along = (at: 'x' | 'y') => w0 * a.at[at] + w1 * (a.at[at] - a.way[at] * bow) + w2 * (b.at[at] - b.way[at] * bow) + w3 * b.at[at];
    return { x: along('x'), y: along('y') };
  });
}

const SAMPLES = 16;

/** From the back of one tube to the back of the other; of a single one, a little way out. */
function housingPath(tubes: readonly Tube[], u: number): string {
  const back = ({ at, way }: Tube, px: number): Spot => ({ x: at.x - way.x * px * u, y: at.y - way.y * px * u });
  const [a, b] = tubes;
  if (a === undefined) return '';
  const start = back(a, TUBE_PX);
  if (b === undefined) return segment(start.x, start.y, back(a, 4 * TUBE_PX).x, back(a, 4 * TUBE_PX).y);
  const end = back(b, TUBE_PX);
  const bow = Math.hypot(end.x - start.x, end.y - start.y) * BOW;
  const c1 = { x: start.x - a.way.x * bow, y: start.y - a.way.y * bow };
  const c2 = { x: end.x - b.way.x * bow, y: end.y - b.way.y * bow };
  const at = ({ x, y }: Spot) => `${figure(x)} ${figure(y)}`;
  return `M${at(start)}C${at(c1)} ${at(c2)} ${at(end)}`;
}

/** Share of the distance at which a curve's handles stand; a quarter circle has 0.39 of its chord. */
const BOW = 0.4;

interface Inner {
  readonly lever: number;
  readonly pathAt: (pose: Pose) => string;
}

function innerOf(sheet: Sheet, end: HousingEnd, slack: Float64Array | undefined): Inner {
  const housing = onPaper(sheet.view, end.housing);
  const { inner } = end;
  const reach = inner.kind === 'pin' ? pinReach(sheet, inner) : rimReach(sheet, inner);
  const spot = { x: 0, y: 0 };
  return {
    lever: inner.lever,
    pathAt: (pose) => {
      reach(pose, spot);
      if (Number.isNaN(spot.x)) return '';
      // How much of it hangs in a motion of its own nothing says: it is drawn tight.
      const left = slack === undefined || pose.own !== undefined ? 0 : figureAt(slack, pose.at);
      if (!(left > 0)) return segment(housing.x, housing.y, spot.x, spot.y);
      const depth = Math.sqrt((3 / 8) * Math.hypot(spot.x - housing.x, spot.y - housing.y) * MM_PER_M * left);
      // A quadratic curve is half as deep as its handle.
      const x = (housing.x + spot.x) / 2;
      const y = (housing.y + spot.y) / 2 + 2 * depth;
      return `${move(housing.x, housing.y)}Q${figure(x)} ${figure(y)} ${figure(spot.x)} ${figure(spot.y)}`;
    },
  };
}

type Reach = (pose: Pose, out: { x: number; y: number }) => void;

function pinReach(sheet: Sheet, inner: Extract<HousingEnd['inner'], { readonly kind: 'pin' }>): Reach {
  const pin = turningPoint(sheet.view, inner.lever, inner.at);
  return (pose, out) => {
    out.x = xAt(pin, pose);
    out.y = yAt(pin, pose);
  };
}

function rimReach(sheet: Sheet, inner: Extract<HousingEnd['inner'], { readonly kind: 'drum' }>): Reach {
  const { right, up } = sheet.view;
  const stations = leverAt(sheet, inner.lever).rotation;
  return (pose, out) => {
    const stands = pose.stands[inner.lever] === 1 && stations.length > 0;
    const at = stands ? { from: Math.max(0, pose.known[inner.lever]!), share: 0 } : (pose.own?.[inner.lever] ?? pose.at);
    const x = figureAt(inner.rim, at, 3, 0);
    const y = figureAt(inner.rim, at, 3, 1);
    const z = figureAt(inner.rim, at, 3, 2);
    out.x = MM_PER_M * (right[0] * x + right[1] * y + right[2] * z);
    out.y = -MM_PER_M * (up[0] * x + up[1] * y + up[2] * z);
  };
}
