/** What may be written within a quantity or a formula: units right after a number; names, functions and columns elsewhere. */
import type { Dimension } from '../../definition/dimensions.ts';
import { PLACE_UNIT } from '../../definition/dimensions.ts';
import type { Let } from '../../definition/definition.ts';
import { CONSTANTS, FUNCTIONS, OPERATOR_WORDS } from '../../definition/formula/functions.ts';
import { describeDimension, describeKind, kindFits } from '../../definition/formula/kind.ts';
import type { Described } from '../../definition/schema/walk.ts';
import type { Answers } from '../../solve.ts';
import type { CompletionItem } from '../completion.ts';
import type { Cursor } from '../cursor.ts';
import { looseColumns, looseNames, looseOwners } from '../cursor/looseNames.ts';
import { columnLines } from '../hover/columns.ts';
import { formsOf } from '../places.ts';
import { escaped } from '../snippets.ts';
import { valueText } from '../figures.ts';
import { rank } from './rank.ts';
import { studyDimensions } from './studyWords.ts';
import { toleranceItem, unitItems } from './units.ts';

export function formulaItems(cursor: Cursor, meanings: readonly Described[], answers: Answers | undefined): readonly CompletionItem[] {
  const place = formulaPlace(cursor, meanings);
  if (place === undefined || cursor.text.length > LONGEST_FORMULA || isAlias(cursor)) return [];
  const units = unitItems(cursor, place);
  if (units === undefined) return otherItems(cursor, place, answers);
  return units.mayBeName ? [...units.items, ...otherItems(cursor, place, answers)] : units.items;
}

/** A longer text is no formula that is read. */
const LONGEST_FORMULA = 1_000;

/** `*name` repeats what an anchor marks: nothing of a formula goes behind its star. */
function isAlias({ style, text }: Cursor): boolean {
  return style === 'plain' && text.startsWith('*');
}

/** Letters of any script, so that a name which may not be one is replaced whole. */
const WORD_BEFORE = /[\p{L}_][\p{L}\p{M}\p{Nd}_]*$/u;
const WORD_AFTER = /^[\p{L}\p{M}\p{Nd}_]*/u;
const OWNER_BEFORE = /(?:^|[^\p{L}\p{M}\p{Nd}_.])([\p{L}_][\p{L}\p{M}\p{Nd}_]*)\.$/u;

function otherItems(cursor: Cursor, place: FormulaPlace, answers: Answers | undefined): readonly CompletionItem[] {
  const { prefix, offset, tree } = cursor;
  // Behind a whole operand only an operator can stand.
  if (/[\p{L}\p{M}\p{Nd}_)°%²³]\s+$/u.test(prefix) && !/(?:^|[^\w])(?:and|or|not)\s+$/.test(prefix)) {
    return place.kind === 'require' ? operatorItems(cursor) : toleranceItem(cursor, place);
  }
  const word = WORD_BEFORE.exec(prefix)?.[0] ?? '';
  const before = prefix.slice(0, prefix.length - word.length);
  const tail = WORD_AFTER.exec(tree.text.slice(offset, cursor.span.end))?.[0] ?? '';
  const replace = { start: offset - word.length, end: offset + tail.length };
  const owner = OWNER_BEFORE.exec(before)?.[1];
  const make = itemMaker(cursor, replace);
  if (owner !== undefined) return place.kind === 'require' ? columnItems(cursor, owner, answers, make) : [];
  if (/[\w.]$/.test(before)) return [];
  return [
    ...letItems(cursor, place, answers, make),
    ...(place.kind === 'require' ? ownerItems(cursor, make) : []),
    ...functionItems(cursor, place, make),
  ];
}

/** A place that takes formulas; the dimensions that it may be of, none where it may be of any. */
export interface FormulaPlace {
  readonly kind: 'figure' | 'let' | 'require';
  readonly dimensions: readonly Dimension[];
}

