/**
 * A part of the tree and its problems as they stand when the text before them has become longer or shorter. All distances are in UTF-16
 * code units, towards the end of the text where positive.
 */
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import type { SourceEntry, SourceNode } from './tree.ts';

/** With all that stands in it; of its value it is remembered where it stood. */
export function movedEntry(entry: SourceEntry, by: number): SourceEntry {
  const moved = entryMoved(entry, by);
  const before = origins.get(entry.value);
  origins.set(moved.value, before === undefined ? { node: entry.value, by } : { node: before.node, by: before.by + by });
  return moved;
}

/** Of what a value was moved, and how far; undefined where it stands as it was parsed, or `forgetOrigin` was told of it. */
export function originOf(value: SourceNode): Origin | undefined {
  return origins.get(value);
}

/** What is moved of this value from now on comes from itself: what was known of the one before is known of it, too. */
export function forgetOrigin(value: SourceNode): void {
  origins.delete(value);
}

export interface Origin {
  readonly node: SourceNode;
  readonly by: number;
}

const origins = new WeakMap<SourceNode, Origin>();

/** With its edits and the other places that it names. */
export function movedProblem(problem: Problem, by: number): Problem {
  const { span, replacements, related } = problem;
  return {
    ...problem,
    span: movedSpan(span, by),
    ...(replacements && { replacements: replacements.map((edit) => ({ ...edit, span: movedSpan(edit.span, by) })) }),
    ...(related && { related: related.map((other) => ({ ...other, span: movedSpan(other.span, by) })) }),
  };
}

function movedNode(node: SourceNode, by: number): SourceNode {
  const span = movedSpan(node.span, by);
  switch (node.kind) {
    case 'empty':
      return { ...node, span };
    case 'scalar': {
      const moved = { ...node, span, textStart: node.textStart + by };
      return node.offsets === undefined ? moved : { ...moved, offsets: node.offsets.map((offset) => offset + by) };
    }
    case 'list':
      return { ...node, span, items: node.items.map((item) => movedNode(item, by)) };
    case 'map':
      return { ...node, span, entries: node.entries.map((entry) => entryMoved(entry, by)) };
  }
}

function entryMoved({ key, keySpan, span, value }: SourceEntry, by: number): SourceEntry {
  return { key, keySpan: movedSpan(keySpan, by), span: movedSpan(span, by), value: movedNode(value, by) };
}

export function movedSpan({ start, end }: Span, by: number): Span {
  return { start: start + by, end: end + by };
}
