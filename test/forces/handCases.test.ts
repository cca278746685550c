/** Springs whose torque can be told by hand: where it is none, where it jumps, and where it opens the throttle. */
import { describe, expect, it } from 'vitest';
import { solveSprungText } from './support/sprung.ts';

/** A lever on the origin that the pedal turns itself, its hook 30 mm out along x as drawn, and one spring. */
const file = (spring: string, travel = 180, opens = 'counterclockwise'): string => `format: 1
levers:
  shaft: {pivot: [0, 0], arms: {hook: {radius: 30, angle: 0 deg}, pad: {radius: 150, angle: 90 deg}}}
pedal: {lever: shaft, opens: ${opens}, travel: ${travel} deg, pad: pad}
springs:
  only: ${spring}
`;
const torques = (text: string, stations: readonly number[]): readonly number[] => {
  const { along } = solveSprungText(text);
  return stations.map(along('only.torque'));
};

describe('a torsion spring', () => {
  it('closes with its preload as drawn and its rate beyond', () => {
    expect(torques(file('{lever: shaft, rate: 2.5 N*mm/deg, preload: 180 N*mm}', 80), [0, 0.5, 1])).toEqual([
      expect.closeTo(180, 9),
      expect.closeTo(280, 9),
      expect.closeTo(380, 9),
    ]);
  });

  it('has no preload where none is written, and does the same whichever way its lever opens', () => {
    const text = (opens: string): string => file('{lever: shaft, rate: 2.5 N*mm/deg}', 80, opens);
    expect(torques(text('clockwise'), [0, 1])).toEqual([0, expect.closeTo(200, 9)]);
    expect(torques(text('counterclockwise'), [0, 1])).toEqual([0, expect.closeTo(200, 9)]);
  });

  it('opens the throttle where its preload is against it', () => {
    const { rowAt } = solveSprungText(file('{lever: shaft, rate: 2 N*mm/deg, preload: -100 N*mm}', 80));
    expect(rowAt(0)('only.torque')).toBeCloseTo(-100, 9);
    expect(rowAt(0)('shaft.closing')).toBeCloseTo(-100, 9);
    // 100 N·mm against the foot at 150 mm; at 50° the spring is without load.
    expect(rowAt(0)('pedal.effort')).toBeCloseTo(-100 / 150, 9);
    expect(rowAt(50 / 80)('only.torque')).toBeCloseTo(0, 9);
    expect(rowAt(1)('only.torque')).toBeCloseTo(60, 9);
  });

  it('is read in inches, pounds and turns of them', () => {
    // 1 lbf·inch = 4.4482216152605 N × 25.4 mm.
    expect(torques(file('{lever: shaft, rate: 0.1 lbf*inch/deg, preload: 2 lbf*inch}', 80), [1])[0]).toBeCloseTo(
      10 * 4.4482216152605 * 25.4,
      8,
    );
  });
});

describe('an extension spring', () => {
  it('has no torque at its dead centres, and turns from closing to opening there', () => {
    // Fixed at x = 100 in line with the pivot: as drawn 70 mm long and at 180° 130 mm long, both in line with its arm.
    const spring = '{from: [100, 0], to: shaft.hook, rate: 2 N/mm, free_length: 50 mm}';
    const [start, quarter, end] = torques(file(spring), [0, 0.5, 1]);
    expect(Math.abs(start!)).toBeLessThan(1e-9);
    expect(Math.abs(end!)).toBeLessThan(1e-9);
    // At 90° the hook stands at (0, 30), √10900 mm away, and the spring on an arm of 100 · 30 / √10900 mm.
    const length = Math.sqrt(100 ** 2 + 30 ** 2);
    expect(quarter).toBeCloseTo((2 * (length - 50) * 100 * 30) / length, 9);
    const [before, after] = torques(file(spring, 200), [179 / 200, 181 / 200]);
    expect(before).toBeGreaterThan(0);
    expect(after).toBeCloseTo(-before!, 9);
  });

  it('pulls nothing while it is shorter than its free length, then its initial tension at once', () => {
    // Fixed at the pivot’s far side: 70 mm as drawn, √10900 = 104.4 mm at 90°. Free length 85 mm is passed between.
    const spring = '{from: [100, 0], to: shaft.hook, rate: 2 N/mm, free_length: 85 mm, initial_tension: 6 N}';
    // |hook − anchor|² = 10900 − 6000 cos φ: 85 mm at cos φ = 3675 / 6000.
    const met = (Math.acos(3675 / 6000) * 180) / Math.PI;
    const [drawn, before, at] = torques(file(spring), [0, (met - 1e-6) / 180, (met + 1e-6) / 180]);
    expect(drawn).toBe(0);
    expect(before).toBe(0);
    expect(at).toBeCloseTo((6 * 100 * 30 * Math.sin((met * Math.PI) / 180)) / 85, 4);
  });

  it('opens the throttle where its line passes the other side of the pivot', () => {
    // Fixed straight above the hook’s way: turning counter-clockwise brings the hook to it.
    const { rowAt } = solveSprungText(file('{from: [0, 100], to: shaft.hook, rate: 2 N/mm, free_length: 50 mm}', 90));
    const length = Math.sqrt(100 ** 2 + 30 ** 2);
    const torque = (-2 * (length - 50) * 100 * 30) / length;
    expect(rowAt(0)('only.torque')).toBeCloseTo(torque, 9);
    expect(rowAt(0)('shaft.closing')).toBeCloseTo(torque, 9);
    expect(rowAt(0)('pedal.effort')).toBeCloseTo(torque / 150, 9);
    expect(Math.abs(rowAt(1)('only.torque'))).toBeLessThan(1e-9);
  });

  it('works off the plane by what of it lies across the axis', () => {
    // Anchor 40 mm before the plane: 90° on, the hook is √(100² + 30² + 40²) mm from it, its lever arm as seen along the axis 3000 mm².
    const length = Math.sqrt(100 ** 2 + 30 ** 2 + 40 ** 2);
    const [quarter] = torques(file('{from: [100, 0, 40], to: shaft.hook, rate: 2 N/mm, free_length: 50 mm}', 90), [1]);
    expect(quarter).toBeCloseTo((2 * (length - 50) * 3000) / length, 9);
  });

  it('without a free length has no torque that can be told, and takes the closing torque with it', () => {
    const row = solveSprungText(file('{from: [100, 0], to: shaft.hook, rate: 2 N/mm}', 90)).rowAt(1);
    for (const name of ['only.torque', 'shaft.closing', 'pedal.effort']) expect(row(name), name).toBeNaN();
  });
});

