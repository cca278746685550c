/** The drawing in words, for whoever does not see it: what is there, and how it stands at a pedal travel. */
import type { DrawnLever, DrawnPlates, Picture } from '../../src/protocol/picture.ts';
import type { PartKey, ReportedPart } from '../../src/protocol/report.ts';
import type { ViewDirection } from '../state.ts';
import { between, figureAt, lastKnown } from './interpolate.ts';
import { DRAWING_WORDS as WORDS } from '../words/drawing.ts';

/** E.g. `Front view to scale: 3 levers, 1 cable, 1 rod.` */
export function describePicture(picture: Picture, direction: ViewDirection): string {
  const there = COUNTED.flatMap((things) => {
    const number = things === 'plates' ? picture.plates.reduce((sum, { count }) => sum + count, 0) : picture[things].length;
    return number === 0 ? [] : [WORDS.counted(things, number)];
  });
  return WORDS.toScale(direction, there);
}

const COUNTED = ['levers', 'cables', 'rods', 'slots', 'couplings', 'plates', 'sensors', 'springs', 'keepOuts'] as const;

/** E.g. `At 40 % of pedal travel: pedal opened 10.8°, shaft opened 32.1°; plates bank open by 32.1° of 82.5°.` */
export function describePose(picture: Picture, travel: number): string {
  const at = between(picture.stations, travel);
  const openings = picture.levers.map(({ sense, rotation }) => sense * figureAt(rotation, at));
  const levers = picture.levers.flatMap(({ name, isDriven }, index) => {
    if (!isDriven) return [];
    const opening = openings[index]!;
    return [Number.isNaN(opening) ? WORDS.noPosition(name) : WORDS.opened(name, degrees(opening))];
  });
  const plates = picture.plates.map((each) => describePlates(each, picture.levers[each.lever]!, openings[each.lever]!));
  return WORDS.atTravel(percent(travel), levers, plates);
}

/** Closed is their idle stop, where they are drawn; full is the open stop, and where there is none, square to the bore. */
function describePlates({ name, count, drawnAngle }: DrawnPlates, { stops }: DrawnLever, opening: number): string {
  const plates = WORDS.platesNamed(name, count);
  const full = stops.open ?? Math.PI / 2 - drawnAngle;
  if (Number.isNaN(opening)) return WORDS.noPosition(plates);
  if (opening < -SAME) return WORDS.platesBelow(plates, degrees(-opening));
  if (opening <= SAME) return WORDS.platesClosed(plates);
  if (Math.abs(opening - full) <= SAME) return WORDS.platesFull(plates, degrees(opening));
  return WORDS.platesOpen(plates, degrees(opening), degrees(full));
}

/** 0.05°, rad: what one decimal shows as the same. */
const SAME = (0.05 * Math.PI) / 180;

/** One decimal, no minus before a zero. */
const degrees = (angle: number): string => `${rounded((angle * 180) / Math.PI).replace('-', '−')}°`;

export const percent = (fraction: number): string => `${rounded(100 * fraction)} %`;

function rounded(value: number): string {
  const tenths = Math.round(value * 10) / 10;
  return (tenths === 0 ? 0 : tenths).toString();
}

/**
 * Which levers have no position at this travel, and where each was assembled last, in words; empty where all have one. Levers that stop at
 * the same station share one text, at the first of them.
 */
export function describeStops(picture: Picture, travel: number): readonly { readonly lever: number; readonly text: string }[] {
  const at = between(picture.stations, travel);
  const stopped = new Map<number, number[]>();
  for (const [index, { rotation }] of picture.levers.entries()) {
    if (!Number.isNaN(figureAt(rotation, at))) continue;
    const station = lastKnown(rotation)[at.from] ?? -1;
    stopped.set(station, [...(stopped.get(station) ?? []), index]);
  }
  return [...stopped].map(([station, levers]) => {
    const names = levers.slice(0, NAMED).map((index) => picture.levers[index]!.name);
    const where = station < 0 ? WORDS.asDrawn : WORDS.asAt(percent(picture.stations[station]!));
    return { lever: levers[0]!, text: WORDS.standing(names, levers.length - names.length, where) };
  });
}

const NAMED = 3;

/** What a part is called aloud, with its dimensions as written. */
export function describePart(part: PartKey, reported: ReportedPart | undefined): string {
  const name = WORDS.part(part.kind, part.name);
  return reported === undefined || reported.dimensions.length === 0 ? name : WORDS.dimensions(name, reported.dimensions);
}