/** Undefined for a place that takes no formula. */
export function formulaPlace({ path, tree }: Pick<Cursor, 'path' | 'tree'>, meanings: readonly Described[]): FormulaPlace | undefined {
  if (path.length === 2 && path[0] === 'require') return { kind: 'require', dimensions: [] };
  if (path.length === 2 && path[0] === 'let') return { kind: 'let', dimensions: [] };
  const forms = meanings.flatMap(({ shape }) => formsOf(shape));
  if (forms.some(({ kind }) => kind === 'figure')) return { kind: 'figure', dimensions: studyDimensions(tree, path) };
  const dimensions = forms.flatMap((form) => (form.kind === 'quantity' ? [form.dimension] : []));
  return dimensions.length === 0 ? undefined : { kind: 'figure', dimensions: [...new Set(dimensions)] };
}

type Make = (item: Pick<CompletionItem, 'label' | 'kind' | 'sortText'> & Partial<CompletionItem>) => CompletionItem;

function itemMaker({ touching }: Cursor, replace: CompletionItem['replace']): Make {
  return (item) => {
    const made = { insertText: item.label, snippet: false, replace, asksAgain: false, ...item };
    return touching ? { ...made, insertText: ` ${made.insertText}` } : made;
  };
}

/** In `let` only those above; whatever does not fit the place last. */
function letItems({ tree, path }: Cursor, place: FormulaPlace, answers: Answers | undefined, make: Make): readonly CompletionItem[] {
  const all = looseNames(tree, 'let');
  const own = place.kind === 'let' ? all.indexOf(path[1] ?? '') : -1;
  const known = new Map((answers?.definition?.lets ?? []).map((each): [string, Let] => [each.name, each]));
  return (own < 0 ? all : all.slice(0, own)).map((label, index) => {
    const found = known.get(label);
    const fits =
      found === undefined || place.dimensions.length === 0 || place.dimensions.some((dimension) => kindFits(found.kind, dimension));
    return make({
      label,
      kind: 'let',
      sortText: rank(fits ? 1 : 6, index),
      ...(found !== undefined && { detail: `${valueText(found)}, ${describeKind(found.kind)}` }),
    });
  });
}

function ownerItems({ tree }: Cursor, make: Make): readonly CompletionItem[] {
  return looseOwners(tree).map(({ name, kind }, index) =>
    make({ label: name, kind: 'part-name', detail: kind, insertText: `${name}.`, sortText: rank(2, index), asksAgain: true }),
  );
}

function columnItems({ tree }: Cursor, owner: string, answers: Answers | undefined, make: Make): readonly CompletionItem[] {
  return Object.entries(looseColumns(tree, owner)).map(([label, { dimension, percent }], index) =>
    make({
      label,
      kind: 'column',
      detail: percent === true ? '%' : PLACE_UNIT[dimension] || describeDimension(dimension),
      documentation: columnLines(answers, tree, owner, label).join('\n\n'),
      sortText: rank(0, index),
    }),
  );
}

function functionItems({ flow }: Cursor, place: FormulaPlace, make: Make): readonly CompletionItem[] {
  const functions = [...FUNCTIONS].filter(([, about]) => place.kind === 'require' || !about.requireOnly);
  return [
    ...functions.map(([label, about], index) => {
      // Without quotes a comma would end the value in brackets.
      const body = about.rule === 'at' && !flow ? `at(\${1:${escaped('100%')}}, $0)` : `${label}($0)`;
      return make({
        label,
        kind: 'function',
        detail: about.summary,
        insertText: body,
        snippet: true,
        sortText: rank(about.requireOnly ? 3 : place.kind === 'require' && (label === 'min' || label === 'max') ? 3 : 4, index),
      });
    }),
    ...[...CONSTANTS.keys()].map((label, index) => make({ label, kind: 'constant', sortText: rank(5, index) })),
  ];
}

function operatorItems({ offset }: Cursor): readonly CompletionItem[] {
  return [...OPERATOR_WORDS]
    .filter((word) => word !== 'not')
    .map((label, index) => ({
      label,
      kind: 'operator',
      insertText: `${label} `,
      snippet: false,
      replace: { start: offset, end: offset },
      sortText: rank(0, index),
      asksAgain: false,
    }));
}
