/**
 * A tape: the geometry's arithmetic written down once, so that it can be run again for any dimensions without
 * compiling anew, and differentiated exactly in any direction (forward accumulation).
 *
 * Each operation fills one slot from earlier slots. Constants are folded while recording, so a planar linkage
 * does not pay for the third dimension.
 */
import type { Formula } from '../definition/formula/formula.ts';

/** Index of a recorded number. */
export type Slot = number;

export interface TapeBuilder {
  constant(value: number): Slot;
  /** The next independent dimension, in the order of the calls. */
  input(): Slot;
  /** Makes a slot the value of the `let` with that index, for the formulas that follow. */
  letValue(index: number, slot: Slot): void;
  formula(formula: Formula): Slot;
  add(a: Slot, b: Slot): Slot;
  subtract(a: Slot, b: Slot): Slot;
  multiply(a: Slot, b: Slot): Slot;
  divide(a: Slot, b: Slot): Slot;
  squareRoot(a: Slot): Slot;
  sine(a: Slot): Slot;
  cosine(a: Slot): Slot;
  /** `a` where `condition` is above zero, else `b`. */
  select(condition: Slot, a: Slot, b: Slot): Slot;
  finish(letCount: number): Tape;
}

export interface Tape {
  readonly inputCount: number;
  readonly slotCount: number;
  /** Fills `slots` from the dimensions. Does not allocate. */
  evaluate(values: Float64Array, slots: Float64Array): void;
  /**
   * Directional derivative at the point that `slots` was evaluated at.
   * @param direction d values; @param into receives d slots.
   */
  differentiate(slots: Float64Array, direction: Float64Array, into: Float64Array): void;
}

export function recordTape(): TapeBuilder {
  const kinds: number[] = [];
  const first: number[] = [];
  const second: number[] = [];
  const third: number[] = [];
  const constants: number[] = [];
  const formulas: Formula[] = [];
  const known = new Map<number, Slot>();
  let inputCount = 0;

  const push = (kind: number, a: number, b = 0, c = 0, constant = Number.NaN): Slot => {
    kinds.push(kind);
    first.push(a);
    second.push(b);
    third.push(c);
    constants.push(constant);
    return kinds.length - 1;
  };
  const constantOf = (slot: Slot): number | undefined => (kinds[slot] === Op.Constant ? constants[slot] : undefined);
  const constant = (value: number): Slot => {
    const old = known.get(value);
    if (old !== undefined && !Object.is(value, -0)) return old;
    const slot = push(Op.Constant, 0, 0, 0, value);
    known.set(value, slot);
    return slot;
  };
  const fold = (a: Slot, b: Slot, compute: (x: number, y: number) => number): Slot | undefined => {
    const x = constantOf(a);
    const y = constantOf(b);
    return x === undefined || y === undefined ? undefined : constant(compute(x, y));
  };
  const unary = (kind: number, a: Slot, compute: (x: number) => number): Slot => {
    const x = constantOf(a);
    return x === undefined ? push(kind, a) : constant(compute(x));
  };

  return {
    constant,
    input: () => push(Op.Input, inputCount++),
    letValue(index, slot) {
      push(Op.Let, slot, index);
    },
    formula(formula) {
      formulas.push(formula);
      return push(Op.Formula, formulas.length - 1);
    },
    add(a, b) {
      if (constantOf(a) === 0) return b;
      if (constantOf(b) === 0) return a;
      return fold(a, b, (x, y) => x + y) ?? push(Op.Add, a, b);
    },
    subtract(a, b) {
      if (constantOf(b) === 0) return a;
      return fold(a, b, (x, y) => x - y) ?? push(Op.Subtract, a, b);
    },
    multiply(a, b) {
      if (constantOf(a) === 0 || constantOf(b) === 1) return a;
      if (constantOf(b) === 0 || constantOf(a) === 1) return b;
      return fold(a, b, (x, y) => x * y) ?? push(Op.Multiply, a, b);
    },
    divide(a, b) {
      if (constantOf(b) === 1) return a;
      return fold(a, b, (x, y) => x / y) ?? push(Op.Divide, a, b);
    },
    squareRoot: (a) => unary(Op.SquareRoot, a, Math.sqrt),
    sine: (a) => unary(Op.Sine, a, Math.sin),
    cosine: (a) => unary(Op.Cosine, a, Math.cos),
    select: (condition, a, b) => push(Op.Select, condition, a, b),
    finish: (letCount) => runTape({ kinds, first, second, third, constants, formulas, inputCount, letCount }),
  };
}

