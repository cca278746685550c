/**
 * What can touch: levers with their arms, drums and outline, rods, and keep-outs, each as convex pieces seen along z.
 *
 * An arm is a capsule from pivot to pin, as broad as the lever's `width`; a round drum a circle of its radius; another drum what its inner
 * lies on (`rimPieces.ts`); an outline what its corners bound; a rod a capsule between its pins. A lever that turns about another direction than z sweeps a shape that no view along z shows, and a
 * keep-out says nothing of how far it reaches along z: neither such a lever nor a rod on it is a body.
 */
import type { KeepOut, Lever, Place, Rod } from '../definition/definition.ts';
import type { Build } from '../kinematics/build.ts';
import type { LeverModel, RodJoint } from '../kinematics/model.ts';
import { convexPieces } from '../numeric/convexPieces.ts';
import { faultOf, MOST_CORNERS, type Corner as Place2 } from '../numeric/polygon.ts';
import { UNITS, type Corner, type Piece } from './piece.ts';
import { rimShape } from './rimPieces.ts';

interface BodyCommon {
  readonly name: string;
  readonly pieces: readonly Piece[];
  /** Levers that its corners turn with, each once; none for a keep-out. */
  readonly levers: readonly number[];
}

export interface LeverBody extends BodyCommon {
  readonly kind: 'lever';
  readonly source: Lever;
  readonly model: LeverModel;
  readonly layer: number;
}

export interface RodBody extends BodyCommon {
  readonly kind: 'rod';
  readonly source: Rod;
  readonly joint: RodJoint;
  /** That of the two levers which it joins, since the format gives a rod none; undefined where they stand on two. */
  readonly layer: number | undefined;
}

export interface KeepOutBody extends BodyCommon {
  readonly kind: 'keep-out';
  readonly source: KeepOut;
  /** Undefined: on all layers. */
  readonly layer: number | undefined;
}

export type Body = LeverBody | RodBody | KeepOutBody;

/** Why something that the file describes is no body, or not all of one. */
export interface Shapeless {
  readonly kind: Body['kind'];
  readonly name: string;
  readonly source: Lever | Rod | KeepOut;
  readonly layer: number | undefined;
  readonly why: 'no-width' | 'turned-axis' | 'profiled-drum' | 'many-corners' | 'no-area' | 'unbounded';
  /** Of a drum: its name. */
  readonly piece?: string;
}

export interface Bodies {
  readonly levers: readonly LeverBody[];
  readonly rods: readonly RodBody[];
  readonly keepOuts: readonly KeepOutBody[];
  readonly shapeless: readonly Shapeless[];
}

export function bodiesOf(build: Build): Bodies {
  const { mechanism } = build;
  const { keepOuts } = mechanism.definition;
  const shapeless: Shapeless[] = [];
  const levers = mechanism.levers.flatMap((model) => leverBody(build, model, shapeless) ?? []);
  const rods = mechanism.joints.flatMap((joint) => (joint.kind === 'rod' ? (rodBody(build, joint, shapeless) ?? []) : []));
  return { levers, rods, keepOuts: keepOuts.flatMap((source) => keepOutBody(source, shapeless) ?? []), shapeless };
}

/** Layer of a lever for which the file gives none. */
const FIRST_LAYER = 0;

export function layerOf({ layer }: Lever): number {
  return layer?.nominal ?? FIRST_LAYER;
}

/** What planck's polygons have at most; also what keeps a piece's corners quickly seen through. */
const MOST_OF_PIECE = 12;
/** mm; farther than the reader lets a place be from any other. */
const FARTHEST = 1e6;

function leverBody(build: Build, model: LeverModel, shapeless: Shapeless[]): LeverBody | undefined {
  const { source, index, name, pins, drums } = model;
  const { width, outline } = source;
  const layer = layerOf(source);
  const lacks = (why: Shapeless['why'], piece?: string) =>
    shapeless.push({ kind: 'lever', name, source, layer, why, ...(piece !== undefined && { piece }) });
  if (!isAlongZ(build, index)) {
    if (width !== undefined || outline !== undefined || pins.size > 0 || drums.size > 0) lacks('turned-axis');
    return undefined;
  }
  const p = build.parameters;
  const pieces: Piece[] = [];
  if (width !== undefined) {
    for (const [arm, pin] of pins) {
      const end = pinCorner(build, index, pin);
      const root: Corner = { lever: -1, base: end.base, perp: STILL, cross: STILL };
      pieces.push({ corners: [root, end], radius: (width.nominal / 2) * UNITS, name: `${name}.${arm}`, kind: 'arm' });
    }
  } else if (outline === undefined && pins.size > 0) lacks('no-width');
  const pivot: readonly [number, number] = [UNITS * p[model.pivot]!, UNITS * p[model.pivot + 1]!];
  const sense = Math.sign(p[model.axis + 2]!);
  for (const drum of drums.values()) {
    if (drum.form.kind === 'profile') {
      const shape = rimShape(build, drum, pivot, MOST_OF_PIECE);
      // Inside the outline it is described by that.
      if (shape === undefined && outline === undefined) lacks('profiled-drum', drum.name);
      for (const corners of shape?.pieces ?? []) {
        const turning = corners.map((at) => turningCorner(index, pivot, sense, at));
        pieces.push({ corners: turning, radius: shape?.radius ?? 0, name: `${name}.${drum.name}`, kind: 'drum' });
      }
      continue;
    }
    const radius = UNITS * p[drum.form.radius]!;
    pieces.push({ corners: [standing(pivot)], radius, name: `${name}.${drum.name}`, kind: 'drum' });
  }
  if (outline !== undefined) {
    const split = piecesOf(outline);
    if (split === undefined) lacks(whyNotSplit(outline));
    for (const corners of split ?? [])
      pieces.push({ corners: corners.map((at) => turningCorner(index, pivot, sense, at)), radius: 0, name, kind: 'outline' });
  }
  if (pieces.length === 0) return undefined;
  if (!pieces.every(isBounded)) {
    lacks('unbounded');
    return undefined;
  }
  return { kind: 'lever', name, source, model, layer, pieces, levers: [index] };
}

