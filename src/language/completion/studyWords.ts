/** Words and units that may be written in `tune` and `measured`: most hang on another place of the file, read from its loose outline. */
import { fitNames } from '../../definition/fitNames.ts';
import { dimensionOfKind, type Kind } from '../../definition/formula/kind.ts';
import { PLACE_UNIT, type Dimension } from '../../definition/dimensions.ts';
import { readQuantity } from '../../definition/quantity/quantity.ts';
import { isPosition, mayNotFall } from '../../definition/schema/columnName.ts';
import type { ColumnUse } from '../../definition/schema/shape.ts';
import { LIMIT_KEYS } from '../../definition/schema/surroundings.ts';
import { KEPT_WORDS } from '../../definition/schema/tune.ts';
import { figureText } from '../../outputs/figure.ts';
import type { Answers } from '../../solve.ts';
import type { Cursor } from '../cursor.ts';
import { looseColumns, looseNames, looseOwners } from '../cursor/looseNames.ts';
import { entriesAt, looseAt, scalarAt, type LooseTree } from '../cursor/looseTree.ts';
import { columnLines } from '../hover/columns.ts';
import type { Word } from './values.ts';

/** Columns that a place can use; of a list of them, those that are not in it, and the pedal's position first. */
export function columnWords({ tree, path }: Cursor, use: ColumnUse, answers: Answers | undefined): readonly Word[] {
  const list = path.at(-2) === 'columns' ? path.slice(0, -1) : undefined;
  const taken =
    list === undefined
      ? []
      : entriesAt(tree, list).flatMap(({ key }) => (key === path.at(-1) ? [] : (scalarAt(tree, [...list, key]) ?? [])));
  const wanted = list === undefined ? use : path.at(-1) === '0' ? 'position' : 'any';
  const cables = new Set(looseNames(tree, 'cable'));
  const fits = (owner: string, column: string): boolean => {
    const each = { owner, column };
    if (wanted === 'position') return isPosition(each, (name) => cables.has(name));
    if (wanted === 'curve') return mayNotFall(each) || (owner === 'pedal' && column !== 'travel');
    return list === undefined || owner !== 'pedal' || column !== 'travel';
  };
  return looseOwners(tree).flatMap(({ name }) =>
    Object.entries(looseColumns(tree, name)).flatMap(([column, { dimension, percent }]): readonly Word[] => {
      const label = `${name}.${column}`;
      if (!fits(name, column) || taken.includes(label)) return [];
      const documentation = columnLines(answers, tree, name, column).join('\n\n');
      return [{ label, kind: 'column', detail: percent === true ? '%' : PLACE_UNIT[dimension], documentation }];
    }),
  );
}

/** Limits, words and requirements that the list does not have. */
export function keptWords({ tree, path }: Cursor): readonly Word[] {
  const list = path.slice(0, -1);
  const taken = new Set(entriesAt(tree, list).flatMap(({ key }) => (key === path.at(-1) ? [] : (scalarAt(tree, [...list, key]) ?? []))));
  const requirements = entriesAt(tree, ['require']).filter(({ colon }) => colon !== undefined);
  const words: readonly Word[] = [
    ...LIMIT_KEYS.map((label): Word => ({ label, kind: 'word', detail: 'limit' })),
    ...Object.entries(KEPT_WORDS).map(([label, detail]): Word => ({ label, kind: 'word', detail })),
    // What would fall apart in brackets needs its quotes.
    ...requirements
      .filter(({ key }) => /^[\p{L}\p{N}][^,[\]{}:#"'\\]*$/u.test(key))
      .map(({ key }): Word => ({ label: key, kind: 'part-name', detail: 'requirement' })),
  ];
  return words.filter(({ label }) => !taken.has(label));
}

/** Dimensions that can be found: of the last text that was understood. */
export function fitWords({ tree, path }: Cursor, answers: Answers | undefined): readonly Word[] {
  const definition = answers?.definition;
  if (definition === undefined) return plainLets(tree).map((label) => ({ label, kind: 'let' }));
  const list = path.slice(0, -1);
  const taken = new Set(entriesAt(tree, list).flatMap(({ key }) => (key === path.at(-1) ? [] : (scalarAt(tree, [...list, key]) ?? []))));
  const found = [...fitNames(definition).values()].filter(({ name, value }) => value?.formula === undefined && !taken.has(name));
  const toleranced = found.filter(({ value }) => value?.tolerance !== undefined);
  const rest = found.filter(({ value }) => value?.tolerance === undefined);
  return [...toleranced, ...rest].slice(0, MOST_WORDS).map(({ name, value }): Word => {
    const detail = value === undefined ? 'as drawn' : figureText({ value: value.nominal, dimension: value.dimension });
    return { label: name, kind: name.includes('.') ? 'pin' : 'let', detail };
  });
}

/** Names of `let` whose value is a plain quantity. */
export function plainLets(tree: LooseTree): readonly string[] {
  return looseNames(tree, 'let').filter((name) => kindOfLet(tree, name) !== undefined);
}

/** The columns of the run at hand but the first. @param path of one of its keys */
export function readColumns(tree: LooseTree, path: readonly string[]): readonly string[] {
  return columnsOfRun(tree, path).slice(1);
}

/** What a figure at a place may be, by the `let` value or the column that it goes with; empty where that cannot be told. */
export function studyDimensions(tree: LooseTree, path: readonly string[]): readonly Dimension[] {
  const [block, part, name = '', key] = path;
  if (block === 'tune' && part === 'free') {
    const kind = kindOfLet(tree, name);
    const dimension = kind && dimensionOfKind(kind);
    return dimension === undefined ? [] : [dimension];
  }
  if (block === 'tune') {
    const place = path.at(-1);
    return place === '1' ? dimensionOf(tree, scalarAt(tree, ['tune', 'curve', 'of'])) : ['number'];
  }
  if (key === 'noise') return dimensionOf(tree, path[4]);
  return dimensionOf(tree, columnsOfRun(tree, path)[Number(path.at(-1))]);
}

function columnsOfRun(tree: LooseTree, path: readonly string[]): readonly string[] {
  const list = [...path.slice(0, 3), 'columns'];
  return looseAt(tree, list)?.kind === 'block' ? entriesAt(tree, list).map(({ key }) => scalarAt(tree, [...list, key]) ?? '') : [];
}

function dimensionOf(tree: LooseTree, name: string | undefined): readonly Dimension[] {
  const [owner = '', column = ''] = name?.split('.') ?? [];
  const columns = looseColumns(tree, owner);
  return Object.hasOwn(columns, column) ? [columns[column]!.dimension] : [];
}

function kindOfLet(tree: LooseTree, name: string): Kind | undefined {
  const text = scalarAt(tree, ['let', name]);
  const read = text === undefined ? undefined : readQuantity(text, 0, undefined);
  return read?.form === 'quantity' ? read.quantity?.kind : undefined;
}

/** A list of more than this nobody reads; a linkage has some hundred dimensions. */
const MOST_WORDS = 1_000;
