/** Growing the selection: from the word under the cursor over its value, key and block to the whole file. */
import type { SourceNode, SourceScalar } from '../definition/source/tree.ts';
import type { Span } from '../definition/span.ts';
import { nameAt, type NameIndex } from './names.ts';

/** Stretches round the offset, the innermost first, each a part of the next and smaller than it; the last is the whole text. */
export function selectionSpans(index: NameIndex, offset: number): readonly Span[] {
  const found: Span[] = [];
  const name = nameAt(index, offset);
  const { root, text } = index;
  if (root !== undefined) descend(root, offset, found, text);
  const spans = [...(name === undefined ? [] : [name.span]), ...found.reverse(), { start: 0, end: text.length }];
  return spans.reduce<Span[]>((kept, span) => {
    const last = kept.at(-1);
    const grows = last === undefined || (span.start <= last.start && span.end >= last.end && span.end - span.start > last.end - last.start);
    return grows ? [...kept, span] : kept;
  }, []);
}

/** Adds the stretches from the outermost to the innermost. */
function descend(node: SourceNode, offset: number, found: Span[], text: string): void {
  if (!holds(node.span, offset)) return;
  found.push(node.span);
  switch (node.kind) {
    case 'scalar':
      found.push(...inScalar(node, offset, text));
      return;
    case 'list': {
      const item = node.items.find(({ span }) => holds(span, offset));
      if (item !== undefined) descend(item, offset, found, text);
      return;
    }
    case 'map': {
      const entry = node.entries.find(({ span }) => holds(span, offset));
      if (entry === undefined) return;
      found.push(entry.span);
      if (holds(entry.keySpan, offset)) found.push(entry.keySpan);
      else descend(entry.value, offset, found, text);
      return;
    }
    case 'empty':
      return;
  }
}

/** The text between the quotes, and the word in it. */
function inScalar(node: SourceScalar, offset: number, text: string): readonly Span[] {
  const quoted = node.style === 'single' || node.style === 'double';
  const inner = quoted ? { start: node.span.start + 1, end: node.span.end - 1 } : node.span;
  if (!holds(inner, offset)) return [];
  let { start, end } = { start: offset, end: offset };
  while (start > inner.start && isWord(text[start - 1])) start--;
  while (end < inner.end && isWord(text[end])) end++;
  return start === end ? [inner] : [inner, { start, end }];
}

function holds(span: Span, offset: number): boolean {
  return span.start <= offset && offset <= span.end;
}

function isWord(character: string | undefined): boolean {
  return character !== undefined && /[\p{L}\p{N}_.%°]/u.test(character);
}
