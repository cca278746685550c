/**
 * The linkage as the engine sees it: which lever turns which, and where in the parameter vector the geometry
 * of each stands. Structure only; the figures are in a `Build`.
 *
 * A point fixed to a lever is three vectors, so that its place at rotation φ needs no matrix:
 *
 *     P(φ) = base + cos φ · perp + sin φ · cross
 *
 * base is the pivot moved along the axis to the point's height, perp the arm square to the axis in the drawn
 * position, cross = axis × perp. Nine parameters in that order. All lengths in metres, angles in radians.
 */
import type { Cable, Coupling, Definition, Lever, Plates, Rod, Slot, Tolerance } from '../definition/definition.ts';
import type { Dimension } from '../definition/dimensions.ts';
import type { Span } from '../definition/span.ts';
import type { Attached } from './attached.ts';
import type { FrictionModel } from './frictionModel.ts';
import type { Tape } from './tape.ts';

/** Index into a build's parameter vector. */
export type Parameter = number;

/** One independent number of the linkage. */
export interface MechanismDimension {
  readonly index: number;
  /** Where it stands in the file, e.g. `let.reach`; for an implicit one, where it would stand. */
  readonly path: string;
  /** The value's place; for an implicit one the place of the part's name. */
  readonly span: Span;
  readonly dimension: Dimension;
  /** SI. */
  readonly nominal: number;
  readonly tolerance?: Tolerance;
  /**
   * `written`: a plain figure in the file. `as-drawn`: added to a rod's drawn length where the file gives none
   * (nominal 0). `default`: a figure that the file leaves out.
   */
  readonly kind: 'written' | 'as-drawn' | 'default';
}

export interface LeverModel {
  readonly index: number;
  readonly name: string;
  readonly source: Lever;
  /** Three parameters: the pivot. */
  readonly pivot: Parameter;
  /** Three parameters: the axis, of unit length. */
  readonly axis: Parameter;
  /** Nine parameters each. */
  readonly pins: ReadonlyMap<string, Parameter>;
  readonly drums: ReadonlyMap<string, DrumModel>;
  /** Least opening; absent where nothing stops it closing. */
  readonly closedStop?: { readonly parameter: Parameter; readonly span: Span };
  /** Greatest opening; absent where the file gives none. */
  readonly openStop?: { readonly parameter: Parameter; readonly span: Span };
  readonly plates: readonly Plates[];
  /** Opening that counts as full, for a lever with plates: the open stop, else 90° less seat and idle. */
  readonly fullOpening?: Parameter;
  /** The joint that drives it; absent for the pedal and for a lever that nothing drives. */
  readonly driver?: number;
  /** Index of the group of levers that rods, slots and couplings join. */
  readonly group: number;
}

export interface DrumModel {
  readonly name: string;
  readonly lever: number;
  /** +1 counter-clockwise, −1 clockwise. */
  readonly wraps: 1 | -1;
  readonly form:
    | { readonly kind: 'round'; readonly radius: Parameter }
    /** `count` openings, radii, slopes dr/dopening, and integrals of the radius from the first opening. */
    | {
        readonly kind: 'profile';
        readonly count: number;
        readonly openings: Parameter;
        readonly radii: Parameter;
        readonly slopes: Parameter;
        readonly integrals: Parameter;
      };
}

interface JointCommon {
  readonly index: number;
  readonly name: string;
  readonly driven: number;
}

export interface RodJoint extends JointCommon {
  readonly kind: 'rod';
  readonly source: Rod;
  readonly driver: number;
  readonly driverPin: Parameter;
  readonly drivenPin: Parameter;
  /** Length when it pulls. */
  readonly length: Parameter;
  /** Free play; undefined where the rod has none. */
  readonly lost: Parameter | undefined;
  /** +1 or −1: the side on which it was drawn; NaN where drawn in line with the driven arm. */
  readonly side: Parameter;
  /** Four parameters: up to two driver rotations at which the driven passes half a turn, each with the sign of the passage. */
  readonly winding: Parameter;
  /** Index into `dimensions` of the rod's length. */
  readonly lengthDimension: number | undefined;
}

