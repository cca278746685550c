/** Two shafts out of step, against the law of cosines and quotients by hand. */
import { describe, expect, it } from 'vitest';
import type { PlatesModel } from '../../src/kinematics/attached.ts';
import { openArea, openAreaSlope, type PlateShape } from '../../src/plates/openArea.ts';
import { outOfStep, type OutOfStep } from '../../src/plates/outOfStep.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { mechanismOf } from '../support/solveSketch.ts';

const DEG = Math.PI / 180;

/** Two shafts geared off the pedal, the second by `ratio` and after `lag` degrees. */
const geared = (ratio: number, lag = 0, second = '', stops = ''): string => `format: 1
levers:
  pedal: {pivot: [0, 0]}
  one: {pivot: [100, 0], stops: {closed: 0${stops}}}
  two: {pivot: [200, 0]}
pedal: {lever: pedal, opens: counterclockwise, travel: 30}
couplings:
  first: {from: pedal, to: one, ratio: 2}
  second: {from: pedal, to: two, ratio: ${ratio}, lag: ${lag} deg}
plates:
  near: {lever: one, bore: 45, shaft: 8, seat: 6 deg, idle: 1.5 deg}
  far: {lever: two, bore: 45, shaft: 8, seat: 6 deg, idle: 1.5 deg${second}}
`;

function compared(text: string): OutOfStep {
  const travel = solveTravel(mechanismOf(text));
  const [first, second] = travel.mechanism.attached.plates;
  return outOfStep(travel, first!, second!);
}

const shape: PlateShape = { bore: 0.045, shaft: 0.008, seat: 6 * DEG };
const area = (opening: number): number => openArea(shape, (7.5 + opening) * DEG);
const relative = (one: number, other: number): number => (2 * (area(one) - area(other))) / (area(one) + area(other));

describe('two shafts geared alike', () => {
  it('are in step everywhere', () => {
    const { atRest, nearIdle, above } = compared(geared(2));
    for (const each of [atRest, nearIdle, above]) {
      expect(each.opening?.value).toBeCloseTo(0, 14);
      expect(each.area?.value).toBeCloseTo(0, 13);
    }
  });
});

describe('a second shaft that is geared down', () => {
  const { atRest, nearIdle, above } = compared(geared(1.9));

  it('is in step at rest, least so near idle where the mean is 5°, and above at full pedal', () => {
    expect(atRest.opening).toEqual({ value: 0, travel: 0 });
    expect(atRest.area?.value).toBeCloseTo(0, 14);
    // Openings 60 t and 57 t degrees.
    const edge = 5 / 58.5;
    expect(nearIdle.opening?.travel).toBeCloseTo(edge, 9);
    expect((nearIdle.opening?.value ?? NaN) / DEG).toBeCloseTo(3 * edge, 8);
    expect(above.opening?.travel).toBe(1);
    expect((above.opening?.value ?? NaN) / DEG).toBeCloseTo(3, 10);
  });

  it('has the greatest difference in area where differences by hand have it', () => {
    let best = { value: 0, travel: NaN };
    for (let i = 0; i <= 100_000; i++) {
      const travel = i / 100_000;
      const value = relative(60 * travel, 57 * travel);
      if (58.5 * travel > 5 && Math.abs(value) > Math.abs(best.value)) best = { value, travel };
    }
    expect(above.area?.value).toBeCloseTo(best.value, 8);
    expect(above.area?.travel).toBeCloseTo(best.travel, 3);
    expect(best.travel).toBeGreaterThan(0.1);
    expect(best.travel).toBeLessThan(0.9);
  });

  it('has the sign of first less second', () => {
    expect(above.opening?.value).toBeGreaterThan(0);
    expect(compared(geared(2.1)).above.opening?.value).toBeLessThan(0);
    expect(compared(geared(2.1)).above.area?.value).toBeLessThan(0);
  });
});

describe('a second shaft that lags', () => {
  it('is furthest behind from where the first has run ahead, also in area', () => {
    const lag = 2;
    const { nearIdle } = compared(geared(2, lag));
    expect((nearIdle.opening?.value ?? NaN) / DEG).toBeCloseTo(2 * lag, 9);
    // Before the lag is taken up the second stands at idle.
    expect(nearIdle.area?.value).toBeCloseTo(relative(2 * lag, 0), 8);
    expect(nearIdle.area?.travel).toBeCloseTo(lag / 30, 8);
  });
});

describe('plates of different idle', () => {
  it('differ in area though not in opening, at rest most of all', () => {
    const { atRest, nearIdle } = compared(geared(2).replace('idle: 1.5 deg}\n  far', 'idle: 1.6 deg}\n  far'));
    expect(atRest.opening?.value).toBe(0);
    expect(atRest.area?.value).toBeCloseTo(relative(0.1, 0), 12);
    expect(nearIdle.area?.travel).toBe(0);
    // A tenth of a degree on 1.5° of idle: about 7 % of the air, by the slope midway as well.
    expect(atRest.area?.value).toBeCloseTo((openAreaSlope(shape, 7.55 * DEG) / area(0.05)) * 0.1 * DEG, 4);
    expect(atRest.area?.value).toBeGreaterThan(0.06);
    expect(atRest.area?.value).toBeLessThan(0.08);
  });

  it('have no difference in area while both are as good as shut', () => {
    const { atRest, nearIdle } = compared(geared(1.9).replaceAll('idle: 1.5', 'idle: 0'));
    expect(atRest.area).toBeUndefined();
    expect(nearIdle.area?.travel).toBeGreaterThan(0);
    expect(Math.abs(nearIdle.area?.value ?? NaN)).toBeLessThan(0.15);
  });

  it('differ by all of it where one is shut and the other is not', () => {
    const { atRest } = compared(geared(2).replace('idle: 1.5 deg}\n  far', 'idle: 0 deg}\n  far'));
    expect(atRest.area?.value).toBe(-2);
  });
});

it('says nothing of a stretch that the pedal does not come to', () => {
  const { above, nearIdle } = compared(geared(2).replace('travel: 30', 'travel: 2'));
  expect(above).toEqual({ opening: undefined, area: undefined });
  expect(nearIdle.opening).toBeDefined();
});

it('stops where an open stop with no cable before it stops the pedal', () => {
  const { above } = compared(geared(1.9, 0, '', ', open: 40'));
  expect(above.opening?.travel).toBeCloseTo(40 / 60, 9);
  expect((above.opening?.value ?? NaN) / DEG).toBeCloseTo(2, 8);
});

it('takes each set of plates as it is read from the build, not from the file', () => {
  const mechanism = mechanismOf(geared(2));
  const values = Float64Array.from(mechanism.nominal);
  const idle = mechanism.dimensions.find(({ path }) => path === 'plates.near.idle')!;
  values[idle.index] = 1.6 * DEG;
  const travel = solveTravel(mechanism, values);
  const [first, second] = travel.mechanism.attached.plates as [PlatesModel, PlatesModel];
  expect(outOfStep(travel, first, second).atRest.area?.value).toBeCloseTo(relative(0.1, 0), 12);
});
