/**
 * Outline: blocks, the parts in them, and their arms and drums, each with the figure that matters for it.
 *
 * Made from the text alone where nothing is solved yet; figures of the travel come from the answers where they are of the same text.
 */
import { dimensionOfKind } from '../definition/formula/kind.ts';
import type { SourceEntry, SourceNode } from '../definition/source/tree.ts';
import type { Span } from '../definition/span.ts';
import type { PathPart } from '../findings/part.ts';
import { figureText } from '../outputs/figure.ts';
import type { Answers } from '../solve.ts';
import type { NameIndex, NameKind } from './names.ts';
import { NAME_BLOCKS } from './names/declare.ts';

/** `block` is a key of the file such as `levers`, `key` one in `pedal` or `limits`. */
export type OutlineKind = 'block' | 'key' | Exclude<NameKind, 'drive'>;

export interface OutlineEntry {
  /** Never empty. */
  readonly name: string;
  readonly kind: OutlineKind;
  /** What the part is and its figure, e.g. `lever, opens 81.9°`; empty where the name says all. */
  readonly detail: string;
  /** From the key to the end of the value. */
  readonly span: Span;
  /** The key, within `span`. */
  readonly selection: Span;
  /** Each within `span`. */
  readonly children: readonly OutlineEntry[];
}

/** @param answers of the same text; figures of the travel are left out without them */
export function outline(
  index: NameIndex,
  answers?: Pick<Answers, 'text' | 'parts' | 'requirements' | 'definition'>,
): readonly OutlineEntry[] {
  const { root, text } = index;
  if (root?.kind !== 'map') return [];
  const solved = answers?.text === text ? answers : undefined;
  const figures = new Map((solved?.parts ?? []).map((part) => [`${part.kind} ${part.name}`, figureOf(part)]));
  const outcomes = new Map((solved?.requirements ?? []).map(({ requirement, outcome }) => [requirement.name, outcome]));
  // A value of a kind that no place of the file knows, such as an energy, has no unit here to be shown in.
  const shown = (solved?.definition?.lets ?? []).filter(({ kind }) => dimensionOfKind(kind) !== undefined);
  const values = new Map(shown.map(({ name, value }) => [name, value]));

  const ofPart = (entry: SourceEntry, kind: OutlineKind): string => {
    switch (kind) {
      case 'let': {
        const value = values.get(entry.key);
        const written = brief(entry.value);
        return value?.formula === undefined ? written : `${written} = ${figureText({ value: value.nominal, dimension: value.dimension })}`;
      }
      case 'point':
      case 'key':
        return brief(entry.value);
      case 'requirement':
        return outcomes.get(entry.key) ?? '';
      case 'arm':
      case 'drum':
        return words(kind, dimensionsOf(entry.value));
      default:
        return words(KIND_LABELS[kind] ?? kind, figures.get(`${kind} ${entry.key}`) ?? '');
    }
  };

  const entryOf = (entry: SourceEntry, kind: OutlineKind, children: readonly OutlineEntry[], detail: string): OutlineEntry => ({
    name: entry.key.trim() === '' ? '(no name)' : entry.key,
    kind,
    detail,
    span: entry.span,
    selection: entry.keySpan,
    children,
  });

  const part = (entry: SourceEntry, kind: OutlineKind): OutlineEntry => {
    const children =
      kind === 'lever'
        ? ['arms', 'drums'].flatMap((block) => partsOf(entry, block))
        : kind === 'key' && LISTS.has(entry.key)
          ? entriesOf(entry).map((each) => entryOf(each, 'key', [], listed(each)))
          : [];
    return entryOf(entry, kind, children, ofPart(entry, kind));
  };

  const partsOf = (lever: SourceEntry, block: string): readonly OutlineEntry[] => {
    const held = entriesOf(lever).find(({ key }) => key === block);
    return held === undefined ? [] : entriesOf(held).map((entry) => part(entry, block === 'arms' ? 'arm' : 'drum'));
  };

  return root.entries.map((block) => {
    const kind = Object.hasOwn(NAME_BLOCKS, block.key) ? NAME_BLOCKS[block.key as keyof typeof NAME_BLOCKS] : undefined;
    const children = entriesOf(block).map((entry) => part(entry, kind ?? 'key'));
    const detail = block.key === 'pedal' ? (figures.get('pedal pedal') ?? '') : block.value.kind === 'scalar' ? brief(block.value) : '';
    return entryOf(block, 'block', children, detail);
  });
}

/** Keys of `tune` and `measured` that hold named entries. */
const LISTS: ReadonlySet<string> = new Set(['free', 'runs']);

/** The bounds of a free value, or what a run read and how often, as written. */
function listed({ value }: SourceEntry): string {
  const written = (key: string): SourceNode | undefined =>
    value.kind === 'map' ? value.entries.find((each) => each.key === key)?.value : undefined;
  const [from, to, rows, file] = ['from', 'to', 'rows', 'file'].map(written);
  if (from !== undefined && to !== undefined) return `${brief(from)} to ${brief(to)}`;
  if (rows?.kind === 'list') return `${rows.items.length} ${rows.items.length === 1 ? 'reading' : 'readings'}`;
  return file === undefined ? '' : brief(file);
}

/** Words where the kind's own is none. */
const KIND_LABELS: Partial<Readonly<Record<OutlineKind, string>>> = { plates: 'set of plates' };

function words(label: string, figure: string): string {
  return figure === '' ? label : `${label}, ${figure}`;
}

function figureOf({ figures }: PathPart): string {
  const [first] = figures;
  if (first === undefined) return '';
  return `${first.label} ${first.figure === undefined ? (first.text ?? '') : figureText(first.figure)}`.trimEnd();
}

/** Entries that stand within the entry itself, and not at the anchor that it repeats. */
function entriesOf({ value, span, keySpan }: SourceEntry): readonly SourceEntry[] {
  const isHere = value.span.start >= keySpan.end && value.span.end <= span.end;
  return isHere && value.kind === 'map' ? value.entries : [];
}

/** Where an arm's pin is, or how large a drum is, as written. */
function dimensionsOf(node: SourceNode): string {
  const written = (key: string): string => {
    const value = node.kind === 'map' ? node.entries.find((entry) => entry.key === key)?.value : undefined;
    return value === undefined ? '' : brief(value);
  };
  const [radius, angle, at] = [written('radius'), written('angle'), written('at')];
  if (at !== '') return `at ${at}`;
  if (radius === '') return written('profile') === '' ? '' : 'profiled';
  return angle === '' ? radius : `${radius} at ${angle}`;
}

/** A value as written, on one line and cut where it is long; empty for a block of keys. */
function brief(node: SourceNode): string {
  const line = briefly(node, MOST_ITEMS).replace(/\s+/g, ' ').trim();
  return line.length > LONGEST_DETAIL ? `${line.slice(0, LONGEST_DETAIL - 1)}…` : line;
}

const LONGEST_DETAIL = 60;
/** Items of a list that a line can show; within each other, of all together. */
const MOST_ITEMS = 6;

function briefly(node: SourceNode, most: number): string {
  if (node.kind === 'scalar') return node.text.slice(0, 2 * LONGEST_DETAIL);
  if (node.kind !== 'list') return '';
  const shown = most <= 1 ? [] : node.items.slice(0, most).map((item) => briefly(item, most / 2));
  return `[${shown.join(', ')}${node.items.length > shown.length ? (shown.length > 0 ? ', …' : '…') : ''}]`;
}
