/** A figure at rest, and where it is least and greatest, as facts. */
import { greatestOf, leastOf, type Along, type Extreme } from '../../travel/extremes.ts';
import type { Fact } from '../finding.ts';
import { isUnbounded } from '../unbounded.ts';

export interface Told {
  readonly key: string;
  readonly part: string;
  readonly label: string;
  /** Behind each label. */
  readonly note: string;
  readonly dimension: 'torque' | 'force';
  readonly figure: Along;
  readonly samples: readonly number[];
  /** What guidance says of the least and of the greatest. */
  readonly guidance?: { readonly least?: string; readonly greatest?: string };
}

/** At rest, least and greatest. */
export function extremeFacts({ key, part, label, note, dimension, figure, samples, guidance = {} }: Told): readonly Fact[] {
  const fact = (suffix: string, words: string, found: Extreme | undefined): Fact => {
    const common = { key: `${key}-${suffix}`, part, label: `${words}${note}` };
    return found === undefined || Number.isNaN(found.value)
      ? { ...common, why: 'it has no value there' }
      : { ...common, figure: { value: found.value, dimension }, travel: found.travel };
  };
  const extreme = (suffix: string, words: string, found: Extreme | undefined): Fact => {
    const { figure: shown, ...without } = fact(suffix, words, found);
    if (shown === undefined) return without;
    return isUnbounded(shown.value, dimension) ? { ...without, why: 'without bound, at a dead centre' } : { ...without, figure: shown };
  };
  // The label says where it holds.
  const { travel: _atRest, ...rest } = extreme('at-rest', `${label} at rest`, { value: figure(0), travel: 0 });
  return [
    rest,
    guided(extreme('least', `least ${label}`, leastOf(figure, samples)), guidance.least),
    guided(extreme('greatest', `greatest ${label}`, greatestOf(figure, samples)), guidance.greatest),
  ];
}

function guided(fact: Fact, guidance: string | undefined): Fact {
  return guidance === undefined ? fact : { ...fact, guidance };
}
