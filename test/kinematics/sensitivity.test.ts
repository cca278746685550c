/** Derivatives by the dimensions, in closed form, against differences of builds that are settled anew. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createBuild, putDimensions } from '../../src/kinematics/createBuild.ts';
import { sensitivities } from '../../src/kinematics/sensitivity.ts';
import { settleStops } from '../../src/travel/stops.ts';
import { closureOf, continuation } from '../support/closure.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { mechanismOf, sensesOf, solvedBuild } from '../support/solveSketch.ts';
import { sketchText } from '../support/sketch.ts';

const STATIONS = [0, 0.2, 0.55, 1];

/** d rotation by each dimension by a one-sided difference of the second order: −3 f(0) + 4 f(h) − f(2h) over 2h. */
function differencesBy(sketchOrText: string, base: Float64Array | undefined, step: number): (travel: number) => readonly Float64Array[] {
  const mechanism = mechanismOf(sketchOrText);
  const values = base ?? mechanism.nominal;
  const build = createBuild(mechanism, values);
  const rotationsAt = (index: number, by: number, travel: number): Float64Array => {
    const moved = Float64Array.from(values);
    moved[index]! += by;
    putDimensions(build, moved);
    settleStops(build);
    return solvedBuild(build).poseAt(travel).rotation;
  };
  return (travel) =>
    mechanism.dimensions.map((_, index) => {
      const [none, once, twice] = [0, step, 2 * step].map((by) => rotationsAt(index, by, travel));
      return none!.map((at, lever) => (-3 * at + 4 * once![lever]! - twice![lever]!) / (2 * step));
    });
}

function worst(text: string, base: Float64Array | undefined, travel: number, step: number): { readonly miss: number; readonly where: string } {
  const mechanism = mechanismOf(text);
  const build = createBuild(mechanism, base ?? mechanism.nominal);
  settleStops(build);
  const exact = sensitivities(build, travel);
  const differences = differencesBy(text, base, step)(travel);
  const found = { miss: 0, where: '' };
  exact.forEach((rates, index) =>
    rates.forEach((rate, lever) => {
      const difference = differences[index]![lever]!;
      const miss = Number.isNaN(rate) && Number.isNaN(difference) ? 0 : Math.abs(rate - difference) / Math.max(1, Math.abs(rate));
      if (!(miss <= found.miss)) Object.assign(found, { miss, where: `${mechanism.levers[lever]!.name} by ${mechanism.dimensions[index]!.path}: ${rate} and ${difference}` });
    }),
  );
  return found;
}

describe('derivatives by the dimensions', () => {
  test('agree with differences for random linkages as drawn, by every dimension', { timeout: 120_000 }, () => {
    const faults: string[] = [];
    let checked = 0;
    fc.sample(anyMechanism(), { numRuns: 250, seed: 5 }).forEach((sketch, index) => {
      const text = sketchText(sketch);
      const follow = continuation(closureOf(sketch, sensesOf(mechanismOf(text))));
      for (const travel of STATIONS) {
        const followed = follow.to(travel);
        if (followed === undefined) break;
        checked++;
        const { magnified } = followed;
        const { miss, where } = worst(text, undefined, travel, STEP / Math.min(magnified, 1e3));
        if (!(miss < CLOSE * magnified ** 2)) faults.push(`#${index} at ${travel}: ${where}, errors magnified ${magnified} times`);
      }
    });
    expect(faults).toEqual([]);
    expect(checked).toBeGreaterThan(500);
  });

  test('agree with differences where stops hold levers and everything stands a little off its drawn place', { timeout: 120_000 }, () => {
    const faults: string[] = [];
    let held = 0;
    fc.sample(anyMechanism({ stops: true }), { numRuns: 300, seed: 6 }).forEach((sketch, index) => {
      const text = sketchText(sketch);
      const mechanism = mechanismOf(text);
      // Off its drawn place by some tenths of a millimetre or degree, different for each dimension: no two stops meet at once.
      const base = mechanism.nominal.map((value, i) => value * (1 + 2e-3 * Math.sin(3 * i + index)) + 1e-4 * Math.sin(7 * i + index));
      const build = createBuild(mechanism, base);
      held += settleStops(build).length + build.bounds.restRotation.filter((rotation) => rotation !== 0).length;
      for (const travel of STATIONS) {
        const { miss, where } = worst(text, base, travel, STEP);
        if (!(miss < CLOSE)) faults.push(`#${index} at ${travel}: ${where}`);
      }
    });
    console.log(held, faults.length);
    expect(faults.slice(0, 12)).toEqual([]);
    expect(held).toBeGreaterThan(300);
  });
});

/** m, or rad, or a ratio. */
const STEP = 1e-7;
const CLOSE = 1e-5;
