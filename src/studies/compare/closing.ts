/** What has become of the torque that closes the shafts with plates. */
import { NO_TORQUE } from '../../findings/springActions.ts';
import type { ClosesLess, OutcomeChange } from './comparison.ts';

/**
 * Shafts whose least closing torque fell by more than half, or to nothing. A torque that is not known on a side is told elsewhere. What
 * friction takes of it is not known, so that a share of what there was is all that can be held against it: common practice, no source.
 */
export function closingFalls(outcomes: readonly OutcomeChange[]): readonly ClosesLess[] {
  return outcomes.flatMap(({ from, part, key, was, is }): ClosesLess[] => {
    if (from !== 'fact' || key !== 'closing-least' || was?.figure === undefined || is?.figure === undefined) return [];
    const [before, after] = [was.figure.value, is.figure.value];
    return before > NO_TORQUE && (after < LEFT * before || after <= NO_TORQUE) ? [{ part, was: before, is: after }] : [];
  });
}

/** Of what there was. */
const LEFT = 0.5;
