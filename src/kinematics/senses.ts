/**
 * Which way each lever opens: as the file says, else the way of its greatest rotation over the travel with stops ignored.
 */
import { moveJoint, turnRoot } from './advance.ts';
import { createBounds, type Build } from './build.ts';
import { decideBranches } from './branches.ts';
import type { Joint, Mechanism } from './model.ts';
import { evaluateParameters } from './parameters.ts';
import { createPoses } from './pose.ts';

/** Fills `mechanism.senses` from its nominal dimensions. They do not change with trial values. */
export function findSenses(mechanism: Mechanism): void {
  const { senses, levers, joints, drive } = mechanism;
  const given = levers.map((lever) => (lever.source.opens === undefined ? undefined : lever.source.opens === 'clockwise' ? -1 : 1));
  const build = freeBuild(mechanism);
  const poses = createPoses(mechanism, SAMPLES);
  poses.forEach((pose, i) => (pose.travel = i / (SAMPLES - 1)));
  if (drive.kind === 'lever') {
    senses[drive.lever] = drive.sense;
    const full = drive.sense * build.parameters[drive.travel]!;
    for (const pose of poses) turnRoot(pose, drive.lever, full * pose.travel, full);
  }
  for (const joint of joints) {
    const { driven } = joint;
    const likely = likelySense(mechanism, joint, build.parameters);
    senses[driven] = given[driven] ?? likely;
    let greatest = 0;
    for (const pose of poses) {
      moveJoint(build, joint, pose);
      const rotation = pose.rotation[driven]!;
      if (Math.abs(rotation) > Math.abs(greatest)) greatest = rotation;
    }
    senses[driven] = given[driven] ?? (Math.abs(greatest) < STILL ? likely : Math.sign(greatest));
  }
  levers.forEach((lever, index) => {
    if (lever.driver === undefined && !(drive.kind === 'lever' && drive.lever === index)) senses[index] = given[index] ?? 1;
  });
}

/** Stations at which the way of opening is looked for. A lever whose way is that close should say `opens`. */
const SAMPLES = 65;
/** rad; a lever that turns less than this counts as opening counter-clockwise. */
const STILL = 1e-9;

/** The way a lever must open where its joint works one way only; counter-clockwise where that says nothing. */
function likelySense(mechanism: Mechanism, joint: Joint, p: Float64Array): 1 | -1 {
  if (joint.kind === 'cable' && joint.drivenEnd.kind === 'drum') return joint.drivenEnd.drum.wraps;
  if (joint.kind === 'coupling' && joint.oneWay) return p[joint.ratio]! * mechanism.senses[joint.driver]! < 0 ? -1 : 1;
  return 1;
}

/** A nominal build in which no stop holds anything. */
function freeBuild(mechanism: Mechanism): Build {
  const slots = new Float64Array(mechanism.tape.slotCount);
  const parameters = new Float64Array(mechanism.parameterCount);
  const build: Build = { mechanism, values: mechanism.nominal, parameters, slots, bounds: createBounds(mechanism) };
  evaluateParameters(build);
  decideBranches(mechanism, parameters);
  return build;
}
