/**
 * One set of dimensions put into a mechanism: the parameter vector and how far each group can go.
 */
import type { Mechanism } from './model.ts';

export interface Build {
  readonly mechanism: Mechanism;
  readonly values: Float64Array;
  readonly parameters: Float64Array;
  readonly slots: Float64Array;
  readonly bounds: Bounds;
}

/** How far each group can go, in terms of what drives it. */
export interface Bounds {
  /** Least and greatest rotation of the pedal, counted in its opening direction, rad. */
  pedalRest: number;
  pedalStop: number;
  /** Rotation of each lever with the foot off and every cable loose, rad. */
  readonly restRotation: Float64Array;
  /** Least and greatest that each cable can bring to its driven end, m since drawn. */
  readonly cableRest: Float64Array;
  readonly cableStop: Float64Array;
}

export function createBounds(mechanism: Pick<Mechanism, 'levers' | 'cables'>): Bounds {
  return {
    pedalRest: 0,
    pedalStop: Infinity,
    restRotation: new Float64Array(mechanism.levers.length),
    cableRest: new Float64Array(mechanism.cables.length),
    cableStop: new Float64Array(mechanism.cables.length).fill(Infinity),
  };
}