/** Kinds of operation; plain numbers, since the loop below is where a toleranced build spends its time. */
const Op = {
  Constant: 0,
  Input: 1,
  Let: 2,
  Formula: 3,
  Add: 4,
  Subtract: 5,
  Multiply: 6,
  Divide: 7,
  SquareRoot: 8,
  Sine: 9,
  Cosine: 10,
  Select: 11,
} as const;

interface Recording {
  readonly kinds: readonly number[];
  readonly first: readonly number[];
  readonly second: readonly number[];
  readonly third: readonly number[];
  readonly constants: readonly number[];
  readonly formulas: readonly Formula[];
  readonly inputCount: number;
  readonly letCount: number;
}

function runTape(recording: Recording): Tape {
  const count = recording.kinds.length;
  const kinds = Uint8Array.from(recording.kinds);
  const first = Int32Array.from(recording.first);
  const second = Int32Array.from(recording.second);
  const third = Int32Array.from(recording.third);
  const constants = Float64Array.from(recording.constants);
  const { formulas } = recording;
  const lets = new Float64Array(recording.letCount);
  const letRates = new Float64Array(recording.letCount);
  const partials = new Float64Array(Math.max(1, ...formulas.map((formula) => formula.uses.length)));

  const evaluate = (values: Float64Array, slots: Float64Array): void => {
    for (let i = 0; i < count; i++) {
      const a = first[i]!;
      const b = second[i]!;
      switch (kinds[i]) {
        case Op.Constant:
          slots[i] = constants[i]!;
          break;
        case Op.Input:
          slots[i] = values[a]!;
          break;
        case Op.Let:
          lets[b] = slots[i] = slots[a]!;
          break;
        case Op.Formula:
          slots[i] = formulas[a]!.evaluate(lets);
          break;
        case Op.Add:
          slots[i] = slots[a]! + slots[b]!;
          break;
        case Op.Subtract:
          slots[i] = slots[a]! - slots[b]!;
          break;
        case Op.Multiply:
          slots[i] = slots[a]! * slots[b]!;
          break;
        case Op.Divide:
          slots[i] = slots[a]! / slots[b]!;
          break;
        case Op.SquareRoot:
          slots[i] = Math.sqrt(slots[a]!);
          break;
        case Op.Sine:
          slots[i] = Math.sin(slots[a]!);
          break;
        case Op.Cosine:
          slots[i] = Math.cos(slots[a]!);
          break;
        default:
          slots[i] = slots[a]! > 0 ? slots[b]! : slots[third[i]!]!;
      }
    }
  };

  const differentiate = (slots: Float64Array, direction: Float64Array, into: Float64Array): void => {
    for (let i = 0; i < count; i++) {
      const a = first[i]!;
      const b = second[i]!;
      switch (kinds[i]) {
        case Op.Constant:
          into[i] = 0;
          break;
        case Op.Input:
          into[i] = direction[a]!;
          break;
        case Op.Let:
          lets[b] = slots[i]!;
          letRates[b] = into[i] = into[a]!;
          break;
        case Op.Formula: {
          const formula = formulas[a]!;
          formula.gradient(lets, partials);
          let sum = 0;
          for (let k = 0; k < formula.uses.length; k++) sum += partials[k]! * letRates[formula.uses[k]!]!;
          into[i] = sum;
          break;
        }
        case Op.Add:
          into[i] = into[a]! + into[b]!;
          break;
        case Op.Subtract:
          into[i] = into[a]! - into[b]!;
          break;
        case Op.Multiply:
          into[i] = into[a]! * slots[b]! + slots[a]! * into[b]!;
          break;
        case Op.Divide:
          into[i] = (into[a]! - slots[i]! * into[b]!) / slots[b]!;
          break;
        case Op.SquareRoot:
          into[i] = into[a] === 0 ? 0 : into[a]! / (2 * slots[i]!);
          break;
        case Op.Sine:
          into[i] = Math.cos(slots[a]!) * into[a]!;
          break;
        case Op.Cosine:
          into[i] = -Math.sin(slots[a]!) * into[a]!;
          break;
        default:
          into[i] = slots[a]! > 0 ? into[b]! : into[third[i]!]!;
      }
    }
  };

  return { inputCount: recording.inputCount, slotCount: count, evaluate, differentiate };
}
