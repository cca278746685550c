/**
 * A throttle file, understood: every part with its names, references and values, and the place of each in
 * the text. Plain data, SI units inside (m, rad, N, N·m, kg, s, V, Pa). A part that could not be read is
 * absent here and named by a problem.
 */
import type { Dimension } from './dimensions.ts';
import type { Formula, Requirement } from './formula/formula.ts';
import type { Kind } from './formula/kind.ts';
import type { Measured } from './measured.ts';
import type { Span } from './span.ts';
import type { Tune } from './tune.ts';

/** A name with its place. */
export interface Named {
  readonly name: string;
  readonly nameSpan: Span;
  /** The part's whole entry, from its name to the end of its last value. */
  readonly span: Span;
}

/**
 * One number of the file.
 *
 * A plain value is an independent dimension of the linkage: it can be tried, toleranced and edited. A value
 * from a formula follows from the `let` values that it uses.
 */
export interface Value {
  readonly span: Span;
  /** Where it stands: keys joined by dots, list places by number, e.g. `levers.bellcrank.arms.out.radius`. */
  readonly path: string;
  readonly dimension: Dimension;
  /** SI. */
  readonly nominal: number;
  /** The unit as written, e.g. `mm`; the place's own unit where none was written; empty for a formula. */
  readonly unit: string;
  readonly tolerance?: Tolerance;
  /** Absent for a plain value. */
  readonly formula?: Formula;
}

/** Both SI and not negative: the value lies within nominal − minus … nominal + plus. */
export interface Tolerance {
  readonly plus: number;
  readonly minus: number;
  readonly span: Span;
}

/** A name used to mean something that is defined elsewhere. */
export interface Reference {
  readonly name: string;
  readonly span: Span;
}

/** A reference to a part of a lever, `lever.part`. */
export interface PartReference {
  readonly lever: string;
  readonly part: string;
  readonly span: Span;
}

/** A column of the table, `owner.column`, such as `shaft.opening`. */
export interface ColumnReference {
  readonly owner: string;
  readonly column: string;
  readonly dimension: Dimension;
  readonly span: Span;
}

/** A place in the drawn position, in the file's frame. */
export interface Place {
  readonly span: Span;
  readonly x: Value;
  readonly y: Value;
  /** Absent where two figures were given: z = 0. */
  readonly z?: Value;
  /** The name in `points` by which the place was given. */
  readonly point?: Reference;
}

/** A direction, not necessarily of unit length, never zero. */
export interface Direction {
  readonly span: Span;
  readonly x: Value;
  readonly y: Value;
  readonly z?: Value;
}

export type Axis = { readonly kind: 'direction'; readonly direction: Direction } | { readonly kind: 'through'; readonly place: Place };

export type Sense = 'counterclockwise' | 'clockwise';

/** Where an arm's pin is drawn. */
export type ArmPosition =
  | { readonly kind: 'polar'; readonly radius: Value; readonly angle: Value; readonly offset?: Value }
  | { readonly kind: 'place'; readonly place: Place };

export interface Arm extends Named {
  readonly position: ArmPosition;
  readonly bolt?: Direction;
}

export type DrumForm =
  | { readonly kind: 'round'; readonly radius: Value }
  /** Effective radius against the lever's opening; openings strictly rising, two points at least. */
  | { readonly kind: 'profile'; readonly span: Span; readonly points: readonly { readonly opening: Value; readonly radius: Value }[] };

export interface Drum extends Named {
  readonly form: DrumForm;
  readonly wraps: Sense;
  readonly groove?: Value;
}

export interface Stops {
  readonly span: Span;
  readonly closed?: Value;
  readonly open?: Value;
}

export interface Bearing {
  readonly diameter: Value;
  readonly friction: Value;
}

export interface Lever extends Named {
  readonly pivot: Place;
  readonly axis?: Axis;
  readonly reference?: Direction;
  readonly opens?: Sense;
  readonly arms: readonly Arm[];
  readonly drums: readonly Drum[];
  readonly stops?: Stops;
  readonly friction?: Value;
  readonly bearing?: Bearing;
  readonly inertia?: Value;
  readonly width?: Value;
  readonly outline?: readonly Place[];
  readonly layer?: Value;
}

