/** Whether a group's cable is tight with the foot off. */
import type { Travel } from '../travel/travel.ts';

/** By how much the cable that drives a group is too tight at rest, m; undefined where it is not, or no cable drives the group. */
export function tightCable({ mechanism, build, poseAt }: Travel, group: number): number | undefined {
  const cable = mechanism.groups[group]?.cable;
  if (cable === undefined) return undefined;
  const excess = poseAt(0).pull[cable]! - build.parameters[mechanism.cables[cable]!.slack]! - build.bounds.cableRest[cable]!;
  return excess > TIGHT ? excess : undefined;
}

/** m; less is rounding. */
const TIGHT = 1e-9;
