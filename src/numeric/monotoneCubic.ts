/**
 * The monotone cubic through points: piecewise Hermite, so that nothing overshoots.
 *
 * F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238, with the weighted harmonic mean of F. N. Fritsch and J. Butland
 * (1984) inside and the three-point end slopes that keep shape: the same choice as scipy.interpolate.PchipInterpolator, and as a drum's
 * profile in `kinematics/profile.ts`, which records it for any dimensions instead of taking numbers.
 */

/** Slope at each point. @param x strictly rising, two at least @param y as many */
export function monotoneSlopes(x: readonly number[], y: readonly number[]): readonly number[] {
  const widths = x.slice(1).map((next, i) => next - x[i]!);
  const secants = widths.map((width, i) => (y[i + 1]! - y[i]!) / width);
  const last = x.length - 1;
  if (last === 1) return [secants[0]!, secants[0]!];
  return x.map((_, i) => {
    if (i === 0) return endSlope(widths[0]!, widths[1]!, secants[0]!, secants[1]!);
    if (i === last) return endSlope(widths[last - 1]!, widths[last - 2]!, secants[last - 1]!, secants[last - 2]!);
    const [before, after] = [secants[i - 1]!, secants[i]!];
    if (!(before * after > 0)) return 0;
    const w1 = 2 * widths[i]! + widths[i - 1]!;
    const w2 = widths[i]! + 2 * widths[i - 1]!;
    return (w1 + w2) / (w1 / before + w2 / after);
  });
}

/** One-sided three-point slope, held so that the curve does not overshoot. */
function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (!(slope * d0 > 0)) return 0;
  return d0 * d1 <= 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
}

/** The cubic between (x0, y0) and (x1, y1) with slopes m0 and m1 there. */
export function hermite(x: number, x0: number, x1: number, y0: number, y1: number, m0: number, m1: number): number {
  const width = x1 - x0;
  const t = (x - x0) / width;
  const u = 1 - t;
  return u * u * ((1 + 2 * t) * y0 + t * width * m0) + t * t * ((1 + 2 * u) * y1 - u * width * m1);
}
