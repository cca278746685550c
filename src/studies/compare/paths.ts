/** Places of a file by the keys that lead to them. */
import { parseSource } from '../../definition/source/parse.ts';
import type { SourceEntry, SourceNode } from '../../definition/source/tree.ts';
import type { Block } from './comparison.ts';

/**
 * The path in the file of a field that the definition holds at another place: `position`, `form` and the like are levels of the
 * definition alone, and a thing's kind is for the most part told by which keys are there.
 * @param part path of the part
 * @param key place of the field within the part, as in the definition
 */
export function pathInFile(block: Block, part: string, key: string): string {
  const steps = key.split('.').filter((step) => !LEVELS.has(step));
  const last = steps.at(-1);
  const isOwnKind = key === 'ends.kind' || (block === 'springs' && key === 'kind');
  if (last === 'point' || (last === 'kind' && !isOwnKind)) steps.pop();
  if (block === 'springs' && key === 'from.pin') steps.pop();
  const written = steps.map((step) => AS_WRITTEN[step] ?? step.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`));
  return [part, ...written].filter((step) => step !== '').join('.');
}

const LEVELS: ReadonlySet<string> = new Set(['position', 'form', 'shape', 'place', 'direction', 'value']);
const AS_WRITTEN: Readonly<Record<string, string>> = { x: '0', y: '1', z: '2', centre: 'circle', corners: 'polygon' };

/** Whether something stands at a path of a text, understood or not. */
export function standsIn(text: string): (path: string) => boolean {
  let root: { readonly node: SourceNode | undefined } | undefined;
  return (path) => {
    root ??= { node: parseSource(text).root };
    return leadsTo(root.node, path);
  };
}

/** The path of the innermost entry or item of a text that holds an offset; empty where none does. */
export function pathsIn(text: string): (offset: number) => string {
  let root: { readonly node: SourceNode | undefined } | undefined;
  return (offset) => {
    root ??= { node: parseSource(text).root };
    return pathAt(root.node, offset);
  };
}

function leadsTo(node: SourceNode | undefined, path: string): boolean {
  if (path === '') return true;
  if (node?.kind !== 'map') return false;
  return node.entries.some(({ key, value }) => key === path || (path.startsWith(`${key}.`) && leadsTo(value, path.slice(key.length + 1))));
}

function pathAt(node: SourceNode | undefined, offset: number): string {
  if (node?.kind === 'map') {
    const entry = node.entries.find((each) => holds(each, offset));
    return entry === undefined ? '' : join(entry.key, pathAt(entry.value, offset));
  }
  if (node?.kind !== 'list') return '';
  const index = node.items.findIndex((item) => holds(item, offset));
  return index < 0 ? '' : join(String(index), pathAt(node.items[index], offset));
}

function holds({ span }: SourceNode | SourceEntry, offset: number): boolean {
  return offset >= span.start && offset <= span.end;
}

function join(first: string, rest: string): string {
  return rest === '' ? first : `${first}.${rest}`;
}
