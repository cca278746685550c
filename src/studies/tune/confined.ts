/**
 * The nearest place to the curve that is sound, looked for from one that may not be.
 *
 * Each demand that is not kept at a place, and each error there, is taken as straight: how far it is beyond its limit, and how that changes with
 * the free dimensions, by differences of solved files. The curve is followed as nearly as these straight limits let it, and where that leads
 * is held against the solved file again, until nothing is beyond a limit there.
 */
import { leastSquares, type Bounds, type Patience } from '../../numeric/leastSquares.ts';
import { answerOf, isSound, type Court, type TunedAnswer } from './answers.ts';
import { judge } from './demands.ts';
import { newErrors } from './news.ts';
import { measure, polish } from './search.ts';
import type { Trial } from './trial.ts';

export interface Confined {
  /** In parts of the bounds. */
  readonly x: Float64Array;
  /** Of the file that was solved with it. */
  readonly answer: TunedAnswer;
}

/**
 * Undefined where no such place is come to. Yields as files are solved.
 * @param enough as in `Effort` @param bounds where some dimensions are held
 */
export function* confined(court: Court, start: Float64Array, enough: number, bounds: Bounds): Generator<undefined, Confined | undefined> {
  let limits: readonly Straight[] = [];
  let x = start;
  for (let round = 0; round < ROUNDS; round++) {
    const beyond = yield* beyondAt(court, x);
    if (beyond === undefined) return undefined;
    if (round > 0 && beyond.size === 0) {
      const answer = yield* answerOf(court, x);
      return isSound(answer) && Number.isFinite(answer.error) ? { x, answer } : undefined;
    }
    const straightened = yield* straighten(court, x, beyond, bounds);
    if (straightened === undefined) return undefined;
    limits = [...limits.filter(({ key }) => !beyond.has(key)), ...straightened];
    const trial = within(court.trial, limits);
    const near = yield* leastSquares({ ...trial.problem(trial.ownWeights), ...bounds }, x, NEAR);
    if (near === undefined) return undefined;
    x = (yield* polish(trial, measure(trial, near.x), enough, bounds)).x;
  }
  return undefined;
}

const ROUNDS = 6;
const NEAR: Patience = { steps: 40, enough: 1e-16, still: 1e-9 };

/** A limit that was passed at a place, as a plane: it is kept where value + slope · (x − at) is not above 0. */
interface Straight {
  readonly key: string;
  readonly at: Float64Array;
  /** In parts of the limit. */
  readonly value: number;
  readonly slope: Float64Array;
}

/** Of each demand that is not kept and each new error how far it is beyond its limit; undefined where one has no such figure. */
function* beyondAt(
  { trial, demands, solveWith, standing }: Court,
  x: Float64Array,
): Generator<undefined, ReadonlyMap<string, number> | undefined> {
  const answered = solveWith([...trial.valuesAt(x)]);
  yield undefined;
  const beyond = new Map(newErrors(answered, standing));
  for (const { demand, shortfall } of judge(answered, demands)) if (shortfall !== 0) beyond.set(demand.name, shortfall);
  return answered.study === undefined || [...beyond.values()].some(Number.isNaN) ? undefined : beyond;
}

function* straighten(
  court: Court,
  x: Float64Array,
  beyond: ReadonlyMap<string, number>,
  { from, to }: Bounds,
): Generator<undefined, readonly Straight[] | undefined> {
  const found = [...beyond].map(([key, value]): Straight => ({ key, at: x, value, slope: new Float64Array(x.length) }));
  if (found.length === 0) return found;
  for (let i = 0; i < x.length; i++) {
    if (!(from[i]! < to[i]!)) continue;
    const left = new Set(found);
    for (const step of x[i]! + DIFFERENCE > to[i]! ? [-DIFFERENCE, DIFFERENCE] : [DIFFERENCE, -DIFFERENCE]) {
      const there = yield* beyondAt(court, x.map((value, j) => (j === i ? value + step : value))); // prettier-ignore
      for (const each of there === undefined ? [] : left) {
        const moved = there?.get(each.key);
        // What is kept there does not say by how much: the other side does.
        if (moved === undefined) continue;
        each.slope[i] = (moved - each.value) / step;
        left.delete(each);
      }
      if (left.size === 0) break;
    }
    if (left.size > 0) return undefined;
  }
  return found;
}

/** Of the bounds; as for mending. */
const DIFFERENCE = 1e-4;

/** The same with limits as further residuals; what trespasses on them is no better than what does not. */
function within(trial: Trial, limits: readonly Straight[]): Trial {
  const n = trial.case.free.length;
  const passedBy = ({ at, value, slope }: Straight, x: Float64Array): number =>
    slope.reduce((sum, each, i) => sum + each * (x[i]! - at[i]!), value);
  return {
    ...trial,
    trespassAt: (x) => (Number.isNaN(trial.trespassAt(x)) ? NaN : limits.reduce((sum, each) => sum + Math.max(0, passedBy(each, x)), 0)),
    problem(weights) {
      const own = trial.problem(weights);
      const aimed = (each: Straight, x: Float64Array): number => LIMIT_WEIGHT * Math.max(0, passedBy(each, x) + TO_SPARE);
      return {
        ...own,
        count: own.count + limits.length,
        evaluate(x, residuals) {
          limits.forEach((each, i) => (residuals[own.count + i] = aimed(each, x)));
          return own.evaluate(x, residuals.subarray(0, own.count));
        },
        *differentiate(x, residuals, jacobian) {
          yield* own.differentiate(x, residuals.subarray(0, own.count), jacobian.subarray(0, own.count * n));
          limits.forEach(({ slope }, i) => {
            const row = (own.count + i) * n;
            for (let j = 0; j < n; j++) jacobian[row + j] = residuals[own.count + i]! > 0 ? LIMIT_WEIGHT * slope[j]! : 0;
          });
        },
      };
    },
  };
}

/** Firm beside parts of the curve's height, so that what is left beyond a limit is less than what is spared. */
const LIMIT_WEIGHT = 100;
/** In parts of the limit: what is aimed at on its kept side. */
const TO_SPARE = 1e-4;
