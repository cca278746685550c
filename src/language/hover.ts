/** What stands under the pointer, in a few lines. Nothing where there is nothing to say. */
import type { Span } from '../definition/span.ts';
import type { Answers } from '../solve.ts';
import { cursorAt, type Cursor } from './cursor.ts';
import { formulaHover } from './hover/formulas.ts';
import { keyHover } from './hover/keys.ts';
import { nameHover } from './hover/named.ts';
import { valueHover } from './hover/values.ts';
import { indexNames, nameAt, type NameIndex } from './names.ts';

export interface Hover {
  /** What it is about. */
  readonly span: Span;
  /** Paragraphs parted by empty lines. Holds no HTML and no links; a person's words are escaped. */
  readonly markdown: string;
}

/** What a hover is made of: paragraphs of Markdown. */
export interface HoverLines {
  readonly span: Span;
  readonly lines: readonly string[];
}

/**
 * @param answers of the text as it is now
 * @param offset in UTF-16 code units
 * @param index of the same text, where it is at hand
 */
export function hoverAt(answers: Answers, offset: number, index?: NameIndex): Hover | undefined {
  const cursor = cursorAt(answers.text, offset);
  if (cursor.role === 'none') return undefined;
  const place = nameAt(index ?? indexOf(answers), cursor.offset);
  const named = place && nameHover(answers, place);
  const found = cursor.role === 'key' ? overKey(answers, cursor, named) : overValue(answers, cursor, named);
  return found && found.lines.length > 0 ? { span: found.span, markdown: found.lines.join('\n\n') } : undefined;
}

function overValue(answers: Answers, cursor: Cursor, named: HoverLines | undefined): HoverLines | undefined {
  return formulaHover(answers, cursor) ?? named ?? valueHover(answers, cursor) ?? keyHover(answers, cursor);
}

/** `pedal` is a name and a key of the format at once. */
function overKey(answers: Answers, cursor: Cursor, named: HoverLines | undefined): HoverLines | undefined {
  const key = keyHover(answers, cursor);
  if (named === undefined || key === undefined || cursor.path.length > 0) return named ?? key;
  return { span: named.span, lines: [...named.lines, ...key.lines] };
}

/** The pointer asks about one text many times. */
const indices = new WeakMap<Answers, NameIndex>();

function indexOf(answers: Answers): NameIndex {
  const known = indices.get(answers) ?? indexNames(answers.text);
  indices.set(answers, known);
  return known;
}
