/**
 * Spring wire by its name in a file: how stiff it is, and how strong a wire of a diameter is at the least.
 *
 *     R = A / dᵐ, for diameters within the range of each pair of A and m
 *
 * The moduli go down a little from thin to thick wire: they are steps, each up to a diameter. All are of room temperature.
 *
 * Sources. A of 201 kpsi·inᵐ, m of 0.145 and E of 28.5 Mpsi at 0.072 in for music wire: read in a public library’s test file, which takes
 * them from Shigley’s Mechanical Engineering Design. G of 11.5 Mpsi at 0.072 in for hard-drawn wire: Mott, Machine Elements in Mechanical
 * Design, 4th edition, page 761, read. All other figures: the same tables of Shigley, chapter 10, from memory; they say that A and m are
 * fitted to the ASTM standards named here.
 */
import type { WireMaterial } from '../../definition/definition.ts';

/** Pa; both SI. */
export interface Moduli {
  readonly tension: number;
  readonly shear: number;
}

/** A wire of any thickness is as stiff as this. @param diameter m */
export function moduliOf(material: WireMaterial, diameter: number): Moduli {
  const { moduli } = WIRES[material];
  const inches = diameter / INCH;
  const [, tension, shear] = moduli.find(([upTo]) => inches <= upTo) ?? moduli.at(-1)!;
  return { tension: tension * MPSI, shear: shear * MPSI };
}

/** Least tensile strength, Pa; undefined for a diameter (m) that no figure is known for. */
export function tensileStrength(material: WireMaterial, diameter: number): number | undefined {
  const inches = diameter / INCH;
  const fit = WIRES[material].strength.find(({ from, to }) => inches >= from - ROUNDED && inches <= to + ROUNDED);
  return fit && fit.a * KPSI * inches ** -fit.m;
}

/** The standard by which the wire is sold. */
export function standardOf(material: WireMaterial): string {
  return WIRES[material].standard;
}

/** How it was made strong: by that it bears a greater or smaller share of its strength. */
export type WireTemper = 'cold-drawn' | 'hardened' | 'austenitic';

export function temperOf(material: WireMaterial): WireTemper {
  return WIRES[material].temper;
}

interface WireData {
  readonly standard: string;
  readonly temper: WireTemper;
  /** Up to a diameter in inches, E and G in Mpsi; thicker wire is as the last. */
  readonly moduli: readonly (readonly [upTo: number, tension: number, shear: number])[];
  /** Between two diameters in inches; A in kpsi·inᵐ. */
  readonly strength: readonly { readonly from: number; readonly to: number; readonly a: number; readonly m: number }[];
}

const WIRES: Readonly<Record<WireMaterial, WireData>> = {
  music_wire: {
    standard: 'ASTM A228',
    temper: 'cold-drawn',
    // From memory, but E at 0.072 in: read.
    moduli: [
      [0.032, 29.5, 12],
      [0.063, 29, 11.85],
      [0.125, 28.5, 11.75],
      [Infinity, 28, 11.6],
    ],
    // A and m read; the range from memory.
    strength: [{ from: 0.004, to: 0.256, a: 201, m: 0.145 }],
  },
  hard_drawn: {
    standard: 'ASTM A227',
    temper: 'cold-drawn',
    // From memory, but G at 0.072 in: read.
    moduli: [
      [0.032, 28.8, 11.7],
      [0.063, 28.7, 11.6],
      [0.125, 28.6, 11.5],
      [Infinity, 28.5, 11.4],
    ],
    // From memory.
    strength: [{ from: 0.028, to: 0.5, a: 140, m: 0.19 }],
  },
  oil_tempered: {
    standard: 'ASTM A229',
    temper: 'hardened',
    // From memory, both.
    moduli: [[Infinity, 28.5, 11.2]],
    strength: [{ from: 0.02, to: 0.5, a: 147, m: 0.187 }],
  },
  chrome_vanadium: {
    standard: 'ASTM A232',
    temper: 'hardened',
    // From memory, both.
    moduli: [[Infinity, 29.5, 11.2]],
    strength: [{ from: 0.032, to: 0.437, a: 169, m: 0.168 }],
  },
  chrome_silicon: {
    standard: 'ASTM A401',
    temper: 'hardened',
    // From memory, both.
    moduli: [[Infinity, 29.5, 11.2]],
    strength: [{ from: 0.063, to: 0.375, a: 202, m: 0.108 }],
  },
  stainless_302: {
    standard: 'ASTM A313',
    temper: 'austenitic',
    // From memory, both.
    moduli: [[Infinity, 28, 10]],
    strength: [
      { from: 0.013, to: 0.1, a: 169, m: 0.146 },
      { from: 0.1, to: 0.2, a: 128, m: 0.263 },
      { from: 0.2, to: 0.4, a: 90, m: 0.478 },
    ],
  },
};

/** m, exact. */
const INCH = 0.0254;
/** Pa: 0.45359237 kg at 9.80665 m/s² on a square inch, a thousand and a million of them. */
const KPSI = (1000 * 0.45359237 * 9.80665) / INCH ** 2;
const MPSI = 1000 * KPSI;
/** in; a diameter at the end of a range counts to it, however it was rounded on conversion. */
const ROUNDED = 1e-9;
