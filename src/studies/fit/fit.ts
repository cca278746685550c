/**
 * What the readings of a built car say of its dimensions: each with its standard error, what they cannot tell, which of them do not go with
 * the others, and what to turn so that the car does what was wanted.
 */
import type { Study } from '../../findings/study.ts';
import { covarianceOf, isOpen } from '../../numeric/singularValues.ts';
import { createCar, type Car } from './car.ts';
import { estimate, informationOf, leastOf, posteriorOf, type Estimate, type Problem } from './estimate.ts';
import type { Gathered } from './gather.ts';
import { ALONE, screen } from './outliers.ts';
import { takeReadings, type AllTaken, type LeftOut, type Taken, type TakenColumn } from './taken.ts';
import { whatToTurn, type Turning } from './turn.ts';
import type { SolveAs } from './turnWeighed.ts';
import { unknownsOf, type Unknown } from './unknowns.ts';
import { correlatedBy, narrowedBy, rankOf, untoldBy, type Correlated, type Untold } from './untold.ts';

export interface FitProgress {
  readonly done: number;
  readonly of: number;
  /** What is done now, in words. */
  readonly note: string;
}

export interface FittedDimension extends Unknown {
  /** As the car has it, SI. */
  readonly value: number;
  /** SI; Infinity where neither the readings nor a tolerance tell. */
  readonly error: number;
  /** Error over the standard deviation of the tolerance; undefined without one. */
  readonly left: number | undefined;
  /** Whether it lies beyond its tolerance by more than two standard errors; undefined without one. */
  readonly beyond: boolean | undefined;
}

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

export interface Fit {
  readonly dimensions: readonly FittedDimension[];
  /** Covariance of the dimensions, rows one after another, SI; what is open is left out of it. */
  readonly covariance: Float64Array;
  readonly columns: readonly FitColumn[];
  /** In file order, those off among them. */
  readonly readings: readonly FitReading[];
  readonly leftOut: readonly LeftOut[];
  /** Directions that the readings tell at all, beyond rounding; and more closely than the tolerances. */
  readonly rank: number;
  readonly narrowed: number;
  readonly untold: readonly Untold[];
  readonly correlated: readonly Correlated[];
  /** Dimensions of `fit` that nothing in the table rests on. */
  readonly idle: readonly string[];
  /** Toleranced dimensions that count as the file has them. */
  readonly held: readonly string[];
  /** False where no least sum was come to, or one where a dimension is nowhere told: the figures are not to be relied on. */
  readonly settled: boolean;
  readonly turning: Turning;
}

/** Why there is nothing to find, a sentence without a full stop; undefined where there is. */
export function whyNotFitted({ definition, travel }: Study, gathered: Gathered): string | undefined {
  const { measured } = definition;
  if (measured === undefined) return 'The file has no `measured` block';
  if (measured.unread.length > 0) return 'Something in the `measured` block is not understood; see the problem with its text';
  const broken = gathered.problems.find(({ code }) => code !== 'too-few-readings');
  if (broken !== undefined) return broken.message;
  const { all, idle } = unknownsOf(travel.mechanism, measured);
  if (all.length > 0) return undefined;
  if (idle.length > 0) return `Nothing that can be read rests on ${idle.join(', ')}`;
  return 'Nothing is to be found: the block has no `fit`, and no dimension that counts has a tolerance';
}

/** Why the readings are not enough, a sentence without a full stop; undefined where they are. */
export function whyTooFew(unknowns: readonly Unknown[], count: number): string | undefined {
  if (count === 0) return 'No reading can be used';
  const open = unknowns.filter(({ prior }) => prior === undefined).length;
  if (count >= open) return undefined;
  return `${count} ${count === 1 ? 'reading' : 'readings'} cannot tell ${open} dimensions that have no tolerance`;
}

/** Yields as it goes; whoever asks for the next step decides whether to go on. @returns why, where nothing can be found */
export function* fit(study: Study, gathered: Gathered, solveAs: SolveAs): Generator<FitProgress, Fit | string> {
  const why = whyNotFitted(study, gathered);
  if (why !== undefined) return why;
  const { mechanism } = study.travel;
  const { all: unknowns, idle, held } = unknownsOf(mechanism, study.definition.measured!);
  const taken = takeReadings(study, gathered);
  const { readings, columns, stations } = taken;
  const car = createCar(
    mechanism,
    stations,
    readings.map(({ station, column }) => ({ station, column })),
    unknowns,
  );
  const drawn = new Float64Array(readings.length);
  car.put(Float64Array.from(unknowns, ({ nominal }) => nominal));
  car.read(drawn);
  const usable = Float64Array.from(drawn, (value) => (Number.isNaN(value) ? 0 : 1));
  const few = whyTooFew(
    unknowns,
    usable.reduce((sum, each) => sum + each, 0),
  );
  if (few !== undefined) return few;
  const targets = readings.map(({ value, of }) => ({ value, noise: columns[of]!.noise }));
  const problem: Problem = { car, unknowns, targets };
  const found = yield* robustEstimate(problem, readings, usable);
  if (typeof found === 'string') return found;
  const { at, weights } = found;
  const travels = Float64Array.from(car.travels);
  yield progress(3, 'what to turn');
  const dimensions = dimensionsOf(unknowns, at, weights);
  const posterior = posteriorOf(unknowns, at, weights);
  const information = informationOf(unknowns, at, weights);
  const untold = untoldBy(information);
  const lost = untold.flatMap(({ unknowns: [j], shown }) => (shown === 0 && !Number.isFinite(dimensions.all[j!]!.error) ? [j!] : []));
  const settled = at.settled && !lost.some((j) => hasStrayed(dimensions.all[j]!));
  const judged = judgeReadings(taken, found, dimensions.covariance, unknowns, { drawn, travels, usable });
  return {
    dimensions: dimensions.all,
    covariance: dimensions.covariance,
    columns: columnsOf(columns, judged, car, readings),
    readings: judged,
    leftOut: [...taken.leftOut, ...noValue(readings, usable)],
    rank: rankOf(information),
    narrowed: narrowedBy(information),
    untold,
    correlated: correlatedBy(posterior, untold),
    idle,
    held,
    settled,
    turning: settled
      ? yield* noted(whatToTurn(study, { unknowns, values: at.values, untold: lost }, solveAs), 3, 'what to turn')
      : { kind: 'not-checked', why: NOT_SETTLED },
  };
}

