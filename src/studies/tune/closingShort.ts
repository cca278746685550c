/**
 * How far the closing torque falls short of what friction asks, by the figures themselves: with all springs on, and with each off in turn.
 *
 * By findings it would not do. Of a throttle that friction holds with all springs on, what it does with one of them off is not told any
 * more, and a search that goes by what is told would find it better for that.
 */
import { comesNear, frictionUnits, unitMargin } from '../../findings/frictionUnits.ts';
import type { LimitPair } from '../../findings/limits.ts';
import { limitOf, trespass, type Study } from '../../findings/study.ts';
import { decimal, percent } from '../../findings/words.ts';

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
  return shortOf(study, { warning: 1, error: 1, from: 'where friction is as great as what closes it, it stays where it is' });
}

function shortOf(study: Study, limit: LimitPair): ClosingShort | undefined {
  const all = frictionUnits(study).flatMap((unit) =>
    [undefined, ...unit.springs.filter(({ source }) => source.countsAsReturn)].flatMap((spring): ClosingShort[] => {
      const margin = unitMargin(study, unit, spring?.name);
      if (!comesNear(study, unit, margin, limit.warning)) return [];
      const { worst } = trespass(study, margin, limit, 1, undefined, unit.samples) ?? {};
      if (worst === undefined) return [];
      const taken = spring === undefined ? 'The closing torque' : `With ${spring.name} off, the closing torque`;
      const words = `${taken} at ${unit.lever.name} is only ${decimal(worst.value)} times the friction at ${percent(worst.travel)} of pedal travel`;
      return [{ by: (limit.warning - worst.value) / limit.warning, words }];
    }),
  );
  return all.reduce<ClosingShort | undefined>((most, each) => (most === undefined || each.by > most.by ? each : most), undefined);
}
