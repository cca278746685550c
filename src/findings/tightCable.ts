/** Whether a group's cable is tight with the foot off. */
import type { Build } from '../kinematics/build.ts';
import type { Travel } from '../travel/travel.ts';

/** By how much the cable that drives a group is too tight at rest, m; undefined where it is not, or no cable drives the group. */
export function tightCable(travel: Travel, group: number): number | undefined {
  const excess = pulledPastSlack(travel, group, travel.build);
  return excess > TIGHT ? excess : undefined;
}

/** The same with its sign, negative where slack is left, of another build that rests otherwise; NaN where no cable drives the group. */
export function pulledPastSlack({ mechanism, poseAt }: Travel, group: number, { parameters, bounds }: Build): number {
  const cable = mechanism.groups[group]?.cable;
  if (cable === undefined) return NaN;
  return poseAt(0).pull[cable]! - parameters[mechanism.cables[cable]!.slack]! - bounds.cableRest[cable]!;
}

/** m; less is the rounding of a length written to a micrometre. */
export const TIGHT = 1e-6;
