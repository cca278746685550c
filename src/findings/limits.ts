/**
 * Limits where the file gives none, each with where it comes from.
 */
import type { LimitKey } from '../definition/definition.ts';
import { PLACE_UNIT_SI } from '../definition/dimensions.ts';

export interface LimitPair {
  /** SI. */
  readonly warning: number;
  /** SI; undefined where there is none. */
  readonly error: number | undefined;
  readonly from: string;
}

/** @param kind kind of a rod's ends, for `misalignment` */
export function defaultLimit(key: LimitKey, kind = 'rod_end'): LimitPair {
  const degrees = PLACE_UNIT_SI.angle;
  switch (key) {
    case 'transmission':
      return {
        warning: 40 * degrees,
        error: 25 * degrees,
        from: 'textbook minimum of 40°, from memory; error at 25°: common practice, no source',
      };
    case 'drive':
      return { warning: 20 * degrees, error: 10 * degrees, from: 'common practice, no source' };
    case 'misalignment':
      return misalignment(kind);
    case 'lead':
      return { warning: 5 * degrees, error: 10 * degrees, from: 'common practice, no source' };
    case 'step':
      return { warning: 0.1 * degrees, error: 0.5 * degrees, from: '0.1° below 5° of opening, 0.5° above: common practice, no source' };
    case 'closing_margin':
      return { warning: 2, error: 1, from: 'common practice, no source' };
  }
}

function misalignment(kind: string): LimitPair {
  const degrees = PLACE_UNIT_SI.angle;
  switch (kind) {
    case 'ball_stud':
      return { warning: 15 * degrees, error: undefined, from: 'ball studs: common practice, no source' };
    case 'clevis':
      return { warning: degrees, error: undefined, from: 'clevises: common practice, no source' };
    default:
      return {
        warning: 12 * degrees,
        error: undefined,
        from: 'rod ends: 12° is the lower end of the 12° to 18° that a trade article gives',
      };
  }
}
