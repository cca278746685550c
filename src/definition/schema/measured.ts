/**
 * `measured`: readings of the built car, and which dimensions are to be found from them.
 */
import type { ColumnReference, Reference } from '../definition.ts';
import type { Measured, Noise, ReadingRow, Run } from '../measured.ts';
import type { SourceNode, SourceScalar } from '../source/tree.ts';
import { describeDimension } from '../formula/kind.ts';
import { shortened } from '../source/shortened.ts';
import { written } from './bounds.ts';
import { column, columnName, columnOfKey, isPosition } from './columnName.ts';
import { hasCount } from './figureList.ts';
import { deferred, eachOf, noted, reportAbsent, withOwnNotes, type Deferred } from './noted.ts';
import { listOf } from './places.ts';
import { mapOf, optional, record } from './record.ts';
import { defined, itemSite, named, problem, reportShape, type About, type Reading, type Shape, type Site } from './shape.ts';
import { figureAbout, readAs, readOfColumn, tellUseless } from './tuneFigures.ts';

/** Most readings of one run, inline or in a file: lines. */
export const MOST_ROWS = 10_000;

/** A word of `fit`; what it names is looked up when the whole file is known. */
const fitted: Shape<Reference> = {
  about: { kind: 'fit' },
  read(node, site, reading) {
    if (node.kind !== 'scalar') {
      return reportShape(node, site, reading, 'a list of dimensions', 'Write names of `let` and `part.key`, such as `drag_link.length`');
    }
    return { name: node.text, span: node.span };
  },
};

const rowsAbout: About = {
  kind: 'list',
  of: { kind: 'list', of: figureAbout('a reading, or `~` where it was not taken', true), least: 2 },
  least: 1,
};

const noiseEntry: Shape<{ readonly column: ColumnReference } & Deferred> = {
  about: figureAbout('a figure of the kind of the column'),
  read(node, site, reading) {
    const found = columnOfKey(site, reading);
    return found === undefined ? undefined : { column: found, node, site };
  },
};

const csvName: Shape<Reference> = {
  about: { kind: 'text', what: 'the name of a CSV file' },
  read(node, site, reading) {
    if (node.kind !== 'scalar') return reportShape(node, site, reading, 'the name of a CSV file', 'Write a name, such as `bench.csv`');
    return isFileName(node, reading) ? { name: node.text, span: node.span } : undefined;
  },
};

const run = record(
  {
    columns: optional(listOf(column('any'), 'columns', 2), {
      doc: 'What was read, as columns of the table. The first says where the pedal is: `pedal.travel`, or the `pull` of a cable. With `file`, those of its columns that count; all where left out.',
      example: '[pedal.travel, tps.signal, shaft.opening]',
      vital: true,
    }),
    rows: optional(deferred(rowsAbout), {
      doc: `Readings, one list for each position of the pedal, in the order of \`columns\`; \`~\` where one was not taken. At most ${MOST_ROWS}.`,
      example: '[[0 %, 0.62 V, 0 deg], [10 %, 0.71 V, ~]]',
      vital: true,
    }),
    file: optional(csvName, {
      doc: 'Name of a CSV file beside this one, in the same folder, whose first line names the columns, with units as in `tps.signal [V]`.',
      example: 'bench.csv',
      vital: true,
    }),
    noise: optional(mapOf(noted(noiseEntry), 'column', { freeNames: true, repeats: 'column' }), {
      doc: 'How far the readings of a column scatter: one standard deviation. The position of the pedal counts as exact.',
      fallback: 'by the kind of column, common practice without a source',
      example: '{tps.signal: 0.01 V}',
    }),
  },
  ({ columns, rows, file, noise }, { site }, reading): Run | undefined => {
    if (columns !== undefined && !areColumns(columns.items, reading)) return undefined;
    const own = { ...named(site), ...defined({ columns: columns?.items }) };
    const deviations = (noise ?? []).flatMap((each) => readNoise(each, columns?.items, reading) ?? []);
    if (file !== undefined) return { ...own, readings: { kind: 'file', file }, noise: deviations };
    if (rows === undefined || columns === undefined) return undefined;
    const read = readRows(rows, columns.items, reading);
    return read === undefined ? undefined : { ...own, readings: { kind: 'rows', span: rows.node.span, rows: read }, noise: deviations };
  },
  {
    choices: [
      {
        what: 'where its readings are',
        forms: [
          { name: 'rows', needs: ['columns', 'rows'], allows: [] },
          { name: 'file', needs: ['file'], allows: ['columns'] },
        ],
      },
    ],
  },
);

