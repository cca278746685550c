/** Why levers stand still while the pedal moves: nothing drives them, or what would could not be read. */
import type { Definition } from '../definition/definition.ts';
import { lostJoint } from '../definition/lost.ts';
import { listed } from './words.ts';

/** A clause to follow `since`. @param levers names of levers that the pedal does not move, one at least */
export function whyStill(definition: Definition, levers: readonly string[]): string {
  const isUndriven = levers.some((lever) => definition.undriven?.includes(lever));
  const names = listed(levers);
  return isUndriven || lostJoint(definition) === undefined
    ? `the pedal does not move ${names}`
    : `nothing that is understood moves ${names}`;
}
