/** Grashof's condition and Barker's types for given lengths; the rule itself: Norton, Design of Machinery, ch. 2, from memory. */
import type { BarkerType, FourBar } from '../../../src/kinematics/fourBar/index.ts';
import type { Provenance } from './provenance.ts';

export interface GrashofRow extends Provenance {
  readonly links: FourBar;
  /** s + l against p + q, as the row states it. */
  readonly sums: readonly [number, '<' | '>' | '=', number];
  readonly type: BarkerType;
}

export const grashofRows: readonly GrashofRow[] = [
  {
    links: { a: 2, b: 4.5, c: 7, d: 9 },
    sums: [11, '<', 11.5],
    type: 'GCRR',
    source:
      'lengths read at tutorsglobe.com, question 52189752, which gives no answer; Norton, Design of Machinery, problem 2-15 set a, number from memory',
    status: 'found',
    answers: 'ours',
    note: 'order of the links ours: the book asks for all inversions',
  },
  {
    links: { a: 2, b: 3.5, c: 7, d: 9 },
    sums: [11, '>', 10.5],
    type: 'RRR1',
    source:
      'lengths read at tutorsglobe.com, question 52189752, which gives no answer; Norton, Design of Machinery, problem 2-15 set b, number from memory',
    status: 'found',
    answers: 'ours',
    note: 'class II in every inversion',
  },
  {
    links: { a: 2, b: 4, c: 6, d: 8 },
    sums: [10, '=', 10],
    type: 'SCRR',
    source:
      'lengths read at tutorsglobe.com, question 52189752, which gives no answer; Norton, Design of Machinery, problem 2-15 set c, number from memory',
    status: 'found',
    answers: 'ours',
  },
  {
    links: { a: 40, b: 120, c: 80, d: 100 },
    sums: [160, '<', 180],
    type: 'GCRR',
    source: 'Norton, Design of Machinery, example 4-1, from memory',
    status: 'from memory',
    answers: 'ours',
  },
  {
    links: { a: 2, b: 7, c: 9, d: 6 },
    sums: [11, '<', 13],
    type: 'GCRR',
    source: 'Norton, Design of Machinery, table P4-1 row a; lengths read on a student page at numerade.com',
    status: 'found',
    answers: 'ours',
  },
  {
    links: { a: 9, b: 3, c: 8, d: 7 },
    sums: [12, '<', 15],
    type: 'GRCR',
    source: 'Norton, Design of Machinery, table P4-1 row b, from memory',
    status: 'from memory',
    answers: 'ours',
  },
  {
    links: { a: 10, b: 6, c: 8, d: 3 },
    sums: [13, '<', 14],
    type: 'GCCC',
    source: 'Norton, Design of Machinery, table P4-1 row c, from memory',
    status: 'from memory',
    answers: 'ours',
  },
  {
    links: { a: 5, b: 7, c: 6, d: 8 },
    sums: [13, '=', 13],
    type: 'SCRR',
    source: 'Norton, Design of Machinery, table P4-1 row d, from memory',
    status: 'from memory',
    answers: 'ours',
    note: 'a hidden change point',
  },
  {
    links: { a: 1, b: 4, c: 3, d: 5 },
    sums: [6, '<', 7],
    type: 'GCRR',
    source: 'assignment at expertsmind.com, question 5863211, lengths only',
    status: 'found',
    answers: 'ours',
  },
  {
    links: { a: 2, b: 5, c: 4, d: 8 },
    sums: [10, '>', 9],
    type: 'RRR1',
    source: 'assignment at expertsmind.com, question 5863211, lengths only',
    status: 'found',
    answers: 'ours',
  },
  {
    links: { a: 1, b: 6, c: 4, d: 5 },
    sums: [7, '<', 9],
    type: 'GCRR',
    source: 'assignment at expertsmind.com, question 5863211, lengths only',
    status: 'found',
    answers: 'ours',
  },
  {
    links: { a: 32, b: 20, c: 20, d: 10 },
    sums: [42, '>', 40],
    type: 'RRR2',
    source: 'assignment at expertsmind.com, question 5863211, lengths only',
    status: 'found',
    answers: 'ours',
  },
  {
    links: { a: 100, b: 200, c: 300, d: 350 },
    sums: [450, '<', 500],
    type: 'GCRR',
    source: 'askfilo.com, question 3432353730363838, 350 fixed, no answer read',
    status: 'found',
    answers: 'ours',
    note: 'order ours: with 100 opposite 350 it is GRCR',
  },
  { links: { a: 40, b: 100, c: 40, d: 100 }, sums: [140, '=', 140], type: 'S2X', source: 'ours: parallelogram', status: 'ours' },
  { links: { a: 40, b: 40, c: 100, d: 100 }, sums: [140, '=', 140], type: 'S2X', source: 'ours: kite', status: 'ours' },
  { links: { a: 50, b: 50, c: 50, d: 50 }, sums: [100, '=', 100], type: 'S3X', source: 'ours: rhombus', status: 'ours' },
  { links: { a: 6, b: 4, c: 5, d: 3 }, sums: [9, '=', 9], type: 'SCCC', source: 'ours', status: 'ours', note: 'ground shortest' },
  { links: { a: 4, b: 6, c: 5, d: 3 }, sums: [9, '=', 9], type: 'SCCC', source: 'ours', status: 'ours' },
  { links: { a: 3, b: 6, c: 5, d: 4 }, sums: [9, '=', 9], type: 'SCRR', source: 'ours', status: 'ours' },
  { links: { a: 5, b: 3, c: 4, d: 6 }, sums: [9, '=', 9], type: 'SRCR', source: 'ours', status: 'ours' },
  { links: { a: 5, b: 6, c: 3, d: 4 }, sums: [9, '=', 9], type: 'SRRC', source: 'ours', status: 'ours' },
  { links: { a: 5, b: 6, c: 3, d: 6.5 }, sums: [9.5, '<', 11], type: 'GRRC', source: 'ours', status: 'ours' },
  { links: { a: 5, b: 6, c: 7, d: 3.5 }, sums: [10.5, '<', 11], type: 'GCCC', source: 'ours', status: 'ours' },
  { links: { a: 4, b: 6, c: 9, d: 6 }, sums: [13, '>', 12], type: 'RRR4', source: 'ours', status: 'ours' },
  { links: { a: 9, b: 4, c: 4, d: 6 }, sums: [13, '>', 10], type: 'RRR2', source: 'ours', status: 'ours' },
  { links: { a: 4, b: 4, c: 9, d: 6 }, sums: [13, '>', 10], type: 'RRR4', source: 'ours', status: 'ours' },
  { links: { a: 4, b: 9, c: 4, d: 6 }, sums: [13, '>', 10], type: 'RRR3', source: 'ours', status: 'ours' },
  { links: { a: 4, b: 4, c: 6, d: 9 }, sums: [13, '>', 10], type: 'RRR1', source: 'ours', status: 'ours' },
];

/** All orders of four lengths, by what the deciding link is: ours, from the rule. */
export interface InversionRow extends Provenance {
  readonly lengths: readonly [number, number, number, number];
  /** The link that decides, and the type when it is ground, input, coupler, output. */
  readonly deciding: number;
  readonly types: { readonly d: BarkerType; readonly a: BarkerType; readonly b: BarkerType; readonly c: BarkerType };
}

export const inversionRows: readonly InversionRow[] = [
  {
    lengths: [2, 4.5, 7, 9],
    deciding: 2,
    types: { d: 'GCCC', a: 'GCRR', b: 'GRCR', c: 'GRRC' },
    source: 'ours, from the rule: class I goes by the shortest link',
    status: 'ours',
  },
  {
    lengths: [2, 3.5, 7, 9],
    deciding: 9,
    types: { d: 'RRR1', a: 'RRR2', b: 'RRR3', c: 'RRR4' },
    source: 'ours, from the rule: class II goes by the longest link',
    status: 'ours',
  },
];
