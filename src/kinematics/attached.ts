/**
 * What hangs on the levers and moves nothing by itself: springs, plates, sensors and the pad under the foot, with the parameters in
 * which their figures stand. Units as everywhere inside: m, rad, N, N·m, N/m, N·m/rad, V.
 */
import type { LinearSpring, Plates, Sensor, Strip, TorsionSpring, Wire } from '../definition/definition.ts';
import type { Parameter } from './model.ts';

export type SpringModel = TorsionSpringModel | LinearSpringModel;

interface SpringCommon {
  readonly name: string;
  /** The lever on which it works: about whose axis it is wound, or that carries its `to` pin. */
  readonly lever: number;
  /** Undefined where it follows from what the spring is wound from. */
  readonly rate: Parameter | undefined;
  /** Undefined where the file gives none. */
  readonly wire: WireModel | undefined;
}

/** Round wire that a spring is coiled from. */
export interface WireModel {
  readonly source: Wire;
  readonly diameter: Parameter;
  readonly meanCoil: Parameter;
  readonly activeTurns: Parameter;
  /** Undefined where the file does not give them. */
  readonly totalTurns: Parameter | undefined;
  readonly arbor: Parameter | undefined;
  readonly hookBend: Parameter | undefined;
}

/** Flat strip that a spiral spring is wound from. */
export interface StripModel {
  readonly source: Strip;
  readonly width: Parameter;
  readonly thickness: Parameter;
  readonly length: Parameter;
}

export interface TorsionSpringModel extends SpringCommon {
  readonly kind: 'torsion';
  readonly source: TorsionSpring;
  /** Closing torque in the drawn position. */
  readonly preload: Parameter;
  /** Undefined where it is no spiral spring. */
  readonly strip: StripModel | undefined;
}

export interface LinearSpringModel extends SpringCommon {
  readonly kind: 'extension' | 'compression';
  readonly source: LinearSpring;
  readonly from: SpringAnchorModel;
  /** Nine parameters: its pin on `lever`. */
  readonly to: Parameter;
  /** Undefined where the file does not give it. */
  readonly freeLength: Parameter | undefined;
  readonly initialTension: Parameter;
}

export type SpringAnchorModel =
  /** Three parameters. */
  | { readonly kind: 'place'; readonly place: Parameter }
  /** Nine parameters on another lever. */
  | { readonly kind: 'pin'; readonly lever: number; readonly pin: Parameter };

export interface PlatesModel {
  readonly name: string;
  readonly source: Plates;
  readonly lever: number;
  readonly count: Parameter;
  readonly bore: Parameter;
  readonly shaft: Parameter;
  readonly seat: Parameter;
  readonly idle: Parameter;
}

export interface SensorModel {
  readonly name: string;
  readonly source: Sensor;
  readonly lever: number;
  readonly atClosed: Parameter;
  /** −1 where the sensor is reversed. */
  readonly way: 1 | -1;
  /** Two parameters each: the two ends, in the order of the file. */
  readonly range: readonly [Parameter, Parameter];
  readonly signal: readonly [Parameter, Parameter];
  readonly mechanical: readonly [Parameter, Parameter] | undefined;
  /** Undefined where the file does not give them. */
  readonly supply: Parameter | undefined;
  readonly bits: Parameter | undefined;
}

/** Where the pedal's force is read. */
export type PadModel =
  /** Nine parameters: the arm of the pedal's lever that the foot presses, square to it. */
  | { readonly kind: 'arm'; readonly pin: Parameter }
  /** The pedal is a cable; travel of the pad over travel of the cable, undefined where it is not given. */
  | { readonly kind: 'cable'; readonly ratio: Parameter | undefined };

export interface Attached {
  readonly springs: readonly SpringModel[];
  readonly plates: readonly PlatesModel[];
  readonly sensors: readonly SensorModel[];
  /** Undefined where the file gives the pedal no pad. */
  readonly pad: PadModel | undefined;
  /** Of each cable, N/m, by its index among the cables; undefined where the file gives none. */
  readonly stiffness: readonly (Parameter | undefined)[];
}