describe('a compression spring', () => {
  const spring = '{from: [-100, 0], to: shaft.hook, kind: compression, rate: 2 N/mm, free_length: 120 mm}';

  it('presses its ends apart: its hook swings towards it from 130 mm to 70 mm', () => {
    // 104.4 mm at 90°, 15.6 mm short of its free length; it drives the hook back to where it came from.
    const length = Math.sqrt(100 ** 2 + 30 ** 2);
    expect(torques(file(spring), [0.5])[0]).toBeCloseTo((2 * (120 - length) * 3000) / length, 9);
  });

  it('lifts off where its place is longer than it is, and comes on again without a jump', () => {
    // |hook − anchor|² = 10900 + 6000 cos φ: 120 mm at cos φ = 3500 / 6000.
    const met = (Math.acos(3500 / 6000) * 180) / Math.PI;
    const [drawn, before, after] = torques(file(spring), [0, (met - 1e-6) / 180, (met + 1e-6) / 180]);
    expect(drawn).toBe(0);
    expect(before).toBe(0);
    expect(after).toBeGreaterThan(0);
    expect(after).toBeLessThan(1e-4);
  });

  it('has no torque on its dead centre, however hard it is pressed', () => {
    expect(Math.abs(torques(file(spring), [1])[0]!)).toBeLessThan(1e-9);
  });
});

describe('a spring between two levers', () => {
  it('closes both: the one it works on first in its column, each in its own closing torque', () => {
    const row = solveSprungText(`format: 1
levers:
  left: {pivot: [0, 0], arms: {hook: {radius: 30, angle: 90 deg}, pad: {radius: 150, angle: 270 deg}}}
  right: {pivot: [100, 0], arms: {hook: {radius: 20, angle: 90 deg}}}
pedal: {lever: left, opens: counterclockwise, travel: 60 deg, pad: pad}
couplings: {mesh: {from: left, to: right, ratio: -1}}
springs: {between: {from: left.hook, to: right.hook, rate: 1.5 N/mm, free_length: 60 mm}}
`).rowAt(0);
    // Hooks at (0, 30) and (100, 20): the line from one to the other is (100, −10).
    const length = Math.sqrt(10_100);
    const pull = 1.5 * (length - 60);
    // On the right hook, to the left: −(100, −10) pull / length at (0, 20) from its pivot turns it counter-clockwise, which closes it.
    const right = (pull * 100 * 20) / length;
    const left = (pull * 100 * 30) / length;
    expect(row('between.torque')).toBeCloseTo(right, 9);
    // Each wheel feels its own and, through the teeth, the other’s.
    expect(row('right.closing')).toBeCloseTo(right + left, 9);
    expect(row('left.closing')).toBeCloseTo(right + left, 9);
    expect(row('pedal.effort')).toBeCloseTo((right + left) / 150, 9);
  });
});

describe('the pedal', () => {
  const cable = (ratio: string): string => `format: 1
levers:
  shaft: {pivot: [0, 0], drums: {quadrant: {radius: 25, wraps: counterclockwise}}, stops: {closed: 0 deg, open: 60 deg}}
pedal: {cable: main, pull: 40 mm${ratio}}
cables: {main: {enters: [0, 100], to: shaft.quadrant, slack: 2 mm, stiffness: 10 N/mm}}
springs: {only: {lever: shaft, rate: 3 N*mm/deg, preload: 150 N*mm}}
`;
  // 25 mm · π/3 of cable and 2 mm of slack to the open stop.
  const stretch = 40 - 2 - (25 * Math.PI) / 3;

  it('as a cable feels nothing in its slack, its spring over the drum’s radius, and its stretch past the stop', () => {
    const { rowAt } = solveSprungText(cable(''));
    expect(rowAt(0.04)('pedal.effort')).toBe(0);
    expect(rowAt(0.04)('shaft.closing')).toBeCloseTo(150, 9);
    const opening = ((20 - 2) / 25) * (180 / Math.PI);
    expect(rowAt(0.5)('pedal.effort')).toBeCloseTo((150 + 3 * opening) / 25, 9);
    expect(rowAt(1)('pedal.effort')).toBeCloseTo((150 + 180) / 25 + 10 * stretch, 9);
    // A stop takes nothing off what the springs do.
    expect(rowAt(1)('shaft.closing')).toBeCloseTo(330, 9);
  });

  it('feels it divided by its lever ratio at the pad', () => {
    const { rowAt } = solveSprungText(cable(', lever_ratio: 4'));
    expect(rowAt(1)('pedal.effort')).toBeCloseTo(((150 + 180) / 25 + 10 * stretch) / 4, 9);
  });

  it('past a stop without a stiffness feels what nobody can tell', () => {
    const row = solveSprungText(cable('').replace(', stiffness: 10 N/mm', '')).rowAt(1);
    expect(row('pedal.effort')).toBeNaN();
    expect(row('shaft.closing')).toBeCloseTo(330, 9);
  });
});
