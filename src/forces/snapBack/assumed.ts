/** What a snap-back rests on that is not in the file, as data: faces say it beside the figures. */

export interface Assumption {
  readonly kind:
    /** A lever's inertia from its outline, or from its arms as bars. */
    | 'lever-inertia'
    /** A rod's mass. */
    | 'rod-mass'
    /** A pedal that the file does not describe. */
    | 'pedal-mass'
    /** How far a stop throws back. */
    | 'restitution'
    /** A cable stretched past an open stop, whose stiffness is not given: what it has stored is left out. */
    | 'cable-stiffness'
    /** Friction that the file does not give. */
    | 'friction'
    /** Mass that nothing in the file tells of, and that is left out. */
    | 'left-out';
  /** Name of the part; undefined where it is of the linkage as a whole. */
  readonly part: string | undefined;
  /** SI: kg·m², kg, a ratio; undefined where nothing was put in. */
  readonly value: number | undefined;
  /** In words, e.g. `shaft: its arms taken as steel bars 12 mm by 5 mm, with 4 brass plates: 21 kg·mm²`. */
  readonly text: string;
}
