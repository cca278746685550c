/**
 * Cars that were never built, random linkages off by known amounts and read with known noise: the truth must lie within two standard errors
 * as often as a normal law has it, 95.45 %, and readings that are as their noise says must not be accused.
 */
import { expect, test } from 'vitest';
import { fitText } from '../../../src/fitText.ts';
import { finished } from '../../../src/studies/finished.ts';
import { NOTHING_BESIDE } from '../../../src/studies/fit/gather.ts';
import { builtCar, sketches } from './cars.ts';

/** Probability of a count of hits at or below, and at or above, by the binomial law. */
function tails(hits: number, count: number, share: number): readonly [number, number] {
  let logOf = count * Math.log(1 - share);
  let [below, above] = [0, 0];
  for (let k = 0; k <= count; k++) {
    if (k > 0) logOf += Math.log((count - k + 1) / k) + Math.log(share / (1 - share));
    if (k <= hits) below += Math.exp(logOf);
    if (k >= hits) above += Math.exp(logOf);
  }
  return [below, above];
}

/** Of either tail: a right fit fails this test for one seed in five hundred. */
const UNLIKELY = 0.001;
const WITHIN_TWO = 0.9545;

test.each([
  ['of any joints', 140, {}],
  ['with open and closed stops', 90, { stops: true }],
])(
  'linkages %s: the truth lies within two standard errors as often as it should, and hardly any reading is accused',
  (_, drawn, choice) => {
    let [count, hits, unsettled, cars] = [0, 0, 0, 0];
    let carsWithAccused = 0;
    sketches(drawn, 4711, choice).forEach((sketch, i) => {
      const car = builtCar(sketch, i + 1);
      if (car === undefined) return;
      const outcome = finished(fitText(car.text, NOTHING_BESIDE));
      if (outcome.kind === 'not-fitted') throw new Error(outcome.why);
      cars++;
      // Where a lever just meets a stop or stands at a dead centre, as some of these do on purpose, no linear error means anything. That is
      // said: the fit has not settled, or the readings scatter by far more than their noise.
      if (!outcome.settled || outcome.columns.some(({ scatter }) => scatter > 10)) {
        unsettled++;
        return;
      }
      if (outcome.readings.some(({ verdict }) => verdict === 'off')) carsWithAccused++;
      for (const { name, value, error } of outcome.dimensions) {
        count++;
        if (Math.abs(value - car.truth.get(name)!) <= 2 * error) hits++;
      }
    });
    expect(count).toBeGreaterThan(150);
    const [below, above] = tails(hits, count, WITHIN_TWO);
    expect(below).toBeGreaterThan(UNLIKELY);
    expect(above).toBeGreaterThan(UNLIKELY);
    expect(unsettled).toBeLessThanOrEqual(0.15 * cars);
    // One car in a hundred is what the limit allows.
    expect(tails(carsWithAccused, cars, 0.01)[1]).toBeGreaterThan(UNLIKELY);
  },
);
