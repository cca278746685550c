/** Levers with their arms, drums, outlines and stops, and how far each has turned. */
import { axisOf, pivotOf } from '../kinematics/drawnAxis.ts';
import type { LeverModel } from '../kinematics/model.ts';
import type { DrawnLever } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';
import { drawDrums } from './drums.ts';
import { seriesOf } from './series.ts';
import { tripleOf, turningAbout, turningPoint } from './turning.ts';

export function drawLevers(drawable: Drawable): readonly DrawnLever[] {
  const { mechanism, levers } = drawable;
  return levers.map((lever) => drawLever(drawable, mechanism.levers[lever]!));
}

function drawLever(drawable: Drawable, model: LeverModel): DrawnLever {
  const { build, mechanism, poses, travel } = drawable;
  const { index, name, source, pins } = model;
  const pivot = pivotOf(build, index);
  const axis = axisOf(build, index);
  const isDriven = travel !== undefined && model.group >= 0;
  return {
    name,
    pivot,
    axis,
    rotation: isDriven ? seriesOf(poses, ({ rotation }) => rotation[index]!) : new Float64Array(poses.length),
    sense: mechanism.senses[index] === -1 ? -1 : 1,
    isDriven,
    arms: [...pins].flatMap(([arm, pin]) => {
      const at = turningPoint(build, pin);
      return at === undefined ? [] : [{ name: arm, at }];
    }),
    drums: drawDrums(drawable, model),
    outline: (source.outline ?? []).map((corner) => turningAbout(pivot, axis, tripleOf(corner))).filter((at) => at !== undefined),
    width: source.width?.nominal,
    stops: stopsOf(drawable, model),
  };
}

/** The pedal and a lever with plates have a closed stop though the file does not say so. */
function stopsOf({ build, definition: { pedal } }: Drawable, model: LeverModel): DrawnLever['stops'] {
  const { closedStop, openStop, source, plates, name } = model;
  const isPedal = pedal?.kind === 'lever' && pedal.lever.name === name;
  const hasClosed = isPedal || plates.length > 0 || source.stops?.closed !== undefined;
  return {
    closed: hasClosed && closedStop !== undefined ? build.parameters[closedStop.parameter] : undefined,
    open: openStop && build.parameters[openStop.parameter],
  };
}
