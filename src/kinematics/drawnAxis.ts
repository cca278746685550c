/** The axis of a lever as drawn: where it stands and which way it points. */
import { size, vectorAt, type Vector } from '../numeric/vector.ts';
import type { Build } from './build.ts';

export function pivotOf({ mechanism, parameters }: Build, lever: number): Vector {
  return vectorAt(parameters, mechanism.levers[lever]!.pivot);
}

/** Of length 1; that of the page where the file gives the lever none that can be used. */
export function axisOf({ mechanism, parameters }: Build, lever: number): Vector {
  const axis = vectorAt(parameters, mechanism.levers[lever]!.axis);
  return Math.abs(size(axis) - 1) < UNIT ? axis : [0, 0, 1];
}

/** What rounding may take from a length of 1; figures beyond all measure leave nothing of it. */
const UNIT = 1e-9;
