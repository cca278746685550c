/** Gaps in planck: joints that press once they are shut (`oneSided.ts`), and cables that an open stop stretches at first. */
import type { Body } from 'planck';
import type { Assumption } from './assumed.ts';
import { createDynamics } from './dynamics.ts';
import { gapAt, type Gap, type GapState } from './gaps.ts';
import { gapsOf } from './gapsOf.ts';
import { addOneSided, type GapNow, type OneSided } from './oneSided.ts';
import { housingRatio, type PlanckFriction } from './planckFriction.ts';
import { UNITS, type PlanckWorld } from './planckWorld.ts';
import type { Prepared } from './prepare.ts';
import type { Stretched } from './pressing.ts';
import { startStretched, stretchEnergy } from './stretched.ts';

export interface PlanckGaps {
  readonly each: readonly { readonly gap: Gap; readonly joint: OneSided }[];
  /** J, that stretched cables hold at first. */
  readonly stretchedEnergy: number;
  readonly assumed: readonly Assumption[];
  /** Before each step: what pulls, or pulled in the step before, loads the bearings. */
  load(friction: PlanckFriction, step: number): void;
  /** Before each step, once bearings rub: stretched cables pull, and hold what they pull. */
  pull(): void;
}

/** @param bounces whether what approaches its stop so fast is thrown back */
export function addGaps(of: PlanckWorld, prepared: Prepared, bounces: (approach: number) => boolean): PlanckGaps {
  const { planck, world, ground, levers, bearings, sign, pedal, moving } = of;
  const { bare, start, isLost, isSeized, restitution } = prepared;
  const gaps = gapsOf(bare, start, isLost, isSeized);
  const { stretched, energy, assumed } = stretchedOf(prepared, gaps, pedal?.getAngle());
  const state: GapState = { g: 0, rate: 0, change: 0 };
  const bodyOf = (lever: number): Body => (lever === PEDAL ? pedal! : lever < 0 ? ground : levers[lever]!);
  const turnOf = (lever: number): number => (lever === PEDAL ? 1 : sign[lever]!);
  const each = gaps.map((gap, k) => ({ gap, joint: addGap(gap, k) }));
  return {
    each,
    stretchedEnergy: energy,
    assumed,
    load(friction, step) {
      friction.letGo();
      for (const { gap, joint } of each) friction.pulled(gap, joint.impulse() / step / UNITS ** 2);
      for (const [k, held] of stretched) friction.pulled(gaps[k]!, tensionOf(k, held));
    },
    pull() {
      for (const [k, held] of stretched) pullBy(k, held);
    },
  };

  /** What pulls stands fast until the cable is stretched no longer. */
  function pullBy(k: number, cable: Stretched): void {
    const gap = gaps[k]!;
    if (gap.kind !== 'cable') return;
    const tension = tensionOf(k, cable);
    if (state.g >= 0) {
      stretched.delete(k);
      return;
    }
    bearings[gap.joint.driven]!.setMaxMotorTorque(FAST);
    const driver = gap.joint.driver ?? PEDAL;
    bodyOf(driver).applyTorque(turnOf(driver) * (tension / housingRatio(bare, gap.joint.index)) * slope(gap, driver) * UNITS ** 2);
  }

  /** N, at the engine's end; leaves the gap in `state`. */
  function tensionOf(k: number, { held, stiffness }: Stretched): number {
    gapAt(moving, gaps[k]!, state);
    return held - stiffness * Math.min(0, state.g);
  }

  function addGap(gap: Gap, k: number): OneSided {
    const [driven, driver] = leversOf(gap);
    const ratio = gap.kind === 'cable' ? housingRatio(bare, gap.joint.index) : 1;
    const read = (into: GapNow): void => {
      gapAt(moving, gap, state);
      // Of a gap, m or rad: all that matters of its unit is that its slopes have the same.
      into.g = stretched.has(k) ? Infinity : state.g;
      into.first = slope(gap, driven) * turnOf(driven);
      into.second = driver === NONE ? 0 : slope(gap, driver) * turnOf(driver);
      const slides = into.second * bodyOf(driver).getAngularVelocity();
      // The gap widens at the driving end as the inner runs back.
      into.passes = slides > 0 ? 1 / ratio : slides < 0 ? ratio : 1;
    };
    const isStop = gap.kind === 'stop' || gap.kind === 'pedal-stop';
    const thrown = (approach: number): number => (isStop && bounces(restitution * approach) ? restitution : 0);
    return addOneSided(planck, (joint) => void world.createJoint(joint), bodyOf(driven), bodyOf(driver), read, thrown);
  }

  function slope(gap: Gap, lever: number): number {
    moving.speed.fill(0);
    moving.pedal.v = 0;
    if (lever === PEDAL) moving.pedal.v = 1;
    else moving.speed[lever] = 1;
    gapAt(moving, gap, scratch);
    return scratch.rate;
  }
}

/** Cables that are stretched at first, by their gaps. */
function stretchedOf(
  { bare, start, isLost, inertias }: Prepared,
  gaps: readonly Gap[],
  pedal: number | undefined,
): { readonly stretched: Map<number, Stretched>; readonly energy: number; readonly assumed: readonly Assumption[] } {
  const dynamics = createDynamics(bare, isLost, inertias, () => gaps);
  const { bodies } = dynamics;
  const q = new Float64Array(bodies.count);
  bodies.bodies.forEach(({ root }, i) => (q[i] = bare.mechanism.senses[root]! * start.rotation[root]!));
  if (pedal !== undefined) q[bodies.bodies.length] = pedal;
  dynamics.place(q, new Float64Array(q.length));
  const assumed = startStretched(dynamics, start, [], []);
  return { stretched: new Map(dynamics.stretched.map((each) => [each.gap, each])), energy: stretchEnergy(dynamics), assumed };
}

/** Holds a lever against anything. */
const FAST = 1e12;

const NONE = -1;
const PEDAL = -2;

/** The driven and the driving lever of a gap. */
function leversOf(gap: Gap): readonly [number, number] {
  switch (gap.kind) {
    case 'stop':
      return [gap.lever, NONE];
    case 'pedal-stop':
      return [PEDAL, NONE];
    case 'cable':
      return [gap.joint.driven, gap.joint.driver ?? PEDAL];
    case 'seized':
      return [gap.end === 'driven' ? gap.joint.driven : gap.joint.driver!, NONE];
    case 'play':
      return [gap.joint.driven, gap.joint.driver];
  }
}

const scratch: GapState = { g: 0, rate: 0, change: 0 };
