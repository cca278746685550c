/**
 * Parts of definitions that say the same and stand elsewhere: when the text before a part has become longer or shorter, it is not read anew
 * but moved. From which part it was moved is remembered, so that two of one origin need not be held side by side, figure by figure. All
 * distances are in UTF-16 code units, towards the end of the text where positive.
 */
import type { Place } from './definition.ts';
import type { Span } from './span.ts';

/** Places of `points`, by name. */
export interface NamedPlaces {
  get(name: string): Place | undefined;
}

/** @param places what a name of a point stands for at the new place: the same as before, moved or not */
export function movedPart<Part extends object>(part: Part, by: number, places: NamedPlaces): Part {
  const moved = movedMember(part, by, places) as Part;
  const { first, distance } = originOf(part);
  origins.set(moved, { first, distance: distance + by });
  return moved;
}

/** How far the second stands from the first; undefined where they are not known to be one part of the same letters and meaning. */
export function distanceBetween(one: object, other: object): number | undefined {
  if (one === other) return 0;
  const [from, to] = [originOf(one), originOf(other)];
  return from.first === to.first ? to.distance - from.distance : undefined;
}

interface Origin {
  /** The part as it was read, of which others were moved. */
  readonly first: object;
  readonly distance: number;
}

const origins = new WeakMap<object, Origin>();

function originOf(part: object): Origin {
  return origins.get(part) ?? { first: part, distance: 0 };
}

type Members = Record<string, unknown>;

function movedMember(member: object, by: number, places: NamedPlaces): unknown {
  if (Array.isArray(member)) return member.map((each: unknown) => (isObject(each) ? movedMember(each, by, places) : each));
  if (isSpan(member)) return { start: member.start + by, end: member.end + by };
  if ('point' in member) return movedByName(member as Place, by, places);
  const moved: Members = { ...member };
  for (const key in moved) {
    const inner = moved[key];
    // What a formula computes knows of no place.
    if (isObject(inner) && key !== 'formula') moved[key] = movedMember(inner, by, places);
  }
  return moved;
}

/** A place that is given by name has the figures of its point, which move by themselves. */
function movedByName({ span, point }: Place, by: number, places: NamedPlaces): Place {
  const place = places.get(point!.name)!;
  const movedSpan: Span = { start: span.start + by, end: span.end + by };
  return { ...place, span: movedSpan, point: { name: point!.name, span: movedSpan } };
}

function isSpan(member: object): member is Span {
  return typeof (member as Partial<Span>).start === 'number';
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null;
}
