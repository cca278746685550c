/**
 * Edits of a throttle file that leave every other character as it was: comments, line ends, byte order mark,
 * alignment. An edit is a replacement for the editor to carry out, never a new text of the whole file.
 */
import type { Value } from './definition.ts';
import { PLACE_UNIT } from './dimensions.ts';
import type { Replacement } from './problem.ts';
import { fromSi, parseUnit } from './quantity/units.ts';
import { parseSource } from './source/parse.ts';
import type { SourceEntry, SourceMap, SourceNode, SourceScalar } from './source/tree.ts';
import type { Span } from './span.ts';

/**
 * Writes another text in place of one value, in quotes where its surroundings need them.
 * @param path keys joined by dots and list places by number, as in `Value.path`
 * @returns undefined where no single value stands at the path
 */
export function setValue(text: string, path: string, written: string): Replacement | undefined {
  const node = nodeAt(parseSource(text).root, path);
  return node?.kind === 'scalar' ? replaceScalar(text, node, written) : undefined;
}

/**
 * Gives a plain figure another nominal value, in the unit in which it is written; a tolerance stays.
 * @param nominal SI
 * @param digits significant digits
 * @returns undefined for a value that follows from a formula, or one that is not in the text
 */
export function setFigure(text: string, value: Value, nominal: number, digits = DEFAULT_DIGITS): Replacement | undefined {
  if (value.formula !== undefined || !Number.isFinite(nominal)) return undefined;
  const node = nodeAt(parseSource(text).root, value.path);
  if (node?.kind !== 'scalar') return undefined;
  const parts = FIGURE.exec(node.text);
  if (parts === null) return undefined;
  const [, , gap = '', unit = '', tail = ''] = parts;
  const figure = formatFigure(nominal, unit === '' ? PLACE_UNIT[value.dimension] : value.unit, digits);
  return figure === undefined ? undefined : replaceScalar(text, node, `${figure}${gap}${unit}${tail}`);
}

/**
 * Adds a key to a block of keys, at its end.
 * @param path of the block, such as `rods.drag_link`
 * @returns undefined where the block is not there or has the key already
 */
export function addKey(text: string, path: string, key: string, written: string): Replacement | undefined {
  const node = nodeAt(parseSource(text).root, path);
  if (node?.kind !== 'map' || node.damaged || node.entries.some((entry) => entry.key === key)) return undefined;
  const entry = `${key}: ${needsQuotes(written, node.flow) ? quoted(written) : written}`;
  return node.flow ? addToFlow(node, entry) : addToBlock(text, node, entry);
}

/**
 * Takes a key with all that stands under it out of a block of keys; where it is the last of the block, the block too, unless that is the file.
 * @param path such as `springs.second`
 * @returns undefined where the key is not there, or does not stand on lines of its own
 */
export function removeKey(text: string, path: string): Replacement | undefined {
  const { root } = parseSource(text);
  const trail = root === undefined ? undefined : trailTo(root, path);
  // The innermost that is not all that its own block holds.
  const at = trail?.findLastIndex(({ map }) => map.flow || map.entries.length > 1) ?? -1;
  const found = trail?.[Math.max(0, at)];
  if (found === undefined || trail?.some(({ map }) => map.damaged) === true) return undefined;
  const span = found.map.flow ? spanInFlow(found) : linesOf(text, found.entry);
  return span && { span, text: '' };
}

interface Standing {
  readonly map: SourceMap;
  readonly entry: SourceEntry;
}

/** Every entry on the way to a path, from the outside; undefined where the way is not through blocks of keys alone. */
function trailTo(node: SourceNode, path: string): readonly Standing[] | undefined {
  if (node.kind !== 'map') return undefined;
  for (const entry of node.entries) {
    if (entry.key === path) return [{ map: node, entry }];
    if (!path.startsWith(`${entry.key}.`)) continue;
    const rest = trailTo(entry.value, path.slice(entry.key.length + 1));
    if (rest !== undefined) return [{ map: node, entry }, ...rest];
  }
  return undefined;
}

