/** What changed in a throttle file itself, in words: one row a part, value or word, for every kind of output. */
import type { Comparison, FileChanges, PartName, ValueChange, ValueSide, WordChange } from '../studies/compare/comparison.ts';
import { figureText } from './figure.ts';
import { MINUS, withMinus } from './minus.ts';
import type { Style } from './paint.ts';

/** Plain text, not yet made fit to be shown. */
export interface ChangeRow {
  /** One or two words, e.g. `changed`, `new error`. */
  readonly status: string;
  readonly style: Style | undefined;
  readonly subject: string;
  /** Empty where subject and status say all. */
  readonly text: string;
}

/** Parts first, then values, then the rest. Empty where the texts say the same. */
export function fileRows({ file }: Pick<Comparison, 'file'>): readonly ChangeRow[] {
  return [...partRows(file), ...file.values.map(valueRow), ...file.words.map(wordRow)];
}

/** A signed difference of two figures, e.g. `+1.02 mm`, `−0.9°`. */
export function signed(difference: number, text: (size: number) => string): string {
  return `${difference < 0 ? MINUS : '+'}${text(Math.abs(difference))}`;
}

function partRows({ renamed, gone, added, unread }: FileChanges): readonly ChangeRow[] {
  const row = (status: string, part: PartName, text = ''): ChangeRow => ({ status, style: undefined, subject: nameOf(part), text });
  return [
    ...renamed.map(({ block, was, is }) => row('renamed', { block, name: was }, `is ${nameOf({ block, name: is })} now`)),
    ...gone.map((part) => row('gone', part)),
    ...added.map((part) => row('new', part)),
    ...unread.map(({ side, ...part }) => ({
      ...row('unread', part, side === 'is' ? 'cannot be understood any more' : 'could not be understood before'),
      style: 'warning' as const,
    })),
  ];
}

/** E.g. `rods.link`, `levers.shaft.arms.arm`, `pedal`. */
function nameOf({ block, name }: PartName): string {
  if (block === 'pedal') return 'pedal';
  if (block !== 'arms' && block !== 'drums') return `${block}.${name}`;
  const dot = name.indexOf('.');
  return `levers.${name.slice(0, dot)}.${block}${name.slice(dot)}`;
}

function valueRow({ path, was, is, changed, follows, unread }: ValueChange): ChangeRow {
  const behind = follows.length === 0 ? '' : `; with it ${listed(follows)}`;
  if (was === undefined || is === undefined) return oneSided(path, was && written(was), is && written(is), unread);
  const difference = changed.includes('value') ? differenceText(was, is) : changed.includes('formula') ? ' (of equal value)' : '';
  return { status: 'changed', style: undefined, subject: path, text: `${written(was)} → ${written(is)}${difference}${behind}` };
}

function wordRow({ path, was, is, unread }: WordChange): ChangeRow {
  if (was === undefined || is === undefined) return oneSided(path, was, is, unread);
  return { status: 'changed', style: undefined, subject: path, text: `${was} → ${is}` };
}

function oneSided(path: string, was: string | undefined, is: string | undefined, unread: 'was' | 'is' | undefined): ChangeRow {
  const row = { style: undefined, subject: path };
  if (unread === 'was') return { ...row, status: 'unread', style: 'warning', text: `${is ?? ''}; could not be understood before` };
  if (unread === 'is') return { ...row, status: 'unread', style: 'warning', text: `was ${was ?? ''}; cannot be understood any more` };
  return was === undefined ? { ...row, status: 'new', text: is ?? '' } : { ...row, status: 'gone', text: `was ${was}` };
}

/** As it stands in the file; a formula with what it comes to. */
function written({ text, formula, nominal, dimension }: ValueSide): string {
  return formula === undefined ? withMinus(text) : `${text} (${withMinus(figureText({ value: nominal, dimension }))})`;
}

function differenceText(was: ValueSide, is: ValueSide): string {
  const { dimension } = is;
  // A `let` may be of a kind that no place of the file knows; its figure says nothing without its unit.
  if (was.dimension !== dimension || (dimension === 'number' && (was.unit !== '' || is.unit !== ''))) return '';
  return ` (${signed(is.nominal - was.nominal, (value) => figureText({ value, dimension }))})`;
}

function listed(paths: readonly string[]): string {
  const more = paths.length - SHOWN;
  return `${paths.slice(0, SHOWN).join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
}

const SHOWN = 6;
