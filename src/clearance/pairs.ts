/**
 * Which bodies are held against each other.
 *
 * Lever and keep-out, where the keep-out stands on the lever's layer or on all of them. Rod and keep-out likewise; a rod lies on the layer of
 * the levers that it joins, since the format gives it none, and where these stand on two layers on none that is known. So do inners and
 * springs. A part in space is held against each keep-out that says from where to where along z it stands, whatever its layer, and against no
 * part.
 *
 * Two levers on one layer, but for what a slot joins: the pin's arm and outline lie in the fork. Two levers about one axis sit on one shaft,
 * beside each other along it, whatever their layer says.
 *
 * Rod and lever, rod and rod, on one layer: but a rod lies beside the levers that it joins, and two rods on one pin beside each other.
 */
import type { Build } from '../kinematics/build.ts';
import type { Body, Bodies, KeepOutBody, LeverBody, Mover, RodBody } from './bodies.ts';
import type { Piece } from './piece.ts';

export interface Pair {
  readonly one: Mover;
  readonly other: Body;
  /** Those of their pieces that can meet. */
  readonly pieces: readonly (readonly [Piece, Piece])[];
}

/** Two bodies that might meet and are not held against each other. */
export interface Apart {
  readonly one: Body;
  readonly other: Body;
  readonly why: 'one-shaft' | 'slot' | 'between-layers' | 'no-extent';
}

export interface Pairs {
  readonly keepOuts: readonly (Pair & { readonly other: KeepOutBody })[];
  readonly parts: readonly (Pair & { readonly other: LeverBody | RodBody })[];
  readonly apart: readonly Apart[];
}

export function pairsOf(build: Build, bodies: Bodies): Pairs {
  const { keepOuts, runs } = bodies;
  const levers = bodies.levers.filter(({ inSpace }) => !inSpace);
  const rods = bodies.rods.filter(({ inSpace }) => !inSpace);
  const apart: Apart[] = [];
  const against: (Pair & { readonly other: KeepOutBody })[] = [];
  for (const other of keepOuts) {
    for (const one of [...bodies.levers, ...bodies.rods, ...runs]) {
      if (one.inSpace) {
        if (other.inSpace === undefined) apart.push({ one, other, why: 'no-extent' });
        else against.push({ one, other, pieces: allOf(one.pieces, other.inSpace) });
      } else if (other.layer !== undefined && one.layer === undefined) apart.push({ one, other, why: 'between-layers' });
      else if (other.layer === undefined || other.layer === one.layer) {
        against.push({ one, other, pieces: allOf(one.pieces, other.pieces) });
      }
    }
  }
  const parts: (Pair & { readonly other: LeverBody | RodBody })[] = [];
  const put = (one: LeverBody | RodBody, other: LeverBody | RodBody, pieces: Pair['pieces']): void => {
    if (pieces.length > 0) parts.push({ one, other, pieces });
  };
  for (const [i, one] of levers.entries()) {
    for (const other of levers.slice(i + 1)) {
      if (one.layer !== other.layer) continue;
      if (isOneShaft(build, one, other)) apart.push({ one, other, why: 'one-shaft' });
      else {
        const pieces = withoutSlots(build, one, other);
        if (pieces.length < one.pieces.length * other.pieces.length) apart.push({ one, other, why: 'slot' });
        put(one, other, pieces);
      }
    }
  }
  for (const [i, rod] of rods.entries()) {
    for (const other of [...levers.filter(({ model }) => !rod.levers.includes(model.index)), ...rods.slice(i + 1)]) {
      if (other.kind === 'rod' && shareAPin(rod, other)) continue;
      if (rod.layer === undefined || other.layer === undefined) apart.push({ one: rod, other, why: 'between-layers' });
      else if (rod.layer === other.layer) put(rod, other, allOf(rod.pieces, other.pieces));
    }
  }
  return { keepOuts: against, parts, apart };
}

function allOf(one: readonly Piece[], other: readonly Piece[]): Pair['pieces'] {
  return one.flatMap((a) => other.map((b) => [a, b] as const));
}

function isOneShaft({ parameters: p }: Build, { model: a }: LeverBody, { model: b }: LeverBody): boolean {
  return Math.hypot(p[a.pivot]! - p[b.pivot]!, p[a.pivot + 1]! - p[b.pivot + 1]!) < SAME;
}

/** m */
const SAME = 1e-9;

/** Without the pin's arm and outline against the forked lever, which it lies in. */
function withoutSlots(build: Build, one: LeverBody, other: LeverBody): Pair['pieces'] {
  const slots = build.mechanism.joints.filter((joint) => joint.kind === 'slot');
  const joined = (piece: Piece, of: LeverBody, fork: LeverBody): boolean =>
    slots.some(
      (slot) =>
        slot.pinLever === of.model.index &&
        slot.fork === fork.model.index &&
        (piece.kind === 'outline' || piece.name === `${of.name}.${slot.source.pin.part}`),
    );
  return allOf(one.pieces, other.pieces).filter(([a, b]) => !joined(a, one, other) && !joined(b, other, one));
}

function shareAPin({ joint: a }: RodBody, { joint: b }: RodBody): boolean {
  const pins = ({ driver, driverPin, driven, drivenPin }: RodBody['joint']) => [
    [driver, driverPin],
    [driven, drivenPin],
  ];
  return pins(a).some(([lever, pin]) => pins(b).some(([otherLever, otherPin]) => lever === otherLever && pin === otherPin));
}
