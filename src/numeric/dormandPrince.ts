/**
 * A step of an explicit Runge–Kutta method of order 5 with an error estimate of order 4 and a continuous answer within the step.
 *
 * J. R. Dormand, P. J. Prince, "A family of embedded Runge–Kutta formulae", Journal of Computational and Applied Mathematics 6 (1980) 19;
 * the continuous extension of order 4 as in E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, 2nd ed.,
 * section II.6. Coefficients from memory, held against known solutions by the tests.
 */

/** Fills `into` with dy/dt; NaN where the state has none. */
export type Derivative = (t: number, y: Float64Array, into: Float64Array) => void;

export interface Stepper {
  /** State at the end of the last step tried. */
  readonly next: Float64Array;
  /**
   * Tries a step from (t, y).
   * @returns the error estimate over what is allowed, greatest of all components: at most 1 where the step is good; NaN where a derivative is not known
   */
  attempt(t: number, y: Float64Array, step: number, allowed: (component: number) => number): number;
  /** State within the last step tried. @param fraction of the step, 0 … 1 */
  within(fraction: number, into: Float64Array): void;
}

export function createStepper(size: number, derivative: Derivative): Stepper {
  const k = Array.from({ length: STAGES }, () => new Float64Array(size));
  const start = new Float64Array(size);
  const stage = new Float64Array(size);
  const next = new Float64Array(size);
  let taken = 0;
  return {
    next,
    attempt(t, y, step, allowed) {
      start.set(y);
      taken = step;
      derivative(t, start, k[0]!);
      for (let s = 1; s < STAGES; s++) {
        const row = A[s]!;
        const into = s === STAGES - 1 ? next : stage;
        for (let i = 0; i < size; i++) {
          let sum = 0;
          for (let j = 0; j < s; j++) sum += row[j]! * k[j]![i]!;
          into[i] = start[i]! + step * sum;
        }
        derivative(t + C[s]! * step, into, k[s]!);
      }
      let worst = 0;
      for (let i = 0; i < size; i++) {
        let error = 0;
        for (let s = 0; s < STAGES; s++) error += E[s]! * k[s]![i]!;
        const ratio = Math.abs(step * error) / allowed(i);
        if (!(ratio <= worst)) worst = ratio;
        if (Number.isNaN(worst)) return NaN;
      }
      return worst;
    },
    within(fraction, into) {
      const theta = fraction;
      const other = 1 - theta;
      for (let i = 0; i < size; i++) {
        const difference = next[i]! - start[i]!;
        const first = taken * k[0]![i]! - difference;
        const second = difference - taken * k[6]![i]! - first;
        let third = 0;
        for (let s = 0; s < STAGES; s++) third += D[s]! * k[s]![i]!;
        into[i] = start[i]! + theta * (difference + other * (first + theta * (second + other * taken * third)));
      }
    },
  };
}

const STAGES = 7;

const C: readonly number[] = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];

const A: readonly (readonly number[])[] = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];

/** Order 5 less order 4. */
const E: readonly number[] = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];

const D: readonly number[] = [
  -12715105075 / 11282082432,
  0,
  87487479700 / 32700410799,
  -10690763975 / 1880347072,
  701980252875 / 199316789632,
  -1453857185 / 822651844,
  69997945 / 29380423,
];
