/** What an adjuster does: one turn of it, solved and not estimated. */
import { decideBranches } from '../../kinematics/branches.ts';
import { createBounds, type Build } from '../../kinematics/build.ts';
import type { LeverModel, RodJoint } from '../../kinematics/model.ts';
import { settleRest } from '../../kinematics/rest.ts';
import { groupsBehind } from '../../travel/stops.ts';
import { travelOf, type Travel } from '../../travel/travel.ts';
import type { Fact } from '../finding.ts';
import type { Study } from '../study.ts';

/** What one turn of each adjuster that lengthens its rod does to each shaft with plates. */
export function adjusters({ travel }: Study, levers: readonly LeverModel[]): readonly Fact[] {
  const { mechanism } = travel;
  return mechanism.joints.flatMap((joint): Fact[] => {
    if (joint.kind !== 'rod' || joint.source.adjust?.pitch === undefined) return [];
    const turned = oneTurn(travel, joint, joint.source.adjust.pitch.nominal);
    const places = PLACES.map((at) => ({ at, before: rotationsAt(travel, at), after: rotationsAt(turned, at) }));
    return levers.flatMap(({ index, name }): Fact[] =>
      places.flatMap(({ at, before, after }): Fact[] => {
        const value = mechanism.senses[index]! * (after[index]! - before[index]!);
        const common = {
          key: `adjuster-at-${at * 100}`,
          part: joint.name,
          label: `change in opening of ${name} by one turn longer, at ${at * 100} % of pedal travel`,
          travel: at,
        };
        if (Number.isNaN(value)) return [{ ...common, why: 'it cannot be assembled there' }];
        return Math.abs(value) < SAME ? [] : [{ ...common, figure: { value, dimension: 'angle' } }];
      }),
    );
  });
}

const PLACES: readonly number[] = [0.5, 1];

/** Of every lever, since the pose itself is filled again. */
function rotationsAt(travel: Travel, at: number): Float64Array {
  return Float64Array.from(travel.poseAt(at).rotation);
}

/**
 * Its length is turned where the engine reads it, since it may follow from a formula. Groups that it does not reach stop where they did:
 * of two dozen shafts behind one pedal each has its own rods.
 */
function oneTurn({ mechanism, build }: Travel, { length, driven }: RodJoint, pitch: number): Travel {
  const bounds = createBounds(mechanism);
  bounds.pedalStop = build.bounds.pedalStop;
  bounds.cableStop.set(build.bounds.cableStop);
  const turned: Build = { ...build, parameters: Float64Array.from(build.parameters), bounds };
  turned.parameters[length] = turned.parameters[length]! + pitch;
  decideBranches(mechanism, turned.parameters);
  settleRest(turned);
  return travelOf(turned, groupsBehind(mechanism, mechanism.levers[driven]!.group));
}

/** rad; less is none. */
const SAME = 1e-9;
