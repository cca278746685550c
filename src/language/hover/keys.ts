/** The meaning of a key, and of a word that is one of a few. */
import type { Answers } from '../../solve.ts';
import type { Cursor } from '../cursor.ts';
import type { HoverLines } from '../hover.ts';
import { keyDoc } from '../keyDoc.ts';
import { code, message } from '../markdown.ts';
import { formsOf, meaningsAt } from '../places.ts';
import { figureLines } from './values.ts';

export function keyHover(answers: Answers, cursor: Cursor): HoverLines | undefined {
  const { tree, span, text } = cursor;
  const path = cursor.role === 'key' ? [...cursor.path, text] : cursor.path;
  if (text === '') return undefined;
  const meanings = meaningsAt(tree, path);
  const word = cursor.role === 'value' ? meanings.flatMap(({ shape }) => formsOf(shape).flatMap((form) => choiceLine(form, text))) : [];
  const docs = meanings.flatMap(({ key }) => (key === undefined ? [] : [keyDoc(key)]));
  if (word.length === 0 && docs.length === 0) return undefined;
  const own = cursor.role === 'key' ? figureLines(answers, path.join('.')) : [];
  return { span, lines: [...word, ...new Set(docs), ...own] };
}

function choiceLine(form: ReturnType<typeof formsOf>[number], word: string): readonly string[] {
  if (form.kind !== 'choice' || !Object.hasOwn(form.choices, word)) return [];
  return [`${code(word)}: ${message(form.choices[word] ?? '')}`];
}