const NOT_SETTLED = 'The fit did not settle, so that how the car stands is not known';

/**
 * Whether the fit went away from the file along a dimension that it then lost from sight: where a sensor is at its end, say, or a lever on
 * its stop, no reading changes any more, and any place there is as good. @param dimension that nothing tells
 */
function hasStrayed({ value, nominal, scale }: FittedDimension): boolean {
  return Math.abs(value - nominal) > STRAYED * scale;
}

/** Of the scale of a dimension; less is what the noise of readings does that tell it to one side only. Common practice, no source. */
const STRAYED = 0.1;

function progress(done: number, note: string): FitProgress {
  return { done, of: PHASES, note };
}

const PHASES = 4;

function* noted<End>(steps: Generator<undefined, End>, done: number, note: string): Generator<FitProgress, End> {
  for (;;) {
    const { done: isOver, value } = steps.next();
    if (isOver === true) return value;
    yield progress(done, note);
  }
}

interface Found {
  readonly at: Estimate;
  /** 1 for readings that count. */
  readonly weights: Float64Array;
}

/** Again without the readings that do not go with the others, until those stay the same. */
function* robustEstimate(problem: Problem, readings: readonly Taken[], usable: Float64Array): Generator<FitProgress, Found | string> {
  const { unknowns } = problem;
  const run = (start: Float64Array, weights: Float64Array, done: number, note: string) =>
    noted(estimate(problem, start, weights), done, note);
  let weights = usable;
  let at = yield* run(new Float64Array(unknowns.length), weights, 0, 'the dimensions');
  if (at === undefined)
    return 'With every dimension in the middle of its tolerance the linkage has no value where some readings were taken';
  const columns = readings.map(({ of }) => of);
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const next = screen(unknowns, at, { columns, usable });
    if (next.every((weight, i) => weight === weights[i])) break;
    const again: Estimate | undefined = yield* run(at.x, next, 1, 'without readings that are off');
    if (again === undefined) break;
    [weights, at] = [next, again];
  }
  return { at, weights };
}

const MOST_PASSES = 6;

function dimensionsOf(
  unknowns: readonly Unknown[],
  at: Estimate,
  weights: Float64Array,
): { readonly all: readonly FittedDimension[]; readonly covariance: Float64Array } {
  const n = unknowns.length;
  const posterior = posteriorOf(unknowns, at, weights);
  const least = leastOf(posterior);
  const scaled = covarianceOf(posterior, least);
  const covariance = scaled.map((value, i) => value * unknowns[Math.floor(i / n)]!.scale * unknowns[i % n]!.scale);
  const all = unknowns.map((unknown, j): FittedDimension => {
    const { prior } = unknown;
    const value = at.values[j]!;
    const error = isOpen(posterior, j, least) ? Infinity : Math.sqrt(covariance[j * n + j]!);
    return {
      ...unknown,
      value,
      error,
      left: prior && error / prior.deviation,
      beyond: prior && Math.abs(value - prior.middle) - prior.half > 2 * error,
    };
  });
  return { all, covariance };
}

interface Beside {
  readonly drawn: Float64Array;
  readonly travels: Float64Array;
  readonly usable: Float64Array;
}

/** @param covariance of the dimensions, SI */
function judgeReadings(
  { readings }: AllTaken,
  { at, weights }: Found,
  covariance: Float64Array,
  unknowns: readonly Unknown[],
  { drawn, travels, usable }: Beside,
): readonly FitReading[] {
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
  return readings.flatMap((reading, i): readonly FitReading[] => {
    if (!(usable[i]! > 0)) return [];
    const spread = spreadOf(i);
    const counts = weights[i]! > 0;
    const isHeld = !counts || 1 - spread >= ALONE;
    const scale = counts ? Math.sqrt(1 - spread) : Math.sqrt(1 + spread);
    return [
      {
        ...reading,
        travel: travels[reading.station]!,
        fitted: at.fitted[i]!,
        drawn: drawn[i]!,
        standardised: isHeld ? at.misses[i]! / scale : 0,
        leverage: counts ? Math.min(1, spread) : 0,
        verdict: counts ? (isHeld ? 'counts' : 'unheld') : 'off',
      },
    ];
  });
}

function columnsOf(
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

function noValue(readings: readonly Taken[], usable: Float64Array): readonly LeftOut[] {
  return readings.flatMap(({ of: _, station: _station, value: _value, ...place }, i): readonly LeftOut[] => {
    return usable[i]! > 0 ? [] : [{ ...place, why: NO_VALUE }];
  });
}

const NO_VALUE = 'there the linkage of the file has no value: the pedal does not come so far, or a lever cannot follow';
