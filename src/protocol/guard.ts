/** Small guards out of which those of the messages are put together. What crosses a process is `unknown` until one of them has seen it. */

export type Guard<T> = (value: unknown) => value is T;

/** Longest text that a message carries, in UTF-16 units: a throttle file has at most 256 kB, and a message quotes parts of it. */
const LONGEST_TEXT = 300_000;
/** Greatest number of items in a list: a file of 256 kB has fewer parts. */
const LONGEST_LIST = 20_000;
/** Greatest number of stations, and three figures for each where it is a place. */
const LONGEST_SERIES = 100_000;

export const isText: Guard<string> = (value): value is string => typeof value === 'string' && value.length <= LONGEST_TEXT;

/** A text of any length up to the one given, for what is saved as a file. */
export const isLongText =
  (longest: number): Guard<string> =>
  (value): value is string =>
    typeof value === 'string' && value.length <= longest;

export const isYesOrNo: Guard<boolean> = (value): value is boolean => typeof value === 'boolean';

/** Neither infinite nor NaN, neither of which every way between two processes carries. */
export const isFiniteNumber: Guard<number> = (value): value is number => Number.isFinite(value);

/** A whole number from 0. */
export const isCount: Guard<number> = (value): value is number => Number.isSafeInteger(value) && (value as number) >= 0;

/** From 0 to 1. */
export const isFraction: Guard<number> = (value): value is number => isFiniteNumber(value) && value >= 0 && value <= 1;

export const isMissing: Guard<undefined> = (value): value is undefined => value === undefined;

/** Figures that may be NaN where there are none. */
export const isSeries: Guard<Float64Array> = (value): value is Float64Array =>
  value instanceof Float64Array && value.length <= LONGEST_SERIES;

export const either =
  <A, B>(a: Guard<A>, b: Guard<B>): Guard<A | B> =>
  (value): value is A | B =>
    a(value) || b(value);

/** Or left out. */
export const optional = <T>(guard: Guard<T>): Guard<T | undefined> => either(guard, isMissing);

export const oneOf =
  <const T>(...values: readonly T[]): Guard<T> =>
  (value): value is T =>
    values.includes(value as T);

export const listOf =
  <T>(guard: Guard<T>, least = 0): Guard<readonly T[]> =>
  (value): value is readonly T[] =>
    Array.isArray(value) && value.length >= least && value.length <= LONGEST_LIST && value.every(guard);

/** A list with exactly so many finite figures. */
const figures = (value: unknown, length: number): value is number[] =>
  Array.isArray(value) && value.length === length && value.every(isFiniteNumber);

export const isPair: Guard<readonly [number, number]> = (value): value is readonly [number, number] => figures(value, 2);
export const isTriple: Guard<readonly [number, number, number]> = (value): value is readonly [number, number, number] => figures(value, 3);
export const isTurningPoint: Guard<readonly number[]> = (value): value is readonly number[] => figures(value, 9);

/** Texts by name, in an object of their own. */
export const isTextTable: Guard<Readonly<Record<string, string>>> = (value): value is Readonly<Record<string, string>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && listOf(isText)(Object.values(value));

/** An object with at least these fields; one whose value may be undefined may be left out. */
export const shape = <T>(fields: { readonly [Key in keyof T]-?: Guard<T[Key]> }): Guard<T> => {
  const entries = Object.entries<Guard<unknown>>(fields);
  return (value): value is T =>
    typeof value === 'object' && value !== null && entries.every(([key, guard]) => guard((value as Record<string, unknown>)[key]));
};

/** The members of a union whose tag may be this one. */
type OfKind<T, Tag extends keyof T, Kind> = T extends unknown ? (Kind extends T[Tag] ? T : never) : never;

/** One of several shapes, told apart by the text in one field. */
export const tagged =
  <T extends Readonly<Record<Tag, string>>, Tag extends keyof T>(
    tag: Tag,
    kinds: { readonly [Kind in T[Tag]]: Guard<Omit<OfKind<T, Tag, Kind>, Tag>> },
  ): Guard<T> =>
  (value): value is T => {
    if (typeof value !== 'object' || value === null) return false;
    const kind: unknown = (value as Record<PropertyKey, unknown>)[tag];
    return typeof kind === 'string' && Object.hasOwn(kinds, kind) && (kinds as Record<string, Guard<unknown>>)[kind]!(value);
  };

/** Both of them, the second knowing that the first holds. */
export const and =
  <T>(guard: Guard<T>, holds: (value: T) => boolean): Guard<T> =>
  (value): value is T =>
    guard(value) && holds(value);
