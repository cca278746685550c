/**
 * Columns of the table as words of the file, `owner.column`.
 */
import { COLUMNS } from '../columns.ts';
import type { ColumnReference } from '../definition.ts';
import { nearestWord } from '../names.ts';
import type { Span } from '../span.ts';
import { shortened } from '../source/shortened.ts';
import { wordList } from './record.ts';
import { problem, reportShape, type ColumnUse, type Reading, type Shape, type Site } from './shape.ts';

/** A column that the place can use. */
export function column(use: ColumnUse): Shape<ColumnReference> {
  return {
    about: { kind: 'column', use },
    read(node, site, reading) {
      const cure = `Write ${EXAMPLES[use]}`;
      if (node.kind !== 'scalar') return reportShape(node, site, reading, 'a column of the table', cure);
      const start = node.exact ? node.textStart : undefined;
      const found = findColumn(node.text, start, node.span, reading);
      if (found === undefined || isUsable(found, use, reading)) return found;
      reading.report(problem('wrong-value', node.span, `\`${node.text}\` ${REFUSALS[use]}`, { cure }));
      return undefined;
    },
  };
}

/** The column that a key of a block repeats. */
export function columnOfKey(site: Site, reading: Reading): ColumnReference | undefined {
  const { nameSpan, name } = site;
  const exact = nameSpan.end - nameSpan.start === name.length;
  return findColumn(name, exact ? nameSpan.start : undefined, nameSpan, reading);
}

/** `owner.column`. */
export function columnName({ owner, column: key }: Pick<ColumnReference, 'owner' | 'column'>): string {
  return `${owner}.${key}`;
}

/** Whether a column says where the pedal is: its travel, or what a cable takes in. */
export function isPosition({ owner, column: key }: Pick<ColumnReference, 'owner' | 'column'>, isCable: (name: string) => boolean): boolean {
  return owner === 'pedal' ? key === 'travel' : key === 'pull' && isCable(owner);
}

/** Whether a curve of the column may not fall: with the pedal going down the plates go on opening. */
export function mayNotFall({ column: key }: Pick<ColumnReference, 'column'>): boolean {
  return RISING.has(key);
}

const RISING: ReadonlySet<string> = new Set(['opening', 'area', 'fraction']);

const EXAMPLES: Readonly<Record<ColumnUse, string>> = {
  curve: "a lever's `opening`, the `area` or `fraction` of plates, `pedal.effort` or `pedal.release`, such as `shaft.opening`",
  position: '`pedal.travel`, or the `pull` of a cable',
  any: '`owner.column`, such as `shaft.opening`',
};

const REFUSALS: Readonly<Record<ColumnUse, string>> = {
  curve: 'is no column that can be given a curve',
  position: 'does not say where the pedal is',
  any: 'cannot be used here',
};

function isUsable(found: ColumnReference, use: ColumnUse, reading: Reading): boolean {
  switch (use) {
    case 'any':
      return true;
    case 'position':
      return isPosition(found, (name) => reading.declared.parts.cable.has(name));
    case 'curve':
      return mayNotFall(found) || (found.owner === 'pedal' && (found.column === 'effort' || found.column === 'release'));
  }
}

/** @param start where the text begins in the file; undefined where it does not stand there letter by letter */
function findColumn(text: string, start: number | undefined, span: Span, reading: Reading): ColumnReference | undefined {
  const { scope } = reading;
  const dot = text.indexOf('.');
  if (dot < 0) {
    const columns = scope.columnsOf(text);
    reading.report(
      problem('wrong-value', span, `\`${shortened(text)}\` is no column of the table`, {
        cure:
          columns.length > 0
            ? `Write ${wordList(
                columns.map((key) => `${text}.${key}`),
                'or',
              )}`
            : 'Write `owner.column`, such as `shaft.opening`',
      }),
    );
    return undefined;
  }
  const owner = text.slice(0, dot);
  const key = text.slice(dot + 1);
  const dimension = scope.columnDimension(owner, key);
  if (dimension === 'unreadable') return undefined;
  if (dimension !== undefined) return { owner, column: key, dimension, span };
  const within = (from: number, to: number): Span => (start === undefined ? span : { start: start + from, end: start + to });
  const columns = scope.columnsOf(owner);
  const isOwner = columns.length > 0;
  const at = isOwner ? within(dot + 1, text.length) : within(0, dot);
  const known = isOwner ? columns : scope.owners;
  const nearest = nearestWord(isOwner ? key : owner, known);
  reading.report(
    problem(
      isOwner && key === '' ? 'wrong-value' : 'unknown-name',
      at.end > at.start ? at : span,
      isOwner ? `\`${owner}\` has no column \`${shortened(key)}\`` : `There is no part \`${shortened(owner)}\` that has columns`,
      {
        cure: nearest !== undefined ? `Did you mean \`${nearest}\`?` : `Known are ${wordList(known.slice(0, NAMES_SHOWN), 'and')}`,
        replacements: nearest === undefined || start === undefined ? undefined : [{ span: at, text: nearest }],
      },
    ),
  );
  return undefined;
}

const NAMES_SHOWN = 6;

/** Whether a column is shown in percent. */
export function isPercent({ owner, column: key }: Pick<ColumnReference, 'owner' | 'column'>): boolean {
  const owners = owner === 'pedal' ? [COLUMNS.pedal] : Object.values(COLUMNS);
  return owners.some((columns) => Object.hasOwn(columns, key) && columns[key]?.percent === true);
}
