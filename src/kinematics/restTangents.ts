/**
 * How the rest position changes with the dimensions.
 *
 * A body rests where the least gap to its closed stops is none. With ψ its first lever's rotation and φ = α + β dψ the change of a
 * stopped lever's: sense · (α + β dψ) = d closed gives dψ for that stop; of several stops that are met together the one that
 * opens the body most decides. So at a position where two stops meet, as drawn, the derivative is one-sided: it is the one in the
 * direction asked for, and the opposite direction may give other than its negative.
 */
import type { Build } from './build.ts';
import { jointTangent, type TangentState } from './jointTangents.ts';
import { moveJoint } from './advance.ts';
import type { Joint } from './model.ts';
import { createPose } from './pose.ts';
import { bodiesOf, placeBody, type Body } from './rest.ts';

/** rad; gaps this near to none count as met. Rests are found to 1e-15. */
const MET = 1e-12;

/** Change of every lever's rest rotation. @param parameterRates change of the parameters */
export function restTangents(build: Build, parameterRates: Float64Array): Float64Array {
  const { mechanism } = build;
  const restRates = new Float64Array(mechanism.levers.length);
  const state: TangentState = {
    build,
    pose: createPose(mechanism),
    parameterRates,
    restRates,
    rotationRates: new Float64Array(restRates.length),
  };
  for (const group of mechanism.groups) {
    const bodies = bodiesOf(build, group);
    const stopped = new Set(bodies.filter((body) => settleBody(state, body)));
    for (const body of [...bodies].reverse()) {
      const upstream =
        body.driver && bodies.find((each) => body.driver?.kind !== 'cable' && each.levers.includes(body.driver?.driver ?? -1));
      if (upstream !== undefined && body.driver !== undefined && !stopped.has(upstream)) followPlay(state, upstream, body, body.driver);
    }
  }
  return restRates;
}

/** Change of the rotations of `levers` for a root that turns by `rootRate`, all else by the dimensions. */
export function runBody(state: TangentState, root: number, joints: readonly Joint[], rootRate: number): void {
  state.rotationRates[root] = rootRate;
  for (const joint of joints) if (joint.kind !== 'cable') state.rotationRates[joint.driven] = jointTangent(state, joint);
}

/** Fills a body's rest rates from the closed stops that it meets. @returns false where it meets none: it stays */
function settleBody(state: TangentState, body: Body): boolean {
  const { build, pose, parameterRates, restRates, rotationRates } = state;
  const { mechanism, parameters, bounds } = build;
  placeBody(build, body, bounds.restRotation[body.root]!, pose);
  runBody(state, body.root, body.joints, 0);
  const held = Float64Array.from(rotationRates);
  runBody(state, body.root, body.joints, 1);
  let most = -Infinity;
  for (const lever of body.levers) {
    const stop = mechanism.levers[lever]!.closedStop;
    const sense = mechanism.senses[lever]!;
    if (stop === undefined || Math.abs(sense * pose.rotation[lever]! - parameters[stop.parameter]!) > MET) continue;
    const gain = rotationRates[lever]! - held[lever]!;
    most = Math.max(most, (mechanism.senses[body.root]! * (sense * parameterRates[stop.parameter]! - held[lever]!)) / gain);
  }
  const met = most > -Infinity;
  runBody(state, body.root, body.joints, met ? mechanism.senses[body.root]! * most : 0);
  for (const lever of body.levers) restRates[lever] = rotationRates[lever]!;
  return met;
}

/** A body without a stop of its own that was moved to fit free play stays at the end of that play. */
function followPlay(state: TangentState, upstream: Body, body: Body, joint: Joint): void {
  const { build, pose, restRates, rotationRates } = state;
  if (joint.kind === 'cable' || joint.kind === 'coupling' || build.bounds.restRotation[upstream.root] === 0) return;
  placeBody(build, upstream, build.bounds.restRotation[upstream.root]!, pose);
  moveJoint(build, joint, pose);
  const wanted = restRates[body.root]!;
  const follow = (rootRate: number): number => {
    runBody(state, upstream.root, upstream.joints, rootRate);
    return jointTangent(state, joint);
  };
  const none = follow(0);
  const gain = follow(1) - none;
  if (gain === 0) return;
  follow((wanted - none) / gain);
  for (const lever of upstream.levers) restRates[lever] = rotationRates[lever]!;
}
