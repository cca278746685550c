/** The curve that a `tune` block asks for, as a function of pedal travel. */
import type { TuneCurve } from '../../definition/tune.ts';
import { hermite, monotoneSlopes } from '../../numeric/monotoneCubic.ts';
import type { Along, Range } from '../../travel/extremes.ts';

export interface Wanted {
  /** SI, of the curve's column. NaN beyond the points given. */
  readonly value: Along;
  /** Not negative. 0 where the curve does not count. */
  readonly weight: Along;
  /** Where the curve does not count: between the points beside those of weight 0, or to the curve's end. The points beside count. Rising. */
  readonly weightless: readonly Range[];
  /** Travels that the file names, rising: the curve may bend there. */
  readonly points: readonly number[];
  readonly from: number;
  readonly to: number;
}

/** Where a shape given by its slopes begins and ends, SI. */
export interface Ends {
  readonly closed: number;
  readonly full: number;
}

export function wantedOf(curve: TuneCurve, ends: Ends): Wanted {
  if (curve.kind === 'slopes') {
    const line = ends.full - ends.closed;
    const value = (at: number): number => hermite(at, 0, 1, ends.closed, ends.full, line * curve.tipIn.nominal, line * curve.end.nominal);
    return { value, weight: () => 1, weightless: [], points: [0, 1], from: 0, to: 1 };
  }
  const travels = curve.points.map(({ travel }) => travel.nominal);
  const values = curve.points.map(({ value }) => value.nominal);
  const weights = curve.points.map(({ weight }) => weight?.nominal ?? 1);
  const slopes = monotoneSlopes(travels, values);
  const [from, to] = [travels[0]!, travels.at(-1)!];
  const within = (read: (i: number, share: number, at: number) => number): Along => {
    return (at) => {
      if (!(at >= from && at <= to)) return NaN;
      let i = 0;
      while (i < travels.length - 2 && at > travels[i + 1]!) i++;
      return read(i, (at - travels[i]!) / (travels[i + 1]! - travels[i]!), at);
    };
  };
  return {
    value: within((i, _, at) => hermite(at, travels[i]!, travels[i + 1]!, values[i]!, values[i + 1]!, slopes[i]!, slopes[i + 1]!)),
    weight: within((i, share) => {
      const [before, after] = [weights[i]!, weights[i + 1]!];
      const isPoint = share === 0 || share === 1;
      return isPoint || (before > 0 && after > 0) ? before * (1 - share) + after * share : 0;
    }),
    weightless: weightlessOf(travels, weights),
    points: travels,
    from,
    to,
  };
}

/** Travels of the points that count. */
export function countedPoints({ points, weight }: Wanted): readonly number[] {
  return points.filter((at) => weight(at) > 0);
}

function weightlessOf(travels: readonly number[], weights: readonly number[]): readonly Range[] {
  const ranges: Range[] = [];
  for (let i = 0; i + 1 < travels.length; i++) {
    if (weights[i]! > 0 && weights[i + 1]! > 0) continue;
    const before = ranges.at(-1);
    const [from, to] = [travels[i]!, travels[i + 1]!];
    // A point that counts parts two stretches.
    if (before?.to === from && weights[i] === 0) ranges[ranges.length - 1] = { from: before.from, to };
    else ranges.push({ from, to });
  }
  return ranges;
}
