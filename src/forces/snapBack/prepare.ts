/** What a snap-back starts from, whichever way it is computed. */
import { advance } from '../../kinematics/advance.ts';
import type { Build } from '../../kinematics/build.ts';
import type { LeverModel } from '../../kinematics/model.ts';
import { createPose, type Pose } from '../../kinematics/pose.ts';
import { missingFriction } from '../friction/missing.ts';
import { springTorques } from '../springs.ts';
import { leversOf } from '../springsReaching.ts';
import type { Assumption } from './assumed.ts';
import type { Dynamics } from './dynamics.ts';
import { inertiasOf, type Inertias } from './inertia.ts';
import type { NotComputed, SnapBackOptions } from './snapBack.ts';

/** Speed after a stop over the speed before, of a lever on its stop screw: common practice for hard small parts, no source. */
export const RESTITUTION = 0.5;
/** s: longer than any time that a throttle is given to close in. */
export const HORIZON = 5;

export interface Prepared {
  /** Without the springs that are lost. */
  readonly bare: Build;
  /** As it stands when the foot comes off. */
  readonly start: Pose;
  readonly isLost: (name: string) => boolean;
  readonly isSeized: (name: string) => boolean;
  readonly inertias: Inertias;
  readonly restitution: number;
  readonly horizon: number;
  readonly assumed: readonly Assumption[];
  /** Bodies with plates and all that could still move these; all bodies where there are no plates. */
  matters(dynamics: Dynamics): readonly number[];
}

export function prepare(build: Build, options: SnapBackOptions): Prepared | NotComputed {
  const { mechanism } = build;
  const lost = new Set(options.without);
  const seized = new Set(options.seized);
  const isLost = (name: string): boolean => lost.has(name);
  const springs = mechanism.attached.springs.filter(({ name }) => !lost.has(name));
  const bare: Build = { ...build, mechanism: { ...mechanism, attached: { ...mechanism.attached, springs } } };
  const start = createPose(mechanism);
  const from = farthest(build, options.from ?? 1);
  advance(build, from, start);
  const torn = mechanism.levers.find(({ index }) => Number.isNaN(start.rotation[index]!));
  const percent = `${Number((100 * from).toPrecision(3))} %`;
  if (torn !== undefined) return { method: undefined, reason: `\`${torn.name}\` cannot be assembled at ${percent} of the pedal` };
  const beyond = mechanism.levers.find((lever) => isBeyondStop(build, start, lever));
  if (beyond !== undefined)
    return { method: undefined, reason: `\`${beyond.name}\` stands beyond one of its stops at ${percent} of the pedal` };
  const unknown = springs.find((spring) => springTorques(bare, start, spring).some(({ closing }) => Number.isNaN(closing)));
  if (unknown !== undefined) return { method: undefined, reason: `the torque of \`${unknown.name}\` is not known` };
  const inertias = inertiasOf(bare, isLost);
  const restitution = within(options.restitution, 0, 1) ?? RESTITUTION;
  const given = within(options.restitution, 0, 1) !== undefined;
  let order: readonly number[] | undefined;
  return {
    bare,
    start,
    isLost,
    isSeized: (name) => seized.has(name) && !lost.has(name),
    inertias,
    restitution,
    horizon: within(options.horizon, 0, Infinity) ?? HORIZON,
    assumed: [...inertias.assumed, ...(given ? [] : [bouncing]), ...frictionLeftOut(build, isLost), leftOut],
    matters: (dynamics) => (order ??= mattering(bare, dynamics)),
  };
}

/** The pedal goes no further than where an open stop holds it. */
function farthest({ mechanism, parameters, bounds }: Build, asked: number): number {
  const from = within(asked, 0, 1) ?? 1;
  const { drive } = mechanism;
  if (drive.kind !== 'lever') return from;
  const stop = bounds.pedalStop / parameters[drive.travel]!;
  return stop < from ? stop : from;
}

function isBeyondStop({ mechanism, parameters: p }: Build, { rotation }: Pose, { index, closedStop, openStop }: LeverModel): boolean {
  const opening = mechanism.senses[index]! * rotation[index]!;
  const isBelow = closedStop !== undefined && opening < p[closedStop.parameter]! - BEYOND;
  return isBelow || (openStop !== undefined && opening > p[openStop.parameter]! + BEYOND);
}

/** rad; less is rounding. */
const BEYOND = 1e-9;

function within(value: number | undefined, least: number, most: number): number | undefined {
  return value !== undefined && value >= least && value <= most ? value : undefined;
}

const bouncing: Assumption = {
  kind: 'restitution',
  part: undefined,
  value: RESTITUTION,
  text: `stops throw back with ${RESTITUTION} of the speed: common practice, no source`,
};

const leftOut: Assumption = {
  kind: 'left-out',
  part: undefined,
  value: undefined,
  text: 'the air on the plates, weight, and the mass of cables, springs and rod ends are left out',
};

function frictionLeftOut({ mechanism }: Build, isLost: (name: string) => boolean): readonly Assumption[] {
  const missing = missingFriction(mechanism).filter(({ source }) => !isLost(source.name));
  return missing.map(({ source: { name }, what }) => ({
    kind: 'friction',
    part: name,
    value: 0,
    text: `\`${name}\`: friction of ${what} is not given and left out`,
  }));
}

function mattering({ mechanism }: Build, { bodies, between }: Dynamics): readonly number[] {
  const all = Array.from({ length: bodies.count }, (_, i) => i);
  const { plates, springs } = mechanism.attached;
  if (plates.length === 0) return all;
  const reached = new Set(plates.map(({ lever }) => bodies.bodyOf[lever]!));
  const links = [...between, ...springs.map((spring) => leversOf(spring).map((lever) => bodies.bodyOf[lever]!))];
  for (let grown = true; grown;) {
    const before = reached.size;
    for (const link of links) if (link.some((body) => reached.has(body))) for (const body of link) if (body >= 0) reached.add(body);
    grown = reached.size > before;
  }
  return [...reached];
}
