/**
 * Three-point synthesis apart from `src/`: Freudenstein's equation K1·cos ψ − K2·cos φ + K3 = cos(φ − ψ) at three pairs, solved by
 * Cramer's rule, with K1 = d/a, K2 = d/c, K3 = (a² − b² + c² + d²)/(2ac) and d = 1.
 */
import type { FourBar } from '../../../src/kinematics/fourBar/index.ts';

type Three = readonly [number, number, number];

/** @param phi, psi degrees. Links in units of the ground; a negative one points away from its angle. */
export function linksThrough(phi: Three, psi: Three): FourBar {
  const cosine = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);
  const columns = [psi.map(cosine) as unknown as Three, phi.map((angle) => -cosine(angle)) as unknown as Three, [1, 1, 1]] as const;
  const right = phi.map((angle, i) => cosine(angle - psi[i]!)) as unknown as Three;
  const whole = determinant(...columns);
  const K1 = determinant(right, columns[1], columns[2]) / whole;
  const K2 = determinant(columns[0], right, columns[2]) / whole;
  const K3 = determinant(columns[0], columns[1], right) / whole;
  const a = 1 / K1;
  const c = 1 / K2;
  return { a, b: Math.sqrt(a * a + c * c + 1 - 2 * a * c * K3), c, d: 1 };
}

function determinant(u: Three, v: Three, w: Three): number {
  return u[0] * (v[1] * w[2] - v[2] * w[1]) - v[0] * (u[1] * w[2] - u[2] * w[1]) + w[0] * (u[1] * v[2] - u[2] * v[1]);
}
