/** What is found with a spring off through what changes alone is what the whole linkage without that spring gives. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createFriction } from '../../../src/forces/friction/statics.ts';
import { solveTravel, type Travel } from '../../../src/travel/travel.ts';
import { anySprung } from '../support/randomSprung.ts';
import { solveSprungText } from '../support/sprung.ts';
import { mechanismOf } from '../../support/solveSketch.ts';
import { ALL_RUBS, rubbingText } from './support/rubbing.ts';

const STATIONS = [0, 0.03, 0.17, 0.41, 0.73, 1];
/** Relative; both ways do the same sums in the same order. */
const SAME = 1e-12;

describe('a spring off', () => {
  it('brings back what the linkage without it does, in random linkages', { timeout: 240_000 }, () => {
    let compared = 0;
    for (const sketch of fc.sample(anySprung({}), { numRuns: 60, seed: 74 })) {
      compared += checkSpringsOff(solveSprungText(rubbingText(sketch, ALL_RUBS)).travel);
    }
    expect(compared).toBeGreaterThan(500);
  });

  it('does so through free play, taken up or not, and with a spring between two levers', () => {
    expect(checkSpringsOff(solveTravel(mechanismOf(STAGED)))).toBeGreaterThan(0);
  });
});

const STAGED = `format: 1
levers:
  crank:
    pivot: [0, 0]
    arms: {spring: {radius: 30, angle: 200 deg}}
    friction: 9 N*mm
  first: {pivot: [100, 0], stops: {closed: 0, open: 80 deg}, friction: 12 N*mm, bearing: {diameter: 8 mm, friction: 0.15}, arms: {own: {radius: 25, angle: 20 deg}}}
  second: {pivot: [200, 0], stops: {closed: 0, open: 60 deg}, friction: 12 N*mm, bearing: {diameter: 8 mm, friction: 0.15}}
pedal: {lever: crank, opens: counterclockwise, travel: 70 deg}
couplings:
  one: {from: crank, to: first}
  two: {from: first, to: second, lag: 25 deg}
springs:
  between: {from: crank.spring, to: first.own, rate: 0.5 N/mm, free_length: 60 mm, initial_tension: 4 N}
  front: {lever: first, rate: 2 N*mm/deg, preload: 150 N*mm}
  rear: {lever: second, rate: 2 N*mm/deg, preload: 150 N*mm}
  at_pedal: {lever: crank, rate: 1 N*mm/deg, preload: 80 N*mm}
`;

/** @returns how many figures a spring’s absence changed */
function checkSpringsOff({ build, mechanism, poseAt }: Travel): number {
  const whole = createFriction(build);
  const without = createFriction(build);
  let changed = 0;
  for (const at of STATIONS) {
    const pose = poseAt(at);
    const found = whole.at(pose);
    mechanism.attached.springs.forEach(({ name }, number) => {
      const off = whole.springOff(pose, number);
      const { frictionless, margin } = without.comingBack(pose, name);
      for (const { index } of mechanism.levers) {
        const place = off.levers.indexOf(index);
        const closing = place < 0 ? found.frictionless.closing[index]! : off.closing[place]!;
        const over = place < 0 ? found.margin[index]! : off.margin[place]!;
        expectSame(closing, frictionless.closing[index]!);
        expectSame(over, margin[index]!);
        if (closing !== found.frictionless.closing[index]) changed++;
      }
    });
  }
  return changed;
}

function expectSame(one: number, other: number): void {
  if (Number.isFinite(other)) expect(Math.abs(one - other)).toBeLessThanOrEqual(SAME * Math.max(1, Math.abs(other)));
  else expect(one).toBe(other);
}
