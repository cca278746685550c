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
  return createPoses(mechanism, 1)[0]!;
}

/** As many poses as asked for, their figures side by side: each alone would take many small pieces of memory. */
export function createPoses(mechanism: Pick<Mechanism, 'levers' | 'cables'>, count: number): readonly Pose[] {
  const levers = mechanism.levers.length;
  const cables = mechanism.cables.length;
  const width = LEVER_FIGURES * levers + CABLE_FIGURES * cables;
  const all = new ArrayBuffer(Float64Array.BYTES_PER_ELEMENT * width * count);
  const states = new ArrayBuffer(cables * count);
  const figures = (from: number, length: number): Float64Array => new Float64Array(all, Float64Array.BYTES_PER_ELEMENT * from, length);
  return Array.from({ length: count }, (_, i): Pose => {
    const lever = (figure: number): Float64Array => figures(width * i + figure * levers, levers);
    const first = width * i + LEVER_FIGURES * levers;
    const cable = (figure: number): Float64Array => figures(first + figure * cables, cables);
    return new StationPose(lever, cable, new Int8Array(states, cables * i, cables));
  });
}

/** Of each lever and of each cable in a pose. */
const LEVER_FIGURES = 5;
const CABLE_FIGURES = 7;

/**
 * As a class: of objects that are written out V8 notes where they are made, and as poses mostly outlive its next collections, it would set them
 * where only a collection of all memory finds that they are gone.
 */
class StationPose implements Pose {
  travel = 0;
  readonly rotation: Float64Array;
  readonly cosine: Float64Array;
  readonly sine: Float64Array;
  readonly rate: Float64Array;
  readonly curvature: Float64Array;
  readonly pull: Float64Array;
  readonly pullRate: Float64Array;
  readonly pullCurvature: Float64Array;
  readonly passed: Float64Array;
  readonly passedRate: Float64Array;
  readonly passedCurvature: Float64Array;
  readonly stretch: Float64Array;
  readonly cableState: Int8Array;

  /** @param lever room for one of `LEVER_FIGURES` of all levers @param cable the same of all cables */
  constructor(lever: (figure: number) => Float64Array, cable: (figure: number) => Float64Array, cableState: Int8Array) {
    this.rotation = lever(0);
    this.cosine = lever(1).fill(1);
    this.sine = lever(2);
    this.rate = lever(3);
    this.curvature = lever(4);
    this.pull = cable(0);
    this.pullRate = cable(1);
    this.pullCurvature = cable(2);
    this.passed = cable(3);
    this.passedRate = cable(4);
    this.passedCurvature = cable(5);
    this.stretch = cable(6);
    this.cableState = cableState;
  }
}
