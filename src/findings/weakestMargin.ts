/** Where least is left over friction of what closes: with all springs on, or with the one off that leaves least. */
import type { SpringModel } from '../kinematics/attached.ts';
import { comesNear, unitMargin, type FrictionUnit } from './frictionUnits.ts';
import type { LimitPair } from './limits.ts';
import { trespass, type Study, type Trespass } from './study.ts';
import { decimal, percent } from './words.ts';

export interface WeakestMargin {
  readonly unit: FrictionUnit;
  readonly off: Trespass;
  /** The one that is taken off; undefined with all on. */
  readonly spring: SpringModel | undefined;
}

/** Undefined where it is nowhere under the limit. */
export function weakestMargin(study: Study, unit: FrictionUnit, limit: LimitPair): WeakestMargin | undefined {
  const all = [undefined, ...unit.springs.filter(({ source }) => source.countsAsReturn)].flatMap((spring): WeakestMargin[] => {
    const margin = unitMargin(study, unit, spring?.name);
    const off = comesNear(study, unit, margin, limit.warning) ? trespass(study, margin, limit, 1, undefined, unit.samples) : undefined;
    return off === undefined ? [] : [{ unit, off, spring }];
  });
  return all.reduce<WeakestMargin | undefined>(
    (worst, each) => (worst === undefined || each.off.worst.value < worst.off.worst.value ? each : worst),
    undefined,
  );
}

/** E.g. `With first off, the closing torque at shaft is only 1.67 times the friction at 0 % of pedal travel`. */
export function weakestWords({ unit: { lever }, off: { worst }, spring }: WeakestMargin): string {
  const taken = spring === undefined ? 'The closing torque' : `With ${spring.name} off, the closing torque`;
  return `${taken} at ${lever.name} is only ${decimal(worst.value)} times the friction at ${percent(worst.travel)} of pedal travel`;
}
