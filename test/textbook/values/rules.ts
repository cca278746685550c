/**
 * Figures of competition rules that findings hold a throttle against. Signals in V.
 */
import type { Provenance } from './provenance.ts';

export const faultBand = {
  name: 'signals that electronics take for a fault',
  low: 0.5,
  high: 4.5,
  source: 'Formula SAE Rules 2024, IC.4.4.8, read in a copy of the rules',
  status: 'found',
  answers: 'found',
  note: 'below 0.5 V or above 4.5 V is the rule’s example of a signal out of range; that it speaks of sensors on 5 V is our reading',
} as const satisfies Provenance & Record<string, unknown>;

export const returnSprings = {
  name: 'return springs at the throttle body',
  least: 2,
  source: 'Formula SAE Rules 2024, IC.3.3.2, and Formula Student Rules, CV1.5.2, both read in a copy of the rules',
  status: 'found',
  answers: 'found',
  note: 'a position sensor’s spring is not among them (Formula Student Rules, CV1.5.4)',
} as const satisfies Provenance & Record<string, unknown>;
