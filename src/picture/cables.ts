/** Cables: both housing ends with the free inner, and how slack or stretched it is. */
import type { Build } from '../kinematics/build.ts';
import type { CableJoint } from '../kinematics/model.ts';
import { CableState } from '../kinematics/pose.ts';
import { vectorAt } from '../numeric/vector.ts';
import type { DrawnCable, HousingEnd } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';
import { rimMeetsInner, type RimEnd } from '../kinematics/drumRim.ts';
import { seriesOf } from './series.ts';
import { pinPlace } from './turning.ts';

export function drawCables(drawable: Drawable): readonly DrawnCable[] {
  return drawable.joints.flatMap(({ joint, build, isMoved }): DrawnCable[] => {
    if (joint.kind !== 'cable') return [];
    const enters = drawEnd(drawable, { joint, build, which: 'enters' });
    const leaves = drawEnd(drawable, { joint, build, which: 'leaves' });
    if (enters === undefined || (joint.driverEnd !== undefined && leaves === undefined)) return [];
    return [{ name: joint.name, leaves, enters, ...(isMoved ? moved(drawable, build, joint) : standing(drawable, build, joint)) }];
  });
}

function drawEnd(drawable: Drawable, end: RimEnd): HousingEnd | undefined {
  const { joint, build, which } = end;
  const model = which === 'leaves' ? joint.driverEnd : joint.drivenEnd;
  const lever = which === 'leaves' ? joint.driver : joint.driven;
  if (model === undefined || lever === undefined) return undefined;
  const housing = vectorAt(build.parameters, model.housing);
  const inner = model.kind === 'pin' ? drawPin(drawable, build, lever, model.pin) : drawRim(drawable, end, lever, model.drum.name);
  if (inner === undefined || !housing.every(Number.isFinite)) return undefined;
  const given = build.mechanism.directions.housings.get(joint.name)?.[which];
  const along = given === undefined ? undefined : vectorAt(build.parameters, given);
  return { housing, along: along?.every(Number.isFinite) === true ? along : undefined, inner };
}

function drawPin(drawable: Drawable, build: Build, lever: number, pin: number): HousingEnd['inner'] | undefined {
  const place = pinPlace(drawable, build, lever, pin);
  return place && { kind: 'pin', ...place };
}

function drawRim({ poses, placeOf }: Drawable, end: RimEnd, lever: number, drum: string): HousingEnd['inner'] | undefined {
  const place = placeOf(lever);
  if (place === undefined) return undefined;
  const rim = new Float64Array(3 * poses.length).fill(NaN);
  poses.forEach((pose, i) => {
    const at = rimMeetsInner(end, pose);
    if (at !== undefined) rim.set(at, 3 * i);
  });
  return { kind: 'drum', lever: place, drum, rim };
}

type Tightness = Pick<DrawnCable, 'slack' | 'stretch'>;

/** Slack is what the pull has still to take up before the driven end moves on from rest. */
function moved({ poses }: Drawable, { parameters, bounds }: Build, { cable, slack }: CableJoint): Tightness {
  return {
    slack: seriesOf(poses, ({ pull, cableState }) => {
      if (cableState[cable] !== CableState.slack) return 0 * pull[cable]! + 0;
      return Math.max(0, bounds.cableRest[cable]! + parameters[slack]! - pull[cable]!);
    }),
    stretch: seriesOf(poses, ({ passed, stretch }) => (Number.isNaN(passed[cable]!) ? NaN : stretch[cable]!)),
  };
}

function standing({ stations }: Drawable, { parameters }: Build, { slack }: CableJoint): Tightness {
  return { slack: stations.map(() => parameters[slack]!), stretch: stations.map(() => 0) };
}
