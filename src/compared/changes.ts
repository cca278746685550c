/** What differs between two states of a file, one change at a time, for the view to list. */
import { addKey, applyEdits, removeKey, setValue } from '../definition/edit.ts';
import { parseSource } from '../definition/source/parse.ts';
import type { SourceNode } from '../definition/source/tree.ts';
import type { Span } from '../definition/span.ts';
import { printable } from '../outputs/paint.ts';
import type { ChangedValue } from '../protocol/messages.ts';
import type { FileChanges, PartName } from '../studies/compare/comparison.ts';

export interface ListedChange {
  readonly changed: Omit<ChangedValue, 'effects'>;
  /** Undefined where there is nothing to be worked out. */
  readonly alone: (() => Alone | undefined) | undefined;
}

/**
 * Two texts that differ in one change alone: the old one and the same with this change, or the new one without it and with it; undefined
 * where they cannot be written. A sentence where it is known without solving what this alone does, or why that cannot be told.
 */
export type Alone = { readonly was: string; readonly is: string } | string;

/** Values first, in the order of the file; then words, then whole parts. */
export function listChanges(
  { values, words, added, gone, renamed, unread }: FileChanges,
  was: string,
  is: string,
): readonly ListedChange[] {
  const spanAt = spansIn(is);
  const part = (
    name: PartName,
    old: string | undefined,
    now: string | undefined,
    alone: (path: string) => Alone | undefined,
  ): ListedChange => {
    const path = pathOf(name);
    return { changed: { path, was: old, is: now, place: spanAt(path) }, alone: () => alone(path) };
  };
  return [
    ...values.map((change): ListedChange => {
      const [old, now] = [change.was?.text, change.is?.text];
      return {
        changed: { path: change.path, was: shown(old), is: shown(now), place: change.is?.span },
        alone: change.unread === undefined ? () => oneChange(was, is, change.was?.path ?? change.path, change.path, old, now) : undefined,
      };
    }),
    ...words.map(({ path, was: old, is: now, unread: side }): ListedChange => ({
      changed: { path, was: shown(old), is: shown(now), place: spanAt(path) },
      alone: side === undefined ? () => oneChange(was, is, path, path, old, now) : undefined,
    })),
    ...renamed.map(({ block, was: old, is: now }) =>
      part({ block, name: now }, old, now, () => 'A name alone changes nothing that is worked out'),
    ),
    ...gone.map((name) => part(name, 'there', undefined, (path) => without(was, path, (less) => ({ was, is: less })))),
    ...added.map((name) => part(name, undefined, 'there', (path) => without(is, path, (less) => ({ was: less, is })))),
    ...unread.map(({ side, ...name }) =>
      part(name, side === 'was' ? 'not understood' : 'there', side === 'is' ? 'not understood' : 'there', () => NOT_UNDERSTOOD[side]),
    ),
  ];
}

function shown(text: string | undefined): string | undefined {
  return text === undefined ? undefined : printable(text);
}

/** In the old text where what is to stand there can be written into it; what is gone is put back into the new one. */
function oneChange(
  was: string,
  is: string,
  oldPath: string,
  newPath: string,
  old: string | undefined,
  now: string | undefined,
): { readonly was: string; readonly is: string } | undefined {
  if (now !== undefined) {
    const edit = old === undefined ? added(was, newPath, now) : setValue(was, oldPath, now);
    return edit && { was, is: applyEdits(was, [edit]) };
  }
  const back = old === undefined ? undefined : added(is, oldPath, old);
  return back && { was: applyEdits(is, [back]), is };
}

const NOT_UNDERSTOOD = {
  was: 'What this alone does cannot be told: the part is not understood in what is compared with',
  is: 'What this alone does cannot be told: the part is not understood in this file',
} as const;

/** A part that came is taken out of the new text, one that went out of the old: what stands nowhere else need not be written anew. */
function without(text: string, path: string, sides: (less: string) => Alone): Alone | undefined {
  const edit = removeKey(text, path);
  return edit && sides(applyEdits(text, [edit]));
}

function added(text: string, path: string, written: string) {
  const dot = path.lastIndexOf('.');
  return addKey(text, path.slice(0, Math.max(0, dot)), path.slice(dot + 1), written);
}

/** E.g. `rods.link`, `levers.shaft.arms.arm`, `pedal`. */
function pathOf({ block, name }: PartName): string {
  if (block === 'pedal') return 'pedal';
  if (block !== 'arms' && block !== 'drums') return `${block}.${name}`;
  const dot = name.indexOf('.');
  return `levers.${name.slice(0, dot)}.${block}${name.slice(dot)}`;
}

/** Where the value at a path stands in a text; of a part its name. */
function spansIn(text: string): (path: string) => Span | undefined {
  const { root } = parseSource(text);
  return (path) => (path === '' ? undefined : spanAt(root, path));
}

function spanAt(node: SourceNode | undefined, path: string): Span | undefined {
  if (node?.kind === 'list') {
    const [index = '', ...rest] = path.split('.');
    const item = /^\d+$/.test(index) ? node.items[Number(index)] : undefined;
    return rest.length === 0 ? item?.span : spanAt(item, rest.join('.'));
  }
  if (node?.kind !== 'map') return undefined;
  for (const { key, keySpan, value } of node.entries) {
    if (key === path) return value.kind === 'scalar' ? value.span : keySpan;
    const found = path.startsWith(`${key}.`) ? spanAt(value, path.slice(key.length + 1)) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}
