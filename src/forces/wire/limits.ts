/**
 * What share of its tensile strength a spring’s wire bears at each of the places where it is stressed most.
 *
 * Held: beyond it the spring takes a set and loses load. Often: it breaks before a million strokes from nothing to that stress. A throttle
 * spring never comes down to nothing, which spares it: the second is on the safe side. Neither is of shot-peened wire, of heat or of rust.
 *
 * Sources. Hooks and bodies of extension springs held, and hooks bent often: a page at amesweb.info, read, which takes them from Shigley’s
 * Mechanical Engineering Design and the Standard Handbook of Machine Design; of the 45 to 50 % that it gives for the body the lower. Torsion
 * springs held, 78 % of cold-drawn wire: read in a public library’s test file, from Shigley. 87 % of hardened wire: read at vcalc.com, no
 * further source. All others: tables of Shigley, chapter 10, from memory.
 */
import type { WireMaterial } from '../../definition/definition.ts';
import { temperOf, type WireTemper } from './materials.ts';

/** Where a spring is stressed, and how. */
export type StressPlace = 'torsion-coil' | 'compression-coil' | 'extension-coil' | 'hook-bend' | 'hook-twist';

/** Shares of the tensile strength. */
export interface StressLimits {
  readonly held: number;
  /** Undefined where none is known of that wire. */
  readonly often: number | undefined;
}

export function stressLimits(material: WireMaterial, place: StressPlace): StressLimits {
  return { held: HELD[temperOf(material)][place], often: OFTEN[material]?.[place] };
}

const HELD: Readonly<Record<WireTemper, Readonly<Record<StressPlace, number>>>> = {
  'cold-drawn': { 'torsion-coil': 0.78, 'compression-coil': 0.45, 'extension-coil': 0.45, 'hook-bend': 0.75, 'hook-twist': 0.4 },
  hardened: { 'torsion-coil': 0.87, 'compression-coil': 0.5, 'extension-coil': 0.45, 'hook-bend': 0.75, 'hook-twist': 0.4 },
  austenitic: { 'torsion-coil': 0.61, 'compression-coil': 0.35, 'extension-coil': 0.35, 'hook-bend': 0.55, 'hook-twist': 0.3 },
};

/** The tables name ASTM A228 and type 302 alone, and for the coils of torsion and compression springs A232 besides. */
const A228_AND_302 = { 'torsion-coil': 0.5, 'compression-coil': 0.33, 'extension-coil': 0.33, 'hook-bend': 0.47, 'hook-twist': 0.3 };
const OFTEN: Partial<Readonly<Record<WireMaterial, Partial<Readonly<Record<StressPlace, number>>>>>> = {
  music_wire: A228_AND_302,
  stainless_302: A228_AND_302,
  chrome_vanadium: { 'torsion-coil': 0.53, 'compression-coil': 0.4 },
};

/** Where these limits come from, for a finding. */
export const HELD_FROM = 'held without taking a set: Shigley’s Mechanical Engineering Design, chapter 10, partly from memory';
export const OFTEN_FROM = 'a million strokes: Shigley’s Mechanical Engineering Design, chapter 10, partly from memory';

/** The wires of which a limit of a million strokes is known for every place, for messages. */
export const OFTEN_KNOWN = 'music_wire and stainless_302';
