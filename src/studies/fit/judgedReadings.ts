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
    return {
      ...column,
      count: own.length,
      scatter,
      isNoisy: scatter * scatter > 1 + 3 * Math.sqrt(2 / free),
      closedForm: first >= 0 && car.closedForm[first]!,
    };
  });
}

/** Readings, less what the fit takes up of them: with less the scatter says nothing. */
const LEAST_FREE = 0.5;
