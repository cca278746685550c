/**
 * Where the figures of friction stand in the parameter vector: N·m for a drag, m for diameters, rad for a bend, Pa for a pressure.
 * Undefined where the file does not give one.
 */
import type { Parameter } from './model.ts';

export interface LeverFriction {
  /** Drag of seals and grease. */
  readonly drag: Parameter | undefined;
  readonly bearing: { readonly diameter: Parameter; readonly friction: Parameter } | undefined;
}

export interface JointFriction {
  /** Coefficient in a rod's ends, between pin and slot, or between inner cable and housing. */
  readonly coefficient: Parameter | undefined;
  /** Diameter of the pins of a rod's ends. */
  readonly pin: Parameter | undefined;
  /** Total bend of a cable's housing. */
  readonly bend: Parameter | undefined;
}

export interface FrictionModel {
  /** By the lever's index. */
  readonly levers: readonly LeverFriction[];
  /** By the joint's index. */
  readonly joints: readonly JointFriction[];
  /** Pressure difference across the closed plates, in the order of `attached.plates`. */
  readonly vacuum: readonly (Parameter | undefined)[];
}
