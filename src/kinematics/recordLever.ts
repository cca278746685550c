/**
 * A lever's geometry on the tape: its frame, pins, drums and stops.
 *
 * Frame of a lever: u its axis of unit length, e₁ the reference projected square to u, e₂ = u × e₁; polar angles run from e₁
 * to e₂. Everything is of the drawn position.
 */
import type { Arm, Direction, Drum, Lever, Plates } from '../definition/definition.ts';
import type { DrumModel, LeverModel, Parameter } from './model.ts';
import { recordSlopes } from './profile.ts';
import type { Recorder } from './record.ts';
import type { Slot } from './tape.ts';
import type { Vector } from './tapeVector.ts';

export interface LeverFrame {
  readonly pivot: Vector;
  /** u, e₁ and e₂. */
  readonly axis: Vector;
  readonly first: Vector;
  readonly second: Vector;
}

export interface RecordedLever {
  readonly frame: LeverFrame;
  /** Drawn place of each pin. */
  readonly places: ReadonlyMap<string, Vector>;
  /** Parameters of each bolt's direction as a turning vector, for arms whose bolt is not along the axis. */
  readonly bolts: ReadonlyMap<string, Parameter>;
  readonly model: Omit<LeverModel, 'driver' | 'group'>;
}

export function recordLever(recorder: Recorder, lever: Lever, index: number, plates: readonly Plates[], pedal: boolean): RecordedLever {
  const frame = leverFrame(recorder, lever);
  const pins = new Map<string, Parameter>();
  const places = new Map<string, Vector>();
  const bolts = new Map<string, Parameter>();
  for (const arm of lever.arms) {
    const { base, perp } = armVectors(recorder, frame, arm);
    pins.set(arm.name, emitTurning(recorder, base, perp, frame.axis));
    places.set(arm.name, recorder.vectors.add(base, perp));
    bolts.set(arm.name, emitDirection(recorder, frame.axis, arm.bolt));
  }
  const drums = new Map(lever.drums.map((drum) => [drum.name, recordDrum(recorder, drum, index)]));
  const closes = plates.length > 0 || pedal || lever.stops?.closed !== undefined;
  const { stops } = lever;
  return {
    frame,
    places,
    bolts,
    model: {
      index,
      name: lever.name,
      source: lever,
      pivot: recorder.emitVector(frame.pivot),
      axis: recorder.emitVector(frame.axis),
      pins,
      drums,
      plates,
      ...(closes && {
        closedStop: { parameter: recorder.emit(closedAt(recorder, lever, pedal)), span: stops?.closed?.span ?? lever.nameSpan },
      }),
      ...(stops?.open && { openStop: { parameter: recorder.emit(recorder.value(stops.open, NaN)), span: stops.open.span } }),
      ...(plates[0] && { fullOpening: recorder.emit(fullOpening(recorder, lever, plates)) }),
    },
  };
}

/** Emits a vector turning about an axis as base, perp and cross. */
export function emitTurning(recorder: Recorder, base: Vector, perp: Vector, axis: Vector): Parameter {
  const first = recorder.emitVector(base);
  recorder.emitVector(perp);
  recorder.emitVector(recorder.vectors.cross(axis, perp));
  return first;
}

/** Unit vector along the polar angle in a lever's frame. */
export function polarDirection(recorder: Recorder, frame: LeverFrame, angle: Slot): Vector {
  const { tape, vectors } = recorder;
  return vectors.add(vectors.scale(frame.first, tape.cosine(angle)), vectors.scale(frame.second, tape.sine(angle)));
}

function leverFrame(recorder: Recorder, lever: Lever): LeverFrame {
  const { tape, vectors } = recorder;
  const pivot = recorder.place(lever.pivot);
  const constant = (x: number, y: number, z: number): Vector => [tape.constant(x), tape.constant(y), tape.constant(z)];
  const given = lever.axis;
  const axis =
    given === undefined
      ? constant(0, 0, 1)
      : given.kind === 'direction'
        ? vectors.unit(recorder.direction(given.direction))
        : vectors.unit(vectors.subtract(recorder.place(given.place), pivot));
  const reference = lever.reference ? recorder.direction(lever.reference) : axisAlongX(lever) ? constant(0, 1, 0) : constant(1, 0, 0);
  const first = given === undefined && lever.reference === undefined ? reference : vectors.unit(vectors.square(reference, axis));
  return { pivot, axis, first, second: vectors.cross(axis, first) };
}

