/** The blocks `tune` and `measured` as parts that two files are compared by, with their fields where they stand in the file. */
import type { ColumnReference, Definition, Reference } from '../../definition/definition.ts';
import type { Measured, Run } from '../../definition/measured.ts';
import { columnName } from '../../definition/schema/columnName.ts';
import type { Kept, Tune, TuneCurve } from '../../definition/tune.ts';
import type { Block } from './comparison.ts';
import type { ComparedPart } from './partsOf.ts';

/** @param part makes a part of what stands in its place */
export function studyParts(
  { tune, measured }: Definition,
  part: (block: Block, name: string, source: object, path?: string) => ComparedPart,
): readonly ComparedPart[] {
  return [
    ...(tune === undefined ? [] : [part('tune', 'tune', tuneFields(tune), 'tune')]),
    ...(tune?.free ?? []).map(({ name, from, to, step }) => part('free', name, { from, to, ...(step && { step }) }, `tune.free.${name}`)),
    ...(measured === undefined ? [] : [part('measured', 'measured', fitFields(measured), 'measured')]),
    ...(measured?.runs ?? []).map((run) => part('runs', run.name, runFields(run), `measured.runs.${run.name}`)),
  ];
}

function tuneFields({ curve, keep }: Tune): object {
  // The order of what is kept means nothing.
  return { ...(curve && { curve: curveFields(curve) }), ...(keep && { keep: { words: keep.map(keptName).sort(), kept: true } }) };
}

function curveFields(curve: TuneCurve): object {
  const of = columnWord(curve.of);
  if (curve.kind === 'slopes') return { of, slopes: { tipIn: curve.tipIn, end: curve.end } };
  return { of, through: curve.points.map(({ travel, value, weight }) => [travel, value, ...(weight === undefined ? [] : [weight])]) };
}

function keptName(kept: Kept): string {
  switch (kept.kind) {
    case 'limit':
      return kept.key;
    case 'word':
      return kept.word;
    case 'requirement':
      return kept.name;
  }
}

/** Their order means nothing. */
function fitFields({ fit }: Measured): object {
  return fit === undefined ? {} : { fit: { words: fit.map(({ name }) => name).sort() } };
}

function runFields({ columns, readings, noise }: Run): object {
  return {
    ...(columns && { columns: columns.map(columnWord) }),
    ...(readings.kind === 'file'
      ? { file: readings.file.name }
      : { rows: readings.rows.map(({ values }) => values.map((each) => each ?? '~')) }),
    noise: Object.fromEntries(noise.map(({ column, deviation }) => [columnName(column), deviation])),
  };
}

/** As a word that names a part of the file. */
function columnWord(column: ColumnReference): Reference {
  return { name: columnName(column), span: column.span };
}
