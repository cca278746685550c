/**
 * How closely the readings tell the wanted curve of the car that was found, dimension by dimension or only some together.
 *
 * With g the change of the curve at a station by each unknown in its scale, and the singular values σ and directions v of readings and
 * tolerances together, its variance is Σ (g·v)² / σ². Along a direction that neither tells, a curve that moves at all is not told.
 */
import type { Build } from '../../kinematics/build.ts';
import { createCar } from './car.ts';
import { leastOf } from './estimate.ts';
import type { AsFound } from './turn.ts';
import type { Goal } from './turnTrial.ts';
import type { Unknown } from './unknowns.ts';

/** Why the curves do not count as told, a sentence without a full stop; else the greatest standard error of each, SI. Yields as it goes. @param build as the car is */
export function* curvesTold(
  build: Build,
  goals: readonly Goal[],
  { unknowns, posterior, tooSmallBy }: AsFound,
): Generator<undefined, string | readonly number[]> {
  const stations = goals.flatMap((goal) => goal.stations.map((position) => ({ position, cable: undefined })));
  const owners = goals.flatMap((goal) => goal.stations.map(() => goal));
  const readings = owners.map(({ column }, station) => ({ station, column }));
  const car = createCar(build.mechanism, stations, readings, unknowns, build.values);
  car.put(Float64Array.from(unknowns, ({ index }) => build.values[index]!));
  const n = unknowns.length;
  const slopes = new Float64Array(owners.length * n);
  yield* car.differentiate('both', slopes);
  const rows = owners.map(({ enough }, i) => unknowns.map(({ scale }, j) => (slopes[i * n + j]! * scale) / enough));
  if (rows.every((row) => row.every((each) => Math.abs(each) <= STILL))) return 'The curve rests on none of the dimensions that were found';
  const least = leastOf(posterior);
  const { values, directions } = posterior;
  const isTold = (k: number): boolean => values[k]! > least;
  const along = (row: readonly number[], k: number): number => row.reduce((sum, each, j) => sum + each * directions[k]![j]!, 0);
  const moving = directions.filter((_, k) => !isTold(k) && rows.some((row) => Math.abs(along(row, k)) > MOVED));
  if (moving.length > 0) return `The curve rests on ${namesOf(unknowns, rows, partsIn(moving, n))}, which these readings do not tell`;

  const spreadOf = (row: readonly number[]): number =>
    tooSmallBy * Math.sqrt(values.reduce((sum, value, k) => (isTold(k) ? sum + (along(row, k) / value) ** 2 : sum), 0));
  const spreads = rows.map(spreadOf);
  const spread = Math.max(...spreads);
  if (spread <= LOOSE) return goals.map((goal) => goal.enough * Math.max(...spreads.filter((_, i) => owners[i] === goal)));
  const row = rows[spreads.indexOf(spread)]!;
  // The direction that does most of it.
  const worst = directions.reduce((most, _, k) => (isTold(k) && shareOf(row, k) > shareOf(row, most) ? k : most), 0);
  return `The curve rests on ${namesOf(unknowns, [row], partsIn([directions[worst]!], n))}, which these readings do not tell closely enough`;

  function shareOf(of: readonly number[], k: number): number {
    return Math.abs(along(of, k)) / values[k]!;
  }
}

/** Of what is as good as none, for a whole scale along a direction that is not told: less is how derivatives round. */
const MOVED = 0.1;
/** The same, for a whole scale of any dimension: the curve does not rest on it. */
const STILL = 1e-6;
/** Of what is as good as none, one standard error: a curve known less closely gives nothing to turn by. Common practice, no source. */
const LOOSE = 5;
/** Of 1: a smaller part of a dimension in such a direction does not count. */
const SOME = 0.05;

/** How much of each unknown is in any of the directions, 0 to 1. */
function partsIn(directions: readonly Float64Array[], n: number): readonly number[] {
  return Array.from({ length: n }, (_, j) => Math.sqrt(directions.reduce((sum, direction) => sum + direction[j]! ** 2, 0)));
}

/** Of those in them that move the curve by themselves; in the order of the unknowns. */
function namesOf(unknowns: readonly Unknown[], rows: readonly (readonly number[])[], parts: readonly number[]): string {
  const most = parts.map((part, j) => part * Math.max(...rows.map((row) => Math.abs(row[j]!))));
  const all = Math.max(...most);
  return unknowns.flatMap(({ name }, j) => (parts[j]! > SOME && most[j]! > SOME * all ? [`\`${name}\``] : [])).join(', ');
}
