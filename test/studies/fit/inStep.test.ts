/** What to turn on a car with two shafts: they are brought in step first, by the one rod that can be turned. */
import { expect, test } from 'vitest';
import { solve } from '../../../src/solve.ts';
import { benchText, carText, fitted, TEN } from './bench.ts';

const DEG = Math.PI / 180;

const TWO_SHAFTS = `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pad: {radius: 220 mm, angle: -75 deg}, clevis: {radius: 70 mm, angle: 100 deg}}}
  crank:
    pivot: [430, 60]
    arms: {left: {radius: 36 mm, angle: 210 deg}, right: {radius: 36 mm, angle: 30 deg}}
    drums: {quadrant: {radius: 26 mm, wraps: counterclockwise, groove: 100 deg}}
  front: {pivot: [320, 80], arms: {arm: {radius: 30 mm, angle: 200 deg}}, stops: {closed: 0 deg, open: 82 deg}}
  rear: {pivot: [540, 40], arms: {arm: {radius: 30 mm, angle: 20 deg}}, stops: {closed: 0 deg, open: 82 deg}}
pedal: {lever: foot, opens: counterclockwise, travel: 27 deg, pad: pad}
cables:
  main: {from: foot.clevis, leaves: [110, 66], enters: [360, 110], to: crank.quadrant, slack: 1 mm}
rods:
  front_rod: {from: crank.left, to: front.arm, length: 112 mm}
  rear_rod: {from: crank.right, to: rear.arm, length: 112 mm, adjust: {min: 106 mm, max: 118 mm, pitch: 1 mm}}
plates:
  front_bank: {lever: front, count: 2, bore: 42 mm, shaft: 8 mm, seat: 6 deg}
  rear_bank: {lever: rear, count: 2, bore: 42 mm, shaft: 8 mm, seat: 6 deg}
`;

const car = { 'rods.front_rod.length': 0.1124, 'rods.rear_rod.length': 0.1118, 'levers.front.arms.arm.angle': 200.6 * DEG };

/** By how far the shafts stand apart at rest, deg. */
function apartAtRest(text: string): number {
  const [front, rear] = solve(text).table([0], ['front.opening', 'rear.opening']).columns;
  return Math.abs(Number(front!.values[0]) - Number(rear!.values[0]));
}

test('two shafts that stand apart at rest are brought in step, though that alone brings neither near the drawing', () => {
  const fit = ['front_rod.length', 'rear_rod.length', 'front.arm.angle'];
  const noise = ['0.002 deg', '0.002 deg'];
  const text = benchText({ columns: ['pedal.travel', 'front.opening', 'rear.opening'], at: TEN, car, fit, noise, linkage: TWO_SHAFTS });
  const { turning } = fitted(text);
  if (turning.kind !== 'turn') throw new Error(turning.why);
  const rod = turning.turns.find(({ part }) => part === 'rear_rod');
  expect(rod).toBeDefined();
  expect(apartAtRest(carText(TWO_SHAFTS, car))).toBeGreaterThan(1);
  const slack = turning.turns.find(({ part }) => part === 'main')?.change ?? 0;
  const turned = { ...car, 'rods.rear_rod.length': 0.1118 + rod!.change, 'cables.main.slack': 1e-3 + slack };
  // Half of what is as good as none.
  expect(apartAtRest(carText(TWO_SHAFTS, turned))).toBeLessThan(0.05);
});