export type Pedal =
  | {
      readonly kind: 'lever';
      readonly span: Span;
      readonly lever: Reference;
      readonly opens: Sense;
      readonly travel: Value;
      /** Name of an arm of the pedal's lever. */
      readonly pad?: Reference;
    }
  | { readonly kind: 'cable'; readonly span: Span; readonly cable: Reference; readonly pull: Value; readonly leverRatio?: Value };

/** A cable's end: the pin of an arm, or a drum. */
export interface CableEnd extends PartReference {
  readonly kind: 'arm' | 'drum';
}

export interface Cable extends Named {
  /** Both absent where the pedal is this cable. */
  readonly from?: CableEnd;
  readonly leaves?: Place;
  readonly enters: Place;
  readonly leavesAlong?: Direction;
  readonly entersAlong?: Direction;
  readonly to: CableEnd;
  readonly slack?: Value;
  readonly bend?: Value;
  readonly friction?: Value;
  readonly stiffness?: Value;
  /** Outer diameter of the inner where it runs free. */
  readonly diameter?: Value;
}

export interface RodEnds {
  readonly span: Span;
  readonly kind: 'rod_end' | 'ball_stud' | 'clevis';
  readonly misalignment?: Value;
  readonly pin?: Value;
  readonly friction?: Value;
  readonly play?: Value;
}

export interface Rod extends Named {
  readonly from: PartReference;
  readonly to: PartReference;
  /** As drawn where absent. */
  readonly length?: Value;
  readonly adjust?: { readonly span: Span; readonly min?: Value; readonly max?: Value; readonly pitch?: Value };
  readonly lost?: Value;
  readonly ends?: RodEnds;
  readonly width?: Value;
}

export interface Slot extends Named {
  readonly pin: PartReference;
  /** Name of the forked lever. */
  readonly fork: Reference;
  /** What is driven: `fork`, the pin turns the forked lever (the default); `pin`, the forked lever turns the pin's lever. */
  readonly drives: 'fork' | 'pin';
  readonly angle: Value;
  readonly offset?: Value;
  readonly reach?: { readonly span: Span; readonly min: Value; readonly max: Value };
  readonly play?: Value;
  readonly friction?: Value;
}

export interface Coupling extends Named {
  readonly from: Reference;
  readonly to: Reference;
  readonly ratio?: Value;
  readonly lag?: Value;
  readonly oneWay: boolean;
}

export interface Plates extends Named {
  readonly lever: Reference;
  readonly count?: Value;
  readonly bore: Value;
  readonly shaft?: Value;
  readonly seat?: Value;
  readonly idle?: Value;
  readonly vacuum?: Value;
}

/** A stretch between two values, the first not above the second. */
export interface ValueRange {
  readonly span: Span;
  readonly from: Value;
  readonly to: Value;
}

export interface Sensor extends Named {
  readonly lever: Reference;
  readonly atClosed: Value;
  readonly reversed: boolean;
  readonly range: ValueRange;
  /** May fall: its two ends belong to the two ends of `range`. */
  readonly signal: { readonly span: Span; readonly from: Value; readonly to: Value };
  readonly mechanical?: ValueRange;
  readonly supply?: Value;
  readonly bits?: Value;
}

export type WireMaterial = 'music_wire' | 'hard_drawn' | 'oil_tempered' | 'chrome_vanadium' | 'chrome_silicon' | 'stainless_302';

/** Round wire that a spring is coiled from. */
export interface Wire {
  readonly span: Span;
  readonly diameter: Value;
  readonly meanCoil: Value;
  readonly activeTurns: Value;
  readonly material: { readonly name: WireMaterial; readonly span: Span };
  /** Of a compression spring: its turns with those at the ends. */
  readonly totalTurns?: Value;
  /** Of a torsion spring: diameter of what stands in its coil. */
  readonly arbor?: Value;
  /** Of an extension spring: mean radius of the bend between coil and hook. */
  readonly hookBend?: Value;
}

