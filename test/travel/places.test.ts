/** The places where an answer can turn, against dense samples; and a dip that no table of a thousand stations shows. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findPlaces } from '../../src/travel/places.ts';
import { closureOf } from '../support/closure.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { sensesOf, solveSketch, solveText } from '../support/solveSketch.ts';

const STATIONS = 4001;
/** A sampled turn lies within a station of the true one on either side. */
const WITHIN = 2 / (STATIONS - 1);
/** Rises and falls smaller than this are rounding. */
const ROUNDING = 1e-12;

function turnsOf(values: readonly number[]): readonly number[] {
  const turns: number[] = [];
  for (let i = 1; i < values.length - 1; i++) {
    const before = values[i]! - values[i - 1]!;
    const after = values[i + 1]! - values[i]!;
    if (before * after < 0 && Math.min(Math.abs(before), Math.abs(after)) > ROUNDING) turns.push(i / (values.length - 1));
  }
  return turns;
}

describe('places', () => {
  test('hold every turn of a rotation and of a rod’s or slot’s transmission that dense sampling finds', { timeout: 120_000 }, () => {
    const faults: string[] = [];
    let turned = 0;
    fc.sample(anyMechanism(), { numRuns: 120, seed: 77 }).forEach((sketch, index) => {
      const solved = solveSketch(sketch);
      const places = findPlaces(solved.build);
      const closure = closureOf(sketch, sensesOf(solved.mechanism));
      const samples = Array.from({ length: STATIONS }, (_, i) => solved.rotationsAt(i / (STATIONS - 1)));
      const check = (what: string, values: readonly number[], known: readonly number[]): void => {
        for (const turn of turnsOf(values)) {
          turned++;
          if (!known.some((place) => Math.abs(place - turn) <= WITHIN)) faults.push(`#${index} ${what} turns at ${turn}`);
        }
      };
      for (const { name, index: lever } of solved.mechanism.levers)
        check(
          name,
          samples.map((each) => each[name]!),
          places.levers[lever]!,
        );
      solved.mechanism.joints.forEach((joint) => {
        if (joint.kind !== 'rod') return;
        const drawn = sketch.joints.find((each) => each.name === joint.name)!;
        const known = [...places.joints[joint.index]!, ...places.levers[joint.driver]!, ...places.levers[joint.driven]!];
        check(
          joint.name,
          samples.map((each) => Math.abs(closure.leverage(drawn, each))),
          known,
        );
      });
    });
    expect(faults).toEqual([]);
    expect(turned).toBeGreaterThan(100);
  });

  test('show a dip under a limit that is narrower than a thousandth of the travel', () => {
    // A crank of 10 turns 25 times while the pedal goes its way, and its rod stands square to the driven arm but for the dips; the
    // limit is put so that the transmission is below it for less than a station.
    const solved = solveText(`format: 1
levers:
  foot: {pivot: [0, 0]}
  crank: {pivot: [0, 100], arms: {pin: {radius: 10, angle: 33}}}
  rocker: {pivot: [90, 100], arms: {pin: {radius: 40, angle: 80}}}
pedal: {lever: foot, opens: counterclockwise, travel: 90 deg}
couplings:
  gears: {from: foot, to: crank, ratio: 12}
rods:
  link: {from: crank.pin, to: rocker.pin}
`);
    const { mechanism, build, poseAt } = solved;
    const joint = mechanism.joints.find((each) => each.kind === 'rod')!;
    const arm = 40;
    const pin = (x: number, radius: number, angle: number): [number, number] => [x + radius * Math.cos(angle), radius * Math.sin(angle)];
    const start = pin(0, 10, (33 * Math.PI) / 180);
    const end = pin(90, arm, (80 * Math.PI) / 180);
    const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
    /** Acute angle between rod and driven arm, degrees, from the pins. */
    const transmission = (travel: number): number => {
      const pose = poseAt(travel);
      const a = pin(0, 10, (33 * Math.PI) / 180 + pose.rotation[solved.lever('crank')]!);
      const b = pin(90, arm, (80 * Math.PI) / 180 + pose.rotation[solved.lever('rocker')]!);
      const across = (b[0] - 90) * (b[1] - a[1]) - b[1] * (b[0] - a[0]);
      return (Math.asin(Math.min(1, Math.abs(across) / (arm * length))) * 180) / Math.PI;
    };
    const places = findPlaces(build).joints[joint.index]!;
    const found = Math.min(...places.map(transmission));
    const sampled = Math.min(...Array.from({ length: 1001 }, (_, i) => transmission(i / 1000)));
    let dense = Infinity;
    for (let i = 0; i <= 100_000; i++) dense = Math.min(dense, transmission(i / 100_000));
    const limit = (found + sampled) / 2;
    expect(sampled).toBeGreaterThan(limit);
    expect(found).toBeLessThan(limit);
    expect(found).toBeLessThanOrEqual(dense);
    expect(dense - found).toBeLessThan(1e-6);
  });
});
