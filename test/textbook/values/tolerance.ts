/** Errors of the output angle of the textbook four-bar for small errors of its links. */
import type { FourBar } from '../../../src/kinematics/fourBar/index.ts';
import type { Provenance } from './provenance.ts';

export const toleranceCase = {
  links: { a: 40, b: 120, c: 80, d: 100 } as const satisfies FourBar,
  theta2: 40,
  circuit: 'open',
  /** rad per unit of length, rad per rad; 8 digits after the point. */
  perUnit: { a: -0.01954234, b: -0.02075752, c: 0.01657181, d: 0.01946852, theta2: 0.27991941 },
  /** deg per unit of length; 8 digits after the point. */
  degPerUnit: { a: -1.11969357, b: -1.18931855, c: 0.94949467, d: 1.11546395 },
  /** ± on each of the four lengths. */
  tolerance: 0.05,
  worstCaseDeg: 0.218699,
  rootSumSquareDeg: 0.109704,
  ratio: 1.9935,
  /** All sixteen corners, solved exactly. */
  cornersDeg: 0.219019,
  /** Three sigma of random builds, sigma = tolerance/3, against the root of the sum of squares. */
  randomWithinDeg: 2e-3,
  source: 'dimensions: Norton, Design of Machinery, example 4-1, from memory; sensitivities, stack and corners ours',
  status: 'from memory',
  answers: 'ours',
} as const satisfies Provenance & Record<string, unknown>;
