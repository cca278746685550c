/**
 * The columns of a solved file as requirements read them: at any pedal position, and over the whole travel at every place where an
 * answer can turn and at 1 001 stations besides.
 *
 * A station is solved once for all columns that are looked at over the travel. The work that all requirements of a file may ask for
 * is bounded, so that none takes for ever; what lies beyond has no value.
 */
import { advance } from '../kinematics/advance.ts';
import { createPose } from '../kinematics/pose.ts';
import { lastWithValue } from '../numeric/roots.ts';
import type { Column } from '../table/column.ts';
import { greatestOf, leastOf, type Extreme, type Range } from '../travel/extremes.ts';
import { merge } from '../travel/places.ts';
import type { Travel } from '../travel/travel.ts';

export interface Sheet {
  /** Pedal travels at which the whole travel is looked at, rising from 0 to 1. */
  readonly stations: readonly number[];
  /** Undefined for one that is not solved. */
  column(name: string): SheetColumn | undefined;
  /** Says that a column will be looked at over the whole travel. Before the first such look. */
  expect(name: string): void;
  /** Counts work that is done beside solving. @returns whether there is still some left */
  spend(units: number): boolean;
  /** Whether the work that a file may ask for is used up. */
  exhausted(): boolean;
}

export interface SheetColumn {
  readonly name: string;
  readonly percent: boolean;
  /** SI; NaN where there is no value. */
  at(travel: number): number;
  /** Over the whole travel, refined between stations; undefined where there is a stretch without a value. */
  extreme(which: 'min' | 'max'): Extreme | undefined;
  /** Stretches of the travel without a value, their ends refined. */
  gaps(): readonly Range[];
}

/** @param travel absent where nothing could be solved */
export function createSheet(travel: Travel | undefined, columns: readonly Column[]): Sheet {
  return travel === undefined ? emptySheet : sheetOf(travel, columns);
}

const emptySheet: Sheet = {
  stations: [0, 1],
  column: () => undefined,
  expect: () => undefined,
  spend: () => true,
  exhausted: () => false,
};

/** Steps of 1/1000. */
const GRID: readonly number[] = Array.from({ length: 1001 }, (_, i) => i / 1000);

/** Joints moved, or conditions looked at: well under a second, and ten times what 200 requirements of every kind ask for. */
const MOST_WORK = 3_000_000;

function sheetOf(travel: Travel, columns: readonly Column[]): Sheet {
  const { build } = travel;
  const pose = createPose(build.mechanism);
  const cost = build.mechanism.joints.length + 1;
  const sources = new Map(columns.map((column) => [column.name, column]));
  const known = new Map<string, SheetColumn | undefined>();
  const expected = new Map<string, Float64Array>();
  let stations: readonly number[] | undefined;
  let indices: ReadonlyMap<number, number> | undefined;
  let solved: Uint8Array | undefined;
  let hint = 0;
  let work = 0;
  let poseTravel = NaN;

  const stationsOf = (): readonly number[] => (stations ??= merge(GRID, travel.samples));
  const spend = (units: number): boolean => {
    work += units;
    return work <= MOST_WORK;
  };
  const solveAt = (at: number): boolean => {
    if (poseTravel === at) return true;
    if (!spend(cost)) return false;
    advance(build, at, pose);
    poseTravel = at;
    return true;
  };
  const read = (column: Column, at: number): number => {
    if (!solveAt(at)) return NaN;
    const value = column.read(build, pose);
    return Number.isFinite(value) ? value : NaN;
  };
  /** Stations come one after the other, so the next one is looked for first. */
  const indexOf = (at: number): number | undefined => {
    const all = stationsOf();
    if (all[hint] === at) return hint;
    if (all[hint + 1] === at) return ++hint;
    indices ??= new Map(all.map((station, index) => [station, index]));
    const found = indices.get(at);
    if (found !== undefined) hint = found;
    return found;
  };
  const valuesOf = (name: string): Float64Array => {
    let values = expected.get(name);
    if (values === undefined) {
      expected.set(name, (values = new Float64Array(stationsOf().length)));
      // What was solved before this column was known to be wanted lacks it.
      solved?.fill(0);
    }
    return values;
  };
  /** A value over the travel: at a station all expected columns are read together. */
  const sampled = (column: Column, values: Float64Array, at: number): number => {
    const index = indexOf(at);
    if (index === undefined) return read(column, at);
    solved ??= new Uint8Array(stationsOf().length);
    if (solved[index] === 0) {
      for (const [name, into] of expected) into[index] = read(sources.get(name)!, at);
      solved[index] = 1;
    }
    return values[index]!;
  };

  const make = (column: Column): SheetColumn => {
    const extremes = new Map<'min' | 'max', Extreme | undefined>();
    let gaps: readonly Range[] | undefined;
    const at = (position: number): number => {
      const values = expected.get(column.name);
      return values === undefined ? read(column, position) : sampled(column, values, position);
    };
    const sheetColumn: SheetColumn = {
      name: column.name,
      percent: column.unit === '%',
      at,
      gaps() {
        valuesOf(column.name);
        return (gaps ??= gapsOf(at, stationsOf()));
      },
      extreme(which) {
        if (sheetColumn.gaps().length > 0) return undefined;
        if (!extremes.has(which)) extremes.set(which, (which === 'min' ? leastOf : greatestOf)(at, stationsOf()));
        return extremes.get(which);
      },
    };
    return sheetColumn;
  };

  return {
    get stations() {
      return stationsOf();
    },
    column(name) {
      if (!known.has(name)) {
        const source = sources.get(name);
        known.set(name, source && make(source));
      }
      return known.get(name);
    },
    expect(name) {
      if (sources.has(name)) valuesOf(name);
    },
    spend,
    exhausted: () => work > MOST_WORK,
  };
}

function gapsOf(at: (travel: number) => number, stations: readonly number[]): readonly Range[] {
  const gaps: Range[] = [];
  let from: number | undefined;
  let before: number | undefined;
  for (const station of stations) {
    const lacks = Number.isNaN(at(station));
    if (lacks) from ??= before === undefined ? station : lastWithValue(at, before, station);
    else if (from !== undefined && before !== undefined) {
      gaps.push({ from, to: lastWithValue(at, station, before) });
      from = undefined;
    }
    before = station;
  }
  if (from !== undefined && before !== undefined) gaps.push({ from, to: before });
  return gaps;
}