// It must be there, and yet a block without it is one.
const runsKey = optional(mapOf(noted(run), 'run'), { doc: 'Readings that were taken together, by name of the run.' });

const block = record(
  {
    fit: optional(eachOf(fitted, 'dimensions', 1), {
      doc: 'Dimensions to be found: names of `let`, and `part.key`, such as `drag_link.length`, `bellcrank.out.radius`, `tps.at_closed` or `shaft_centre.x`.',
      fallback: 'every dimension with a tolerance',
      example: '[reach, drag_link.length, tps.at_closed]',
    }),
    runs: { ...runsKey, about: { ...runsKey.about, required: true } },
  },
  ({ fit, runs }, source, reading): ReadMeasured => {
    const { node, site, has } = source;
    reportAbsent(source, 'runs', 'Write `runs: {name: {columns: […], rows: […]}}` with the readings', reading);
    if (!has('runs')) reading.unread(site.path, site.span);
    if (runs?.length === 0 && !node.damaged && node.entries.some(({ key, value }) => key === 'runs' && isBare(value))) {
      reading.report(
        problem('missing-key', source.keySpan('runs'), '`runs` has no readings', { cure: 'Write `name: {columns: […], rows: […]}`' }),
      );
    }
    return { nameSpan: site.nameSpan, span: site.span, runs: runs ?? [], ...defined({ words: fit?.items }) };
  },
);

/** As read, before the dimensions of `fit` are looked up. */
export interface ReadMeasured extends Omit<Measured, 'fit' | 'unread'> {
  readonly words?: readonly Reference[];
}

/** The block `measured`. */
export const measured = withOwnNotes(block);

function isBare(node: SourceNode): boolean {
  return (node.kind === 'empty' && !node.damaged) || (node.kind === 'map' && node.entries.length === 0);
}

/** Beside the file and nowhere else: no folders, no drive, no address. */
function isFileName({ text, span }: SourceScalar, reading: Reading): boolean {
  const cure = 'Put the file into the folder of this one, and write its name alone, such as `bench.csv`';
  if (/[/\\:]/.test(text) || text.startsWith('.') || /\p{Cc}/u.test(text)) {
    reading.report(problem('wrong-value', span, `\`${shortened(text)}\` is no plain name of a file`, { cure }));
    return false;
  }
  if (/\.(?:csv|tsv|txt)$/i.test(text)) return true;
  reading.report(
    problem('wrong-value', span, `\`${shortened(text)}\` is no CSV file by its name`, { cure: 'Write a name that ends in `.csv`' }),
  );
  return false;
}

function areColumns(columns: readonly ColumnReference[], reading: Reading): boolean {
  const isCable = (name: string): boolean => reading.declared.parts.cable.has(name);
  const [first, ...others] = columns;
  if (first === undefined) return false;
  if (!isPosition(first, isCable)) {
    reading.report(
      problem('wrong-value', first.span, `\`${columnName(first)}\` does not say where the pedal is`, {
        cure: 'Write `pedal.travel`, or the `pull` of a cable, as the first column',
      }),
    );
    return false;
  }
  const seen = new Map([[columnName(first), first]]);
  for (const each of others) {
    const known = seen.get(columnName(each));
    if (known !== undefined) {
      reading.report(
        problem('wrong-value', each.span, `\`${columnName(each)}\` stands twice in \`columns\``, {
          cure: 'Leave one of the two out',
          related: [{ span: known.span, message: 'The first is here' }],
        }),
      );
      return false;
    }
    if (each.owner === 'pedal' && each.column === 'travel') {
      reading.report(
        problem('wrong-value', each.span, '`pedal.travel` says where the pedal is, not what was read there', {
          cure: 'Write it as the first column',
        }),
      );
      return false;
    }
    seen.set(columnName(each), each);
  }
  return true;
}

