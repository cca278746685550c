/**
 * Single failures: each spring, rod, cable, slot pin and coupling lost in turn, and each cable seized; and what is left then.
 */
import type { Definition } from '../definition/definition.ts';
import type { Span } from '../definition/span.ts';

export type FailureKind = 'spring-lost' | 'rod-lost' | 'cable-lost' | 'slot-lost' | 'coupling-lost' | 'cable-seized';

/** One part that fails while all others stand. */
export interface Failure {
  readonly kind: FailureKind;
  /** Name of the part. */
  readonly part: string;
  /** Its name in the text. */
  readonly span: Span;
}

/** Whether all plates of a shaft close from everywhere in the travel: `stays-open` where they do not from somewhere. */
export type Outcome = 'closes' | 'stays-open' | 'not-checked';

/** What is left with nothing failed, or one part. */
export interface FailureRow {
  /** Undefined where nothing has failed. */
  readonly failure: Failure | undefined;
  /** The worst of its plates: what stays open before what was not checked. */
  readonly outcome: Outcome;
  /** Every shaft with plates that the pedal opens, those that close together once. In the order of the file. */
  readonly plates: readonly PlatesLeft[];
  /** The lever that the lost part lets go; undefined where it lets none go. */
  readonly freed: FreedLever | undefined;
}

/** Whether plates that close together still do. */
export interface PlatesClosing {
  /** Levers with plates that close together. */
  readonly levers: readonly string[];
  readonly outcome: Outcome;
  /** Why they stay open, or why that was not checked; a clause without a full stop. Undefined where they close. */
  readonly why: string | undefined;
  /** Where the least is left; undefined where nothing closes them that could be known, and where a seized cable holds them. */
  readonly weakest: Weakest | undefined;
  /** Greatest opening at which a seized cable holds them, rad; undefined where none does. */
  readonly heldAt: number | undefined;
  /**
   * Set where all that the file describes closes them, and only the pedal, of which it gives the cable alone, is left open: what brings that
   * back, and what it holds by the cable until then, is in no file, so that the outcome is `not-checked`.
   */
  readonly butPedal?: true;
}

export interface PlatesLeft extends PlatesClosing {
  /** Undefined where they stay open. Followed when it is first asked for, that of all plates of a row at once. */
  readonly time: ReturnTime | undefined;
}

/** The place of the travel where least closes, of the shaft itself and of all that must come back before it. */
export interface Weakest {
  /** The lever that comes back there with least: the shaft, or one between it and the pedal. */
  readonly lever: string;
  /** Closing torque at that lever, N·m. */
  readonly torque: number;
  /** Of all that rubs on the way and is given, brought to that lever, N·m; infinite where a joint jams. Undefined where the file gives no friction. */
  readonly friction: number | undefined;
  /** Torque over friction; infinite where nothing rubs, undefined where the file gives no friction. */
  readonly margin: number | undefined;
  /** Of the first of the plates' levers, rad. */
  readonly opening: number;
}

/** Until every plate is closed and stays so, with the foot off. */
export interface ReturnTime {
  /** s; undefined where it could not be told. */
  readonly seconds: number | undefined;
  /** Why it could not; undefined where it could. */
  readonly why: string | undefined;
  /** What would make it slower and is left out for want of figures, e.g. `mass of link`; absent where nothing is. */
  readonly leftOut?: string;
  /** Whether some inertia is estimated and not given. */
  readonly estimated?: boolean;
  /** How they met their closed stops, as far as that was followed; absent where none of them did. */
  readonly stop?: StopMet;
}

/** How plates come onto the closed stops of their levers. */
export interface StopMet {
  /** As a stop was first met, of the fastest of them, rad/s, positive. */
  readonly speed: number;
  /** How often one of them left its stop again. */
  readonly bounces: number;
}

/** A lever that nothing drives any more, with all that it drives. */
export interface FreedLever {
  readonly lever: string;
  /** Which way its own springs turn it from everywhere in its travel; `either` where that depends on where it stands, `none` where no spring turns it. */
  readonly falls: 'closed' | 'open' | 'either' | 'none' | 'unknown';
  /** Springs that turn it. */
  readonly springs: readonly string[];
  /** The lever whose stop catches it; undefined where none does on that way. */
  readonly stop: string | undefined;
}

/** All single failures of a file, as its load path has them: springs first, then joints in the order of the file, then cables seized. */
export function singleFailures(definition: Definition, moving: ReadonlySet<string>): readonly Failure[] {
  const { springs, rods, cables, slots, couplings } = definition;
  const lost = [
    ...rods.map((part) => ({ part, kind: 'rod-lost' as const })),
    ...cables.map((part) => ({ part, kind: 'cable-lost' as const })),
    ...slots.map((part) => ({ part, kind: 'slot-lost' as const })),
    ...couplings.map((part) => ({ part, kind: 'coupling-lost' as const })),
  ].sort((one, other) => one.part.span.start - other.part.span.start);
  return [
    ...springs.map((part) => ({ part, kind: 'spring-lost' as const })),
    ...lost,
    ...cables.map((part) => ({ part, kind: 'cable-seized' as const })),
  ]
    .filter(({ part }) => moving.has(part.name))
    .map(({ part: { name, nameSpan }, kind }) => ({ kind, part: name, span: nameSpan }));
}

/** The worse of two outcomes. */
export function worse(one: Outcome, other: Outcome): Outcome {
  return RANK[one] >= RANK[other] ? one : other;
}

const RANK: Readonly<Record<Outcome, number>> = { closes: 0, 'not-checked': 1, 'stays-open': 2 };
