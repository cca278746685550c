/** Where a checked figure comes from; every row of the tables in this folder carries it. */

/**
 * `found`: read in the source named. `from memory`: recalled from the source named and not read again, edition and number may be off.
 * `ours`: made here, with no publication behind it.
 */
export type Status = 'found' | 'from memory' | 'ours';

export interface Provenance {
  /** Where the case, its given dimensions, comes from. */
  readonly source: string;
  readonly status: Status;
  /** Where the answers come from, when elsewhere than the case. Ours were reproduced by two independent methods. */
  readonly answers?: Status;
  readonly note?: string;
}

/** Half a unit of the last digit a figure is given with: figures may differ by this much and no more. */
export function lastDigit(decimals: number): number {
  return 0.5000001 * 10 ** -decimals;
}
