/** A chart's scale: from figures to pixels, with round figures along it. */

export interface Scale {
  readonly least: number;
  readonly greatest: number;
  /** Round figures from the least to the greatest. */
  readonly ticks: readonly number[];
  /** Digits behind the point that the ticks need. */
  readonly digits: number;
}

/** A curve whose figures differ by less than this share of them is level: their differences are those of rounding. */
const LEVEL = 1e-9;

/** A step may be so much finer than was asked for. */
const SLIGHTLY_FINER = 0.79;

/** Steps that people count in, within one power of ten. */
const STEPS = [1, 2, 5, 10];

/** A scale that holds both figures and ends on round ones, with about `count` steps between. */
export function niceScale(from: number, to: number, count: number): Scale {
  const span = to - from;
  // A level curve stands in the middle of a scale as wide as itself is high.
  if (!(span > LEVEL * Math.max(1e-3, Math.abs(from), Math.abs(to)))) {
    const half = Math.abs(from) > 1e-12 ? Math.abs(from) / 2 : 1;
    return niceScale(from - half, from + half, count);
  }
  const rough = span / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * STEPS.find((size) => size * power >= SLIGHTLY_FINER * rough)!;
  const first = Math.floor(from / step + 1e-9);
  const last = Math.ceil(to / step - 1e-9);
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => clean((first + index) * step));
  return { least: ticks[0]!, greatest: ticks.at(-1)!, ticks, digits: Math.max(...ticks.map(digitsOf)) };
}

const digitsOf = (figure: number) => (/\.(\d+)$/.exec(String(figure))?.[1] ?? '').length;

/** Without what binary fractions leave behind the twelfth digit. */
const clean = (figure: number) => Number(figure.toPrecision(12));

/** Least and greatest of what is a number; undefined where nothing is. */
export function extent(figures: ArrayLike<number>): readonly [number, number] | undefined {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  // An iterator takes several times as long.
  for (let i = 0; i < figures.length; i++) {
    const figure = figures[i]!;
    if (figure < least) least = figure;
    if (figure > greatest) greatest = figure;
  }
  return least <= greatest ? [least, greatest] : undefined;
}

/** Of a series, which is gone through once: what stands behind, or is told in words, is asked for again with each picture. */
export function extentOf(values: Float64Array): readonly [number, number] | undefined {
  if (!extents.has(values)) extents.set(values, extent(values));
  return extents.get(values);
}

const extents = new WeakMap<Float64Array, readonly [number, number] | undefined>();
