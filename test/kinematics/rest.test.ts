/** Where the linkage stands with the foot off, against the law of cosines on paper. */
import { describe, expect, test } from 'vitest';
import { CableState } from '../../src/kinematics/pose.ts';
import { solveText } from '../support/solveSketch.ts';

const DEGREE = Math.PI / 180;

/** A parallelogram: arms of 40 standing up, 100 apart; the pedal turns clockwise and pushes the rod to the right. */
const parallelogram = (rod: string, more = ''): string => `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {at: [0, 40]}}}
  shaft: {pivot: [100, 0], arms: {pin: {at: [100, 40]}}${more}}
pedal: {lever: foot, opens: clockwise, travel: 30 deg}
plates:
  bank: {lever: shaft, bore: 45, seat: 6, idle: 1}
rods:
  link: {from: foot.pin, to: shaft.pin${rod}}
`;

/** Opening of one arm of 40 about a pivot 100 away from the other, whose pin is drawn: by the law of cosines. */
function openingByCosines(length: number, away: 1 | -1): number {
  const diagonal = Math.hypot(100, 40);
  const angle = Math.acos((40 ** 2 + diagonal ** 2 - length ** 2) / (2 * 40 * diagonal));
  const towards = Math.atan2(40, 100);
  // The shaft looks back along the diagonal to the drawn pedal pin; the pedal looks along it to the drawn shaft pin.
  return away === 1 ? Math.PI / 2 - (Math.PI - towards - angle) : Math.PI / 2 - (towards + angle);
}

describe('at rest', () => {
  test('everything stands as drawn where every length is as drawn', () => {
    const { build, rotationsAt } = solveText(parallelogram(''));
    expect(build.bounds.pedalRest).toBeCloseTo(0, 15);
    expect(rotationsAt(0).shaft).toBeCloseTo(0, 14);
  });

  test('a rod that is too long holds the shaft open while the pedal is on its stop', () => {
    const { build, rotationsAt } = solveText(parallelogram(', length: 101 mm'));
    expect(Math.abs(build.bounds.pedalRest)).toBeLessThan(1e-14);
    expect(-rotationsAt(0).shaft!).toBeCloseTo(openingByCosines(101, 1), 12);
    expect(openingByCosines(101, 1)).toBeGreaterThan(DEGREE);
  });

  test('a rod that is too short holds the pedal off its stop while the shaft is on its own, until the foot catches up', () => {
    const { build, rotationsAt, poseAt } = solveText(parallelogram(', length: 99 mm'));
    const held = openingByCosines(99, -1);
    expect(held).toBeGreaterThan(DEGREE);
    expect(build.bounds.pedalRest).toBeCloseTo(held, 12);
    const caught = held / (30 * DEGREE);
    for (const travel of [0, 0.5 * caught, 0.999 * caught]) {
      expect(-rotationsAt(travel).foot!).toBeCloseTo(held, 12);
      expect(rotationsAt(travel).shaft).toBeCloseTo(0, 12);
      expect(Math.max(...poseAt(travel).rate.map(Math.abs))).toBeLessThan(1e-12);
    }
    expect(-rotationsAt(1).foot!).toBeCloseTo(30 * DEGREE, 14);
    expect(-rotationsAt(1).shaft!).toBeGreaterThan(20 * DEGREE);
  });

  test('a closed stop other than as drawn is where the shaft rests', () => {
    const { rotationsAt, build } = solveText(parallelogram('', ', stops: {closed: 3 deg}'));
    expect(-rotationsAt(0).shaft!).toBeCloseTo(3 * DEGREE, 13);
    expect(build.bounds.pedalRest).toBeCloseTo(3 * DEGREE, 13);
  });
});