export type CableEndModel =
  | { readonly kind: 'pin'; readonly pin: Parameter; readonly housing: Parameter; readonly drawn: Parameter }
  | { readonly kind: 'drum'; readonly drum: DrumModel; readonly housing: Parameter };

export interface CableJoint extends JointCommon {
  readonly kind: 'cable';
  readonly source: Cable;
  /** Index among the cables of the load path, in its order. */
  readonly cable: number;
  /** Undefined where the pedal is this cable. */
  readonly driver: number | undefined;
  readonly driverEnd: CableEndModel | undefined;
  readonly drivenEnd: CableEndModel;
  readonly slack: Parameter;
  readonly side: Parameter;
}

export interface SlotJoint extends JointCommon {
  readonly kind: 'slot';
  readonly source: Slot;
  readonly driver: number;
  readonly pinLever: number;
  readonly fork: number;
  readonly pin: Parameter;
  /** Three parameters each: the fork's direction and the normal to its left, drawn. */
  readonly direction: Parameter;
  readonly normal: Parameter;
  readonly forkPivot: Parameter;
  readonly offset: Parameter;
  readonly play: Parameter | undefined;
  readonly side: Parameter;
  readonly winding: Parameter;
}

export interface CouplingJoint extends JointCommon {
  readonly kind: 'coupling';
  readonly source: Coupling;
  readonly driver: number;
  readonly ratio: Parameter;
  readonly lag: Parameter | undefined;
  readonly oneWay: boolean;
}

export type Joint = RodJoint | CableJoint | SlotJoint | CouplingJoint;

export type Drive =
  | { readonly kind: 'lever'; readonly lever: number; readonly sense: 1 | -1; readonly travel: Parameter }
  | { readonly kind: 'cable'; readonly joint: number; readonly travel: Parameter };

/** Levers that rods, slots and couplings join; they rest and stop together. */
export interface Group {
  readonly index: number;
  readonly root: number;
  /** In load-path order, the root first. */
  readonly levers: readonly number[];
  /** Joints inside the group, in load-path order. */
  readonly joints: readonly number[];
  /** The cable that drives it; undefined for the pedal's group. */
  readonly cable: number | undefined;
}

export interface Mechanism {
  readonly definition: Definition;
  readonly levers: readonly LeverModel[];
  readonly leverIndex: ReadonlyMap<string, number>;
  /** In load-path order: each joint's driver stands before it. */
  readonly joints: readonly Joint[];
  /** In load-path order, each at its own `cable` index. */
  readonly cables: readonly CableJoint[];
  readonly groups: readonly Group[];
  readonly drive: Drive;
  readonly dimensions: readonly MechanismDimension[];
  /** Nominal value of every dimension. */
  readonly nominal: Float64Array;
  /** +1 where a lever opens counter-clockwise, −1 where clockwise. */
  readonly senses: Int8Array;
  readonly tape: Tape;
  /** Slot of each parameter that the tape computes; these come first in the vector. */
  readonly outputs: Int32Array;
  /** Length of the parameter vector. */
  readonly parameterCount: number;
  /** Directions fixed to levers and housings that some columns need. */
  readonly directions: Directions;
  /** Springs, plates, sensors and the pad. */
  readonly attached: Attached;
  readonly friction: FrictionModel;
}

export interface Directions {
  /** Nine parameters for each bolt, by `rod.from` and `rod.to`. */
  readonly bolts: ReadonlyMap<string, { readonly from: Parameter; readonly to: Parameter }>;
  /** Three parameters each, of unit length; absent where the file gives none. */
  readonly housings: ReadonlyMap<string, { readonly leaves?: Parameter; readonly enters?: Parameter }>;
}