export type StripMaterial = 'carbon_steel' | 'stainless_301';

/** Flat strip that a spiral spring is wound from. */
export interface Strip {
  readonly span: Span;
  readonly width: Value;
  readonly thickness: Value;
  /** That which bends. */
  readonly length: Value;
  readonly material: StripMaterial;
}

export type SpringAnchor = { readonly kind: 'place'; readonly place: Place } | { readonly kind: 'pin'; readonly pin: PartReference };

interface SpringCommon extends Named {
  readonly rate?: Value;
  readonly wire?: Wire;
  readonly countsAsReturn: boolean;
}

export interface TorsionSpring extends SpringCommon {
  readonly kind: 'torsion';
  readonly lever: Reference;
  readonly preload?: Value;
  readonly strip?: Strip;
}

export interface LinearSpring extends SpringCommon {
  readonly kind: 'extension' | 'compression';
  readonly from: SpringAnchor;
  readonly to: PartReference;
  readonly freeLength?: Value;
  readonly initialTension?: Value;
}

export type Spring = TorsionSpring | LinearSpring;

export interface KeepOut extends Named {
  readonly shape:
    | { readonly kind: 'circle'; readonly centre: Place; readonly radius: Value }
    | { readonly kind: 'polygon'; readonly corners: readonly Place[] };
  readonly clearance?: Value;
  readonly layer?: Value;
  /** From where to where along z it stands, the lower first. */
  readonly extent?: { readonly from: Value; readonly to: Value };
}

/** A thing that a movement of the engine carries along: a lever, a cable's housing end, a spring's anchor. */
export type Moved =
  | { readonly kind: 'lever'; readonly lever: string; readonly span: Span }
  | { readonly kind: 'cable-end'; readonly cable: string; readonly end: 'leaves' | 'enters'; readonly span: Span }
  | { readonly kind: 'spring-anchor'; readonly spring: string; readonly span: Span };

export interface Movement extends Named {
  readonly moves: readonly Moved[];
  readonly shift?: Place;
  readonly turn?: Value;
  readonly about?: Place;
  readonly axis?: Direction;
}

/** Warning and error thresholds of one kind of finding; one figure in the file sets the warning alone. */
export interface Limit {
  readonly key: LimitKey;
  readonly span: Span;
  readonly warning: Value;
  readonly error?: Value;
}

export type LimitKey = 'transmission' | 'drive' | 'misalignment' | 'lead' | 'step' | 'closing_margin';

/** A named independent value or formula of the `let` block, in file order. */
export interface Let extends Named {
  readonly value: Value;
  /** What it is a quantity of, which may be none that a place of the file knows; `value.dimension` is `number` then. */
  readonly kind: Kind;
}

export interface PointDefinition extends Named {
  readonly place: Place;
}

/** A value that stands in the file and could not be read, while its part is understood without it; or a whole part that was lost. */
export interface Unread {
  readonly path: string;
  readonly span: Span;
}

export interface Definition {
  readonly title?: string;
  readonly lets: readonly Let[];
  readonly points: readonly PointDefinition[];
  readonly levers: readonly Lever[];
  readonly pedal?: Pedal;
  readonly cables: readonly Cable[];
  readonly rods: readonly Rod[];
  readonly slots: readonly Slot[];
  readonly couplings: readonly Coupling[];
  readonly plates: readonly Plates[];
  readonly sensors: readonly Sensor[];
  readonly springs: readonly Spring[];
  readonly keepOuts: readonly KeepOut[];
  readonly movements: readonly Movement[];
  readonly limits: readonly Limit[];
  readonly requirements: readonly Requirement[];
  /** Absent where the file does not ask for dimensions to be found. */
  readonly tune?: Tune;
  /** Absent where the file has no readings. */
  readonly measured?: Measured;
  /** What rests on these is not to be relied on. Absent where everything was read. */
  readonly unread?: readonly Unread[];
  /** Levers that stand still since nothing in the file drives them or what drives them. Absent where none is known to. */
  readonly undriven?: readonly string[];
}
