/** What became of one field of a part that stands in both files. */
import type { Value } from '../../definition/definition.ts';
import type { ValueChange, ValueSide, WordChange } from './comparison.ts';
import { formulaWords, type Renames } from './names.ts';
import { equalWritten } from './noticeable.ts';
import type { ComparedPart, Field } from './partsOf.ts';
import { pathInFile } from './paths.ts';
import type { TextSide } from './fileChanges.ts';

export interface FieldTools {
  readonly renames: Renames;
  readonly was: TextSide;
  readonly is: TextSide;
}

export type FieldChange =
  | { readonly kind: 'value'; readonly change: ValueChange }
  | { readonly kind: 'word'; readonly change: WordChange }
  | { readonly kind: 'rewritten'; readonly change: { readonly path: string; readonly was: ValueSide; readonly is: ValueSide } }
  /** The formula is the same and its figure is another: something behind it changed. `value` is that of the second file. */
  | { readonly kind: 'follows'; readonly change: ValueChange; readonly value: Value };

/** Undefined where nothing did, or where it is told at another place of the file. */
export function fieldChange(was: ComparedPart, is: ComparedPart, key: string, tools: FieldTools): FieldChange | undefined {
  const before = was.fields.get(key);
  const after = is.fields.get(key);
  const name = { block: is.block, name: is.name };
  if (isValue(before) && isValue(after)) return valueChange(before, after, { ...name, path: placeOf(is, key, after) }, tools);
  const asWord = wordOf(before) ?? wordOf(after);
  if (asWord !== undefined) {
    const [old, now] = [wordOf(before), wordOf(after)];
    if (old !== undefined && now !== undefined && sameWord(old, now, tools)) return undefined;
    const path = pathInFile(is.block, is.path, key);
    // Which form a thing has that is there on one side alone is told by its figures and names.
    const isForm = key.endsWith('kind') && !path.endsWith('.kind');
    if (isForm && (old === undefined || now === undefined)) return undefined;
    const sides = { ...(old && { was: old.word }), ...(now && { is: now.word }) };
    return {
      kind: 'word',
      change: { ...name, path, ...sides, ...unreadSide(pathInFile(was.block, was.path, key), path, old, now, tools) },
    };
  }
  const only = isValue(before) ? before : isValue(after) ? after : undefined;
  // A place that is given by a point's name is told as the name alone.
  if (only === undefined || only.by === 'point') return undefined;
  const path = after === undefined ? tools.renames.path(placeOf(was, key, only)) : placeOf(is, key, only);
  const side = before === undefined ? { is: sideOf(only.value, tools.is.text) } : { was: sideOf(only.value, tools.was.text) };
  const unread = unreadSide(placeOf(was, key, only), path, before, after, tools);
  return { kind: 'value', change: { ...name, path, ...side, changed: [], follows: [], ...unread } };
}

type ValueField = Extract<Field, { readonly kind: 'value' }>;
type WordField = Extract<Field, { readonly kind: 'word' }>;

function valueChange(
  was: ValueField,
  is: ValueField,
  at: Pick<ValueChange, 'block' | 'name' | 'path'>,
  tools: FieldTools,
): FieldChange | undefined {
  if (was.by === 'point' && is.by === 'point') return undefined;
  if (was.by === 'alias' && is.by === 'alias' && tools.renames.path(was.value.path) === is.value.path) return undefined;
  const [old, now] = [was.value, is.value];
  const sides = { was: sideOf(old, tools.was.text), is: sideOf(now, tools.is.text) };
  const valueDiffers = old.dimension !== now.dimension || !equalWritten(old.nominal, now.nominal);
  const formulaDiffers =
    old.formula === undefined || now.formula === undefined
      ? old.formula !== now.formula
      : tools.renames.word(old.formula.text, 'formula') !== formulaWords(now.formula.text);
  const toleranceDiffers = !sameTolerance(old.tolerance, now.tolerance);
  const changed = [
    ...(valueDiffers ? (['value'] as const) : []),
    ...(toleranceDiffers ? (['tolerance'] as const) : []),
    ...(formulaDiffers ? (['formula'] as const) : []),
  ];
  const change: ValueChange = { ...at, ...sides, changed, follows: [] };
  if (valueDiffers && !formulaDiffers && now.formula !== undefined) return { kind: 'follows', change, value: now };
  if (changed.length > 0) return { kind: 'value', change };
  return old.unit === now.unit ? undefined : { kind: 'rewritten', change: { path: at.path, ...sides } };
}

function sameTolerance(was: Value['tolerance'], is: Value['tolerance']): boolean {
  if (was === undefined || is === undefined) return was === is;
  return equalWritten(was.plus, is.plus) && equalWritten(was.minus, is.minus);
}

function sideOf({ path, span, nominal, dimension, unit, tolerance, formula }: Value, text: string): ValueSide {
  return {
    path,
    span,
    text: text.slice(span.start, span.end).trim(),
    nominal,
    dimension,
    unit,
    ...(tolerance && { tolerance: { plus: tolerance.plus, minus: tolerance.minus } }),
    ...(formula && { formula: formula.text }),
  };
}

function placeOf({ block, path }: ComparedPart, key: string, { by, value }: ValueField): string {
  return by === 'itself' ? value.path : pathInFile(block, path, key);
}

function sameWord(was: WordField, is: WordField, { renames }: FieldTools): boolean {
  if (was.refersTo === undefined) return was.word === is.word;
  return renames.word(was.word, was.refersTo) === (is.refersTo === 'formula' ? formulaWords(is.word) : is.word);
}

/** A side that has no field though its text has something there that could not be read. */
function unreadSide(oldPath: string, newPath: string, was: unknown, is: unknown, tools: FieldTools): { readonly unread?: 'was' | 'is' } {
  const among = (path: string, { definition }: TextSide): boolean =>
    [...(definition.unread ?? []), ...(definition.tune?.unread ?? []), ...(definition.measured?.unread ?? [])].some(
      ({ path: each }) => path === each || path.startsWith(`${each}.`) || each.startsWith(`${path}.`),
    );
  if (was === undefined && among(oldPath, tools.was)) return { unread: 'was' };
  return is === undefined && among(newPath, tools.is) ? { unread: 'is' } : {};
}

function isValue(field: Field | undefined): field is ValueField {
  return field?.kind === 'value';
}

function wordOf(field: Field | undefined): WordField | undefined {
  return field?.kind === 'word' ? field : undefined;
}
