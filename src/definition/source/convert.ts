/**
 * From the YAML library's document to the source tree: aliases resolved within a bound, duplicate keys told,
 * formulas that fell apart at a comma put together again.
 */
import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml';
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { offsetsOf } from './escapes.ts';
import { mergeSplitEntries, mergeSplitItems, type RawEntry } from './splitFormula.ts';
import type { Colonless } from './colonless.ts';
import type { SourceEntry, SourceMap, SourceNode } from './tree.ts';

/** Nodes that aliases may add to a file: far beyond any use, far below what could stall the editor. */
const ALIAS_BOUND = 20_000;

/** What was found wrong with a text before it was composed. */
export interface Mistakes {
  /** Text that was blanked because of a reported mistake. */
  readonly masks: readonly Span[];
  /** Places of mistakes that were reported and not blanked: nodes beginning there are not trusted. */
  readonly damages: readonly Span[];
  /** Keys that lack their colon, which was put over their last letters. */
  readonly colonless: readonly Colonless[];
}

/** @param text with all of these mended as far as they are */
export function convert(
  contents: Node | null,
  text: string,
  { masks, damages, colonless }: Mistakes,
): { root: SourceNode | undefined; problems: Problem[] } {
  const problems: Problem[] = [];
  const anchors = new Map<string, { node: SourceNode | undefined; size: number }>();
  const damagedStarts = new Set(damages.map((span) => span.start));
  let aliased = 0;
  let size = 0;
  let innermost: { readonly start: number; readonly open: string; readonly closing: string; readonly index: number } | undefined;

  const empty = (at: number, damaged: boolean): SourceNode => ({ kind: 'empty', span: { start: at, end: at }, damaged });

  /** Whether blanked text follows on the line of the offset with nothing between. */
  const maskFollows = (offset: number): boolean =>
    masks.some((mask) => mask.start >= offset && mask.start - offset < 200 && /^[ \t:,]*$/.test(text.slice(offset, mask.start)));

  const node = (source: Node | null | undefined, fallback: number, inFlow: boolean): SourceNode => {
    size++;
    if (source === null || source === undefined) return empty(fallback, maskFollows(fallback));
    if (isAlias(source)) return alias(source.source, spanOf(source), fallback);
    const anchor = 'anchor' in source ? source.anchor : undefined;
    if (anchor !== undefined) anchors.set(anchor, { node: undefined, size: 0 });
    const before = size;
    const made = content(source, inFlow, fallback);
    if (anchor !== undefined) anchors.set(anchor, { node: made, size: size - before + 1 });
    return made;
  };

  const content = (source: Node, inFlow: boolean, fallback: number): SourceNode => {
    if (isScalar(source)) return scalar(source, inFlow, fallback);
    if (isMap(source)) return map(source);
    if (isSeq(source)) return list(source);
    return empty(fallback, true);
  };

  const alias = (name: string, span: Span, fallback: number): SourceNode => {
    const target = anchors.get(name);
    if (target === undefined) {
      problems.push({
        code: 'unknown-name',
        severity: 'error',
        span,
        message: `There is no anchor \`&${name}\` before this alias`,
        cure: `Write \`&${name}\` before the value to be used again`,
      });
      return empty(fallback, true);
    }
    aliased += target.size;
    if (target.node === undefined || aliased > ALIAS_BOUND) {
      const message =
        target.node === undefined
          ? `\`*${name}\` stands inside the value that it repeats`
          : `Aliases repeat more than ${ALIAS_BOUND} values`;
      problems.push({ code: 'alias-bound', severity: 'error', span, message, cure: 'Write the value out' });
      return empty(fallback, true);
    }
    size += target.size;
    return target.node;
  };

  const scalar = (source: Scalar, inFlow: boolean, fallback: number): SourceNode => {
    const span = spanOf(source);
    const value = typeof source.value === 'string' ? source.value : '';
    const style =
      source.type === 'QUOTE_DOUBLE' ? 'double' : source.type === 'QUOTE_SINGLE' ? 'single' : source.type === 'PLAIN' ? 'plain' : 'block';
    if (style === 'plain' && (span.start === span.end || EMPTY_WORDS.has(value))) {
      return span.start === span.end ? empty(fallback, maskFollows(fallback)) : { kind: 'empty', span, damaged: false };
    }
    if (damages.some((damage) => damage.start >= span.start && damage.start < span.end) || (style === 'plain' && maskFollows(span.end)))
      return { kind: 'empty', span, damaged: true };
    const quoted = style === 'double' || style === 'single';
    const textStart = quoted ? span.start + 1 : span.start;
    const raw = text.slice(textStart, quoted ? span.end - 1 : span.end);
    const multiline = /[\r\n]/.test(raw);
    const offsets = quoted && !multiline && raw !== value ? offsetsOf(raw, style, textStart, value.length) : undefined;
    const escaped = offsets === undefined ? {} : { offsets };
    return { kind: 'scalar', span, text: value, textStart, exact: raw === value, ...escaped, style, multiline, inFlow };
  };

  const list = (source: YAMLSeq): SourceNode => {
    const flow = source.flow === true;
    const start = source.range?.[0] ?? 0;
    const raw = source.items.map((item) => {
      const itemNode = isPairLike(item) ? pairAsMap(item) : node(item as Node | null, start, flow);
      return itemNode;
    });
    const items = flow ? mergeSplitItems(raw, text, problems) : raw;
    const closed = !flow || closedAt(source);
    const end = flow ? flowEnd(source, closed) : Math.max(start, ...lastEnd(items));
    const [first] = items;
    if (!closed && first?.kind === 'list' && first.flow && !first.damaged) {
      // What stands behind it was meant for the block around.
      problems.push(twiceOpened(start));
      return { ...first, span: { start, end }, damaged: true };
    }
    if (!closed) tellUnclosed({ start, end }, '[', ']');
    const damaged = !closed || damagedStarts.has(start) || touches({ start, end });
    return { kind: 'list', span: { start, end }, flow, items, damaged };
  };

  /** `[a: b]` is, to YAML, a list holding a map of one entry. */
  const pairAsMap = (pair: Pair): SourceNode => {
    const entry = rawEntry(pair, true);
    return mapOf([entry], { start: entry.keySpan.start, end: entry.end }, true, false);
  };

  const map = (source: YAMLMap): SourceNode => {
    const flow = source.flow === true;
    const start = source.range?.[0] ?? 0;
    const raw = source.items.map((pair) => rawEntry(pair, flow));
    const entries = flow ? mergeSplitEntries(raw, text, problems) : raw;
    const closed = !flow || closedAt(source);
    const end = flow ? flowEnd(source, closed) : (entries.at(-1)?.end ?? start);
    if (!closed) tellUnclosed({ start, end }, '{', '}');
    if (damagedStarts.has(start) && !flow) return { kind: 'empty', span: { start, end }, damaged: true };
    return mapOf(entries, { start, end }, flow, !closed || touches({ start, end }));
  };

  const rawEntry = (pair: Pair, flow: boolean): RawEntry => {
    const source = pair.key as Node | null;
    const composed = source === null ? { start: 0, end: 0 } : spanOf(source);
    const mended = colonless.find(({ span }) => span.start === composed.start);
    const keySpan = mended?.span ?? composed;
    if (!isScalar(source)) {
      problems.push({
        code: 'wrong-shape',
        severity: 'error',
        span: keySpan,
        message: 'A key must be a plain word',
        cure: 'Write `name: value`',
      });
    }
    const written = isScalar(source) && typeof source.value === 'string' ? source.value : text.slice(keySpan.start, keySpan.end);
    const key = mended?.key ?? written;
    if (isScalar(source) && source.anchor !== undefined) {
      anchors.set(source.anchor, { node: scalar(source, flow, keySpan.end), size: 1 });
    }
    const value = node(pair.value as Node | null, keySpan.end, flow);
    const end = Math.max(keySpan.end, isAlias(pair.value) ? spanOf(pair.value).end : value.span.end);
    const keyless = isScalar(source) ? {} : { keyless: true as const };
    return { key, keySpan, keyPlain: isScalar(source) && source.type === 'PLAIN', value, end, ...keyless };
  };

  const mapOf = (raw: readonly RawEntry[], span: Span, flow: boolean, damaged: boolean): SourceMap => {
    const written = raw.filter(({ keyless }) => keyless !== true);
    const entries = written.map(({ key, keySpan, value, end }): SourceEntry => ({
      key,
      keySpan,
      span: { start: keySpan.start, end },
      value,
    }));
    return { kind: 'map', span, flow, entries: firstOfEach(entries, problems), damaged: damaged || written.length < raw.length };
  };

  const closedAt = (source: YAMLMap | YAMLSeq): boolean => {
    const first = text[source.range?.[0] ?? 0];
    const last = text[(source.range?.[1] ?? 0) - 1];
    // A pair inside `[]` is a map without brackets.
    return isMap(source) ? first !== '{' || last === '}' : last === ']';
  };

  /** An unclosed bracket reaches to the end of its last entry. */
  const flowEnd = (source: YAMLMap | YAMLSeq, closed: boolean): number => {
    const end = source.range?.[1] ?? 0;
    return closed ? end : (source.range?.[0] ?? 0) + text.slice(source.range?.[0] ?? 0, end).trimEnd().length;
  };

  const touches = (span: Span): boolean => isTouched(span, masks, text);

  /** Of brackets within each other that all stay open the innermost is told, with what closes them all. */
  const tellUnclosed = (span: Span, open: string, close: string): void => {
    const inner = innermost !== undefined && innermost.start > span.start && innermost.start < span.end ? innermost : undefined;
    innermost = {
      start: inner?.start ?? span.start,
      open: inner?.open ?? open,
      closing: `${inner?.closing ?? ''}${close}`,
      index: inner?.index ?? problems.length,
    };
    problems[innermost.index] = {
      code: 'yaml-syntax',
      severity: 'error',
      span: { start: innermost.start, end: innermost.start + 1 },
      message: `\`${innermost.open}\` is opened here and not closed`,
      cure: `Close it with \`${innermost.closing}\``,
    };
  };

  const root = contents === null ? undefined : node(contents, 0, false);
  return { root: root?.kind === 'empty' && root.span.start === root.span.end ? undefined : root, problems };
}