/** Whether x has no part square to the axis, so that polar angles start at y. */
function axisAlongX({ axis, pivot }: Lever): boolean {
  if (axis === undefined) return false;
  const [y, z] =
    axis.kind === 'direction'
      ? [axis.direction.y.nominal, axis.direction.z?.nominal ?? 0]
      : [axis.place.y.nominal - pivot.y.nominal, (axis.place.z?.nominal ?? 0) - (pivot.z?.nominal ?? 0)];
  const x = axis.kind === 'direction' ? axis.direction.x.nominal : axis.place.x.nominal - pivot.x.nominal;
  return Math.hypot(y, z) <= ALONG * Math.abs(x);
}

/** A direction whose part square to another is smaller than this, relative, gives no reference. */
const ALONG = 1e-9;

/** An arm's foot on the axis and its vector square to the axis. */
function armVectors(recorder: Recorder, frame: LeverFrame, arm: Arm): { readonly base: Vector; readonly perp: Vector } {
  const { vectors } = recorder;
  const { position } = arm;
  if (position.kind === 'polar') {
    const direction = polarDirection(recorder, frame, recorder.value(position.angle, NaN));
    return {
      base: vectors.add(frame.pivot, vectors.scale(frame.axis, recorder.value(position.offset, 0))),
      perp: vectors.scale(direction, recorder.value(position.radius, NaN)),
    };
  }
  const from = vectors.subtract(recorder.place(position.place), frame.pivot);
  const along = vectors.scale(frame.axis, vectors.dot(from, frame.axis));
  return { base: vectors.add(frame.pivot, along), perp: vectors.subtract(from, along) };
}

/** A direction fixed to a lever, of unit length, as its part along the axis and a turning part. */
function emitDirection(recorder: Recorder, axis: Vector, direction: Direction | undefined): Parameter {
  const { vectors } = recorder;
  const unit = direction === undefined ? axis : vectors.unit(recorder.direction(direction));
  const along = vectors.scale(axis, vectors.dot(unit, axis));
  return emitTurning(recorder, along, vectors.subtract(unit, along), axis);
}

function recordDrum(recorder: Recorder, drum: Drum, lever: number): DrumModel {
  const wraps = drum.wraps === 'counterclockwise' ? 1 : -1;
  const { form } = drum;
  if (form.kind === 'round') {
    return { name: drum.name, lever, wraps, form: { kind: 'round', radius: recorder.emit(recorder.value(form.radius, NaN)) } };
  }
  const openings = form.points.map((point) => recorder.value(point.opening, NaN));
  const radii = form.points.map((point) => recorder.value(point.radius, NaN));
  const { slopes, integrals } = recordSlopes(recorder.tape, openings, radii);
  const emitAll = (slots: readonly Slot[]): Parameter => slots.map((slot) => recorder.emit(slot))[0] ?? 0;
  return {
    name: drum.name,
    lever,
    wraps,
    form: {
      kind: 'profile',
      count: openings.length,
      openings: emitAll(openings),
      radii: emitAll(radii),
      slopes: emitAll(slopes),
      integrals: emitAll(integrals),
    },
  };
}

/** The open stop, else 90° of plate less seat and idle: of several sets of plates, the one that stands open first. */
function fullOpening(recorder: Recorder, lever: Lever, plates: readonly Plates[]): Slot {
  const { tape } = recorder;
  if (lever.stops?.open) return recorder.value(lever.stops.open, NaN);
  const full = plates.map(({ seat, idle }) =>
    tape.subtract(tape.constant(Math.PI / 2), tape.add(recorder.value(seat, 0), recorder.value(idle, 0))),
  );
  return full.reduce((least, each) => tape.select(tape.subtract(least, each), each, least));
}

/** The pedal has a stop at its drawn position, whatever else is given. */
function closedAt(recorder: Recorder, lever: Lever, pedal: boolean): Slot {
  const given = recorder.value(lever.stops?.closed, 0);
  return pedal ? recorder.tape.select(given, given, recorder.tape.constant(0)) : given;
}
