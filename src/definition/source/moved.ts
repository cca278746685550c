/**
 * A part of the tree and its problems as they stand when the text before them has become longer or shorter. All distances are in UTF-16
 * code units, towards the end of the text where positive.
 */
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import type { SourceEntry, SourceNode } from './tree.ts';

/** With all that stands in it. */
export function movedEntry(entry: SourceEntry, by: number): SourceEntry {
  const { key, keySpan, span, value } = entry;
  return { key, keySpan: movedSpan(keySpan, by), span: movedSpan(span, by), value: movedNode(value, by) };
}

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
      return { ...node, span, entries: node.entries.map((entry) => movedEntry(entry, by)) };
  }
}

function movedSpan({ start, end }: Span, by: number): Span {
  return { start: start + by, end: end + by };
}
