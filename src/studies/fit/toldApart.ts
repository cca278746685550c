/** What the readings in a file could tell of its dimensions, before anything is fitted: at the dimensions as the file has them. */
import type { Study, UntoldDimensions } from '../../findings/study.ts';
import { finished } from '../finished.ts';
import { createCar } from './car.ts';
import { informationOf, posteriorOf } from './estimate.ts';
import { gatherReadings, NOTHING_BESIDE } from './gather.ts';
import { takeReadings } from './taken.ts';
import { unknownsOf } from './unknowns.ts';
import { correlatedBy, untoldBy } from './untold.ts';

/**
 * Dimensions named in `fit` that the rows of the file cannot tell from each other, then those that they hardly can. Empty where the file names
 * none, where a run stands in a file beside it, which may tell more, and where something of the block is not understood.
 */
export function untoldDimensions(study: Study): readonly UntoldDimensions[] {
  const { measured } = study.definition;
  if (measured?.fit === undefined || measured.unread.length > 0) return [];
  const gathered = gatherReadings(study.definition, NOTHING_BESIDE);
  if (gathered.problems.length > 0) return [];
  const { mechanism } = study.travel;
  const { all: unknowns } = unknownsOf(mechanism, measured);
  const { readings, columns, stations } = takeReadings(study, gathered);
  if (unknowns.length < 2 || readings.length === 0) return [];
  const car = createCar(
    mechanism,
    stations,
    readings.map(({ station, column }) => ({ station, column })),
    unknowns,
  );
  const n = unknowns.length;
  car.put(Float64Array.from(unknowns, ({ nominal }) => nominal));
  const drawn = new Float64Array(readings.length);
  car.read(drawn);
  const jacobian = new Float64Array(readings.length * n);
  finished(car.differentiate('both', jacobian));
  const weights = drawn.map((value, i) => (Number.isFinite(value) && jacobian.subarray(i * n, i * n + n).every(Number.isFinite) ? 1 : 0));
  readings.forEach(({ of }, i) => unknowns.forEach(({ scale }, j) => (jacobian[i * n + j]! *= scale / columns[of]!.noise)));
  const at = { x: new Float64Array(n), jacobian, misses: new Float64Array(readings.length) };
  const untold = untoldBy(informationOf(unknowns, at, weights));
  const named = (indices: readonly number[]): UntoldDimensions['dimensions'] =>
    indices.map((i) => measured.fit!.find(({ name }) => name === unknowns[i]!.name)!);
  return [
    ...untold
      .filter(({ unknowns: together }) => together.length > 1)
      .map((each) => ({ dimensions: named(each.unknowns), correlation: undefined })),
    ...correlatedBy(posteriorOf(unknowns, at, weights), untold).map(({ first, second, correlation }) => ({
      dimensions: named([first, second]),
      correlation,
    })),
  ];
}
