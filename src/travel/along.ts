/** Figures along the pedal: functions of its travel, and what is known of how they come about. */
import { keptOn } from '../numeric/keptOn.ts';

/** A figure along the pedal; NaN where it has no value. The same travel always gives the same figure. */
export type Along = (travel: number) => number;

/**
 * A figure that follows from another at the same place; where that one has been read it is not read anew.
 * @param how says all that `value` does, unlike any other that follows from the same: then what was found of it holds still where that of
 * the other does; nothing is taken over where absent
 */
export function following(figure: Along, value: (of: number) => number, how?: string): Along {
  const follower: Along = (travel) => value(figure(travel));
  const [own, of] = [factsOf(follower), factsOf(figure)];
  own.source = { figure, value };
  own.owner = of.owner;
  const { memory } = of;
  if (how !== undefined && memory !== undefined) own.memory = { store: memory.store, key: `${memory.key}, ${how}` };
  return follower;
}

/** The same with the other sign; one for one figure, so that it is searched once. */
export function upsideDown(figure: Along): Along {
  const known = factsOf(figure);
  if (known.mirror !== undefined) return known.mirror;
  const mirror = following(figure, (value) => -value);
  known.mirror = mirror;
  const { memory } = known;
  if (memory !== undefined) factsOf(mirror).memory = { store: memory.store, key: `-${memory.key}` };
  return mirror;
}

/** Says how a figure is read at the samples of a travel, by their number: quicker than by where they stand. */
export function readBy(figure: Along, travel: Samples, read: (number: number) => number): Along {
  factsOf(figure).reader = { travel, read };
  return figure;
}

/**
 * Says where a figure is looked at in place of all samples of a travel: it follows from less than the whole linkage, and what turns elsewhere
 * is no business of its.
 */
export function lookedAt(figure: Along, travel: Samples, own: () => readonly number[]): Along {
  factsOf(figure).owner = { travel, own };
  return figure;
}

/** Where a figure is looked at that is asked for at these samples. */
export function ownSamples(figure: Along, samples: readonly number[]): readonly number[] {
  const owner = facts.get(figure)?.owner;
  return owner?.travel.samples === samples ? owner.own() : samples;
}

/** Where a figure follows from what is the same as in a solve before, what was found of it then holds still. */
export function remembered(figure: Along, store: FigureStore, key: string): Along {
  factsOf(figure).memory = { store, key };
  return figure;
}

/** Has the places at which figures are taken, rising. */
export interface Samples {
  readonly samples: readonly number[];
}

/** What was found of figures, each by a key that stands for all that it follows from. */
export interface FigureStore {
  /** Undefined where nothing is known. */
  before(key: string): Seen | undefined;
  keep(key: string, seen: Seen): void;
}

/** A value of a figure and where it has it. */
export interface Extreme {
  readonly value: number;
  /** Pedal travel, a fraction. */
  readonly travel: number;
}

/** Travels rising, and the value of a figure at each. */
export interface Course {
  readonly travels: readonly number[];
  readonly values: readonly number[];
}

/** What is known of a figure at some samples; it grows as more is asked. */
export interface Seen {
  readonly samples: readonly number[];
  /** At each sample, NaN where it has no value. */
  readonly values: readonly number[];
  /** Where a dip was looked for, by the sample in its middle; absent where none was. */
  tried?: Map<number, Tried>;
  /** What was tried before this, maybe between other samples. */
  readonly triedBefore: ReadonlyMap<number, Tried> | undefined;
  /** Where it has a value, with the edges of that. */
  edged?: Course;
  /** The same with the bottom of each dip. */
  dipped?: Course;
  /** The first of its least values; absent where it was not looked for or has no value anywhere. */
  least?: Extreme;
}

/** What was found between two samples beside a lower one. */
export interface Tried {
  readonly low: number;
  readonly high: number;
  /** Undefined where the sample between them is the bottom. */
  readonly dip: Extreme | undefined;
}

/** Undefined for a figure that follows from no other. */
export function sourceOf(figure: Along): { readonly figure: Along; value(of: number): number } | undefined {
  return facts.get(figure)?.source;
}

export function readerOf(figure: Along): { readonly travel: Samples; read(number: number): number } | undefined {
  return facts.get(figure)?.reader;
}

export function memoryOf(figure: Along): { readonly store: FigureStore; readonly key: string } | undefined {
  return facts.get(figure)?.memory;
}

/** What is known of how a figure comes about. */
interface Facts {
  source: { readonly figure: Along; value(of: number): number } | undefined;
  mirror: Along | undefined;
  reader: { readonly travel: Samples; read(number: number): number } | undefined;
  owner: { readonly travel: Samples; own(): readonly number[] } | undefined;
  memory: { readonly store: FigureStore; readonly key: string } | undefined;
}

const facts = keptOn<Along, Facts>();

function factsOf(figure: Along): Facts {
  const before = facts.get(figure);
  if (before !== undefined) return before;
  const own: Facts = { source: undefined, mirror: undefined, reader: undefined, owner: undefined, memory: undefined };
  facts.set(figure, own);
  return own;
}
