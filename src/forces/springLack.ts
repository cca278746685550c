/** What the file lacks to tell what a spring brings, and below what it brings nothing. */
import type { SpringModel } from '../kinematics/attached.ts';
import { hasRate } from './wire/rate.ts';

/** What the file lacks for the torque of a spring; undefined where nothing. */
export function missingOf(spring: SpringModel): string | undefined {
  const { source } = spring;
  if (!hasRate(spring)) return 'for want of `rate`';
  return source.kind !== 'torsion' && source.freeLength === undefined ? 'for want of `free_length`' : undefined;
}

/** N·m (0.001 N·mm); less is no torque. */
export const NO_TORQUE = 1e-6;
