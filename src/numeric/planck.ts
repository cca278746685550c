/**
 * The door to planck. It is a large package, and a bundle runs it when this is first called: a file without shapes never pays for it.
 * `scripts/build.mjs` puts a call in the place of this import.
 */
import * as planck from 'planck';

export type Planck = typeof planck;

export function loadPlanck(): Planck {
  return planck;
}
