/**
 * How a text of the tables becomes a word of the page: in the editor's language where the editor has handed over a translation, else in
 * English. A text names its gaps, `Show all {count} {name}`; a translation may have them in another order, but must have the same ones.
 */
import { signal } from '@preact/signals';

/** Texts under the names by which the page asks for them, in groups where that reads better. */
export interface Table {
  readonly [name: string]: string | Table;
}

type Fill = string | number;
type Fills<Text extends string> = Text extends `${string}{${string}}${infer Rest}` ? readonly [Fill, ...Fills<Rest>] : readonly [];

/** What a text is to the page: a word, or where it has gaps a function of what belongs there, in the order of the English gaps. */
export type Said<Text extends string> = Fills<Text> extends readonly [] ? string : (...fills: Fills<Text>) => string;
export type Spoken<Of extends Table> = {
  readonly [Name in keyof Of]: Of[Name] extends string ? Said<Of[Name]> : Of[Name] extends Table ? Spoken<Of[Name]> : never;
};

/** By the English text, as the editor keeps them; empty where all is English. */
const translated = signal<ReadonlyMap<string, string>>(new Map());

const GAP = /\{(\w+)\}/g;

/** The names of a text's gaps, in their order. */
export const gapsOf = (text: string): readonly string[] => [...text.matchAll(GAP)].map(([, name]) => name!);

/** From here on the page speaks so. One that is empty, or has not the gaps of its English text, is left aside: that word stays English. */
export function takeTranslations(texts: Readonly<Record<string, string>>): void {
  translated.value = new Map(Object.entries(texts).filter(([english, text]) => text.trim() !== '' && haveSameGaps(english, text)));
}

const haveSameGaps = (one: string, other: string): boolean => {
  const [gaps, others] = [new Set(gapsOf(one)), new Set(gapsOf(other))];
  return gaps.size === others.size && [...gaps].every((gap) => others.has(gap));
};

const inLanguage = (english: string): string => translated.value.get(english) ?? english;

/** The table as words: whoever reads one while rendering is rendered anew once a translation has come. */
export function spoken<const Of extends Table>(table: Of): Spoken<Of> {
  const words = Object.entries(table).map(([name, entry]): readonly [string, PropertyDescriptor] => [name, asWord(entry)]);
  return Object.defineProperties({}, Object.fromEntries(words)) as Spoken<Of>;
}

function asWord(entry: string | Table): PropertyDescriptor {
  if (typeof entry !== 'string') return { enumerable: true, value: spoken(entry) };
  const gaps = gapsOf(entry);
  if (gaps.length === 0) return { enumerable: true, get: () => inLanguage(entry) };
  const filled = (...fills: readonly Fill[]) => inLanguage(entry).replaceAll(GAP, (_, name: string) => String(fills[gaps.indexOf(name)]));
  return { enumerable: true, value: filled };
}

/** Words and what is put together from them, as one; each stays as it is, be it a word that may yet be translated. */
export const withPhrases = <Words extends object, Phrases extends object>(
  words: Words,
  phrases: Phrases,
): Omit<Words, keyof Phrases> & Phrases =>
  Object.defineProperties({}, { ...Object.getOwnPropertyDescriptors(words), ...Object.getOwnPropertyDescriptors(phrases) }) as Omit<
    Words,
    keyof Phrases
  > &
    Phrases;
