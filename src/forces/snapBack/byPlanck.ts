/**
 * Snap-back of a planar linkage by planck: its bodies and joints (`planckWorld.ts`), gaps as joints that only press (`planckGaps.ts`),
 * springs as forces, friction as motors (`planckFriction.ts`). A second way beside `solveMotion.ts`, which shares nothing with it but
 * geometry of gaps, the forces of springs, and what a stretched cable holds at first.
 */
import type { Build } from '../../kinematics/build.ts';
import { createPlateTimes } from './plateTimes.ts';
import { createPlanckFriction } from './planckFriction.ts';
import { addGaps } from './planckGaps.ts';
import { createPlanckWorld, UNITS } from './planckWorld.ts';
import { prepare } from './prepare.ts';
import { createRecorder } from './recorder.ts';
import { springEnergy } from './springEnergy.ts';
import { summed } from './summed.ts';
import type { NotComputed, SnapBack, SnapBackOptions } from './snapBack.ts';

/** s. */
const STEP = 1e-5;
/** Turns of its solver a step. */
const VELOCITY_TURNS = 100;
const POSITION_TURNS = 6;
/** s between two records. */
const RECORD = 1e-4;
/** J: all that moves has less when it counts as come to rest, of what the springs have given out. */
const AT_REST = 1e-7;
/** s without motion until it is over. */
const CALM = 0.01;
/** Relative to the fastest so far; a bounce slower than this is none: what rests on a stop is pressed on it anew each step. */
const LEAST_BOUNCE = 2e-3;

/** Whether all levers turn about z, which planck asks for. */
export function isPlanar({ mechanism, parameters: p }: Build): boolean {
  return mechanism.levers.every(({ axis }) => Math.abs(Math.abs(p[axis + 2]!) - 1) <= PARALLEL);
}

const PARALLEL = 1e-9;

export function snapBackByPlanck(build: Build, options: SnapBackOptions): SnapBack | NotComputed {
  if (!isPlanar(build)) return { method: undefined, reason: 'a linkage that leaves its plane goes by the equation of motion alone' };
  const prepared = prepare(build, options);
  if ('reason' in prepared) return prepared;
  const { bare, horizon } = prepared;
  const step = options.step ?? STEP;
  let fastest = 0;
  const linkage = createPlanckWorld(prepared);
  const { world, pose } = linkage;
  const gaps = addGaps(linkage, prepared, (leaving) => leaving > LEAST_BOUNCE * fastest);
  const rubs = createPlanckFriction(linkage, step);

  fastest = linkage.read();
  const plates = createPlateTimes(bare, pose);
  const recorder = createRecorder(bare.mechanism.levers.length);
  recorder.add(0, pose);
  const held = springEnergy(bare, pose) + gaps.stretchedEnergy;
  let time = 0;
  let friction = 0;
  let calm = 0;
  const before = new Float64Array(bare.mechanism.attached.plates.length);
  let recorded = 0;
  while (time < horizon && calm < CALM) {
    linkage.pullBySprings();
    gaps.load(rubs, step);
    friction += rubs.rub();
    gaps.pull();
    before.forEach((_, i) => (before[i] = plates.distance(i, pose)));
    world.step(step, VELOCITY_TURNS, POSITION_TURNS);
    friction += rubs.taken();
    time += step;
    fastest = Math.max(fastest, linkage.read());
    for (const { gap, joint } of gaps.each) {
      const met = joint.met();
      if (met === undefined || gap.kind !== 'stop' || gap.which !== 'closed' || !(met.approach > LEAST_BOUNCE * fastest)) continue;
      plates.meets(gap.lever, met.approach, met.leaving > LEAST_BOUNCE * fastest);
    }
    plates.step(time, pose, (plate) => {
      const after = plates.distance(plate, pose);
      return time - step + step * (before[plate]! / (before[plate]! - after));
    });
    if (time - recorded >= RECORD) {
      recorder.add(time, pose);
      recorded = time;
    }
    const kinetic = linkage.kineticEnergy();
    if (Number.isNaN(kinetic)) return { method: undefined, reason: 'planck does not hold the linkage together' };
    calm = kinetic <= AT_REST * Math.max(Math.abs(held - springEnergy(bare, pose)), AT_REST) ? calm + step : 0;
  }
  recorder.add(time, pose);
  const kinetic = linkage.kineticEnergy();
  const returns = plates.answer(pose, () => (calm < CALM ? 'still-moving' : 'sticks'));
  const springs = held - springEnergy(bare, pose);
  let stops = 0;
  let jerks = 0;
  for (const { gap, joint } of gaps.each) {
    friction += joint.rubbed() / UNITS ** 2;
    if (gap.kind === 'stop' || gap.kind === 'pedal-stop') stops += joint.taken() / UNITS ** 2;
    else jerks += joint.taken() / UNITS ** 2;
  }
  return {
    method: 'planck',
    ...summed(returns),
    energy: { springs, kinetic, friction, stops, jerks, residual: springs - kinetic - friction - stops - jerks },
    assumed: [...prepared.assumed, ...gaps.assumed],
    trace: recorder.trace(),
    followed: time,
  };
}
