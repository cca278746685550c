/** First and second derivatives along the pedal against one-sided differences, which are what holds at kinks as well. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closureOf, jacobian, magnification } from '../support/closure.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { sensesOf, solveSketch } from '../support/solveSketch.ts';

const STATIONS = [0, 0.17, 0.5, 0.83];
/** Of the travel. */
const STEP = 1e-5;
/** Smaller steps drown in rounding. */
const LEAST_STEP = 1e-8;
/** How far the exact value may be from a difference, in terms of how much the difference changes when its step is halved. */
const TRUST = 4;
/** A difference that changes by more than this, relative, when its step is halved proves little. */
const TELLING = 1e-3;

/** d/dx at 0 by −3 f(0) + 4 f(h) − f(2h) over 2h. */
const oneSided = (f: (x: number) => number, h: number): number => (-3 * f(0) + 4 * f(h) - f(2 * h)) / (2 * h);

describe('derivatives along the pedal', () => {
  test('agree with differences for random linkages', { timeout: 60_000 }, () => {
    const faults: string[] = [];
    let told = 0;
    let untold = 0;
    fc.sample(anyMechanism(), { numRuns: 1500, seed: 44 }).forEach((sketch, index) => {
      const solved = solveSketch(sketch);
      const closure = closureOf(sketch, sensesOf(solved.mechanism));
      for (const travel of STATIONS) {
        const pose = solved.poseAt(travel);
        // A cable that goes slack or is taken up within the difference would be a kink there.
        const statesAt = (at: number): string => String(solved.poseAt(at).cableState);
        const states = statesAt(travel);
        const magnified = magnification(jacobian(closure, solved.rotationsAt(travel), travel));
        for (const { name, index: lever } of solved.mechanism.levers) {
          if (Number.isNaN(pose.rotation[lever])) continue;
          const check = (what: string, exact: number, f: (travel: number) => number, rounding: number): void => {
            let step = STEP;
            let difference = NaN;
            let change = Infinity;
            // Near a dead centre the step must shrink until halving it changes little.
            for (; step >= LEAST_STEP; step /= 10) {
              const coarse = oneSided((x) => f(travel + x), step);
              difference = oneSided((x) => f(travel + x), step / 2);
              change = Math.abs(coarse - difference);
              if (change <= TELLING * Math.max(1, Math.abs(difference)) && statesAt(travel + 2 * step) === states) break;
            }
            if (!(change <= TELLING * Math.max(1, Math.abs(difference)))) {
              untold++;
              return;
            }
            told++;
            const allowed = TRUST * change + rounding / step;
            if (!(Math.abs(exact - difference) <= allowed))
              faults.push(`#${index} ${what} of ${name} at ${travel}: ${exact}, by difference ${difference}`);
          };
          const size = Math.max(1, Math.abs(pose.rate[lever]!));
          check('rate', pose.rate[lever]!, (at) => solved.poseAt(at).rotation[lever]!, 1e-14 * magnified);
          check('curvature', pose.curvature[lever]!, (at) => solved.poseAt(at).rate[lever]!, 1e-14 * magnified ** 2 * size);
        }
      }
    });
    expect(faults).toEqual([]);
    expect(untold / told).toBeLessThan(0.02);
  });
});
