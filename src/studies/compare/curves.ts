/** Columns of two linkages beside each other, on common stations. */
import type { Column } from '../../table/column.ts';
import { tabulate } from '../../table/table.ts';
import { merge } from '../../travel/places.ts';
import type { Curve } from './comparison.ts';
import type { Renames } from './names.ts';
import { differs } from './noticeable.ts';
import type { SolvedSide } from './solved.ts';

/**
 * A side that is not solved has no values.
 * @param wanted columns of the second file, or of the first by their names there; a part's name means all of its columns. Where
 * absent: the opening of each lever with plates (of every lever where none has), open area, effort and signal, those that differ.
 */
export function curvesOf(
  was: SolvedSide | undefined,
  is: SolvedSide | undefined,
  renames: Renames,
  wanted?: readonly string[],
): readonly Curve[] {
  const before = new Map((was?.columns ?? []).map((column) => [renames.part(column.name), column]));
  const after = new Map((is?.columns ?? []).map((column) => [column.name, column]));
  const names = [...new Set([...after.keys(), ...before.keys()])];
  const isWanted = wanted === undefined ? byDefault(was, is, renames) : chosen(wanted, before);
  const stations = merge(GRID, was?.travel.places.all ?? [], is?.travel.places.all ?? []);
  const curves = names
    .filter((name) => isWanted(name))
    .map((name) => curve(name, [was, before.get(name)], [is, after.get(name)], stations));
  return wanted === undefined
    ? curves.filter(({ isOther }) => isOther).map(({ curve: each }) => each)
    : curves.map(({ curve: each }) => each);
}

const STATIONS = 101;
const GRID: readonly number[] = Array.from({ length: STATIONS }, (_, index) => index / (STATIONS - 1));

function byDefault(was: SolvedSide | undefined, is: SolvedSide | undefined, renames: Renames): (name: string) => boolean {
  const withPlates = (side: SolvedSide | undefined): readonly string[] =>
    (side?.travel.mechanism.levers ?? []).filter(({ plates }) => plates.length > 0).map(({ name }) => `${name}.opening`);
  const openings = new Set([...withPlates(was).map(renames.part), ...withPlates(is)]);
  return (name) => {
    const key = name.slice(name.lastIndexOf('.') + 1);
    if (key === 'opening') return openings.size === 0 || openings.has(name);
    return key === 'area' || key === 'signal' || name === 'pedal.effort';
  };
}

function chosen(wanted: readonly string[], before: ReadonlyMap<string, Column>): (name: string) => boolean {
  const words = new Set(wanted);
  return (name) => {
    const old = before.get(name);
    return [name, ownerOf(name), ...(old === undefined ? [] : [old.name, old.owner])].some((word) => words.has(word));
  };
}

function less(value: number | null, other: number | null): number | null {
  return value === null || other === null ? null : value - other;
}

type Side = readonly [side: SolvedSide | undefined, column: Column | undefined];

function curve(name: string, old: Side, now: Side, stations: readonly number[]): { readonly curve: Curve; readonly isOther: boolean } {
  const [was, is] = [valuesOf(old, stations), valuesOf(now, stations)];
  const column = now[1] ?? old[1];
  const scale = column?.scale ?? 1;
  const difference = is.map((value, index) => less(value, was[index] ?? null));
  const isOther = is.some((value, index) => differs((was[index] ?? NaN) / scale, (value ?? NaN) / scale, column?.dimension));
  return { curve: { column: name, unit: column?.unit ?? '', stations, was, is, difference }, isOther };
}

function valuesOf([side, column]: Side, stations: readonly number[]): readonly (number | null)[] {
  if (side === undefined || column === undefined) return stations.map(() => null);
  return tabulate(side.travel, [column], stations).columns[0]?.values ?? [];
}

function ownerOf(name: string): string {
  return name.slice(0, name.indexOf('.'));
}
