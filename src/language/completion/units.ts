/** Units right after a number, and the tolerance after a quantity. */
import { PLACE_UNIT, type Dimension } from '../../definition/dimensions.ts';
import { describeDimension } from '../../definition/formula/kind.ts';
import { FITTING_UNITS } from '../../definition/quantity/units.ts';
import type { CompletionItem } from '../completion.ts';
import type { Cursor } from '../cursor.ts';
import { looseColumns } from '../cursor/looseNames.ts';
import { code } from '../markdown.ts';
import { unitMeaning } from '../unitMeaning.ts';
import type { FormulaPlace } from './formulas.ts';
import { rank } from './rank.ts';

/** A number at the end of what is written, blanks, and as much of a unit as there is. */
const AFTER_NUMBER = /(?:^|[^\w.])(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?([ \t\u00a0\u2009\u202f]*)([A-Za-zµμ°%][A-Za-zµμ°%²³*·/^]*)?$/u;

export interface UnitItems {
  readonly items: readonly CompletionItem[];
  /** Whether what is written so far may also be a quantity times a name. */
  readonly mayBeName: boolean;
}

/** Undefined where no number stands before the cursor. */
export function unitItems(cursor: Cursor, place: FormulaPlace): UnitItems | undefined {
  const { prefix, offset, tree, span } = cursor;
  const match = AFTER_NUMBER.exec(prefix);
  if (match === null) return undefined;
  const [, gap = '', begun = ''] = match;
  // Behind a bare digit a unit must not come up by itself where the number is whole without it: a line end would take it.
  const whole = place.kind === 'let' || (place.kind === 'figure' && place.dimensions.every((each) => each === 'number'));
  if (whole && gap === '' && begun === '') return { items: [], mayBeName: false };
  const tail = /^[A-Za-zµμ°%²³]*/u.exec(tree.text.slice(offset, span.end))?.[0] ?? '';
  const replace = { start: offset - begun.length, end: offset + tail.length };
  const items = new Map<string, CompletionItem>();
  for (const dimension of dimensionsOf(cursor, place)) {
    for (const unit of FITTING_UNITS[dimension]) {
      if (items.has(unit)) continue;
      const close = unit === '°' || unit === '%';
      const meaning = unitMeaning(unit);
      items.set(unit, {
        label: unit,
        kind: 'unit',
        detail: describeDimension(dimension),
        ...(meaning !== undefined && { documentation: code(meaning) }),
        insertText: gap === '' && !close ? ` ${unit}` : unit,
        snippet: false,
        replace,
        sortText: rank(0, items.size),
        asksAgain: false,
      });
    }
  }
  return { items: [...items.values()], mayBeName: /[*·/]/.test(begun) };
}

/** Of a place its own; in a requirement those of the columns that it speaks of, and percent for pedal positions; elsewhere all. */
function dimensionsOf({ tree, path, text }: Cursor, { kind, dimensions }: FormulaPlace): readonly Dimension[] {
  if (dimensions.length > 0) return dimensions;
  const all = (Object.keys(PLACE_UNIT) as Dimension[]).filter((dimension) => dimension !== 'number');
  if (kind === 'let' || path[0] !== 'require') return [...all, 'number'];
  const named = [...text.matchAll(/([a-z][a-z0-9_]*)\.([a-z_]+)/g)].flatMap(([, owner = '', column = '']) => {
    const columns = looseColumns(tree, owner);
    return Object.hasOwn(columns, column) ? [columns[column]!.dimension] : [];
  });
  return [...new Set<Dimension>([...named, 'number', ...(named.length === 0 ? all : [])])];
}

/** `± 0.1 mm` behind a plain quantity. */
export function toleranceItem({ prefix, offset, text, flow }: Cursor, place: FormulaPlace): readonly CompletionItem[] {
  const quantity = /^[-+\u2212]?\s*(?:\d+\.?\d*|\.\d+)\s*([A-Za-zµμ°%][^\s±+]*)?\s+$/u.exec(prefix);
  if (quantity === null || text.trimEnd() !== prefix.trimEnd()) return [];
  const unit = quantity[1] ?? PLACE_UNIT[place.dimensions[0] ?? 'number'];
  const bare = unit === '' ? '' : ` ${unit}`;
  return [
    {
      label: '± tolerance',
      kind: 'operator',
      detail: 'the value lies within it',
      insertText: `± \${1:0.1}${bare}`,
      snippet: true,
      replace: { start: offset, end: offset },
      sortText: rank(0, 0),
      filterText: '±',
      asksAgain: false,
    },
    ...(flow
      ? []
      : [
          {
            label: '+/- tolerance',
            kind: 'operator' as const,
            detail: 'each way its own',
            insertText: `+\${1:0.2}/-\${2:0.1}${bare}`,
            snippet: true,
            replace: { start: offset, end: offset },
            sortText: rank(0, 1),
            filterText: '+',
            asksAgain: false,
          },
        ]),
  ];
}
