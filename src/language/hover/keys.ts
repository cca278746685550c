/** The meaning of a key, and of a word that is one of a few. */
import { fitNames } from '../../definition/fitNames.ts';
import { KEPT_WORDS } from '../../definition/schema/tune.ts';
import { describePath } from '../../definition/schema/walk.ts';
import type { KeptWord } from '../../definition/tune.ts';
import type { Answers } from '../../solve.ts';
import type { Cursor } from '../cursor.ts';
import type { HoverLines } from '../hover.ts';
import { keyDoc } from '../keyDoc.ts';
import { code, message } from '../markdown.ts';
import { formsOf, meaningsAt } from '../places.ts';
import { columnLines } from './columns.ts';
import { figureLines } from './values.ts';

export function keyHover(answers: Answers, cursor: Cursor): HoverLines | undefined {
  const { tree, span, text } = cursor;
  const path = cursor.role === 'key' ? [...cursor.path, text] : cursor.path;
  if (text === '') return undefined;
  const meanings = meaningsAt(tree, path);
  const word =
    cursor.role === 'value' ? meanings.flatMap(({ shape }) => formsOf(shape).flatMap((form) => wordLines(form, answers, cursor))) : [];
  const docs = meanings.flatMap(({ key }) => (key === undefined ? [] : [keyDoc(key)]));
  if (word.length === 0 && docs.length === 0) return undefined;
  const own = cursor.role === 'key' ? figureLines(answers, path.join('.')) : [];
  return { span, lines: [...word, ...new Set(docs), ...own] };
}

function wordLines(form: ReturnType<typeof formsOf>[number], answers: Answers, { tree, text }: Cursor): readonly string[] {
  switch (form.kind) {
    case 'choice':
      return Object.hasOwn(form.choices, text) ? [`${code(text)}: ${message(form.choices[text] ?? '')}`] : [];
    case 'column': {
      const [owner = '', column = ''] = text.split('.');
      return columnLines(answers, tree, owner, column);
    }
    case 'kept': {
      if (Object.hasOwn(KEPT_WORDS, text)) return [`${code(text)}: ${message(KEPT_WORDS[text as KeptWord])}`];
      return describePath(['limits', text]).flatMap(({ key }) => (key === undefined ? [] : [keyDoc(key)]));
    }
    case 'fit': {
      const path = answers.definition && fitNames(answers.definition).get(text)?.path;
      return path === undefined ? [] : figureLines(answers, path);
    }
    default:
      return [];
  }
}
