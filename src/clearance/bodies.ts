/**
 * What can touch: levers with their arms, drums and outline, rods, inners of cables and springs where they run free, and keep-outs, each as
 * convex pieces.
 *
 * An arm is a capsule from pivot to pin, as broad as the lever's `width`; a round drum a circle of its radius; another drum what its inner
 * lies on (`rimPieces.ts`); an outline what its corners bound; a rod a capsule between its pins; inners and springs (`runs.ts`) capsules
 * between theirs. All that turns about z is seen along z, on its layer.
 *
 * A lever that turns about another direction than z sweeps a shape that no view along z shows. It and what is joined to it are taken in space,
 * where a keep-out stands from its `from` to its `to` along z, whatever the layer: such a part goes through the layers. Its arms are round bars
 * as thick as they are broad, which is thicker than they are; of its drums and outline nothing says how thick they are.
 */
import type { Cable, KeepOut, Lever, Place, Rod, Spring } from '../definition/definition.ts';
import type { Build } from '../kinematics/build.ts';
import type { LeverModel, RodJoint } from '../kinematics/model.ts';
import { convexPieces } from '../numeric/convexPieces.ts';
import { faultOf, MOST_CORNERS, type Corner as Place2 } from '../numeric/polygon.ts';
import { isAlongZ, isBounded, layerOf, pinCorner, standing, turningCorner } from './corners.ts';
import { UNITS, type Piece } from './piece.ts';
import { rimShape } from './rimPieces.ts';
import { runsOf, type Runless } from './runs.ts';

interface BodyCommon {
  readonly name: string;
  readonly pieces: readonly Piece[];
  /** Levers that its corners turn with, each once; none for a keep-out. */
  readonly levers: readonly number[];
}

interface MovingCommon extends BodyCommon {
  /** Taken in space and not seen along z: some of its levers do not turn about z. */
  readonly inSpace: boolean;
}

export interface LeverBody extends MovingCommon {
  readonly kind: 'lever';
  readonly source: Lever;
  readonly model: LeverModel;
  readonly layer: number;
}

export interface RodBody extends MovingCommon {
  readonly kind: 'rod';
  readonly source: Rod;
  readonly joint: RodJoint;
  /** That of the two levers which it joins, since the format gives a rod none; undefined where they stand on two. */
  readonly layer: number | undefined;
}

/** The inner of a cable between a housing end and what it hangs on, or a coiled spring between its ends. */
export interface RunBody extends MovingCommon {
  readonly kind: 'cable' | 'spring';
  readonly source: Cable | Spring;
  /** That of the levers that it hangs on; undefined where these stand on two. */
  readonly layer: number | undefined;
}

export interface KeepOutBody extends BodyCommon {
  readonly kind: 'keep-out';
  readonly source: KeepOut;
  /** Undefined: on all layers. */
  readonly layer: number | undefined;
  /** The same pieces from its `from` to its `to` along z; undefined where the file does not give these. */
  readonly inSpace: readonly Piece[] | undefined;
}

export type Mover = LeverBody | RodBody | RunBody;
export type Body = Mover | KeepOutBody;

/** Why something that the file describes is no body, or not all of one. */
export interface Shapeless {
  readonly kind: 'lever' | 'rod' | 'keep-out';
  readonly name: string;
  readonly source: Lever | Rod | KeepOut;
  readonly layer: number | undefined;
  readonly why: 'no-width' | 'turned-drum' | 'turned-outline' | 'profiled-drum' | 'many-corners' | 'no-area' | 'unbounded';
  /** Of a drum: its name. */
  readonly piece?: string;
}

export interface Bodies {
  readonly levers: readonly LeverBody[];
  readonly rods: readonly RodBody[];
  readonly runs: readonly RunBody[];
  readonly keepOuts: readonly KeepOutBody[];
  readonly shapeless: readonly Shapeless[];
  /** Cables and springs, or parts of them, of which nothing says how they run or how thick they are. */
  readonly runless: readonly Runless[];
}

export function bodiesOf(build: Build): Bodies {
  const { mechanism } = build;
  const { keepOuts } = mechanism.definition;
  const shapeless: Shapeless[] = [];
  const levers = mechanism.levers.flatMap((model) => leverBody(build, model, shapeless) ?? []);
  const rods = mechanism.joints.flatMap((joint) => (joint.kind === 'rod' ? (rodBody(build, joint, shapeless) ?? []) : []));
  const { runs, runless } = runsOf(build);
  return { levers, rods, runs, keepOuts: keepOuts.flatMap((source) => keepOutBody(source, shapeless) ?? []), shapeless, runless };
}

/** What planck's polygons have at most; also what keeps a piece's corners quickly seen through. */
const MOST_OF_PIECE = 12;

function leverBody(build: Build, model: LeverModel, shapeless: Shapeless[]): LeverBody | undefined {
  const { source, index, name, pins, drums } = model;
  const { width, outline } = source;
  const layer = layerOf(source);
  const lacks = (why: Shapeless['why'], piece?: string) =>
    shapeless.push({ kind: 'lever', name, source, layer, why, ...(piece !== undefined && { piece }) });
  const inSpace = !isAlongZ(build, index);
  const p = build.parameters;
  const pieces: Piece[] = [];
  if (width !== undefined) {
    for (const [arm, pin] of pins) {
      const end = pinCorner(build, index, pin);
      const root = standing(end.base);
      pieces.push({ corners: [root, end], radius: (width.nominal / 2) * UNITS, name: `${name}.${arm}`, kind: 'arm' });
    }
  } else if (outline === undefined && pins.size > 0) lacks('no-width');
  const pivot: readonly [number, number] = [UNITS * p[model.pivot]!, UNITS * p[model.pivot + 1]!];
  const sense = Math.sign(p[model.axis + 2]!);
  if (inSpace) {
    for (const { name: drum } of drums.values()) lacks('turned-drum', drum);
    if (outline !== undefined) lacks('turned-outline');
  }
  for (const drum of inSpace ? [] : drums.values()) {
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
  if (outline !== undefined && !inSpace) {
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
  return { kind: 'lever', name, source, model, layer, pieces, levers: [index], inSpace };
}

function rodBody(build: Build, joint: RodJoint, shapeless: Shapeless[]): RodBody | undefined {
  const { name, source, driver, driven, driverPin, drivenPin } = joint;
  const { levers } = build.mechanism;
  const [one, other] = [layerOf(levers[driver]!.source), layerOf(levers[driven]!.source)];
  const layer = one === other ? one : undefined;
  const lacks = (why: Shapeless['why']) => void shapeless.push({ kind: 'rod', name, source, layer, why });
  const inSpace = !isAlongZ(build, driver) || !isAlongZ(build, driven);
  if (source.width === undefined) return lacks('no-width');
  const corners = [pinCorner(build, driver, driverPin), pinCorner(build, driven, drivenPin)];
  const piece: Piece = { corners, radius: (source.width.nominal / 2) * UNITS, name, kind: 'rod' };
  if (!isBounded(piece)) return lacks('unbounded');
  return { kind: 'rod', name, source, joint, layer, pieces: [piece], levers: [driver, driven], inSpace };
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
  const { extent } = source;
  const between = extent === undefined ? undefined : ([UNITS * extent.from.nominal, UNITS * extent.to.nominal] as const);
  const inSpace = between === undefined ? undefined : pieces.map((piece): Piece => ({ ...piece, between }));
  return { kind: 'keep-out', name, source, layer, pieces, levers: [], inSpace };
}

function placeOf({ x, y }: Place): readonly [number, number] {
  return [UNITS * x.nominal, UNITS * y.nominal];
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