describe('a cable', () => {
  const pulled = (rod: string): string => `format: 1
levers:
  crank: {pivot: [0, 0], opens: clockwise, arms: {pin: {at: [0, 40]}}, drums: {seat: {radius: 25, wraps: clockwise}}}
  shaft: {pivot: [100, 0], arms: {pin: {at: [100, 40]}}}
pedal: {cable: main, pull: 20 mm}
cables:
  main: {enters: [-50, 60], to: crank.seat, slack: 2 mm}
plates:
  bank: {lever: shaft, bore: 45, seat: 6, idle: 1}
rods:
  link: {from: crank.pin, to: shaft.pin${rod}}
`;

  test('takes up its slack, then turns a drum by length over radius', () => {
    const { poseAt, lever } = solveText(pulled(''));
    const before = poseAt(0.099);
    expect(before.cableState[0]).toBe(CableState.slack);
    expect(before.rotation[lever('crank')]).toBeCloseTo(0, 13);
    expect(-poseAt(1).rotation[lever('crank')]!).toBeCloseTo(18 / 25, 13);
  });

  test('has the more slack the farther its driven lever rests from where it is drawn', () => {
    // Too short by 1 mm: the shaft rests on its stop and holds the crank open, so the cable pulls later.
    const { poseAt, lever, build } = solveText(pulled(', length: 99 mm'));
    const held = openingByCosines(99, -1);
    expect(build.bounds.cableRest[0]).toBeCloseTo(0.025 * held, 14);
    const taken = (2 + 25 * held) / 20;
    expect(poseAt(taken - 1e-6).cableState[0]).toBe(CableState.slack);
    expect(poseAt(taken + 1e-6).cableState[0]).toBe(CableState.moving);
    expect(-poseAt(0).rotation[lever('crank')]!).toBeCloseTo(held, 12);
  });
});

describe('free play', () => {
  test('in a rod is crossed before it pushes', () => {
    const { rotationsAt } = solveText(parallelogram(', lost: 1 mm'));
    // It pushes once the pedal pin is 99 from the shaft pin at rest.
    const crossed = openingByCosines(99, -1);
    const at = (opening: number): number => opening / (30 * DEGREE);
    for (const travel of [0, at(0.5 * crossed), at(0.9999 * crossed)]) expect(rotationsAt(travel).shaft).toBeCloseTo(0, 13);
    const later = rotationsAt(at(crossed + 5 * DEGREE));
    const pin = (x: number, rotation: number): [number, number] => [x - 40 * Math.sin(rotation), 40 * Math.cos(rotation)];
    const [a, b] = [pin(0, later.foot!), pin(100, later.shaft!)];
    expect(later.shaft).toBeLessThan(-4 * DEGREE);
    expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeCloseTo(99, 11);
  });

  test('in a coupling is crossed before it turns, by its ratio of what is left', () => {
    const { rotationsAt } = solveText(`format: 1
levers:
  foot: {pivot: [0, 0]}
  shaft: {pivot: [100, 0]}
pedal: {lever: foot, opens: clockwise, travel: 30 deg}
couplings:
  dog: {from: foot, to: shaft, ratio: -0.8, lag: 5 deg}
`);
    expect(rotationsAt(0.16).shaft).toBe(0);
    expect(rotationsAt(0.5).shaft).toBeCloseTo(0.8 * 10 * DEGREE, 14);
    expect(rotationsAt(1).shaft).toBeCloseTo(0.8 * 25 * DEGREE, 14);
  });

  test('of a coupling that only opens keeps the other way to itself', () => {
    const pusher = (opens: string): string => `format: 1
levers:
  foot: {pivot: [0, 0]}
  shaft: {pivot: [100, 0], opens: ${opens}}
pedal: {lever: foot, opens: clockwise, travel: 30 deg}
couplings:
  dog: {from: foot, to: shaft, one_way: true}
`;
    expect(solveText(pusher('clockwise')).rotationsAt(1).shaft).toBeCloseTo(-30 * DEGREE, 14);
    expect(solveText(pusher('counterclockwise')).rotationsAt(1).shaft).toBe(0);
  });
});
