/** What an adjuster does: one turn of it, solved and not estimated. */
import { decideBranches } from '../../kinematics/branches.ts';
import { createBounds, type Build } from '../../kinematics/build.ts';
import type { LeverModel, RodJoint } from '../../kinematics/model.ts';
import { settleRest } from '../../kinematics/rest.ts';
import { travelOf, type Travel } from '../../travel/travel.ts';
import type { Fact } from '../finding.ts';
import type { Study } from '../study.ts';

/** What one turn of each adjuster that lengthens its rod does to each shaft with plates. */
export function adjusters(study: Study, levers: readonly LeverModel[]): readonly Fact[] {
  const { mechanism } = study.travel;
  return mechanism.joints.flatMap((joint): Fact[] => {
    if (joint.kind !== 'rod' || joint.source.adjust?.pitch === undefined) return [];
    const pitch = joint.source.adjust.pitch.nominal;
    const turned = oneTurn(study.travel, joint, pitch);
    return levers.flatMap((lever): Fact[] => {
      const moved = (at: number): number =>
        mechanism.senses[lever.index]! * (turned.poseAt(at).rotation[lever.index]! - study.travel.poseAt(at).rotation[lever.index]!);
      return [0.5, 1].flatMap((at): Fact[] => {
        const value = moved(at);
        const common = {
          key: `adjuster-at-${at * 100}`,
          part: joint.name,
          label: `${lever.name} for one turn longer, at ${at * 100} % of pedal travel`,
          travel: at,
        };
        if (Number.isNaN(value)) return [{ ...common, why: 'it cannot be assembled there' }];
        return Math.abs(value) < SAME ? [] : [{ ...common, figure: { value, dimension: 'angle' } }];
      });
    });
  });
}

/** Its length is turned where the engine reads it, since it may follow from a formula. */
function oneTurn({ mechanism, build }: Travel, { length }: RodJoint, pitch: number): Travel {
  const turned: Build = { ...build, parameters: Float64Array.from(build.parameters), bounds: createBounds(mechanism) };
  turned.parameters[length] = turned.parameters[length]! + pitch;
  decideBranches(mechanism, turned.parameters);
  settleRest(turned);
  return travelOf(turned);
}

/** rad; less is none. */
const SAME = 1e-9;
