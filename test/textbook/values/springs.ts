/**
 * Springs of textbooks whose rate is known: load against length. Units as in the source; one inch is 25.4 mm and one pound force
 * 4.4482216152605 N, both exact.
 */
import type { Provenance } from './provenance.ts';

export interface ExtensionRow extends Provenance {
  readonly name: string;
  readonly unit: { readonly length: 'mm' | 'inch'; readonly force: 'N' | 'lbf'; readonly rate: 'N/mm' | 'lbf/inch' };
  readonly rate: number;
  readonly freeLength: number;
  readonly initialTension: number;
  /** Length between the ends, load, and decimals of the load. */
  readonly rows: readonly (readonly [length: number, load: number, decimals: number])[];
  /** Rate between the first and the last row, with its decimals. */
  readonly between: readonly [rate: number, decimals: number];
}

const inches = { length: 'inch', force: 'lbf', rate: 'lbf/inch' } as const;

/** Length at which a printed load lies on a spring's line: where the source gives no free length, it is taken from one of its loads. */
const mottFree = 3.5 - 16.25 / 14;

export const extensionRows: readonly ExtensionRow[] = [
  {
    name: 'Mott: 16.25 lb at 3.50 in and 26.75 lb at 4.25 in',
    unit: inches,
    rate: 14,
    freeLength: mottFree,
    initialTension: 0,
    rows: [
      [3.5, 16.25, 2],
      [4.25, 26.75, 2],
    ],
    between: [14, 1],
    source:
      'Mott, Machine Elements in Mechanical Design, 4th edition, section 19-7, page 761: loads, lengths and the rate of 14.0 lb/in as printed',
    status: 'found',
    answers: 'found',
    note: 'the free length is where a straight line through both loads has none: the rate alone is the book’s',
  },
  {
    name: 'Shigley 10-6: 0.226728 in longer under 5.25 lbf',
    unit: inches,
    rate: 17.90695,
    freeLength: 1,
    initialTension: 1.19,
    rows: [
      [1.0000001, 1.19, 4],
      [1.226728, 5.25, 4],
    ],
    between: [17.907, 2],
    source:
      'Shigley’s Mechanical Engineering Design, example 10-6 (number from memory): initial tension 1.19 lbf read in a public library’s test file; the load of 5.25 lbf and the moduli behind the rate from memory',
    status: 'from memory',
    answers: 'ours',
    note: 'the free length stands for any: only the extension is of the book',
  },
  {
    name: 'EN 13906-2: F = F₀ + R s',
    unit: { length: 'mm', force: 'N', rate: 'N/mm' },
    rate: 0.9,
    freeLength: 46,
    initialTension: 4,
    rows: [
      [50, 7.6, 9],
      [56, 13, 9],
      [66, 22, 9],
    ],
    between: [0.9, 9],
    source: 'formula: EN 13906-2, from memory; the spring is ours',
    status: 'ours',
    answers: 'ours',
  },
];
