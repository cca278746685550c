/** Capstans and friction circles of the textbooks. Units as in the source. */
import type { Provenance } from './provenance.ts';

export interface CapstanRow extends Provenance {
  readonly name: string;
  readonly coefficient: number;
  /** Degrees. */
  readonly wrap: number;
  /** Tension at the slack end, and what it comes to at the tight one, with its decimals. */
  readonly slack: number;
  readonly tight: readonly [tension: number, decimals: number];
}

export const capstanRows: readonly CapstanRow[] = [
  {
    name: 'lowering a load of 100 kg over three quarters of a turn',
    coefficient: 0.2,
    wrap: 270,
    slack: 382.26,
    tight: [981, 0],
    source: 'pickedshares.com, exercise 27: g = 9.81 m/s², 382.26 N as printed',
    status: 'found',
    answers: 'found',
  },
  {
    name: 'a band brake',
    coefficient: 0.3,
    wrap: 250,
    slack: 1,
    tight: [3.7025, 4],
    source: 'FOSSEE Scilab companion 3886, chapter 5, example 5.16: the ratio 3.7025 as printed',
    status: 'found',
    answers: 'found',
  },
  {
    name: 'a rope around three pipes',
    coefficient: 0.25,
    wrap: 540,
    slack: 1,
    tight: [10.55072, 5],
    source: 'askfilo.com; printed 10.546, which is off in its fourth digit',
    status: 'found',
    answers: 'ours',
  },
  {
    name: 'a lined cable housing of 180°',
    coefficient: 0.06,
    wrap: 180,
    slack: 1,
    tight: [1.207432, 6],
    source: 'coefficient measured on a bicycle gear cable, killasgarage.bike 2016',
    status: 'found',
    answers: 'ours',
  },
];

export interface PulleyRow extends Provenance {
  readonly name: string;
  /** Of the pulley and of the shaft in it, inches. */
  readonly pulley: number;
  readonly shaft: number;
  readonly coefficient: number;
  /** Hung on one side, lbf. */
  readonly load: number;
  /** Vertical pull on the other side that lifts it, and that which holds it from sinking, with decimals. */
  readonly lifts: readonly [pull: number, decimals: number];
  readonly holds: readonly [pull: number, decimals: number] | undefined;
}

export const pulleyRows: readonly PulleyRow[] = [
  {
    name: 'a pulley of 4 in on a shaft of 2 in',
    pulley: 4,
    shaft: 2,
    coefficient: 0.2,
    load: 500,
    lifts: [608.719, 3],
    holds: [410.699, 3],
    source: 'Beer and Johnston, Statics, sample problem on journal bearings: 611 lb and 409 lb with μ for sin(arctan μ)',
    status: 'from memory',
    answers: 'ours',
    note: 'the printed figures take r_f = 0.20 in, the exact one is 0.19612 in',
  },
  {
    name: 'a pulley of 1 ft on an axle of 1 in',
    pulley: 12,
    shaft: 1,
    coefficient: 0.2,
    load: 20,
    lifts: [20.73104, 4],
    holds: undefined,
    source: 'Hibbeler, Statics, 14th edition, problem 8-120, the weight of the pulley of 4 lb with it: inputs found on studysoup.com',
    status: 'found',
    answers: 'ours',
  },
];
