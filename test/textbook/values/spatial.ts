/** A spatial four-bar with ball joints at both ends of its rod: two levers on axes at 90°. Lengths in any unit, angles in degrees. */
import type { Provenance } from './provenance.ts';

type Triple = readonly [number, number, number];

export interface SpatialLever {
  readonly pivot: Triple;
  /** Unit vector; rotation is right-handed about it. */
  readonly axis: Triple;
  /** Where its ball stands at rotation 0. */
  readonly ball: Triple;
}

export const spatialCase: Provenance & {
  readonly input: SpatialLever;
  readonly output: SpatialLever;
  readonly rod: number;
  readonly decimals: number;
  /** Rotation of the input, of the output on the first and on the second branch. */
  readonly rows: readonly (readonly [number, number, number])[];
} = {
  input: { pivot: [0, 0, 0], axis: [0, 0, 1], ball: [30, 0, 0] },
  output: { pivot: [100, 20, 40], axis: [0, 1, 0], ball: [100, 20, 85] },
  rod: 120,
  decimals: 6,
  rows: [
    [0, 19.240716, 101.269522],
    [15, 20.144814, 101.078417],
    [30, 15.729447, 107.496974],
    [45, 8.126216, 118.040039],
    [60, -0.640711, 130.238463],
    [75, -9.457662, 142.567527],
    [90, -17.808343, 154.205524],
    [120, -32.29015, 173.932134],
  ],
  source:
    'ours: no complete published example was found; checked by rebuilding both ball centres, by finite differences and by the planar limit',
  status: 'ours',
};
