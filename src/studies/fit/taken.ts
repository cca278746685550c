/** The readings of a file one by one: each with its place, its column and its noise, and those that cannot be used with the reason. */
import { greatestSignal, tooGreat } from '../../definition/greatestSignal.ts';
import type { Span } from '../../definition/span.ts';
import { columnName } from '../../definition/schema/columnName.ts';
import type { Study } from '../../findings/study.ts';
import type { Column } from '../../table/column.ts';
import type { Station } from './car.ts';
import type { Gathered, GatheredRun } from './gather.ts';
import { commonNoise } from './noise.ts';

/** A column of one run. */
export interface TakenColumn {
  readonly run: string;
  readonly column: Column;
  /** One standard deviation, SI. */
  readonly noise: number;
  /** Whether the file gives the noise; else it is common practice, no source, or where that is more, how its own readings scatter. */
  readonly noiseGiven: boolean;
  /** What is common for such a column, SI. */
  readonly common: number;
}

/** Where a reading stands. */
export interface ReadingPlace {
  readonly run: string;
  /** Counted from 1 within the run. */
  readonly row: number;
  /** Name of the column. */
  readonly column: string;
  /** In the throttle file: the figure, or the name of the CSV file. */
  readonly span: Span;
  /** Line of the CSV file, from 1; absent for a row of the throttle file. */
  readonly line?: number;
}

export interface Taken extends ReadingPlace {
  /** Index into `columns`. */
  readonly of: number;
  /** Index into `stations`. */
  readonly station: number;
  /** SI. */
  readonly value: number;
}

/** A reading that is not used. */
export interface LeftOut extends ReadingPlace {
  /** A sentence without a full stop. */
  readonly why: string;
}

export interface AllTaken {
  readonly stations: readonly Station[];
  readonly columns: readonly TakenColumn[];
  readonly readings: readonly Taken[];
  readonly leftOut: readonly LeftOut[];
}

/** Every reading of a column that the linkage has. */
export function takeReadings(study: Study, { runs }: Gathered): AllTaken {
  const stations: Station[] = [];
  const columns: TakenColumn[] = [];
  const readings: Taken[] = [];
  const leftOut: LeftOut[] = [];
  for (const gathered of runs) takeRun(study, gathered, { stations, columns, readings, leftOut });
  return { stations, columns, readings, leftOut };
}

interface Into {
  readonly stations: Station[];
  readonly columns: TakenColumn[];
  readonly readings: Taken[];
  readonly leftOut: LeftOut[];
}

function takeRun(study: Study, { run, readings }: GatheredRun, into: Into): void {
  const [position, ...others] = readings.columns;
  if (position === undefined) return;
  const { mechanism } = study.travel;
  const joint = position.column === 'pull' ? mechanism.cables.find(({ name }) => name === position.owner) : undefined;
  const isKnown = position.column === 'travel' || joint !== undefined;
  const numbers = others.map((of): number | undefined => {
    const column = study.columns.get(columnName(of));
    if (column === undefined) return undefined;
    const given = run.noise.find(({ column: noisy }) => columnName(noisy) === columnName(of))?.deviation.nominal;
    const common = commonNoise(column);
    return into.columns.push({ run: run.name, column, noise: given ?? common, noiseGiven: given !== undefined, common }) - 1;
  });
  const beyond = others.map((of) => greatestSignal(study.definition, of));
  readings.rows.forEach(({ line, values: [at, ...values] }, row) => {
    if (at === undefined) return;
    const station = into.stations.push({ position: at, cable: joint?.cable }) - 1;
    values.forEach((value, c) => {
      if (value === undefined) return;
      const place: ReadingPlace = {
        run: run.name,
        row: row + 1,
        column: columnName(others[c]!),
        span: spanOf(run, row, c + 1),
        ...(line !== undefined && { line }),
      };
      const of = numbers[c];
      if (!isKnown) into.leftOut.push({ ...place, why: `${columnName(position)} cannot be solved in this file` });
      else if (of === undefined) into.leftOut.push({ ...place, why: `${place.column} cannot be solved in this file` });
      else if (value > (beyond[c]?.most ?? Infinity))
        into.leftOut.push({ ...place, why: tooGreat(place.column, value, beyond[c]!).message });
      else into.readings.push({ ...place, of, station, value });
    });
  });
}

function spanOf({ readings, span }: GatheredRun['run'], row: number, column: number): Span {
  if (readings.kind === 'file') return readings.file.span;
  const own = readings.rows[row];
  return own?.values[column]?.span ?? own?.span ?? span;
}
