/** Stations of the levers that move a pair, and the stretches of the travel on which each of them turns one way only. */
import { lastWithValue } from '../numeric/roots.ts';
import { merge } from '../travel/places.ts';
import type { Travel } from '../travel/travel.ts';
import type { Turns } from './piece.ts';

export interface Station extends Turns {
  /** Of the pedal, a fraction. */
  readonly travel: number;
}

/** Stations of some levers, each found once. Of other levers nothing is right in them. */
export function stationsOf({ poseAt, mechanism }: Travel, levers: readonly number[]): (travel: number) => Station {
  const known = new Map<number, Station>();
  const count = mechanism.levers.length;
  return (travel) => {
    const before = known.get(travel);
    if (before !== undefined) return before;
    const rotation = new Array<number>(count).fill(0);
    const cosine = new Array<number>(count).fill(1);
    const sine = new Array<number>(count).fill(0);
    for (const lever of levers) {
      const pose = poseAt(travel, lever);
      rotation[lever] = pose.rotation[lever]!;
      cosine[lever] = pose.cosine[lever]!;
      sine[lever] = pose.sine[lever]!;
    }
    const station: Station = { travel, rotation, cosine, sine };
    known.set(travel, station);
    return station;
  };
}

export interface Span {
  readonly from: Station;
  readonly to: Station;
}

/** Between the places at which one of the levers can turn back, as far as all of them can be assembled. */
export function spansOf({ places, mechanism }: Travel, levers: readonly number[], stationAt: (travel: number) => Station): readonly Span[] {
  const turns = levers.map((lever) => (mechanism.levers[lever]!.group < 0 ? [] : places.levers[lever]!));
  const ends = merge([0, 1], ...turns);
  const has = (travel: number): number => {
    const { rotation } = stationAt(travel);
    return levers.every((lever) => !Number.isNaN(rotation[lever]!)) ? 0 : NaN;
  };
  return ends.slice(1).flatMap((high, i): readonly Span[] => {
    const low = ends[i]!;
    const middle = (low + high) / 2;
    if (Number.isNaN(has(middle))) return [];
    const from = Number.isNaN(has(low)) ? lastWithValue(has, middle, low) : low;
    const to = Number.isNaN(has(high)) ? lastWithValue(has, middle, high) : high;
    return [{ from: stationAt(from), to: stationAt(to) }];
  });
}