/** With the comma on one side of it. */
function spanInFlow({ map: { entries }, entry }: Standing): Span {
  const index = entries.indexOf(entry);
  const [before, next] = [entries[index - 1], entries[index + 1]];
  if (before !== undefined) return { start: before.value.span.end, end: entry.value.span.end };
  return { start: entry.keySpan.start, end: next?.keySpan.start ?? entry.value.span.end };
}

/** With what is said at the end of its last line. */
function linesOf(text: string, { keySpan, value }: SourceEntry): Span | undefined {
  const start = Math.max(text.lastIndexOf('\n', keySpan.start - 1), text.lastIndexOf('\r', keySpan.start - 1)) + 1;
  if (!/^[ \ufeff]*$/.test(text.slice(start, keySpan.start))) return undefined;
  let end = Math.max(keySpan.end, value.span.end);
  if (!/[\r\n]/.test(text[end - 1] ?? '')) {
    const rest = /^[^\r\n]*(?:\r\n|\r|\n)?/.exec(text.slice(end))?.[0] ?? '';
    // Behind an empty value the colon is left, and what no comment begins is another's.
    if (!/^:?\s*(?:#.*)?\s*$/.test(rest)) return undefined;
    end += rest.length;
  }
  return { start: text.startsWith('\ufeff', start) ? start + 1 : start, end };
}

/**
 * Adds an item to a list, at its end.
 * @param path of the list, such as `levers.crank.pivot`
 * @returns undefined where no list with an item stands there
 */
export function addItem(text: string, path: string, written: string): Replacement | undefined {
  const node = nodeAt(parseSource(text).root, path);
  const last = node?.kind === 'list' && !node.damaged ? node.items.at(-1) : undefined;
  if (node?.kind !== 'list' || last === undefined) return undefined;
  const item = needsQuotes(written, node.flow) ? quoted(written) : written;
  const at = last.span.end;
  if (node.flow) return { span: { start: at, end: at }, text: `, ${item}` };
  const lineStart = Math.max(text.lastIndexOf('\n', last.span.start - 1), text.lastIndexOf('\r', last.span.start - 1)) + 1;
  const [lead] = /^[ ]*- +/.exec(text.slice(lineStart, last.span.start)) ?? [];
  // Items that begin elsewhere than on a line of their own, or end otherwise, are left to the person.
  if (lead?.length !== last.span.start - lineStart || last.kind !== 'scalar' || last.style === 'block') return undefined;
  let end = at;
  while (end < text.length && !/[\r\n]/.test(text[end] ?? '')) end++;
  return { span: { start: end, end }, text: `${text.includes('\r\n') ? '\r\n' : '\n'}${lead}${item}` };
}

/** The text after the edits, which must not overlap. */
export function applyEdits(text: string, edits: readonly Replacement[]): string {
  const ordered = [...edits].sort((a, b) => b.span.start - a.span.start || b.span.end - a.span.end);
  return ordered.reduce((result, { span, text: inserted }) => result.slice(0, span.start) + inserted + result.slice(span.end), text);
}

/**
 * A quantity as a person writes it.
 * @param si SI value
 * @param unit as in `Value.unit`; empty for a plain number
 * @param digits significant digits
 * @returns undefined where the unit is none or the value not finite
 */
export function formatQuantity(si: number, unit: string, digits = DEFAULT_DIGITS): string | undefined {
  const figure = formatFigure(si, unit, digits);
  if (figure === undefined || unit === '') return figure;
  return unit === '°' || unit === '%' ? `${figure}${unit}` : `${figure} ${unit}`;
}

const DEFAULT_DIGITS = 6;

/** Figure, gap, unit and whatever follows (a tolerance). */
const FIGURE = /^([-+\u2212]?\s*(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)(\s*)([^\s±+\d-][^±+]*?)?(\s*(?:(?:±|\+).*)?)$/su;

function formatFigure(si: number, unit: string, digits: number): string | undefined {
  const parsed = parseUnit(unit);
  if (parsed === undefined || !Number.isFinite(si)) return undefined;
  const figure = Number(fromSi(si, parsed).toPrecision(Math.min(Math.max(1, Math.round(digits)), 17)));
  // Neither `-0` nor, for anything a bench can measure, an exponent.
  const plain = figure === 0 ? '0' : String(figure);
  return plain.includes('e') && Math.abs(figure) > 1e-15 && Math.abs(figure) < 1 ? figure.toFixed(20).replace(/0+$/, '') : plain;
}

function nodeAt(root: SourceNode | undefined, path: string): SourceNode | undefined {
  if (root === undefined || path === '') return root;
  if (root.kind === 'map') {
    // Names in `require` may hold dots and spaces, so the longest key that fits goes first.
    for (const entry of root.entries) {
      if (entry.key === path) return entry.value;
      if (!path.startsWith(`${entry.key}.`)) continue;
      const found = nodeAt(entry.value, path.slice(entry.key.length + 1));
      if (found !== undefined) return found;
    }
    return undefined;
  }
  if (root.kind !== 'list') return undefined;
  const [index = '', ...rest] = path.split('.');
  return /^\d+$/.test(index) ? nodeAt(root.items[Number(index)], rest.join('.')) : undefined;
}

function replaceScalar(text: string, node: SourceScalar, written: string): Replacement {
  if (node.style === 'single' || node.style === 'double') {
    const inner = node.style === 'single' ? written.replaceAll("'", "''") : escaped(written);
    if (node.exact && !/[\r\n]/.test(written)) return { span: { start: node.span.start + 1, end: node.span.end - 1 }, text: inner };
    return { span: node.span, text: quoted(written) };
  }
  const lineEnds = node.style === 'block' ? (/[\r\n]*$/.exec(text.slice(node.span.start, node.span.end))?.[0] ?? '') : '';
  const span = { start: node.span.start, end: node.span.end - lineEnds.length };
  return { span, text: needsQuotes(written, node.inFlow) ? quoted(written) : written };
}

/** Whether YAML would take the text for something other than itself without quotes. */
function needsQuotes(written: string, inFlow: boolean): boolean {
  if (written === '' || written !== written.trim() || /[\r\n\t]/.test(written)) return true;
  if (/^(?:null|Null|NULL|~)$/.test(written)) return true;
  if (/^[,[\]{}#&*!|>'"%@`]/.test(written) || /^[-?:](?:\s|$)/.test(written)) return true;
  if (/:(?:\s|$)/.test(written) || /\s#/.test(written) || /^(?:---|\.\.\.)/.test(written)) return true;
  return inFlow && (/[,[\]{}]/.test(written) || (/^[-?:]/.test(written) && !/^-[\d.(a-z]/.test(written)));
}

function quoted(written: string): string {
  return `"${escaped(written)}"`;
}

function escaped(written: string): string {
  return written.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n').replaceAll('\r', '\\r').replaceAll('\t', '\\t');
}

function addToFlow(node: SourceMap, entry: string): Replacement {
  const last = node.entries.at(-1);
  const at = last === undefined ? node.span.start + 1 : last.span.end;
  return { span: { start: at, end: at }, text: last === undefined ? entry : `, ${entry}` };
}

function addToBlock(text: string, node: SourceMap, entry: string): Replacement | undefined {
  const first = node.entries[0]?.keySpan.start ?? node.span.start;
  const lineStart = Math.max(text.lastIndexOf('\n', first - 1), text.lastIndexOf('\r', first - 1)) + 1;
  // Below a key that is written with `?` there is no telling where the next belongs.
  if (/^\s*\?/.test(text.slice(lineStart, first))) return undefined;
  const indent = text
    .slice(lineStart, first)
    .replace(/[^ \ufeff]/g, ' ')
    .replaceAll('\ufeff', '');
  let at = Math.max(node.span.start, node.entries.at(-1)?.span.end ?? 0);
  // A block text ends behind its last line already.
  const endsLine = /[\r\n]/.test(text[at - 1] ?? '');
  while (!endsLine && at < text.length && !/[\r\n]/.test(text[at] ?? '')) at++;
  const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
  return { span: { start: at, end: at }, text: endsLine ? `${indent}${entry}${lineEnd}` : `${lineEnd}${indent}${entry}` };
}
