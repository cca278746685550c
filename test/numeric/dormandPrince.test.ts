import { expect, test } from 'vitest';
import { createStepper, type Derivative } from '../../src/numeric/dormandPrince.ts';

/** ẍ = −x from (1, 0): cos t. */
const swing: Derivative = (_t, y, into) => {
  into[0] = y[1]!;
  into[1] = -y[0]!;
};

function afterOneStep(step: number): { readonly end: number; readonly middle: number; readonly error: number } {
  const stepper = createStepper(2, swing);
  const error = stepper.attempt(0, Float64Array.of(1, 0), step, () => 1);
  const middle = new Float64Array(2);
  stepper.within(0.4, middle);
  return { end: Math.abs(stepper.next[0]! - Math.cos(step)), middle: Math.abs(middle[0]! - Math.cos(0.4 * step)), error };
}

test('a step is of order 5, its error estimate and what lies within it of order 4', () => {
  const [coarse, fine] = [afterOneStep(0.2), afterOneStep(0.1)];
  // The error of one step falls with one power more than the order, to within the next power.
  expect(Math.log2(coarse.end / fine.end)).toBeGreaterThan(5.7);
  expect(Math.log2(coarse.middle / fine.middle)).toBeGreaterThan(4.7);
  expect(Math.log2(coarse.error / fine.error)).toBeGreaterThan(4.7);
  expect(coarse.end).toBeLessThan(1e-7);
  expect(coarse.middle).toBeLessThan(1e-6);
});

test('a step with a time of its own integrates a polynomial of degree 4 exactly', () => {
  const stepper = createStepper(1, (t, _y, into) => {
    into[0] = 5 * t ** 4;
  });
  stepper.attempt(1, Float64Array.of(1), 1, () => 1);
  expect(stepper.next[0]).toBeCloseTo(32, 12);
});

test('the answer within a step meets both its ends', () => {
  const stepper = createStepper(2, swing);
  const y = Float64Array.of(0.3, -2);
  stepper.attempt(0, y, 0.5, () => 1);
  const at = new Float64Array(2);
  stepper.within(0, at);
  expect([...at]).toEqual([...y]);
  stepper.within(1, at);
  at.forEach((value, i) => expect(value).toBeCloseTo(stepper.next[i]!, 14));
});

test('a derivative that is not known makes the step one that is not good', () => {
  const stepper = createStepper(1, (_t, _y, into) => into.fill(NaN));
  expect(stepper.attempt(0, Float64Array.of(1), 0.1, () => 1)).toBeNaN();
});
