/** Keys that may be written at a place, and whole parts where a name is asked. */
import type { Span } from '../../definition/span.ts';
import { describePath } from '../../definition/schema/walk.ts';
import { isBlank, isLineEnd } from '../cursor/scalars.ts';
import type { CompletionItem } from '../completion.ts';
import type { Cursor } from '../cursor.ts';
import { formDetail, keyDoc } from '../keyDoc.ts';
import { formsOf, meaningsAt, openKeys, recordsAt } from '../places.ts';
import { blockSnippets, escaped, keySnippet, partSnippets } from '../snippets.ts';
import { rank } from './rank.ts';
import { plainLets, readColumns } from './studyWords.ts';

export function keyItems(cursor: Cursor): readonly CompletionItem[] {
  return [...recordItems(cursor), ...partItems(cursor)];
}

function recordItems(cursor: Cursor): readonly CompletionItem[] {
  const { tree, path, siblings, flow, hasColon, style } = cursor;
  const { span, goesOn } = wordOf(cursor);
  const items = new Map<string, CompletionItem>();
  for (const record of recordsAt(tree, path, siblings)) {
    const names = Object.keys(record.keys);
    const needed = new Set(record.choices.flatMap(({ forms }) => forms.flatMap(({ needs }) => needs)));
    for (const [name, key] of openKeys(record, siblings)) {
      if (items.has(name)) continue;
      // Beside a colon, or within quotes, only the key itself is written.
      const bare = hasColon || style !== 'plain';
      items.set(name, {
        label: name,
        kind: 'key',
        detail: `${formDetail(key.shape)}${key.required ? ', required' : ''}`,
        documentation: keyDoc(key),
        insertText: bare ? name : goesOn ? `${name}:` : keySnippet(tree, name, key, flow) + gapBefore(cursor),
        snippet: !bare && !goesOn,
        replace: span,
        sortText: rank(key.required ? 0 : needed.has(name) ? 1 : 2, names.indexOf(name)),
        asksAgain: false,
      });
      if (bare || goesOn || flow) continue;
      for (const [index, { label, body }] of blockSnippets(tree, name, key).entries()) {
        items.set(label, {
          label,
          kind: 'snippet',
          documentation: keyDoc(key),
          insertText: body,
          snippet: true,
          replace: span,
          sortText: rank(3, names.indexOf(name) * 10 + index),
          asksAgain: false,
        });
      }
    }
  }
  return [...items.values()];
}

/** The word at the cursor: what follows it on the line, before there is a colon, is a value and stays. */
function wordOf({ span, text, prefix, hasColon }: Cursor): { readonly span: Span; readonly goesOn: boolean } {
  const gap = text.slice(prefix.length).search(/\s/);
  if (hasColon || gap < 0 || /\s/.test(prefix)) return { span, goesOn: false };
  return { span: { start: span.start, end: span.start + prefix.length + gap }, goesOn: true };
}

/** What parts the new key from a key that follows it in brackets; empty where none does. */
function gapBefore({ tree: { text }, flow, span, text: written }: Cursor): string {
  if (!flow || written !== '') return '';
  let at = span.end;
  while (at < text.length && isBlank(text, at)) at++;
  const runsOn = at < text.length && !isLineEnd(text, at) && !',}]#'.includes(text[at]!);
  return runsOn ? (at > span.end ? ',' : ', ') : '';
}

/** Names that the keys of a block repeat, each once. */
function repeatedItems({ tree, path, siblings, span }: Cursor, repeats: 'let' | 'column'): readonly CompletionItem[] {
  const names = repeats === 'let' ? plainLets(tree) : readColumns(tree, path);
  return names
    .filter((name) => !siblings.includes(name))
    .map((label, index) => ({
      label,
      kind: repeats === 'let' ? 'let' : 'column',
      insertText: repeats === 'let' ? `${escaped(label)}: {from: \${1}, to: \${2}}` : `${escaped(label)}: \${1}`,
      snippet: true,
      replace: span,
      sortText: rank(2, index),
      asksAgain: false,
    }));
}

function partItems(cursor: Cursor): readonly CompletionItem[] {
  const { tree, path, siblings, flow, hasColon, style, span } = cursor;
  if (hasColon || style !== 'plain') return [];
  const example = meaningsAt(tree, path)[0]?.key?.example;
  const maps = describePath(path).flatMap(({ shape }) => formsOf(shape).filter((form) => form.kind === 'map'));
  const repeated = maps.find(({ repeats }) => repeats !== undefined);
  if (repeated?.repeats !== undefined) return repeatedItems(cursor, repeated.repeats);
  return maps.flatMap((map) =>
    partSnippets(tree, map, example, flow, siblings).map(({ label, body }, index): CompletionItem => ({
      label,
      kind: 'snippet',
      detail: `new ${map.what}`,
      insertText: body,
      snippet: true,
      replace: span,
      sortText: rank(3, index),
      asksAgain: false,
    })),
  );
}
