/**
 * A gap as a joint of planck's: two levers that only press on each other once the gap is shut. It works on their rotation alone, since
 * their pivots stand fast, and is solved with all other joints of the world.
 */
import type { Body } from 'planck';
import type { Planck } from '../../numeric/planck.ts';

/** How a gap stands, in planck's units: g, and ∂g by the rotation of both bodies. */
export interface GapNow {
  g: number;
  first: number;
  second: number;
  /** Of the force, how much comes to the second body: a cable loses some over its housing. */
  passes: number;
}

export interface OneSided {
  /** Impulse of the last step, never negative. */
  impulse(): number;
  /** Energy that its knocks have taken. */
  taken(): number;
  /** Energy that the housing of a cable has taken. */
  rubbed(): number;
  /** Set when it was met in the last step: how fast, and how fast it went off. */
  met(): { readonly approach: number; readonly leaving: number } | undefined;
}

/** What planck's solver keeps of a body while it works on a step. */
interface Solved {
  readonly c_velocity: { w: number };
  readonly c_position: { a: number };
  readonly m_invI: number;
}

/**
 * @param second the ground where only one lever is concerned
 * @param restitution speed after it shuts over the speed before, for a speed
 */
export function addOneSided(
  { Joint }: Planck,
  add: (joint: InstanceType<Planck['Joint']>) => void,
  first: Body,
  second: Body,
  read: (into: GapNow) => void,
  restitution: (approach: number) => number,
): OneSided {
  const now: GapNow = { g: 0, first: 0, second: 0, passes: 1 };
  let impulse = 0;
  let mass = 0;
  let target = 0;
  let approach = 0;
  let taken = 0;
  let rubbed = 0;
  let firstAngle = 0;
  let secondAngle = 0;
  let met: ReturnType<OneSided['met']>;

  class GapJoint extends Joint {
    public override getAnchorA(): ReturnType<InstanceType<Planck['Joint']>['getAnchorA']> {
      return first.getPosition();
    }

    public override getAnchorB(): ReturnType<InstanceType<Planck['Joint']>['getAnchorB']> {
      return second.getPosition();
    }

    public override getReactionForce(): ReturnType<InstanceType<Planck['Joint']>['getReactionForce']> {
      return first.getWorldVector({ x: 0, y: 0 });
    }

    public override getReactionTorque(inverseStep: number): number {
      return impulse * now.second * inverseStep;
    }

    public override initVelocityConstraints(): void {
      read(now);
      met = undefined;
      const [one, other] = [solved(first), solved(second)];
      const mobility = now.first ** 2 * one.m_invI + now.second ** 2 * other.m_invI * now.passes;
      mass = mobility > 0 ? 1 / mobility : 0;
      // Of the step before: what the solver starts from is a guess of all other joints.
      approach = -(now.first * first.getAngularVelocity() + now.second * second.getAngularVelocity());
      target = 0;
      if (now.g > 0) mass = 0;
      else if (approach > 0) target = restitution(approach) * approach;
      firstAngle = one.c_position.a;
      secondAngle = other.c_position.a;
      // The impulse of the step before says little where it only just met.
      impulse = 0;
    }

    public override solveVelocityConstraints(): void {
      if (mass === 0) return;
      const [one, other] = [solved(first), solved(second)];
      const rate = now.first * one.c_velocity.w + now.second * other.c_velocity.w;
      const sum = Math.max(0, impulse + mass * (target - rate));
      const more = sum - impulse;
      impulse = sum;
      one.c_velocity.w += one.m_invI * now.first * more;
      other.c_velocity.w += other.m_invI * now.second * now.passes * more;
    }

    /** Puts back what overlaps, as planck does it: without any speed. */
    public override solvePositionConstraints(): boolean {
      const [one, other] = [solved(first), solved(second)];
      const mobility = now.first ** 2 * one.m_invI + now.second ** 2 * other.m_invI;
      const g = now.g + now.first * (one.c_position.a - firstAngle) + now.second * (other.c_position.a - secondAngle);
      if (g >= -2 * OVERLAP || !(mobility > 0)) return true;
      const shift = -(g + OVERLAP) / mobility;
      one.c_position.a += one.m_invI * now.first * shift;
      other.c_position.a += other.m_invI * now.second * shift;
      return false;
    }

    public override _reset(): void {
      impulse = 0;
    }

    /** After a step. */
    public settle(): void {
      if (impulse === 0) return;
      const rate = now.first * first.getAngularVelocity() + now.second * second.getAngularVelocity();
      taken += (impulse * (approach - rate)) / 2;
      rubbed += impulse * (1 - now.passes) * now.second * second.getAngularVelocity();
      met = { approach, leaving: Math.max(0, rate) };
    }
  }

  const joint = new GapJoint({}, first, second);
  add(joint);
  return {
    impulse: () => impulse,
    taken: () => taken,
    rubbed: () => rubbed,
    met: () => {
      joint.settle();
      return met;
    },
  };
}

function solved(body: Body): Solved {
  return body as unknown as Solved;
}

/** m or rad; an overlap that is let be, so that what presses stays shut. */
const OVERLAP = 2e-6;