function rodBody(build: Build, joint: RodJoint, shapeless: Shapeless[]): RodBody | undefined {
  const { name, source, driver, driven, driverPin, drivenPin } = joint;
  const { levers } = build.mechanism;
  const [one, other] = [layerOf(levers[driver]!.source), layerOf(levers[driven]!.source)];
  const layer = one === other ? one : undefined;
  const lacks = (why: Shapeless['why']) => void shapeless.push({ kind: 'rod', name, source, layer, why });
  if (!isAlongZ(build, driver) || !isAlongZ(build, driven)) return lacks('turned-axis');
  if (source.width === undefined) return lacks('no-width');
  const corners = [pinCorner(build, driver, driverPin), pinCorner(build, driven, drivenPin)];
  const piece: Piece = { corners, radius: (source.width.nominal / 2) * UNITS, name, kind: 'rod' };
  if (!isBounded(piece)) return lacks('unbounded');
  return { kind: 'rod', name, source, joint, layer, pieces: [piece], levers: [driver, driven] };
}

function keepOutBody(source: KeepOut, shapeless: Shapeless[]): KeepOutBody | undefined {
  const { name, shape } = source;
  const layer = source.layer?.nominal;
  const lacks = (why: Shapeless['why']) => void shapeless.push({ kind: 'keep-out', name, source, layer, why });
  const common = { name, kind: 'keep-out' } as const;
  let pieces: readonly Piece[];
  if (shape.kind === 'circle') pieces = [{ ...common, corners: [standing(placeOf(shape.centre))], radius: UNITS * shape.radius.nominal }];
  else {
    const split = piecesOf(shape.corners);
    if (split === undefined) return lacks(whyNotSplit(shape.corners));
    pieces = split.map((corners) => ({ ...common, corners: corners.map(standing), radius: 0 }));
  }
  if (!pieces.every(isBounded)) return lacks('unbounded');
  return { kind: 'keep-out', name, source, layer, pieces, levers: [] };
}

const STILL = [0, 0] as const;

const standing = (base: readonly [number, number]): Corner => ({ lever: -1, base, perp: STILL, cross: STILL });

function placeOf({ x, y }: Place): readonly [number, number] {
  return [UNITS * x.nominal, UNITS * y.nominal];
}

/** @param pin nine parameters */
function pinCorner(build: Build, lever: number, pin: number): Corner {
  const p = build.parameters;
  const pair = (from: number): readonly [number, number] => [UNITS * p[from]!, UNITS * p[from + 1]!];
  return { lever, base: pair(pin), perp: pair(pin + 3), cross: pair(pin + 6) };
}

/** @param sense +1 where the axis points at the viewer */
function turningCorner(lever: number, pivot: readonly [number, number], sense: number, at: Place2): Corner {
  const perp = [at[0] - pivot[0], at[1] - pivot[1]] as const;
  return { lever, base: pivot, perp, cross: [-sense * perp[1], sense * perp[0]] };
}

/** Undefined where the corners are too many or bound nothing that can be split. */
function piecesOf(places: readonly Place[]): readonly (readonly Place2[])[] | undefined {
  if (places.length > MOST_CORNERS) return undefined;
  const corners = places.map(placeOf);
  return faultOf(corners) === undefined ? convexPieces(corners, MOST_OF_PIECE) : undefined;
}

function whyNotSplit(places: readonly Place[]): 'many-corners' | 'no-area' {
  return places.length > MOST_CORNERS ? 'many-corners' : 'no-area';
}

function isAlongZ({ mechanism, parameters }: Build, lever: number): boolean {
  const { axis } = mechanism.levers[lever]!;
  return Math.hypot(parameters[axis]!, parameters[axis + 1]!) < ALONG && Number.isFinite(parameters[axis + 2]!);
}

/** Sine of the angle within which a direction is that of z. */
const ALONG = 1e-9;

function isBounded({ corners, radius }: Piece): boolean {
  return radius < FARTHEST && corners.every(({ base, perp }) => [...base, ...perp].every((figure) => Math.abs(figure) < FARTHEST));
}
