/** Derivatives by the dimensions, in closed form, against differences of builds that are settled anew. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { advance } from '../../src/kinematics/advance.ts';
import { createBuild, putDimensions } from '../../src/kinematics/createBuild.ts';
import type { Mechanism } from '../../src/kinematics/model.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { sensitivities } from '../../src/kinematics/sensitivity.ts';
import { settleStops } from '../../src/travel/stops.ts';
import { closureOf, continuation } from '../support/closure.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { mechanismOf, sensesOf } from '../support/solveSketch.ts';
import { sketchText } from '../support/sketch.ts';

const STATIONS = [0, 0.2, 0.55, 1];

/** By how much, relative to `allowed`, a closed-form derivative differs from its difference, at the worst; with what it is of. */
function worst(
  mechanism: Mechanism,
  values: Float64Array,
  stations: readonly number[],
  step: number,
  allowed: (rate: number) => number,
): Miss {
  const build = createBuild(mechanism, values);
  const stopped = mechanism.levers.some(({ openStop }) => openStop !== undefined);
  if (stopped) settleStops(build);
  const exact = stations.map((travel) => sensitivities(build, travel));
  const pose = createPose(mechanism);
  const rotationsIn = (moved: Float64Array): readonly (readonly number[])[] => {
    putDimensions(build, moved);
    if (stopped) settleStops(build);
    return stations.map((travel) => {
      advance(build, travel, pose);
      return [...pose.rotation];
    });
  };
  const unmoved = rotationsIn(values);
  const found = { miss: 0, where: '' };
  mechanism.dimensions.forEach(({ path }, index) => {
    // −3 f(0) + 4 f(h) − f(2h) over 2h: one-sided, as the derivative is where two stops are met at once.
    const [first, second] = [step, 2 * step].map((by) => {
      const moved = Float64Array.from(values);
      moved[index]! += by;
      return rotationsIn(moved);
    });
    stations.forEach((travel, station) => {
      const [none, once, twice] = [unmoved, first, second].map((sample) => sample![station]!);
      exact[station]![index]!.forEach((rate, lever) => {
        const difference = (-3 * none![lever]! + 4 * once![lever]! - twice![lever]!) / (2 * step);
        const miss = Number.isNaN(rate) && Number.isNaN(difference) ? 0 : Math.abs(rate - difference) / allowed(rate);
        if (miss <= found.miss) return;
        found.miss = miss;
        found.where = `${mechanism.levers[lever]!.name} by ${path} at ${travel}: ${rate}, by difference ${difference}`;
      });
    });
  });
  return found;
}

interface Miss {
  readonly miss: number;
  readonly where: string;
}

describe('derivatives by the dimensions', () => {
  test('agree with differences for random linkages as drawn, by every dimension', { timeout: 120_000 }, () => {
    const faults: string[] = [];
    let checked = 0;
    fc.sample(anyMechanism(), { numRuns: 250, seed: 5 }).forEach((sketch, index) => {
      const mechanism = mechanismOf(sketchText(sketch));
      const follow = continuation(closureOf(sketch, sensesOf(mechanism)));
      for (const travel of STATIONS) {
        const followed = follow.to(travel);
        if (followed === undefined) break;
        checked++;
        const { magnified } = followed;
        const { miss, where } = worst(
          mechanism,
          mechanism.nominal,
          [travel],
          STEP / Math.min(magnified, 1e3),
          (rate) => CLOSE * magnified * Math.max(Math.abs(rate), magnified / 100),
        );
        if (!(miss < 1)) faults.push(`#${index}: ${where}, errors magnified ${magnified} times`);
      }
    });
    expect(faults).toEqual([]);
    expect(checked).toBeGreaterThan(500);
  });

  test('agree with differences where stops hold levers and everything stands a little off its drawn place', { timeout: 120_000 }, () => {
    const faults: string[] = [];
    let held = 0;
    fc.sample(anyMechanism({ stops: true }), { numRuns: 200, seed: 6 }).forEach((sketch, index) => {
      const mechanism = mechanismOf(sketchText(sketch));
      // Off its drawn place by some tenths of a millimetre or degree, different for each dimension: no two stops meet at once.
      const base = mechanism.nominal.map((value, i) => value * (1 + 2e-3 * Math.sin(3 * i + index)) + 1e-4 * Math.sin(7 * i + index));
      const build = createBuild(mechanism, base);
      held += settleStops(build).length + build.bounds.restRotation.filter((rotation) => rotation !== 0).length;
      const { miss, where } = worst(
        mechanism,
        base,
        STATIONS,
        STEP,
        (rate) => CLOSE * Math.max(10, Math.abs(rate), Math.abs(rate) ** 3 / 1e4),
      );
      if (!(miss < 1)) faults.push(`#${index}: ${where}`);
    });
    expect(faults).toEqual([]);
    expect(held).toBeGreaterThan(200);
  });
});

/** m, or rad, or a ratio. */
const STEP = 1e-7;
const CLOSE = 1e-5;
