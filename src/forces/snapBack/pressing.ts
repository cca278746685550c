/**
 * Forces across gaps that are shut, put on the levers from outside, so that each body stands alone. A cable's tension changes over its
 * housing by the capstan equation, the way its inner slides.
 */
import type { CableLine } from '../friction/lines.ts';
import { putForce, type Acting } from './acting.ts';
import { gapAt, type Gap, type GapState } from './gaps.ts';

/** A cable that an open stop stretches: what it pulls at the pedal's end, N, is `held` + `stiffness` times the overlap of its gap. */
export interface Stretched {
  readonly gap: number;
  readonly held: number;
  /** N/m. */
  readonly stiffness: number;
}

export interface Pressing {
  /** @param force N or N·m, never negative @returns what draws a pedal back that is only a cable, N */
  press(gap: Gap, force: number): number;
  /** The same of a stretched cable, by its gap as it stands. */
  drawBack(gap: Gap, stretched: Stretched): number;
}

export function createPressing(acting: Acting): Pressing {
  const { moving, lines, ways, rubbed } = acting;
  const { senses } = acting.build.mechanism;
  const { motion, bodyOf, pedal } = acting.bodies;

  return {
    press(gap, force) {
      switch (gap.kind) {
        case 'stop':
          putForce(acting, gap.lever, 0, 0, 0, (gap.which === 'closed' ? 1 : -1) * senses[gap.lever]! * force);
          return 0;
        case 'pedal-stop':
          return -force;
        case 'cable': {
          const { joint } = gap;
          const line = lines.cables[joint.cable]!;
          pull(joint.driven, line.driven, line.pulls, force);
          const way = slides(joint.driver, joint.driven, line);
          const before = way > 0 ? force * line.ratio : way < 0 ? force / line.ratio : force;
          if (joint.driver === undefined) return before;
          pull(joint.driver, line.driving, line.draws, before);
          return 0;
        }
        case 'seized': {
          const line = lines.cables[gap.joint.cable]!;
          if (gap.end === 'driven') pull(gap.joint.driven, line.driven, line.pulls, force);
          else pull(gap.joint.driver!, line.driving, line.draws, force);
          return 0;
        }
        case 'play': {
          const { driven, driver, index } = gap.joint;
          const line = lines.joints[index]!;
          const way = ways[bodyOf[driver]!]!;
          const x = force * (gap.side * line.gx + way * line.hx);
          const y = force * (gap.side * line.gy + way * line.hy);
          const z = force * (gap.side * line.gz + way * line.hz);
          putForce(acting, driven, x, y, z, force * (gap.side * line.arm + way * line.armFriction));
          putForce(acting, driver, -x, -y, -z, force * (gap.side * line.back + way * line.backFriction));
          return 0;
        }
      }
    },
    drawBack(gap, { held, stiffness }) {
      if (gap.kind !== 'cable') return 0;
      const { joint } = gap;
      const line = lines.cables[joint.cable]!;
      gapAt(moving, gap, scratch);
      const tension = held + stiffness * Math.max(0, -scratch.g);
      // The inner runs back as the pedal does.
      const before = tension / line.ratio;
      rubbed.power += tension * scratch.rate;
      if (joint.driver === undefined) return before;
      pull(joint.driver, line.driving, line.draws, before);
      return 0;
    },
  };

  function pull(lever: number, way: CableLine['driven'], arm: number, force: number): void {
    putForce(acting, lever, force * way.x, force * way.y, force * way.z, force * arm);
  }

  /** +1 where an inner slides towards the pedal. */
  function slides(driver: number | undefined, driven: number, line: CableLine): number {
    const before =
      driver === undefined ? ways[pedal!]! : Math.sign(-senses[driver]! * line.draws * motion.unit[driver]!) * ways[bodyOf[driver]!]!;
    if (before !== 0) return before;
    return Math.sign(senses[driven]! * line.pulls * motion.unit[driven]!) * ways[bodyOf[driven]!]!;
  }
}

/** The driven body of a gap, then the driving one; −1 for none. */
export function bodiesBetween(gap: Gap, { bodyOf, pedal }: Acting['bodies']): readonly [driven: number, driver: number] {
  switch (gap.kind) {
    case 'stop':
      return [bodyOf[gap.lever]!, -1];
    case 'pedal-stop':
      return [pedal!, -1];
    case 'cable':
      return [bodyOf[gap.joint.driven]!, gap.joint.driver === undefined ? pedal! : bodyOf[gap.joint.driver]!];
    case 'seized':
      return [gap.end === 'driven' ? bodyOf[gap.joint.driven]! : bodyOf[gap.joint.driver!]!, -1];
    case 'play':
      return [bodyOf[gap.joint.driven]!, bodyOf[gap.joint.driver]!];
  }
}

const scratch: GapState = { g: 0, rate: 0, change: 0 };
