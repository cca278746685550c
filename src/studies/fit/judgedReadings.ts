/** The readings held against the car that was found: each by itself, and column by column. */
import type { Car } from './car.ts';
import { ALONE } from './outliers.ts';
import type { Found } from './robust.ts';
import type { AllTaken, Taken, TakenColumn } from './taken.ts';
import type { Unknown } from './unknowns.ts';

/** A reading held against the car that was found. For drawing: what was read, what is found, what the file says. */
export interface FitReading extends Taken {
  /** Pedal travel, a fraction, of the car that was found; NaN where it has none. */
  readonly travel: number;
  /** SI. */
  readonly fitted: number;
  /** As the file has it, SI; NaN where it has no value there. */
  readonly drawn: number;
  /** Miss, fitted less read, over what it commonly is: noise and what the fit takes up counted. */
  readonly standardised: number;
  /** How much of the reading the fit takes up, 0 to 1; 0 for one that does not count. */
  readonly leverage: number;
  /** `off`: it does not go with the others and is left out. `unheld`: it alone tells something, so nothing can be held against it. */
  readonly verdict: 'counts' | 'off' | 'unheld';
}

export interface FitColumn extends TakenColumn {
  /** Readings that count. */
  readonly count: number;
  /** Root mean square of their misses over their noise; NaN with none. */
  readonly scatter: number;
  /** Whether the scatter is more than the noise explains, by three standard deviations of such a figure. */
  readonly isNoisy: boolean;
  /** Mean miss, fitted less read, SI, where they lie to one side by more than chance; else undefined. */
  readonly lean: number | undefined;
  /** How like each miss is to the next along the pedal, −1 to 1, where that is more than chance and the readings are enough; else 0. */
  readonly likeNext: number;
  /** Whether the readings do not go with the linkage as the file has it: they scatter by far more than noise alone would. */
  readonly isAstray: boolean;
  /** Whether the derivatives of its readings are in closed form; else by differences. */
  readonly closedForm: boolean;
}

/** What is known of the readings beside the fit, in their order. */
export interface Beside {
  /** As the file has them, SI. */
  readonly drawn: Float64Array;
  /** Of each station, in the car that was found. */
  readonly travels: Float64Array;
  /** 0 for those that never count. */
  readonly usable: Float64Array;
}

/** Those that are usable. Yields as it goes. @param covariance of the dimensions, SI */
export function* judgeReadings(
  { readings }: AllTaken,
  { at, weights }: Found,
  covariance: Float64Array,
  unknowns: readonly Unknown[],
  { drawn, travels, usable }: Beside,
): Generator<undefined, readonly FitReading[]> {
  const n = unknowns.length;
  const spreadOf = (i: number): number => {
    let sum = 0;
    for (let j = 0; j < n; j++) {
      for (let k = 0; k < n; k++) {
        const scales = unknowns[j]!.scale * unknowns[k]!.scale;
        sum += (at.jacobian[i * n + j]! * at.jacobian[i * n + k]! * covariance[j * n + k]!) / scales;
      }
    }
    return sum;
  };
  const judged: FitReading[] = [];
  for (const [i, reading] of readings.entries()) {
    if (!(usable[i]! > 0)) continue;
    const spread = spreadOf(i);
    const counts = weights[i]! > 0;
    const isHeld = !counts || 1 - spread >= ALONE;
    const scale = counts ? Math.sqrt(1 - spread) : Math.sqrt(1 + spread);
    judged.push({
      ...reading,
      travel: travels[reading.station]!,
      fitted: at.fitted[i]!,
      drawn: drawn[i]!,
      standardised: isHeld ? at.misses[i]! / scale : 0,
      leverage: counts ? Math.min(1, spread) : 0,
      verdict: counts ? (isHeld ? 'counts' : 'unheld') : 'off',
    });
    if ((i + 1) % PIECE === 0) yield undefined;
  }
  return judged;
}

/** Readings between two yields. */
const PIECE = 256;

/** In the order of the columns. @param judged those of `readings` that are usable */
export function fitColumns(
  columns: readonly TakenColumn[],
  judged: readonly FitReading[],
  car: Car,
  readings: readonly Taken[],
): readonly FitColumn[] {
  return columns.map((column, index): FitColumn => {
    const own = judged.filter(({ of, verdict }) => of === index && verdict !== 'off');
    const squares = own.reduce((sum, { fitted, value }) => sum + ((fitted - value) / column.noise) ** 2, 0);
    // What the fit takes up of the readings cannot scatter.
    const free = own.reduce((sum, { leverage }) => sum + 1 - leverage, 0);
    const scatter = free > LEAST_FREE ? Math.sqrt(squares / free) : NaN;
    const first = readings.findIndex(({ of }) => of === index);
    const isNoisy = scatter * scatter > 1 + 3 * Math.sqrt(2 / free);
    const mean = own.reduce((sum, { fitted, value }) => sum + fitted - value, 0) / own.length;
    const likeNext = likeNextOf(own);
    const usual = column.noiseGiven ? column.noise : column.common;
    return {
      ...column,
      count: own.length,
      scatter,
      isNoisy,
      lean: own.length >= TELLING && Math.abs(mean) > (3 * column.noise * Math.max(1, scatter)) / Math.sqrt(own.length) ? mean : undefined,
      likeNext,
      // A noise of its own that the file leaves open is no fault, where one miss is not like the next.
      isAstray: (column.noiseGiven ? isNoisy : likeNext > 0) && scatter * column.noise > ASTRAY * usual,
      closedForm: first >= 0 && car.closedForm[first]!,
    };
  });
}

/** In noises. Common practice, no source. */
const ASTRAY = 2;
/** Readings of a column. */
const TELLING = 8;

/** Correlation of each miss with the next, above what three in a thousand columns of independent ones have. */
function likeNextOf(own: readonly FitReading[]): number {
  if (own.length < TELLING) return 0;
  const misses = [...own].sort((a, b) => a.travel - b.travel).map(({ fitted, value }) => fitted - value);
  const square = misses.reduce((sum, miss) => sum + miss * miss, 0);
  const next = misses.reduce((sum, miss, i) => sum + miss * (misses[i + 1] ?? 0), 0) / square;
  return next > LIKE / Math.sqrt(own.length) ? Math.min(next, MOST_LIKE) : 0;
}

/** Standard deviations of such a correlation, which are 1/√n, to one side. */
const LIKE = 2.75;
/** So that what follows from it stays finite. */
const MOST_LIKE = 0.95;

/** By how much standard errors are too small, since a column scatters by more than its noise, or one of its misses is like the next: √((1 + r)/(1 − r)). */
export function tooSmallBy(columns: readonly FitColumn[]): number {
  return Math.max(
    1,
    ...columns.map(({ isNoisy, scatter, likeNext }) => (isNoisy ? scatter : 1) * Math.sqrt((1 + likeNext) / (1 - likeNext))),
  );
}

/** Readings, less what the fit takes up of them: with less the scatter says nothing. */
const LEAST_FREE = 0.5;
