/**
 * Formulas that YAML has cut at a comma.
 *
 * Inside `{}` or `[]` an unquoted comma ends the value, so `{radius: max(a, b), angle: 3}` reaches the reader as
 * the keys `radius`, `b)` and `angle`. A value with more opening than closing parentheses is put together with
 * what follows until they are even, told once, and read as if it had been quoted.
 */
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { quoteProblem } from './quoteFormula.ts';
import type { SourceNode, SourceScalar } from './tree.ts';

/** An entry of a map before duplicate keys are looked for. */
export interface RawEntry {
  readonly key: string;
  readonly keySpan: Span;
  readonly keyPlain: boolean;
  readonly value: SourceNode;
  /** End of the value as it stands here: an alias ends here, its node where it was anchored. */
  readonly end: number;
  /** Whether the key is none, which has been reported. */
  readonly keyless?: true;
}

/** Items of a list, those that were one formula put together again; each is reported. */
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

/** Entries of a map, those that were one formula or one figure put together again; each is reported. */
export function mergeSplitEntries(entries: readonly RawEntry[], text: string, problems: Problem[]): readonly RawEntry[] {
  const merged: RawEntry[] = [];
  for (let i = 0; i < entries.length; i++) {
    const entry = entries[i];
    if (entry === undefined) continue;
    const endOf = (k: number): number | undefined => entries[k]?.end;
    const comma = lastOfDecimalCommas(entries, i, text);
    if (comma > i) {
      const end = entries[comma]?.keySpan.end ?? entry.end;
      merged.push({ ...entry, value: decimalComma(entry.value.span.start, end, text, problems), end });
      i = comma;
      continue;
    }
    const last = isOpen(entry.value) ? closingIndex(entries.length, i, text, entry.value.span.start, endOf) : undefined;
    const end = last === undefined ? undefined : endOf(last);
    if (last === undefined || end === undefined) {
      merged.push(entry);
      continue;
    }
    merged.push({ ...entry, value: joined(entry.value.span.start, end, text, problems), end });
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

/**
 * `{radius: 1,5 mm ± 0,1 mm}`: figures on both sides of a comma without a space, what follows it without a value.
 * @returns index of the last entry that belongs to the value of entry `from`; `from` itself where there is no such comma
 */
function lastOfDecimalCommas(entries: readonly RawEntry[], from: number, text: string): number {
  const value = entries[from]?.value;
  if (value?.kind !== 'scalar' || value.style !== 'plain' || isOpen(value)) return from;
  let written = value.text;
  let end = value.span.end;
  let last = from;
  for (let next = entries[from + 1]; next !== undefined && last - from < LOOK_AHEAD; next = entries[last + 1]) {
    const continues = next.keyPlain && next.value.kind === 'empty' && /^\d/.test(next.key) && text.slice(end, next.keySpan.start) === ',';
    if (!continues || !/(?:^|[^\d.])\d+$/.test(written)) break;
    written = next.key;
    end = next.keySpan.end;
    last++;
  }
  return last;
}

function decimalComma(start: number, end: number, text: string, problems: Problem[]): SourceNode {
  const span = { start, end };
  const written = text.slice(start, end);
  const pointed = written.replaceAll(',', '.');
  // 1,500 may be a thousand and a half or one and a half: only the person knows.
  const grouped = /(?:^|\D)[1-9]\d{0,2},\d{3}(?!\d)/.test(written);
  problems.push({
    code: 'bad-quantity',
    severity: 'error',
    span,
    message: grouped ? `\`${written}\` has a comma` : `\`${written}\` has a decimal comma`,
    cure: grouped ? `Write \`${pointed}\`, or \`${written.replaceAll(',', '')}\` if the comma groups thousands` : `Write \`${pointed}\``,
    ...(grouped ? {} : { replacements: [{ span, text: pointed }] }),
  });
  return { kind: 'empty', span, damaged: true };
}
