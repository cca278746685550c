/**
 * What may be written at the cursor. Works on the text alone, however broken it is; what the linkage comes out as, where it is known,
 * only adds to what is said of each.
 */
import type { Span } from '../definition/span.ts';
import type { Answers } from '../solve.ts';
import { keyItems } from './completion/keys.ts';
import { valueItems } from './completion/values.ts';
import { cursorAt } from './cursor.ts';

/** What an item is, for its picture. */
export type CompletionKind =
  'key' | 'snippet' | 'part-name' | 'pin' | 'point' | 'let' | 'function' | 'constant' | 'operator' | 'unit' | 'word' | 'column' | 'example';

export interface CompletionItem {
  readonly label: string;
  readonly kind: CompletionKind;
  /** One line, without Markdown. */
  readonly detail?: string;
  /** Markdown. */
  readonly documentation?: string;
  /** Further lines of it are indented from the line in which it is inserted. */
  readonly insertText: string;
  /** Whether `insertText` is a snippet with tab stops; else it is plain text. */
  readonly snippet: boolean;
  /** What it replaces: on one line, around the cursor. */
  readonly replace: Span;
  /** Items come in the order of these. */
  readonly sortText: string;
  /** What the text before the cursor is held against; the label where absent. */
  readonly filterText?: string;
  /** Whether more is to be asked for when it is inserted: what it begins is not finished. */
  readonly asksAgain: boolean;
}

/**
 * @param offset in UTF-16 code units
 * @param answers of this text or of one before, for what is said of a name; may be absent
 * @returns in no certain order; none where nothing can be told
 */
export function completionsAt(text: string, offset: number, answers?: Answers): readonly CompletionItem[] {
  const cursor = cursorAt(text, offset);
  switch (cursor.role) {
    case 'none':
      return [];
    case 'key':
      return [...keyItems(cursor), ...(cursor.mayBeValue ? valueItems(cursor, answers) : [])];
    case 'value':
      return valueItems(cursor, answers);
  }
}
