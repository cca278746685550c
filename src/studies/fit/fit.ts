/**
 * What the readings of a built car say of its dimensions: each with its standard error, what they cannot tell, which of them do not go with
 * the others, and what to turn so that the car does what was wanted.
 */
import { linkageValues } from '../../definition/values.ts';
import type { Study } from '../../findings/study.ts';
import { saying } from '../saying.ts';
import { checkAsFound, type AsFoundCheck } from './asFound.ts';
import { withinBounds } from './bounds.ts';
import { createCar } from './car.ts';
import { withoutContradicted } from './contradicted.ts';
import { informationOf, posteriorOf, type Problem } from './estimate.ts';
import { fittedDimensions, hasStrayed, type FittedDimension } from './fittedDimensions.ts';
import type { Gathered } from './gather.ts';
import { fitColumns, judgeReadings, tooSmallBy, type FitColumn, type FitReading } from './judgedReadings.ts';
import { progress, type FitProgress } from './progress.ts';
import { robustEstimate } from './robust.ts';
import { takeReadings, type LeftOut, type Taken, type TakenColumn } from './taken.ts';
import { whatToTurn, type Turning } from './turn.ts';
import type { SolveAs } from './turnWeighed.ts';
import { unknownsOf, type Unknown } from './unknowns.ts';
import { correlatedBy, narrowedBy, rankOf, untoldBy, type Correlated, type Untold } from './untold.ts';
import { widened } from './widened.ts';

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
  /** How the car as found stands to what the file demands. */
  readonly asFound: AsFoundCheck;
  readonly turning: Turning;
}

/** Why there is nothing to find, a sentence without a full stop; undefined where there is. */
export function whyNotFitted({ definition, travel }: Study, gathered: Gathered): string | undefined {
  const { measured } = definition;
  if (measured === undefined) return 'The file has no `measured` block';
  if (measured.unread.length > 0) return 'Something in the `measured` block is not understood; see the problem with its text';
  if (gathered.refusing !== undefined) return gathered.refusing.message;
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
  const { all: given, idle, held } = unknownsOf(mechanism, study.definition.measured!, linkageValues(study.definition));
  const taken = takeReadings(study, gathered);
  const { readings, stations } = taken;
  const car = createCar(
    mechanism,
    stations,
    readings.map(({ station, column }) => ({ station, column })),
    given,
  );
  const drawn = new Float64Array(readings.length);
  car.put(Float64Array.from(given, ({ nominal }) => nominal));
  car.read(drawn);
  const usable = Float64Array.from(drawn, (value) => (Number.isNaN(value) ? 0 : 1));
  const few = whyTooFew(
    given,
    usable.reduce((sum, each) => sum + each, 0),
  );
  if (few !== undefined) return few;
  const problemWith = (columns: readonly TakenColumn[]): Problem => {
    return { car, unknowns: given, targets: readings.map(({ value, of }) => ({ value, noise: columns[of]!.noise })) };
  };
  let columns = taken.columns;
  let found = yield* robustEstimate(problemWith(columns), readings, usable);
  for (let round = 0; round < NOISE_ROUNDS && typeof found !== 'string'; round++) {
    const wider = widened(columns, readings, found, given.length);
    if (wider === undefined) break;
    columns = wider;
    found = yield* robustEstimate(problemWith(columns), readings, usable);
  }
  if (typeof found === 'string') return found;
  const free = yield* withoutContradicted(problemWith(columns), found);
  const bounded = yield* withinBounds(free.problem, free.found);
  const { at, weights } = bounded.found;
  const { unknowns } = free.problem;
  const travels = Float64Array.from(car.travels);
  const told = (): FitProgress => progress(3, 'what to turn');
  yield told();
  const dimensions = fittedDimensions(mechanism, unknowns, at, weights, { given, held: bounded.held });
  const posterior = posteriorOf(unknowns, at, weights);
  const information = informationOf(unknowns, at, weights);
  const untold = untoldBy(information);
  const lost = untold.flatMap(({ unknowns: [j], shown }) => (shown === 0 && !Number.isFinite(dimensions.all[j!]!.error) ? [j!] : []));
  const settled = at.settled && !lost.some((j) => hasStrayed(dimensions.all[j]!));
  const judged = yield* saying(judgeReadings(taken, bounded.found, dimensions.covariance, unknowns, { drawn, travels, usable }), told);
  const judgedColumns = fitColumns(columns, judged, car, readings);
  const unsure = settled ? whyNoTurning(unknowns.length + idle.length, weights, judgedColumns, dimensions.all) : NOT_SETTLED;
  const asFound: AsFoundCheck =
    unsure === undefined ? yield* saying(checkAsFound(study, unknowns, at.values, solveAs), told) : { kind: 'not-checked', why: unsure };
  const turning: Turning =
    unsure === undefined
      ? yield* saying(whatToTurn(study, { unknowns, values: at.values, posterior, tooSmallBy: tooSmallBy(judgedColumns) }, solveAs), told)
      : { kind: 'not-checked', why: unsure };
  return {
    dimensions: dimensions.all,
    covariance: dimensions.covariance,
    columns: judgedColumns,
    readings: judged,
    leftOut: [...taken.leftOut, ...noValue(readings, usable)],
    rank: rankOf(information),
    narrowed: narrowedBy(information),
    untold,
    correlated: correlatedBy(posterior, untold),
    idle,
    held,
    settled,
    asFound,
    turning,
  };
}

/** More change no figure that is shown. */
const NOISE_ROUNDS = 4;

/** With fewer readings than dimensions no mistake in any can show, whatever tolerances tell. A sentence without a full stop. */
function whyNoTurning(
  dimensions: number,
  weights: Float64Array,
  columns: readonly FitColumn[],
  found: readonly FittedDimension[],
): string | undefined {
  const count = weights.reduce((sum, weight) => sum + (weight > 0 ? 1 : 0), 0);
  if (count < dimensions) return `${count} ${count === 1 ? 'reading' : 'readings'} cannot tell ${dimensions} dimensions`;
  const astray = columns.filter(({ isAstray }) => isAstray).map(({ column, run }) => `${column.name} of ${run}`);
  if (astray.length > 0) return `The readings do not go with the linkage of the file (${astray.join(', ')}): find out why first`;
  const odd = found.filter(({ cannotBe }) => cannotBe !== undefined).map(({ name }) => name);
  if (odd.length > 0) return `No car has what was found of ${odd.join(', ')}: readings or file are wrong; find out which first`;
  // One part may well be beyond its tolerance. Where several would be, it is as likely a dimension that is not looked for.
  const beyond = found.filter(({ isContradicted }) => isContradicted).map(({ name }) => name);
  return beyond.length < 2 ? undefined : `The readings contradict the tolerances of ${beyond.join(', ')}: measure these first`;
}

const NOT_SETTLED = 'The fit did not settle, so that how the car stands is not known';

function noValue(readings: readonly Taken[], usable: Float64Array): readonly LeftOut[] {
  return readings.flatMap(({ of: _, station: _station, value: _value, ...place }, i): readonly LeftOut[] => {
    return usable[i]! > 0 ? [] : [{ ...place, why: NO_VALUE }];
  });
}

const NO_VALUE = 'there the linkage of the file has no value: the pedal does not come so far, or a lever cannot follow';
