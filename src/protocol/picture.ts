/**
 * The linkage as the view draws it: every part with its places, and how far each lever has turned at each station. Plain data that
 * survives a message between two processes. SI: m, rad. Frame of the file: right-handed, x to the right and y up in the front view.
 *
 * The whole travel goes over at once, and the view turns what is fixed to a lever by itself:
 *
 *     P(φ) = base + cos φ · perp + sin φ · cross
 *
 * Between two stations φ is taken as a straight line.
 */

import type { PartKey } from './report.ts';

/** x, y, z, m; or a direction. */
export type Triple = readonly [number, number, number];

/** A point fixed to a lever: nine figures, base, perp and cross of the equation above, m. */
export type TurningPoint = readonly number[];

export interface Picture {
  /** Pedal travels, fractions, rising from 0 to 1. All series below have a figure for each. */
  readonly stations: Float64Array;
  readonly pedal: PedalScale;
  /** Nothing drawn leaves one plane square to z: the front view says it all. */
  readonly isPlanar: boolean;
  /** In load-path order, those that nothing drives last. Indices below are indices into this. */
  readonly levers: readonly DrawnLever[];
  readonly rods: readonly DrawnRod[];
  readonly cables: readonly DrawnCable[];
  readonly slots: readonly DrawnSlot[];
  readonly couplings: readonly DrawnCoupling[];
  readonly plates: readonly DrawnPlates[];
  readonly sensors: readonly DrawnSensor[];
  readonly springs: readonly DrawnSpring[];
  readonly keepOuts: readonly DrawnKeepOut[];
  /** Where the linkage comes nearest to keep-outs, and parts to each other: the nearest first. */
  readonly gaps: readonly DrawnGap[];
  /** What a person can move. */
  readonly handles: readonly Handle[];
}

/** What full travel of the pedal is, for the slider. */
export interface PedalScale {
  /** Path of the pad along its arc, or pull of a pedal's cable; undefined where the file has no pad. m */
  readonly padTravel: number | undefined;
  /** Whether that is at the pad or at the cable's pedal end. */
  readonly padIs: 'pad' | 'cable';
  /** Index of the pedal's lever; undefined where the pedal is a cable. */
  readonly lever: number | undefined;
  /** Place of the foot on it. */
  readonly pad: TurningPoint | undefined;
  /**
   * Beyond this fraction the pedal has stopped, or a lever of the load path cannot be assembled any more; undefined where all that had a
   * place keeps it to the end.
   */
  readonly lastSolved: number | undefined;
}

interface Drawn {
  /** As in the file. */
  readonly name: string;
}

export interface DrawnLever extends Drawn {
  readonly pivot: Triple;
  /** Of length 1. */
  readonly axis: Triple;
  /** From drawn, by the right-hand rule about the axis; NaN where it cannot be assembled. rad */
  readonly rotation: Float64Array;
  /** +1 where it opens counter-clockwise about its axis. */
  readonly sense: 1 | -1;
  /** Whether the pedal moves it at all. */
  readonly isDriven: boolean;
  readonly arms: readonly { readonly name: string; readonly at: TurningPoint }[];
  readonly drums: readonly DrawnDrum[];
  /** Corners of its outline where the file gives one; empty otherwise. */
  readonly outline: readonly TurningPoint[];
  /** Breadth of its arms, m; undefined where the file gives none. */
  readonly width: number | undefined;
  /** Openings of its stops, rad; each undefined where there is none. */
  readonly stops: { readonly closed: number | undefined; readonly open: number | undefined };
}

export interface DrawnDrum {
  readonly name: string;
  readonly form:
    | { readonly kind: 'round'; readonly radius: number }
    /** The rim as it follows from the effective radius, from the first point of the profile to the last. */
    | { readonly kind: 'profile'; readonly rim: readonly TurningPoint[] };
  /** A point of the rim, so that one sees it turn; the first one of a profile. */
  readonly mark: TurningPoint;
}

/** A pin on a lever. */
export interface PinPlace {
  readonly lever: number;
  readonly at: TurningPoint;
}

