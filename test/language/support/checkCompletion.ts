/** Completion at `$0`, and what a file is after an item was taken. */
import { expect } from 'vitest';
import { completionsAt, type CompletionItem } from '../../../src/language/completion.ts';
import { solve } from '../../../src/solve.ts';
import { atCaret } from './atCaret.ts';

/** Items in their order, as an editor shows them. */
export function itemsAt(marked: string): readonly CompletionItem[] {
  const { text, offset } = atCaret(marked);
  return inOrder(completionsAt(text, offset));
}

/** Labels in their order; only of the kinds named, of all where none is. */
export function checkCompletion(marked: string, expected: readonly string[], ...kinds: readonly CompletionItem['kind'][]): void {
  const items = itemsAt(marked).filter(({ kind }) => kinds.length === 0 || kinds.includes(kind));
  expect(items.map(({ label }) => label)).toEqual(expected);
}

/** The text after the only item of that label was taken, with `$0` behind what it inserted and its stops filled with their first choice. */
export function take(marked: string, label: string): string {
  const { text, offset } = atCaret(marked);
  const found = completionsAt(text, offset, solve(text)).filter((each) => each.label === label);
  const [item] = found;
  if (item === undefined || found.length > 1) throw new Error(`${found.length} items ${label}`);
  return insert(text, item, '$0');
}

/** As an editor inserts it: further lines are indented as the line is. */
export function insert(text: string, { insertText, snippet, replace }: CompletionItem, mark = ''): string {
  const lineStart = Math.max(text.lastIndexOf('\n', replace.start - 1), text.lastIndexOf('\r', replace.start - 1)) + 1;
  const indent = /^[ \t]*/.exec(text.slice(lineStart).replace(/^\ufeff/, ''))?.[0] ?? '';
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  const filled = snippet ? withoutStops(insertText) : insertText;
  return text.slice(0, replace.start) + filled.replaceAll('\n', lineEnd + indent) + mark + text.slice(replace.end);
}

/** The text of a snippet with the default of each stop. */
export function withoutStops(snippet: string): string {
  return snippet
    .replace(/\$\{\d+\|((?:\\.|[^|\\])*)\|\}/g, (_, choices: string) => /^(?:\\.|[^,\\])*/.exec(choices)?.[0] ?? '')
    .replace(/\$\{\d+:((?:\\.|[^}\\])*)\}/g, '$1')
    .replace(/\$\d+/g, '')
    .replace(/\\([\\$}|,])/g, '$1');
}

function inOrder(items: readonly CompletionItem[]): readonly CompletionItem[] {
  return [...items].sort((a, b) => (a.sortText < b.sortText ? -1 : a.sortText > b.sortText ? 1 : 0));
}