function twiceOpened(start: number): Problem {
  const span = { start, end: start + 1 };
  const cure = 'Remove one of the two';
  return { code: 'yaml-syntax', severity: 'error', span, message: '`[` stands twice', cure, replacements: [{ span, text: '' }] };
}

/** Whether blanked text stands in a stretch, or behind it on its line. */
export function isTouched({ start, end }: Span, masks: readonly Span[], text: string): boolean {
  return masks.some((mask) => {
    if (mask.start < end && mask.end > start) return true;
    return mask.start >= end && mask.start - end < 200 && /^[ \t]*$/.test(text.slice(end, mask.start));
  });
}

/** Of equal keys of one block the first; the others are reported. */
export function firstOfEach(entries: readonly SourceEntry[], problems: Problem[]): readonly SourceEntry[] {
  const seen = new Map<string, Span>();
  return entries.filter(({ key, keySpan }) => {
    const first = seen.get(key);
    if (first === undefined) {
      seen.set(key, keySpan);
      return true;
    }
    problems.push({
      code: 'duplicate-key',
      severity: 'error',
      span: keySpan,
      message: `The key \`${key}\` stands twice in this block; only the first is read`,
      cure: 'Remove or rename one of the two',
      related: [{ span: first, message: 'The first is here' }],
    });
    return false;
  });
}

/** Plain words that YAML 1.2 reads as no value. */
const EMPTY_WORDS: ReadonlySet<string> = new Set(['null', 'Null', 'NULL', '~']);

function spanOf(node: Node): Span {
  return { start: node.range?.[0] ?? 0, end: node.range?.[1] ?? 0 };
}

function isPairLike(item: unknown): item is Pair {
  return typeof item === 'object' && item !== null && 'key' in item;
}

function lastEnd(items: readonly SourceNode[]): number[] {
  const last = items.at(-1);
  return last === undefined ? [] : [last.span.end];
}
