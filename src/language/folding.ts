/** Folding: blocks, parts, values over several lines, and runs of comments. */
import type { SourceNode } from '../definition/source/tree.ts';
import { indexLines, type LineIndex } from '../definition/span.ts';
import type { NameIndex } from './names.ts';

/** Lines from 0, the first stays to be seen, the last is the last that is hidden. */
export interface FoldingRange {
  readonly startLine: number;
  readonly endLine: number;
  /** Absent for a part of the tree. */
  readonly kind?: 'comment';
}

/** In the order of their first lines, at most one a line. */
export function foldingRanges(index: NameIndex): readonly FoldingRange[] {
  const lines = indexLines(index.text);
  const ranges = new Map<number, FoldingRange>();
  const texts: { readonly from: number; readonly to: number }[] = [];
  const fold = (from: number, node: SourceNode): void => {
    const startLine = lines.positionAt(from).line;
    const endLine = lastLine(node, index.text, lines);
    // Of several that begin on a line the outermost is told first.
    if (endLine > startLine && !ranges.has(startLine)) ranges.set(startLine, { startLine, endLine });
  };
  const walk = (node: SourceNode): void => {
    if (node.kind === 'scalar' && node.multiline) {
      texts.push({ from: lines.positionAt(node.span.start).line, to: lines.positionAt(node.span.end).line });
    }
    if (node.kind === 'list') {
      for (const item of node.items) {
        if (!within(item, node.span.start, node.span.end)) continue;
        fold(item.span.start, item);
        walk(item);
      }
    }
    if (node.kind !== 'map') return;
    for (const entry of node.entries) {
      // What an alias repeats is folded where it stands.
      if (!within(entry.value, entry.keySpan.end, entry.span.end)) continue;
      fold(entry.keySpan.start, entry.value);
      walk(entry.value);
    }
  };
  if (index.root !== undefined) walk(index.root);
  for (const range of commentRuns(lines, texts)) if (!ranges.has(range.startLine)) ranges.set(range.startLine, range);
  return [...ranges.values()].sort((a, b) => a.startLine - b.startLine);
}

function within(node: SourceNode, start: number, end: number): boolean {
  return node.span.start >= start && node.span.end <= end;
}

/** The last line of a value that folding hides; a line that begins with the closing bracket stays to be seen. */
function lastLine(node: SourceNode, text: string, lines: LineIndex): number {
  let end = node.span.end;
  while (end > node.span.start && /\s/.test(text[end - 1] ?? '')) end--;
  const { line } = lines.positionAt(end);
  const isFlow = (node.kind === 'map' || node.kind === 'list') && node.flow;
  return isFlow && /^\s*[\]}]/.test(lines.lineText(line)) ? line - 1 : line;
}

/** Two or more lines of nothing but comment; a `#` within a text over several lines is none. */
function commentRuns(lines: LineIndex, texts: readonly { readonly from: number; readonly to: number }[]): readonly FoldingRange[] {
  const inText = new Set<number>();
  for (const { from, to } of texts) for (let line = from + 1; line < to; line++) inText.add(line);
  const runs: FoldingRange[] = [];
  let start: number | undefined;
  for (let line = 0; line <= lines.lineCount; line++) {
    if (line < lines.lineCount && !inText.has(line) && /^\ufeff?[ \t]*#/.test(lines.lineText(line))) {
      start ??= line;
      continue;
    }
    if (start !== undefined && line - start > 1) runs.push({ startLine: start, endLine: line - 1, kind: 'comment' });
    start = undefined;
  }
  return runs;
}
