/**
 * Springs of textbooks wound from wire: rate and stress from its dimensions. Units as in the source: inches, pounds force and psi, or mm and N.
 */
import type { Provenance } from './provenance.ts';

/** Stress factors of a bent coil against its index. */
export interface FactorRow extends Provenance {
  readonly index: number;
  /** Inner and outer side, by the formula. */
  readonly inner: number;
  readonly outer: number;
  /** Of EN 13906-3. */
  readonly standard: number;
}

const factors = {
  source:
    'inner factor: read in the file to Bhandari, Design of Machine Elements, example 10.21; outer factor and that of EN 13906-3 from memory',
  status: 'from memory',
  answers: 'ours',
} as const;

export const factorRows: readonly FactorRow[] = [
  { index: 4, inner: 1.229167, outer: 0.8375, standard: 1.252308, ...factors },
  { index: 6, inner: 1.141667, outer: 0.886905, standard: 1.15619, ...factors },
  { index: 8, inner: 1.102679, outer: 0.913194, standard: 1.113103, ...factors },
  { index: 10, inner: 1.080556, outer: 0.929545, standard: 1.088649, ...factors },
  { index: 12, inner: 1.066288, outer: 0.940705, standard: 1.072889, ...factors },
];

/** inch, lbf, psi. */
export const shigleyTorsion = {
  name: 'Shigley 10-8: a torsion spring of music wire on a pin',
  wire: 0.072,
  meanCoil: 0.52175,
  bodyTurns: 4.25,
  leg: 1,
  modulus: 28.5e6,
  pin: 0.4,
  inner: 1.114544,
  strength: 294362.7,
  yield: 229602.9,
  greatestMoment: 7.5488,
  activeTurns: 4.656721,
  /** lbf·in a turn: with 10.8, and with the 10.186 of the theory. */
  practiceRate: 29.18828,
  theoryRate: 30.94796,
  rotationDeg: 93.1047,
  narrowedCoil: 0.494298,
  clearance: 0.022298,
  source:
    'Shigley’s Mechanical Engineering Design, example 10-8 (number from memory): inputs read in a public library’s test file; the results agree with those of the book as recalled',
  status: 'found',
  answers: 'ours',
} as const satisfies Provenance & Readonly<Record<string, unknown>>;

/** mm, N. */
export const bhandariTorsion = {
  name: 'Bhandari 10.21: a torsion spring of 3 N·mm/rad',
  wire: 1.6,
  meanCoil: 18,
  modulus: 207000,
  moment: 250,
  /** The book rounds up to 393. */
  turns: 392.53,
  rate: 3,
  stress: 665.84,
  source: 'Bhandari, Design of Machine Elements, example 10.21, read in a public collection of worked examples',
  status: 'found',
} as const satisfies Provenance & Readonly<Record<string, unknown>>;

/** mm, N. */
export const printedTorsion = {
  name: 'a spring maker’s report by EN 13906-3',
  wire: 7,
  meanCoil: 53,
  turns: 168,
  modulus: 206000,
  /** N·m a turn, as printed, and by the short formula. */
  printed: 5.449,
  short: 5.4535,
  source: 'sample report of a general spring calculation to EN 13906-3, read',
  status: 'found',
  note: 'the print counts the length of the helix, which the short formula leaves out: 0.09 % less',
} as const satisfies Provenance & Readonly<Record<string, unknown>>;

/** inch, lbf, psi. */
export const shigleyExtension = {
  name: 'Shigley 10-6: an extension spring with hooks',
  wire: 0.035,
  meanCoil: 0.213,
  bodyTurns: 12.17,
  loop: 0.106,
  bend: 0.089,
  initialTension: 1.19,
  load: 5.25,
  shearModulus: 11.6e6,
  modulus: 28.7e6,
  twistFactor: 1.23427,
  activeTurns: 12.57418,
  rate: 17.90695,
  extension: 0.226728,
  bodyShear: 81976,
  initialShear: 15054,
  hookBending: 156905,
  hookTwist: 78608,
  source:
    'Shigley’s Mechanical Engineering Design, example 10-6 (number from memory): dimensions read in a public library’s test file; load, moduli and the book’s 17.91 lbf/in and 156.9 kpsi from memory',
  status: 'from memory',
  answers: 'ours',
} as const satisfies Provenance & Readonly<Record<string, unknown>>;

/** inch, lbf, psi. */
export const mottExtension = {
  name: 'Mott: 16.25 lb at 3.50 in and 26.75 lb at 4.25 in, wound',
  wire: 0.072,
  meanCoil: 0.553,
  shearModulus: 11.5e6,
  load: 26.75,
  index: 7.68,
  /** Wahl’s; the stress is printed as 120 000, from the rounded factor. */
  factor: 1.19234,
  stress: 120335,
  rate: 14,
  activeTurns: 16.3168,
  /** (active turns + 1) × wire; printed as 1.25. */
  bodyLength: 1.2468,
  source: 'Mott, Machine Elements in Mechanical Design, 4th edition, section 19-7, page 761, read',
  status: 'found',
} as const satisfies Provenance & Readonly<Record<string, unknown>>;
