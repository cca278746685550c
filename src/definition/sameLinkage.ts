/**
 * Whether two texts describe the same linkage, word for word and figure for figure, wherever they say it: then what was found of the one
 * holds of the other, at the places that the other has for it.
 */
import type { Definition } from './definition.ts';
import type { Formula } from './formula/formula.ts';
import { distanceBetween } from './movedParts.ts';
import type { Span } from './span.ts';

/** Where a place of one text stands in another; undefined for what is no place of the linkage. */
export type Moving = (span: Span) => Span | undefined;

/** Undefined where the two differ, bit for bit, in anything that findings rest on, or in what could not be read. */
export function sameLinkage(before: Definition, now: Definition): Moving | undefined {
  const places: Places = { starts: new Map(), ends: new Map(), parts: [] };
  for (const key of OF_LINKAGE) if (!isSame(before[key], now[key], places)) return undefined;
  return ({ start, end }) => {
    const at = { start: places.starts.get(start) ?? withinPart(start, places), end: places.ends.get(end) ?? withinPart(end, places) };
    return at.start === undefined || at.end === undefined ? undefined : { start: at.start, end: at.end };
  };
}

/** Whether findings rest on it: no rule that is asked at each key press may look at the others. */
export const IS_OF_LINKAGE: Readonly<Record<keyof Definition, boolean>> = {
  title: false,
  lets: true,
  points: true,
  levers: true,
  pedal: true,
  cables: true,
  rods: true,
  slots: true,
  couplings: true,
  plates: true,
  sensors: true,
  springs: true,
  keepOuts: true,
  movements: true,
  limits: true,
  requirements: false,
  tune: true,
  measured: false,
  unread: true,
  undriven: true,
};
const OF_LINKAGE = (Object.keys(IS_OF_LINKAGE) as (keyof Definition)[]).filter((key) => IS_OF_LINKAGE[key]);

/** From the offsets of one text to those of the other: an insertion between two places parts an end from a start. */
interface Places {
  readonly starts: Map<number, number>;
  readonly ends: Map<number, number>;
  /** Parts that stand in the other as they do in the one, and how far from there. */
  readonly parts: { readonly span: Span; readonly distance: number }[];
}

function withinPart(offset: number, { parts }: Places): number | undefined {
  const part = parts.find(({ span }) => span.start <= offset && offset <= span.end);
  return part && offset + part.distance;
}

function isSame(one: unknown, other: unknown, places: Places): boolean {
  if (!isObject(one) || !isObject(other)) return Object.is(one, other);
  if (Array.isArray(one)) {
    if (!Array.isArray(other) || one.length !== other.length) return false;
    for (let i = 0; i < one.length; i++) if (!isSame(one[i], other[i], places)) return false;
    return true;
  }
  if (isPlaced(one)) {
    const distance = distanceBetween(one, other);
    if (distance !== undefined) {
      places.parts.push({ span: one.span, distance });
      return true;
    }
  }
  if (isSpan(one)) return isSpan(other) && isOnePlace(one.start, other.start, places.starts) && isOnePlace(one.end, other.end, places.ends);
  // The `let` values that it is made of are held side by side, too.
  if (isFormula(one)) return isFormula(other) && one.text === other.text && isSame(one.uses, other.uses, places);
  if (Object.getPrototypeOf(one) !== Object.prototype) return one === other;
  let keys = 0;
  for (const key in one) {
    if (!isSame(one[key], other[key], places)) return false;
    keys++;
  }
  return keys === Object.keys(other).length;
}

type Members = Readonly<Record<string, unknown>>;

function isObject(value: unknown): value is Members {
  return typeof value === 'object' && value !== null;
}

function isSpan(value: Members): value is Members & Span {
  return typeof value.start === 'number' && typeof value.end === 'number';
}

/** Nothing of it stands elsewhere: but the figures of a point that it names, which are held side by side, too. */
function isPlaced(value: Members): value is Members & { readonly span: Span } {
  return isObject(value.span) && isSpan(value.span);
}

function isFormula(value: Members): value is Members & Formula {
  return typeof value.evaluate === 'function' && typeof value.text === 'string';
}

/** Whether an offset stands for the same one wherever it is met. */
function isOnePlace(from: number, to: number, known: Map<number, number>): boolean {
  const before = known.get(from);
  if (before === undefined) known.set(from, to);
  return before === undefined || before === to;
}
