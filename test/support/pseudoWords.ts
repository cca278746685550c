/** Stand-ins for a translation of the view, and a way to tell its words from those of the core. */
import type { ToView } from '../../src/protocol/messages.ts';
import { ENGLISH } from '../../webview/words/english.ts';
import type { Table } from '../../webview/words/say.ts';

/** Every text of the view. */
export const textsOf = (table: Table = ENGLISH): readonly string[] =>
  Object.values(table).flatMap((entry) => (typeof entry === 'string' ? [entry] : textsOf(entry)));

export const bracketed = (text: string): string => `[${text}]`;

/** Each word 40 % longer, and the whole in brackets; gaps stay. */
export const lengthened = (text: string): string =>
  bracketed(
    text
      .split(/(\{\w+\})/)
      .map((piece, i) => (i % 2 === 0 ? piece.replaceAll(/\p{L}+/gu, longer) : piece))
      .join(''),
  );

const longer = (word: string): string => word + word.slice(-1).repeat(Math.ceil(0.4 * word.length));

/** What the editor hands over where it has a translation of every text. */
export const wordsOf = (translate: (text: string) => string): ToView => ({
  type: 'words',
  language: 'en-GB',
  texts: Object.fromEntries(textsOf().map((text) => [text, translate(text)])),
});

/** By what things are told apart and looked up; no person reads it. */
const LOOKED_UP = new Set(['type', 'kind', 'uri', 'severity', 'id', 'path', 'standing', 'sign', 'stage', 'padIs', 'unit']);
const OUTCOMES = ['passed', 'failed', 'undecided', 'closes', 'stays-open', 'not-checked'];

/** The same with « and » about every text of it that comes from the core or the file. */
export function marked<T>(message: T): T {
  const inner = (key: string, value: unknown): unknown => {
    if (typeof value === 'string') return LOOKED_UP.has(key) || (key === 'outcome' && OUTCOMES.includes(value)) ? value : told(value);
    if (Array.isArray(value)) return value.map((each) => inner(key, each));
    if (value instanceof Float64Array || typeof value !== 'object' || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, inner(name, each)]));
  };
  return inner('', message) as T;
}

export const told = (text: string): string => (text === '' ? text : `«${text}»`);

/**
 * Runs in the page: every word on it, or said of it to a screen reader, that is neither in brackets nor between « and ». Left aside are units,
 * kinds of files, single keys, the example of a file, and in the drawing the pedal, which is called as the file calls it.
 */
export const UNBRACKETED = `(() => {
  const leftOf = (text) => {
    let rest = text.replaceAll(/«[^«»]*»/g, '');
    for (let before = ''; before !== rest; ) {
      before = rest;
      rest = rest.replaceAll(/\\[[^\\[\\]]*\\]/g, ' ');
    }
    return rest.replaceAll(/(?<!\\p{L})(?:mm|N|s|deg|SVG|PNG|CSV)(?!\\p{L})/gu, '');
  };
  const hasWord = (text) => /\\p{L}/u.test(text);
  const body = document.body.cloneNode(true);
  const isLeftAside = (each) => each.matches('script, pre') || each.textContent.length === 1 || each.textContent === 'pedal';
  for (const each of body.querySelectorAll('script, pre, kbd, .overlay .name')) if (isLeftAside(each)) each.remove();
  const pieces = [];
  const texts = document.createTreeWalker(body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) pieces.push(texts.currentNode.data);
  const words = leftOf(pieces.join(' ')).split(/\\s\\s+|[,;:]/).map((piece) => piece.trim()).filter(hasWord);
  const said = [...body.querySelectorAll('*')].flatMap((element) =>
    ['aria-label', 'aria-description', 'aria-valuetext', 'title', 'alt', 'placeholder']
      .filter((name) => hasWord(leftOf(element.getAttribute(name) ?? '')))
      .map((name) => name + '=' + element.getAttribute(name)));
  return [...words, ...said];
})()`;
