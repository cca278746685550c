/**
 * How far the closing torque falls short of what friction asks, by the figures themselves: with all springs on, and with each off in turn.
 *
 * By findings it would not do. Of a throttle that friction holds with all springs on, what it does with one of them off is not told any
 * more, and a search that goes by what is told would find it better for that.
 */
import { frictionUnits, LOCKS } from '../../findings/frictionUnits.ts';
import type { LimitPair } from '../../findings/limits.ts';
import { limitOf, type Study } from '../../findings/study.ts';
import { weakestMargin, weakestWords } from '../../findings/weakestMargin.ts';

export interface ClosingShort {
  /** In parts of the limit; above 0. */
  readonly by: number;
  readonly words: string;
}

/** Of the margin that the file asks for. Undefined where it is kept wherever friction is known. */
export function marginShort(study: Study): ClosingShort | undefined {
  return shortOf(study, limitOf(study, 'closing_margin'));
}

/** Of closing at all: friction is as great as what closes, or greater. */
export function closesShort(study: Study): ClosingShort | undefined {
  return shortOf(study, LOCKS);
}

function shortOf(study: Study, limit: LimitPair): ClosingShort | undefined {
  const all = frictionUnits(study).flatMap((unit): ClosingShort[] => {
    const weakest = weakestMargin(study, unit, limit);
    return weakest === undefined ? [] : [{ by: (limit.warning - weakest.off.worst.value) / limit.warning, words: weakestWords(weakest) }];
  });
  return all.reduce<ClosingShort | undefined>((most, each) => (most === undefined || each.by > most.by ? each : most), undefined);
}
