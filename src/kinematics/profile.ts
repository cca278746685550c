/**
 * Slopes of the monotone cubic through a drum's profile, and the integral of the radius up to each given opening.
 *
 * Piecewise cubic Hermite interpolation after F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238, with the
 * weighted harmonic mean of F. N. Fritsch and J. Butland (1984) inside and the three-point end slopes that keep shape:
 * the same choice as scipy.interpolate.PchipInterpolator.
 */
import type { Slot, TapeBuilder } from './tape.ts';

export interface RecordedProfile {
  /** dr/dopening at each point. */
  readonly slopes: readonly Slot[];
  /** ∫r from the first point to each point. */
  readonly integrals: readonly Slot[];
}

/** @param x strictly rising openings, two at least; @param y radii, as many */
export function recordSlopes(tape: TapeBuilder, x: readonly Slot[], y: readonly Slot[]): RecordedProfile {
  const { add, subtract, multiply, divide, constant } = tape;
  const widths = x.slice(1).map((next, i) => subtract(next, x[i]!));
  const secants = widths.map((h, i) => divide(subtract(y[i + 1]!, y[i]!), h));
  const slopes = x.map((_, i) => {
    if (x.length === 2) return secants[0]!;
    if (i === 0) return endSlope(tape, widths[0]!, widths[1]!, secants[0]!, secants[1]!);
    if (i === x.length - 1) return endSlope(tape, widths[i - 1]!, widths[i - 2]!, secants[i - 1]!, secants[i - 2]!);
    const before = widths[i - 1]!;
    const after = widths[i]!;
    const w1 = add(multiply(constant(2), after), before);
    const w2 = add(after, multiply(constant(2), before));
    const mean = divide(add(w1, w2), add(divide(w1, secants[i - 1]!), divide(w2, secants[i]!)));
    return tape.select(multiply(secants[i - 1]!, secants[i]!), mean, constant(0));
  });
  const integrals: Slot[] = [constant(0)];
  widths.forEach((h, i) => {
    const trapezium = multiply(divide(h, constant(2)), add(y[i]!, y[i + 1]!));
    const bow = multiply(divide(multiply(h, h), constant(12)), subtract(slopes[i]!, slopes[i + 1]!));
    integrals.push(add(integrals[i]!, add(trapezium, bow)));
  });
  return { slopes, integrals };
}

/** One-sided three-point slope, held so that the curve does not overshoot. */
function endSlope(tape: TapeBuilder, h0: Slot, h1: Slot, d0: Slot, d1: Slot): Slot {
  const { add, subtract, multiply, divide, constant, select } = tape;
  const zero = constant(0);
  const slope = divide(subtract(multiply(add(multiply(constant(2), h0), h1), d0), multiply(h0, d1)), add(h0, h1));
  const limit = multiply(constant(3), d0);
  // Where the secants differ in sign the slope may be three times the end secant at the most.
  const beyond = subtract(multiply(slope, slope), multiply(limit, limit));
  const held = select(multiply(d0, d1), slope, select(beyond, limit, slope));
  return select(multiply(slope, d0), held, zero);
}
