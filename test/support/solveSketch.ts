/** From a sketch through its text to the engine. */
import { findLoadPath } from '../../src/definition/loadPath.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { advance } from '../../src/kinematics/advance.ts';
import type { Build } from '../../src/kinematics/build.ts';
import { compileMechanism } from '../../src/kinematics/compile.ts';
import { createBuild } from '../../src/kinematics/createBuild.ts';
import type { Mechanism } from '../../src/kinematics/model.ts';
import { createPose, type Pose } from '../../src/kinematics/pose.ts';
import { settleStops, type Contact } from '../../src/travel/stops.ts';
import type { Rotations } from './closure.ts';
import { sketchText, type Sketch } from './sketch.ts';

export interface Solved {
  readonly mechanism: Mechanism;
  readonly build: Build;
  readonly contacts: readonly Contact[];
  /** A new pose. */
  poseAt(travel: number): Pose;
  rotationsAt(travel: number): Rotations;
  lever(name: string): number;
}

export function mechanismOf(text: string): Mechanism {
  const { definition, problems } = readDefinition(text);
  const errors = problems.filter((problem) => problem.severity === 'error');
  if (definition === undefined || errors.length > 0) throw new Error(`${JSON.stringify(errors)}\n${text}`);
  const { path } = findLoadPath(definition);
  const mechanism = path && compileMechanism(definition, path);
  if (mechanism === undefined) throw new Error(`Nothing to solve in\n${text}`);
  return mechanism;
}

export function solveText(text: string): Solved {
  const mechanism = mechanismOf(text);
  const build = createBuild(mechanism);
  return solvedBuild(build, settleStops(build));
}

export function solveSketch(sketch: Sketch): Solved {
  return solveText(sketchText(sketch));
}

export function solvedBuild(build: Build, contacts: readonly Contact[] = []): Solved {
  const { mechanism } = build;
  const poseAt = (travel: number): Pose => {
    const pose = createPose(mechanism);
    advance(build, travel, pose);
    return pose;
  };
  const pose = createPose(mechanism);
  return {
    mechanism,
    build,
    contacts,
    poseAt,
    rotationsAt(travel) {
      advance(build, travel, pose);
      return Object.fromEntries(mechanism.levers.map((lever) => [lever.name, pose.rotation[lever.index]!]));
    },
    lever(name) {
      const index = mechanism.leverIndex.get(name);
      if (index === undefined) throw new Error(`The mechanism has no lever ${name}`);
      return index;
    },
  };
}

export function sensesOf({ levers, senses }: Mechanism): Readonly<Record<string, number>> {
  return Object.fromEntries(levers.map((lever) => [lever.name, senses[lever.index]!]));
}
