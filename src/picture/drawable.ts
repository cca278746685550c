/** What a picture is drawn from: the figures of the engine, the poses at the stations, and the place of each lever in the picture. */
import type { Definition } from '../definition/definition.ts';
import type { Build } from '../kinematics/build.ts';
import type { Joint, Mechanism } from '../kinematics/model.ts';
import { createPose, type Pose } from '../kinematics/pose.ts';
import { vectorAt } from '../numeric/vector.ts';
import type { Answers } from '../solve.ts';
import type { Travel } from '../travel/travel.ts';
import { jointNames, standAsDrawn } from './standing.ts';

export interface Drawable {
  readonly definition: Definition;
  /** Undefined where nothing is solved: all stands as drawn then. */
  readonly travel: Travel | undefined;
  readonly mechanism: Mechanism;
  readonly build: Build;
  /** Pedal travels, fractions: those at which the answers were found, or only 0 and 1 where nothing is solved. */
  readonly stations: Float64Array;
  /** One for each station. */
  readonly poses: readonly Pose[];
  /** In load-path order, those that nothing moves last. */
  readonly joints: readonly DrawableJoint[];
  /** Levers of the mechanism in the order of the picture; those without a place are left out. */
  readonly levers: readonly number[];
  /** Where a lever of the mechanism stands in the picture; undefined where it is not drawn. */
  placeOf(lever: number): number | undefined;
}

export interface DrawableJoint {
  readonly joint: Joint;
  /** Whose parameters the joint speaks of. */
  readonly build: Build;
  /** Whether the solved travel moves it. */
  readonly isMoved: boolean;
}

/** Undefined where no lever has a place. */
export function drawableOf({ definition, study }: Answers): Drawable | undefined {
  if (definition === undefined) return undefined;
  const travel = study?.travel;
  const moved = travel?.mechanism.joints ?? [];
  const still = jointNames(definition).filter(({ kind, name }) => !moved.some((joint) => joint.kind === kind && joint.name === name));
  const standing = travel !== undefined && still.length === 0 ? undefined : standAsDrawn(definition, still);
  const build = travel?.build ?? standing;
  if (build === undefined) return undefined;
  const { mechanism } = build;
  const levers = inOrder(definition, mechanism, moved).filter((lever) => hasPlace(build, lever));
  if (levers.length === 0) return undefined;
  const places = new Map(levers.map((lever, place) => [lever, place]));
  const stations = travel?.samples ?? [0, 1];
  return {
    definition,
    travel,
    mechanism,
    build,
    stations: Float64Array.from(stations),
    poses: travel === undefined ? stations.map(() => createPose(mechanism)) : stations.map((at) => travel.poseAt(at)),
    joints: [
      ...moved.map((joint): DrawableJoint => ({ joint, build, isMoved: true })),
      ...(standing?.mechanism.joints ?? []).map((joint): DrawableJoint => ({ joint, build: standing ?? build, isMoved: false })),
    ],
    levers,
    placeOf: (lever) => places.get(lever),
  };
}

function inOrder({ pedal }: Definition, { levers, leverIndex }: Mechanism, moved: readonly Joint[]): readonly number[] {
  const foot = pedal?.kind === 'lever' ? leverIndex.get(pedal.lever.name) : undefined;
  return [...new Set([...(foot === undefined ? [] : [foot]), ...moved.map(({ driven }) => driven), ...levers.keys()])];
}

function hasPlace({ mechanism, parameters }: Build, lever: number): boolean {
  return vectorAt(parameters, mechanism.levers[lever]!.pivot).every(Number.isFinite);
}
