/** Follows the plates through a snap-back: when each is closed for good, how fast it meets its stop, and how often it leaves it again. */
import type { Build } from '../../kinematics/build.ts';
import type { Pose } from '../../kinematics/pose.ts';
import type { PlateReturn, WhyNever } from './snapBack.ts';

/** Of its full opening: what counts as closed. */
const CLOSED = 0.01;

export interface PlateTimes {
  /** Of each set of plates, how far it is from being closed, rad; below 0 where it is. */
  distance(plate: number, pose: Pose): number;
  /** Told at the end of each step. @param cross when it crossed, found where it did */
  step(time: number, pose: Pose, cross: (plate: number) => number): void;
  /** Told when a lever meets its closed stop. @param speed rad/s, positive */
  meets(lever: number, speed: number, bounces: boolean): void;
  answer(pose: Pose, why: (lever: number) => WhyNever): readonly PlateReturn[];
}

export function createPlateTimes(build: Build, start: Pose): PlateTimes {
  const { mechanism, parameters: p } = build;
  const plates = mechanism.attached.plates.map(({ name, lever }) => {
    const { fullOpening, closedStop } = mechanism.levers[lever]!;
    const closed = closedStop === undefined ? 0 : p[closedStop.parameter]!;
    const full = fullOpening === undefined ? NaN : p[fullOpening]! - closed;
    const released = openingOf(start, lever) - closed;
    const band = CLOSED * (full > 0 ? full : Math.max(released, 0));
    return { name, lever, closed, band };
  });
  const states = plates.map(({ lever, closed, band }) => ({
    since: openingOf(start, lever) - closed <= band ? 0 : (undefined as number | undefined),
    stopSpeed: undefined as number | undefined,
    bounces: 0,
  }));

  function openingOf(pose: Pose, lever: number): number {
    return mechanism.senses[lever]! * pose.rotation[lever]!;
  }

  const distance = (plate: number, pose: Pose): number => {
    const { lever, closed, band } = plates[plate]!;
    return openingOf(pose, lever) - closed - band;
  };

  return {
    distance,
    step(_time, pose, cross) {
      states.forEach((state, plate) => {
        const inside = distance(plate, pose) <= 0;
        if (inside === (state.since !== undefined)) return;
        state.since = inside ? cross(plate) : undefined;
      });
    },
    meets(lever, speed, bounces) {
      plates.forEach((plate, i) => {
        if (plate.lever !== lever) return;
        const state = states[i]!;
        state.stopSpeed ??= speed;
        if (bounces) state.bounces++;
      });
    },
    answer(pose, why) {
      return plates.map(({ name, lever, band }, i): PlateReturn => {
        const { since, stopSpeed, bounces } = states[i]!;
        return {
          name,
          lever,
          time: since,
          why: since === undefined ? why(lever) : undefined,
          opening: openingOf(pose, lever),
          band,
          stopSpeed,
          bounces,
        };
      });
    },
  };
}
