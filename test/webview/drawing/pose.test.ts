import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figureAt } from '../../../webview/drawing/interpolate.ts';
import { createPose, poseAt, poseInMotion, whereTurned, type Motion } from '../../../webview/drawing/pose.ts';
import { EXAMPLE, showOf } from '../../support/viewForAll.ts';

const { picture } = showOf(EXAMPLE);
const last = picture.stations.length - 1;

/** From one pedal position to another in a second, each lever evenly. */
const between = (from: number, to: number): Motion => ({
  times: Float64Array.of(0, 1),
  rotations: picture.levers.map(({ rotation }) => Float64Array.of(rotation[from]!, rotation[to]!)),
});

describe('a motion of its own', () => {
  test('stands as the pedal has it where its levers are turned so far', () => {
    const [own, pedal] = [createPose(picture), createPose(picture)];
    const { enters } = picture.cables[0]!;
    if (enters.inner.kind !== 'drum') throw new Error('The cable of the example ends on a drum');
    const { lever, rim } = enters.inner;
    for (const station of [0, 17, 60, last]) {
      poseInMotion(own, picture, between(station, 0), 0);
      poseAt(pedal, picture, picture.stations[station]!);
      expect([...own.rotation]).toEqual([...pedal.rotation]);
      expect([...own.cos, ...own.sin]).toEqual([...pedal.cos, ...pedal.sin]);
      for (const axis of [0, 1, 2]) expect(figureAt(rim, own.own![lever]!, 3, axis)).toBeCloseTo(figureAt(rim, pedal.at, 3, axis), 9);
    }
  });

  test('goes evenly from moment to moment, and stops at the last', () => {
    const pose = createPose(picture);
    const shaft = picture.levers.findIndex(({ name }) => name === 'shaft');
    const { rotation } = picture.levers[shaft]!;
    for (const [time, share] of [
      [0, 1],
      [0.25, 0.75],
      [1, 0],
      [7, 0],
    ] as const) {
      poseInMotion(pose, picture, between(last, 0), time);
      expect(pose.rotation[shaft]).toBeCloseTo(share * rotation[last]!, 12);
    }
    expect(pose.travel).toBeNaN();
  });

  test('is over when the pedal has the levers again', () => {
    const [pose, fresh] = [createPose(picture), createPose(picture)];
    poseInMotion(pose, picture, between(last, 0), 0.3);
    poseAt(pose, picture, 0.4);
    poseAt(fresh, picture, 0.4);
    expect(pose).toEqual(fresh);
  });
});

describe('where a lever has turned so far', () => {
  test('is found between the stations wherever it lies within what they have', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 2, maxLength: 30 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (figures, share) => {
          const series = Float64Array.from(figures);
          const [least, greatest] = [Math.min(...figures), Math.max(...figures)];
          const rotation = least + share * (greatest - least);
          expect(figureAt(series, whereTurned(series, rotation))).toBeCloseTo(rotation, 9);
        },
      ),
    );
  });

  test('is the nearest station beyond its ends, whatever has no figure', () => {
    const series = Float64Array.of(NaN, 0, 1, 2, NaN);
    expect(whereTurned(series, -0.5)).toEqual({ from: 1, share: 0 });
    expect(whereTurned(series, 2.5)).toEqual({ from: 3, share: 0 });
    expect(whereTurned(series, 1.25)).toEqual({ from: 2, share: 0.25 });
    expect(whereTurned(new Float64Array(0), 1)).toEqual({ from: 0, share: 0 });
  });
});