export interface DrawnRod extends Drawn {
  readonly from: PinPlace;
  readonly to: PinPlace;
  /** m; undefined where the file gives none. */
  readonly width: number | undefined;
}

export interface DrawnCable extends Drawn {
  /** The end at the pedal; undefined where the pedal is this cable. */
  readonly leaves: HousingEnd | undefined;
  readonly enters: HousingEnd;
  /** Slack left in it at each station, m; 0 where it is tight. */
  readonly slack: Float64Array;
  /** Stretch at each station, m; 0 before a stop. */
  readonly stretch: Float64Array;
}

export interface HousingEnd {
  /** Where the housing ends and the free inner begins. */
  readonly housing: Triple;
  /** The way the housing points, from housing to free inner, of length 1; undefined where the file gives none. */
  readonly along: Triple | undefined;
  readonly inner:
    | ({ readonly kind: 'pin' } & PinPlace)
    /** Three figures a station: where the inner meets the rim; NaN where that cannot be told. */
    | { readonly kind: 'drum'; readonly lever: number; readonly drum: string; readonly rim: Float64Array };
}

export interface DrawnSlot extends Drawn {
  readonly pin: PinPlace;
  /**
   * The forked lever, and on it two points of the fork's centreline: from the least to the greatest reach of the file, else from and to a
   * little beyond what the pin takes. In the plane of the lever's pivot, square to its axis.
   */
  readonly fork: { readonly lever: number; readonly from: TurningPoint; readonly to: TurningPoint };
}

export interface DrawnCoupling extends Drawn {
  readonly from: number;
  readonly to: number;
  readonly ratio: number;
}

export interface DrawnPlates extends Drawn {
  readonly lever: number;
  readonly count: number;
  /** Diameters, m. */
  readonly bore: number;
  readonly shaft: number;
  /** Of the plate from square to the bore, in the drawn position: seat + idle. rad */
  readonly drawnAngle: number;
  readonly seat: number;
}

export interface DrawnSensor extends Drawn {
  readonly lever: number;
  /** Its own angle at each station, rad. */
  readonly angle: Float64Array;
  /** Ends of its electrical range, rad. */
  readonly range: readonly [number, number];
}

export interface DrawnSpring extends Drawn {
  readonly form:
    | { readonly kind: 'torsion'; readonly lever: number }
    | { readonly kind: 'extension' | 'compression'; readonly from: Triple | PinPlace; readonly to: PinPlace };
}

export interface DrawnKeepOut extends Drawn {
  readonly shape:
    | { readonly kind: 'circle'; readonly centre: Triple; readonly radius: number }
    | { readonly kind: 'polygon'; readonly corners: readonly Triple[] };
  /** m */
  readonly clearance: number;
}

/** The least gap of two things over the travel. */
export interface DrawnGap {
  /** The first moves. */
  readonly between: readonly [PartKey, PartKey];
  /** Their nearest points, where they are nearest; where they overlap, those that the least shift would bring together. */
  readonly from: Triple;
  readonly to: Triple;
  /** m; below zero the depth. */
  readonly gap: number;
  /** In words, e.g. `4.2 mm` or `3.1 mm deep`. */
  readonly text: string;
  /** m; what should stay free, 0 where nothing is said. */
  readonly clearance: number;
  /** Pedal travel there, a fraction. */
  readonly travel: number;
}

/** A place of the file that can be dragged. */
export interface Handle {
  /** Of the place in the file, e.g. `levers.crank.pivot`, `levers.crank.arms.out`, `cables.main.enters`, `points.shaft_centre`. */
  readonly path: string;
  /** In words, e.g. `pivot of crank`. */
  readonly label: string;
  readonly kind: 'pivot' | 'pin' | 'housing' | 'anchor';
  /** Where it stands: fixed, or turning with a lever. */
  readonly at: Triple | PinPlace;
  /** Names of the `let` values that it follows from; where there are any, moving it writes one of these. */
  readonly lets: readonly string[];
}
