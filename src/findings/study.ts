/**
 * What a rule sees: the solved travel, its columns, and the limits that hold.
 */
import type { Definition, LimitKey } from '../definition/definition.ts';
import type { Travel } from '../travel/travel.ts';
import { leastOf, rangesBelow, type Along } from '../travel/extremes.ts';
import type { Column } from '../table/column.ts';
import type { Finding, FindingSeverity, TravelRange } from './finding.ts';
import { defaultLimit, type LimitPair } from './limits.ts';

export interface Study {
  readonly definition: Definition;
  readonly travel: Travel;
  readonly columns: ReadonlyMap<string, Column>;
}

/** A rule: all findings of one kind. */
export type Rule = (study: Study) => readonly Finding[];

/** A column as a function of pedal travel; NaN everywhere for one that the file does not have. */
export function along(study: Study, name: string): Along {
  const column = study.columns.get(name);
  const { build, poseAt } = study.travel;
  return column === undefined ? () => NaN : (travel) => column.read(build, poseAt(travel));
}

/** The limits in force: the file's where it gives them, else the default. SI. */
export function limitOf(study: Study, key: LimitKey, kind?: string): LimitPair {
  const standard = defaultLimit(key, kind);
  const given = study.definition.limits.find((limit) => limit.key === key);
  if (given === undefined) return standard;
  return { warning: given.warning.nominal, error: given.error?.nominal, from: 'limits of this file' };
}

export interface Trespass {
  readonly severity: FindingSeverity;
  readonly worst: { readonly value: number; readonly travel: number };
  readonly limit: number;
  readonly ranges: readonly TravelRange[];
}

/**
 * Whether a figure comes below (`way` = 1) or above (`way` = −1) its limits anywhere, how far, and where it is beyond the limit that
 * it is reported for.
 */
export function trespass(study: Study, figure: Along, limit: LimitPair, way: 1 | -1): Trespass | undefined {
  const { samples } = study.travel;
  const worst = leastOf((travel) => way * figure(travel), samples);
  if (worst === undefined || !(worst.value < way * limit.warning - SAME)) return undefined;
  const failed = limit.error !== undefined && worst.value < way * limit.error - SAME;
  const held = failed ? limit.error : limit.warning;
  return {
    severity: failed ? 'error' : 'warning',
    worst: { value: way * worst.value, travel: worst.travel },
    limit: held,
    ranges: rangesBelow((travel) => way * (figure(travel) - limit.warning), samples),
  };
}

/** rad or m; a figure drawn exactly on its limit keeps it. */
const SAME = 1e-12;
