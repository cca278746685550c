/** Noises that the file does not give, taken from how the readings scatter about what is found. */
import type { Found } from './robust.ts';
import type { Taken, TakenColumn } from './taken.ts';

/**
 * Where the readings of a column that has no noise of the file scatter more than is common, and are enough to say so, their own scatter
 * is their noise; undefined where that changes nothing. @param unknowns how many dimensions are found
 */
export function widened(
  columns: readonly TakenColumn[],
  readings: readonly Taken[],
  { at: { misses }, weights }: Found,
  unknowns: number,
): readonly TakenColumn[] | undefined {
  const counted = weights.reduce((sum, weight) => sum + (weight > 0 ? 1 : 0), 0);
  // Unknowns take up some of the misses, each column its share of them.
  const left = 1 - Math.min(0.5, unknowns / counted);
  const next = columns.map((column, of): TakenColumn => {
    const own = readings.flatMap((reading, i) => (reading.of === of && weights[i]! > 0 ? [misses[i]! * column.noise] : []));
    if (column.noiseGiven || own.length < TELLING) return column;
    const scatter = Math.sqrt(own.reduce((sum, miss) => sum + miss * miss, 0) / (own.length * left));
    const noise = Math.max(column.common, scatter);
    return Math.abs(noise / column.noise - 1) > SAME ? { ...column, noise } : column;
  });
  return next.some((column, i) => column !== columns[i]) ? next : undefined;
}

/** Readings of a column. */
const TELLING = 8;
/** Relative: a closer noise changes no figure that is shown. */
const SAME = 0.02;
