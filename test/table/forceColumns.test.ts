/** Columns of forces: when there are any, and what an unreadable spring leaves of them. */
import { describe, expect, it } from 'vitest';
import { createBuild } from '../../src/kinematics/createBuild.ts';
import { solve } from '../../src/solve.ts';
import { travelOf } from '../../src/travel/travel.ts';

const file = (springs: string): string => `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pad: {radius: 200, angle: 270}, pin: {radius: 30, angle: 90}}}
  shaft: {pivot: [100, 0], arms: {pin: {radius: 30, angle: 90}}}
pedal: {lever: foot, opens: counterclockwise, travel: 40 deg, pad: pad}
rods:
  link: {from: foot.pin, to: shaft.pin}
${springs}`;

const values = (text: string, name: string): readonly (number | null)[] | undefined =>
  solve(text).table([0, 0.5, 1], [name]).columns[0]?.values;

describe('columns of forces', () => {
  it('are there only where the file describes springs', () => {
    expect(values(file(''), 'shaft.closing')).toBeUndefined();
    expect(values(file(''), 'pedal.effort')).toBeUndefined();
  });

  it('pass a torque one to one through a parallelogram, and to the pad by its arm', () => {
    const text = file('springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n');
    for (const [i, torque] of [100, 140, 180].entries()) {
      expect(values(text, 'shaft.closing')![i]).toBeCloseTo(torque, 9);
      expect(values(text, 'foot.closing')![i]).toBeCloseTo(torque, 9);
      expect(values(text, 'pedal.effort')![i]).toBeCloseTo(torque / 200, 11);
    }
  });

  it('have no values while a spring cannot be read, but that spring-by-spring', () => {
    const text = file(
      'springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n  b: {lever: shaft, rate: 3 smoots, preload: 50 N*mm}\n',
    );
    expect(values(text, 'shaft.closing')).toEqual([null, null, null]);
    expect(values(text, 'pedal.effort')).toEqual([null, null, null]);
    expect(values(text, 'a.torque')![0]).toBeCloseTo(100, 9);
  });

  it('answer for the build that they are asked of', () => {
    const { study, columns } = solve(file('springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n'));
    const { mechanism, build, poseAt } = study!.travel;
    const closing = columns.find(({ name }) => name === 'shaft.closing')!;
    const preload = mechanism.dimensions.find(({ path }) => path === 'springs.a.preload')!.index;
    const other = Float64Array.from(mechanism.nominal);
    other[preload] = 0.3;
    const changed = travelOf(createBuild(mechanism, other));
    expect(closing.read(build, poseAt(0))).toBeCloseTo(0.1, 12);
    expect(closing.read(changed.build, changed.poseAt(0))).toBeCloseTo(0.3, 12);
    expect(closing.read(build, poseAt(0))).toBeCloseTo(0.1, 12);
  });
});
