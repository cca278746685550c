/** With nothing that rubs, free-body statics and virtual work are two ways to one figure. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createFriction } from '../../../src/forces/friction/statics.ts';
import { closureOf } from '../../support/closure.ts';
import { leastSine } from '../support/freeBody.ts';
import { anySprung } from '../support/randomSprung.ts';
import { solveSprungText } from '../support/sprung.ts';
import { NOTHING_RUBS, rubbingText } from './support/rubbing.ts';

const STATIONS = [0, 0.17, 0.41, 0.73, 1];
/** Relative to the figure, or to what all springs together would bring on an arm of `SHORT`. */
const SAME = 1e-9;
/** m. */
const SHORT = 0.01;
/** Sine of the angle from a dead centre. */
const CLEAR = 1e-2;

describe('without friction, effort and release are what virtual work gives', () => {
  it.each([
    { what: 'in planar linkages', choice: { only: 'planar' }, seed: 71 },
    { what: 'in spatial linkages', choice: { only: 'spatial' }, seed: 72 },
    { what: 'in linkages with stops, past which cables stretch', choice: { stops: true }, seed: 73 },
  ] as const)('$what', { timeout: 240_000 }, ({ choice, seed }) => {
    const faults: string[] = [];
    let compared = 0;
    let loaded = 0;
    for (const sketch of fc.sample(anySprung(choice), { numRuns: 200, seed })) {
      const solved = solveSprungText(rubbingText(sketch, NOTHING_RUBS));
      const closure = closureOf(sketch, solved.senses);
      const { build, poseAt } = solved.travel;
      const friction = createFriction(build);
      for (const at of STATIONS) {
        const rotations = solved.rotationsAt(at);
        if (!(leastSine(closure, sketch, rotations) >= CLEAR)) continue;
        const { frictionless, pressing, releasing, effort, release, margin } = friction.at(poseAt(at));
        const work = frictionless.effort;
        const all = frictionless.springs.reduce((sum, each) => sum + Math.abs(each), 0) / SHORT;
        const same = (what: string, one: number, other: number): void => {
          const agrees = Number.isNaN(other) ? Number.isNaN(one) : Math.abs(one - other) <= SAME * Math.max(Math.abs(other), all);
          if (!agrees) faults.push(`${what} at ${at}: ${one} and ${other}\n${solved.text}`);
        };
        compared++;
        if (Math.abs(work) > 1) loaded++;
        same('effort', effort, work);
        same('release', release, work > 0 ? work : Math.min(work, 0));
        solved.mechanism.cables.forEach(({ cable, name, index }) => {
          same(`${name} pressing`, pressing.tension[cable]!, frictionless.tension[cable]!);
          same(`${name} coming back`, releasing.force[index]!, frictionless.tension[cable]!);
        });
        solved.mechanism.levers.forEach(({ index, name }) => {
          const own = margin[index]!;
          if (!Number.isNaN(own) && own !== Infinity && own !== 0) faults.push(`margin of ${name} at ${at}: ${own}`);
        });
      }
    }
    expect(faults.slice(0, 3)).toEqual([]);
    expect(compared).toBeGreaterThan(500);
    expect(loaded).toBeGreaterThan(150);
  });
});
