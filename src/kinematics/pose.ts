/**
 * Where everything stands at one station of the pedal. Allocated once and filled again for each station.
 */
import type { Mechanism } from './model.ts';

export interface Pose {
  /** Pedal travel as a fraction, 0 … 1. */
  travel: number;
  /** Rotation of each lever since drawn, rad, positive by the right-hand rule about its axis. NaN where it cannot be assembled. */
  readonly rotation: Float64Array;
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
  /** d rotation / d travel, rad. Right-hand at a kink. */
  readonly rate: Float64Array;
  /** d² rotation / d travel², rad. */
  readonly curvature: Float64Array;
  /** Pull of each cable at its driving end since drawn, m, with its derivatives. */
  readonly pull: Float64Array;
  readonly pullRate: Float64Array;
  readonly pullCurvature: Float64Array;
  /** What reaches the driven end of each cable since drawn, m, with its derivatives. */
  readonly passed: Float64Array;
  readonly passedRate: Float64Array;
  readonly passedCurvature: Float64Array;
  /** What a cable takes up past an open stop, m. */
  readonly stretch: Float64Array;
  /** One of `CableState`. */
  readonly cableState: Int8Array;
}

/** What limits a cable at a station. */
export const CableState = { slack: 0, moving: 1, stopped: 2 } as const;

export function createPose(mechanism: Pick<Mechanism, 'levers' | 'cables'>): Pose {
  const levers = mechanism.levers.length;
  const cables = mechanism.cables.length;
  return {
    travel: 0,
    rotation: new Float64Array(levers),
    cosine: new Float64Array(levers).fill(1),
    sine: new Float64Array(levers),
    rate: new Float64Array(levers),
    curvature: new Float64Array(levers),
    pull: new Float64Array(cables),
    pullRate: new Float64Array(cables),
    pullCurvature: new Float64Array(cables),
    passed: new Float64Array(cables),
    passedRate: new Float64Array(cables),
    passedCurvature: new Float64Array(cables),
    stretch: new Float64Array(cables),
    cableState: new Int8Array(cables),
  };
}
