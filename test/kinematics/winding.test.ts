/** Levers that turn all the way round keep counting: rotation is continuous, over as many turns as the pedal asks for. */
import { describe, expect, test } from 'vitest';
import { solveText, type Solved } from '../support/solveSketch.ts';

const TURN = 2 * Math.PI;

function rotations(solved: Solved, lever: string, stations: number): readonly number[] {
  const index = solved.lever(lever);
  return Array.from({ length: stations + 1 }, (_, i) => solved.poseAt(i / stations).rotation[index]!);
}

function longestStep(values: readonly number[]): number {
  return values.slice(1).reduce((most, value, i) => Math.max(most, Math.abs(value - values[i]!)), 0);
}

/** A frame of 20 with links of 60, 55 and 58: the frame is shortest, 20 + 60 < 55 + 58, so both levers turn right round (Grashof). */
const doubleCrank = (opens: string, tilt: string, driven = 35): string => `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {radius: 60, angle: 10}}}
  crank: {pivot: [20, 0], axis: [${tilt}, 1], arms: {pin: {radius: 58, angle: ${driven}}}}
pedal: {lever: foot, opens: ${opens}, travel: 1440 deg}
rods:
  link: {from: foot.pin, to: crank.pin, length: 55}
`;

describe('rotation over whole turns', () => {
  for (const opens of ['counterclockwise', 'clockwise']) {
    for (const [name, tilt] of [
      ['planar', '0, 0'],
      ['spatial', '0.12, -0.1'],
    ] as const) {
      for (const drawn of [35, 100, 170, 260]) {
        test(`a ${name} double crank drawn at ${drawn}° follows four turns ${opens}`, () => {
          const solved = solveText(doubleCrank(opens, tilt, drawn));
          const values = rotations(solved, 'crank', 5760);
          expect(values.every(Number.isFinite)).toBe(true);
          expect(longestStep(values)).toBeLessThan(0.05);
          const way = opens === 'clockwise' ? -1 : 1;
          for (let turn = 1; turn <= 4; turn++) expect(values[1440 * turn]! - values[0]!).toBeCloseTo(way * turn * TURN, 9);
        });
      }
    }
  }

  for (const drives of ['fork', 'pin']) {
    test(`a fork whose pivot its pin goes round keeps counting where it drives the ${drives}`, () => {
      const pinLever = '{pivot: [0, 0], arms: {tang: {at: [60, 0]}}}';
      const forkLever = '{pivot: [20, 0]}';
      const [foot, other] = drives === 'fork' ? [pinLever, forkLever] : [forkLever, pinLever];
      const [pin, fork] = drives === 'fork' ? ['foot', 'other'] : ['other', 'foot'];
      const solved = solveText(`format: 1
levers:
  foot: ${foot}
  other: ${other}
pedal: {lever: foot, opens: clockwise, travel: 1080}
slots:
  gate: {pin: ${pin}.tang, fork: ${fork}, drives: ${drives}, angle: 0}
`);
      const values = rotations(solved, 'other', 4320);
      expect(longestStep(values)).toBeLessThan(0.02);
      for (let turn = 1; turn <= 3; turn++) expect(values[1440 * turn]).toBeCloseTo(-turn * TURN, 9);
    });
  }

  test('a crank that a rocker swings to and fro past half a turn comes back the way it went', () => {
    // The foot turns right round and rocks `rocker`; by 1:-3.2 it swings `wheel`, which drives a double crank over half a turn and back.
    const solved = solveText(`format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {radius: 30, angle: 90}}}
  rocker: {pivot: [120, 0], arms: {pin: {radius: 50, angle: 95}}}
  wheel: {pivot: [200, 0], arms: {pin: {radius: 60, angle: 10}}}
  crank: {pivot: [220, 0], arms: {pin: {radius: 58, angle: 35}}}
pedal: {lever: foot, opens: counterclockwise, travel: 720}
rods:
  first: {from: foot.pin, to: rocker.pin}
  second: {from: wheel.pin, to: crank.pin, length: 55}
couplings:
  gears: {from: rocker, to: wheel, ratio: -3.2}
`);
    const values = rotations(solved, 'crank', 2880);
    expect(Math.max(...values) - Math.min(...values)).toBeGreaterThan(Math.PI);
    expect(longestStep(values)).toBeLessThan(0.05);
    expect(values[1440]).toBeCloseTo(values[0]!, 9);
    expect(values[2880]).toBeCloseTo(values[0]!, 9);
  });

  test('is the same whichever station is asked for first', () => {
    const solved = solveText(doubleCrank('counterclockwise', '0, 0'));
    const there = rotations(solved, 'crank', 97);
    const back = Array.from({ length: 98 }, (_, i) => solved.poseAt((97 - i) / 97).rotation[solved.lever('crank')]!).reverse();
    expect(back).toEqual(there);
  });
});
