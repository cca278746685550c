/**
 * Takes the values of a Definition onto the tape: each plain figure becomes an independent dimension once, each formula an
 * operation on the `let` values; figures wanted by the engine are emitted into the parameter vector.
 */
import type { Definition, Direction, Place, Tolerance, Value } from '../definition/definition.ts';
import type { Dimension } from '../definition/dimensions.ts';
import type { Span } from '../definition/span.ts';
import type { MechanismDimension, Parameter } from './model.ts';
import { recordTape, type Slot, type TapeBuilder } from './tape.ts';
import { recordVectors, type Vector, type VectorRecorder } from './tapeVector.ts';

export interface Recorder {
  readonly tape: TapeBuilder;
  readonly vectors: VectorRecorder;
  readonly dimensions: MechanismDimension[];
  readonly outputs: Slot[];
  /** The slot of a value; the same value gives the same slot. `absent` stands for a missing one. */
  value(value: Value | undefined, absent: number): Slot;
  /** A dimension that the file leaves out, so that it can still be tried and differentiated by. */
  implicit(path: string, span: Span, dimension: Dimension, kind: 'as-drawn' | 'default', nominal: number): Slot;
  place(place: Place): Vector;
  direction(direction: Direction): Vector;
  emit(slot: Slot): Parameter;
  emitVector(vector: Vector): Parameter;
}

export function createRecorder(definition: Definition): Recorder {
  const tape = recordTape();
  const dimensions: MechanismDimension[] = [];
  const outputs: Slot[] = [];
  const slots = new Map<Value, Slot>();

  const dimension = (of: Omit<MechanismDimension, 'index'>): Slot => {
    dimensions.push({ index: dimensions.length, ...of });
    return tape.input();
  };
  const value = (of: Value | undefined, absent: number): Slot => {
    if (of === undefined) return tape.constant(absent);
    const known = slots.get(of);
    if (known !== undefined) return known;
    const { path, span, nominal, formula } = of;
    const slot =
      formula !== undefined
        ? tape.formula(formula)
        : dimension({ path, span, dimension: of.dimension, nominal, ...toleranceOf(of.tolerance), kind: 'written' });
    slots.set(of, slot);
    return slot;
  };
  definition.lets.forEach((entry, index) => tape.letValue(index, value(entry.value, NaN)));

  const emit = (slot: Slot): Parameter => outputs.push(slot) - 1;
  return {
    tape,
    vectors: recordVectors(tape),
    dimensions,
    outputs,
    value,
    implicit: (path, span, of, kind, nominal) => dimension({ path, span, dimension: of, nominal, kind }),
    place: (place) => [value(place.x, NaN), value(place.y, NaN), value(place.z, 0)],
    direction: (direction) => [value(direction.x, NaN), value(direction.y, NaN), value(direction.z, 0)],
    emit,
    emitVector(vector) {
      const first = emit(vector[0]);
      emit(vector[1]);
      emit(vector[2]);
      return first;
    },
  };
}

function toleranceOf(tolerance: Tolerance | undefined): { readonly tolerance?: Tolerance } {
  return tolerance === undefined ? {} : { tolerance };
}