function readNoise(
  { column: of, node, site }: { readonly column: ColumnReference } & Deferred,
  columns: readonly ColumnReference[] | undefined,
  reading: Reading,
): Noise | undefined {
  const name = columnName(of);
  const index = columns?.findIndex((each) => columnName(each) === name);
  if (index === 0 || index === -1) {
    const message = index === 0 ? `\`${name}\` says where the pedal is, and counts as exact` : `The run has no readings of \`${name}\``;
    reading.report(problem('wrong-value', site.nameSpan, message, { cure: 'Write a column of `columns` other than the first' }));
    reading.unread(site.path, site.span);
    return undefined;
  }
  const deviation = readAs(of.dimension, {}, node, site, reading);
  tellUseless([deviation], 'Write one standard deviation alone', reading);
  if (deviation !== undefined && deviation.nominal > 0) return { column: of, deviation };
  if (deviation !== undefined) {
    const figure = node.kind === 'scalar' ? node.text : written(deviation);
    reading.report(
      problem('out-of-range', deviation.span, `The noise of \`${name}\` must be greater than 0, not ${shortened(figure)}`, {
        cure: `Write ${describeDimension(of.dimension)} that is greater than 0`,
      }),
    );
  }
  reading.unread(site.path, site.span);
  return undefined;
}

function readRows({ node, site }: Deferred, columns: readonly ColumnReference[], reading: Reading): readonly ReadingRow[] | undefined {
  if (node.kind === 'list' && node.items.length > MOST_ROWS) {
    reading.report(
      problem(
        'out-of-range',
        site.nameSpan,
        `\`${site.name}\` has ${node.items.length} lines of readings; ${MOST_ROWS} are taken at most`,
        {
          cure: 'Leave lines out, or share them among several runs',
        },
      ),
    );
    return undefined;
  }
  const rows = eachOf(rowOf(columns), 'readings', 1).read(node, site, reading)?.items;
  // Of each column once: with one of its readings, mostly all are written so.
  columns.forEach((of, index) => {
    const first = rows?.map(({ values }) => values[index]).find((value) => value?.tolerance !== undefined);
    const name = columnName(of);
    const noise = `Write how far the readings scatter in \`noise\` of the run, as in \`noise: {${name}: …}\``;
    tellUseless([first], index === 0 ? 'Write the figure alone: the position of the pedal counts as exact' : noise, reading);
  });
  return rows;
}

function rowOf(columns: readonly ColumnReference[]): Shape<ReadingRow> {
  const cure = 'Write one reading for each of `columns`, `~` where it was not taken';
  return {
    about: rowsAbout.kind === 'list' ? rowsAbout.of : rowsAbout,
    read(node, site, reading) {
      if (node.kind !== 'list') return reportShape(node, site, reading, 'a list of readings for each position', cure);
      if (!hasCount(node, site, reading, [columns.length], `${columns.length} readings in each line`, cure)) return undefined;
      const values = columns.map((of, index) =>
        readCell(of, node.items[index], itemSite(site, index, node.items[index] ?? node), index === 0, reading),
      );
      return values.includes('broken')
        ? undefined
        : { span: node.span, values: values.map((value) => (value === 'broken' ? undefined : value)) };
    },
  };
}

function readCell(
  of: ColumnReference,
  node: SourceNode | undefined,
  site: Site,
  isFirst: boolean,
  reading: Reading,
): ReadingRow['values'][number] | 'broken' {
  // A row that a reported mistake has cut short.
  if (node === undefined) return 'broken';
  if (node.kind !== 'empty') return readOfColumn(of, node, site, reading, !isFirst) ?? 'broken';
  if (node.damaged) return 'broken';
  const isWritten = node.span.end > node.span.start;
  if (isWritten && !isFirst) return undefined;
  const span = isWritten ? node.span : site.span;
  const message = isFirst ? `\`${columnName(of)}\` must be known: it says where the pedal is` : `\`${columnName(of)}\` has no reading`;
  reading.report(
    problem('wrong-shape', span, message, { cure: isFirst ? 'Write it, or leave the line out' : 'Write `~` where it was not taken' }),
  );
  return 'broken';
}
