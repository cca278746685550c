/** What a sensor can give at most: a reading beyond that was no signal of it, or is in another unit. */
import type { ColumnReference, Definition, Value } from './definition.ts';

export interface GreatestSignal {
  /** V. */
  readonly most: number;
  /** What sets it: the supply, else the greater end of its signal. */
  readonly of: 'supply' | 'signal';
  readonly figure: Value;
}

/** Undefined of any column but a sensor's signal. */
export function greatestSignal(
  { sensors }: Pick<Definition, 'sensors'>,
  { owner, column }: Pick<ColumnReference, 'owner' | 'column'>,
): GreatestSignal | undefined {
  const sensor = column === 'signal' ? sensors.find(({ name }) => name === owner) : undefined;
  if (sensor === undefined) return undefined;
  const { supply, signal } = sensor;
  const end = signal.from.nominal > signal.to.nominal ? signal.from : signal.to;
  if (supply !== undefined && supply.nominal >= end.nominal) return { most: ABOVE_SUPPLY * supply.nominal, of: 'supply', figure: supply };
  return { most: ABOVE_SIGNAL * end.nominal, of: 'signal', figure: end };
}

/** A sentence without a full stop, with its cure. @param value V @param name of the column */
export function tooGreat(name: string, value: number, { of, figure }: GreatestSignal): { readonly message: string; readonly cure: string } {
  const volts = (of: number): string => `${Number(of.toPrecision(6))} V`;
  const most =
    of === 'supply' ? `the supply of its sensor gives, ${volts(figure.nominal)}` : `its sensor gives, ${volts(figure.nominal)} at most`;
  return {
    message: `\`${name}\` cannot have read ${volts(value)}: that is more than ${most}`,
    cure: 'Check what was read, and its unit',
  };
}

/**
 * Of readings of a column that are too great, one a run: of a few each by itself, since a spike or a slip leaves the others good; of a third
 * and more one for all, since their unit is wrong then.
 * @param all how many readings of the column there are
 */
export function tooGreatOf<Place>(
  name: string,
  beyond: readonly { readonly place: Place; readonly value: number }[],
  all: number,
  limit: GreatestSignal,
): readonly BeyondSignal<Place>[] {
  const [first] = beyond;
  if (first === undefined) return [];
  if (beyond.length < MOSTLY * all) return beyond.map(({ place, value }) => ({ place, ...tooGreat(name, value, limit), isUnit: false }));
  const told = tooGreat(name, first.value, limit);
  if (beyond.length === 1) return [{ place: first.place, ...told, isUnit: true }];
  const isMilli = beyond.every(({ value }) => value / 1e3 <= limit.most);
  return [
    {
      place: first.place,
      message: `${told.message}; so it is with ${beyond.length} of its ${all} readings`,
      cure: isMilli ? 'They look like millivolts: write `mV`' : told.cure,
      isUnit: true,
    },
  ];
}

/** What is wrong with readings that are too great. */
export interface BeyondSignal<Place> {
  readonly place: Place;
  readonly message: string;
  readonly cure: string;
  /** Whether it is the column that is wrong, and not single readings: then none of it can be used. */
  readonly isUnit: boolean;
}

/** Of the readings of a column. */
const MOSTLY = 1 / 3;

/** Supplies, and the meters that read them, are out by as much. Common practice, no source. */
const ABOVE_SUPPLY = 1.05;
/** A sensor may pass its own span somewhat, as far as its supply, which the file does not give. Common practice, no source. */
const ABOVE_SIGNAL = 1.5;
