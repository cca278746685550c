/**
 * Formulas that YAML has cut at a comma.
 *
 * Inside `{}` or `[]` an unquoted comma ends the value, so `{radius: max(a, b), angle: 3}` reaches the reader as
 * the keys `radius`, `b)` and `angle`. A value with more opening than closing parentheses is put together with
 * what follows until they are even, told once, and read as if it had been quoted.
 */
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { quoteProblem } from './mishap.ts';
import type { SourceNode, SourceScalar } from './tree.ts';

/** An entry of a map before duplicate keys are looked for. */
export interface RawEntry {
  readonly key: string;
  readonly keySpan: Span;
  readonly keyPlain: boolean;
  readonly value: SourceNode;
}

export function mergeSplitItems(items: readonly SourceNode[], text: string, problems: Problem[]): readonly SourceNode[] {
  if (!items.some(isOpen)) return items;
  const merged: SourceNode[] = [];
  for (let i = 0; i < items.length; i++) {
    const item = items[i];
    if (item === undefined) continue;
    const last = isOpen(item) ? closingIndex(items.length, i, text, item.span.start, (k) => items[k]?.span.end) : undefined;
    const end = last === undefined ? undefined : items[last]?.span.end;
    if (last === undefined || end === undefined) {
      merged.push(item);
      continue;
    }
    merged.push(joined(item.span.start, end, text, problems));
    i = last;
  }
  return merged;
}

export function mergeSplitEntries(entries: readonly RawEntry[], text: string, problems: Problem[]): readonly RawEntry[] {
  const merged: RawEntry[] = [];
  for (let i = 0; i < entries.length; i++) {
    const entry = entries[i];
    if (entry === undefined) continue;
    const endOf = (k: number): number | undefined => {
      const other = entries[k];
      return other === undefined ? undefined : Math.max(other.keySpan.end, other.value.span.end);
    };
    const next = entries[i + 1];
    if (next !== undefined && isDecimalComma(entry, next, text)) {
      merged.push({ ...entry, value: decimalComma(entry.value.span.start, next.keySpan.end, text, problems) });
      i++;
      continue;
    }
    const last = isOpen(entry.value) ? closingIndex(entries.length, i, text, entry.value.span.start, endOf) : undefined;
    const end = last === undefined ? undefined : endOf(last);
    if (last === undefined || end === undefined) {
      merged.push(entry);
      continue;
    }
    merged.push({ ...entry, value: joined(entry.value.span.start, end, text, problems) });
    i = last;
  }
  return merged;
}

function isOpen(node: SourceNode): boolean {
  return node.kind === 'scalar' && node.style === 'plain' && balance(node.text) > 0;
}

/** Index of the entry at which the parentheses opened by entry `from` are even again; undefined where they never are. */
function closingIndex(
  count: number,
  from: number,
  text: string,
  start: number,
  endOf: (index: number) => number | undefined,
): number | undefined {
  let open = 0;
  let counted = start;
  for (let k = from; k < Math.min(count, from + LOOK_AHEAD); k++) {
    const end = endOf(k);
    if (end === undefined || end < counted) return undefined;
    open += balance(text.slice(counted, end));
    counted = end;
    if (open <= 0) return open === 0 ? k : undefined;
  }
  return undefined;
}

/** Pieces a formula may have been cut into; bounds the work on a text full of opening parentheses. */
const LOOK_AHEAD = 40;

function balance(text: string): number {
  let open = 0;
  for (const character of text) {
    if (character === '(') open++;
    else if (character === ')') open--;
  }
  return open;
}

function joined(start: number, end: number, text: string, problems: Problem[]): SourceScalar {
  const span = { start, end };
  problems.push(quoteProblem(span, text));
  const written = text.slice(start, end);
  return {
    kind: 'scalar',
    span,
    text: written,
    textStart: start,
    exact: true,
    style: 'plain',
    multiline: /[\r\n]/.test(written),
    inFlow: true,
  };
}

/** `{radius: 1,5 mm}`: figures on both sides of a comma without a space, the second without a value. */
function isDecimalComma(entry: RawEntry, next: RawEntry, text: string): boolean {
  const value = entry.value;
  return (
    value.kind === 'scalar' &&
    value.style === 'plain' &&
    /^[+-]?\d+$/.test(value.text) &&
    next.keyPlain &&
    next.value.kind === 'empty' &&
    /^\d/.test(next.key) &&
    text.slice(value.span.end, next.keySpan.start) === ','
  );
}

function decimalComma(start: number, end: number, text: string, problems: Problem[]): SourceNode {
  const span = { start, end };
  const written = text.slice(start, end);
  const cure = written.replace(',', '.');
  problems.push({
    code: 'bad-quantity',
    severity: 'error',
    span,
    message: `\`${written}\` has a decimal comma`,
    cure: `Write \`${cure}\``,
    replacements: [{ span, text: cure }],
  });
  return { kind: 'empty', span, damaged: true };
}
