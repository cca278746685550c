/** The drawing in words, for whoever does not see it: what is there, and how it stands at a pedal travel. */
import type { Picture } from '../../src/protocol/picture.ts';
import type { ReportedPart } from '../../src/protocol/report.ts';
import type { ViewDirection } from '../state.ts';
import { between, figureAt, lastKnown } from './interpolate.ts';

/** E.g. `Front view to scale: 3 levers, 1 cable, 1 rod.` */
export function describePicture(picture: Picture, direction: ViewDirection): string {
  const counts: readonly (readonly [number, string])[] = [
    [picture.levers.length, 'lever'],
    [picture.cables.length, 'cable'],
    [picture.rods.length, 'rod'],
    [picture.slots.length, 'slot'],
    [picture.couplings.length, 'coupling'],
    [picture.plates.reduce((sum, { count }) => sum + count, 0), 'plate'],
    [picture.sensors.length, 'sensor'],
    [picture.springs.length, 'spring'],
    [picture.keepOuts.length, 'keep-out'],
  ];
  const there = counts.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}${count === 1 ? '' : 's'}`);
  return `${VIEWS[direction]} view to scale: ${there.length === 0 ? 'nothing to draw yet' : there.join(', ')}.`;
}

const VIEWS: Readonly<Record<ViewDirection, string>> = { front: 'Front', top: 'Top', side: 'Side' };

/** E.g. `At 40 % of pedal travel: pedal opened 10.8°, shaft opened 32.1°.` */
export function describePose(picture: Picture, travel: number): string {
  const at = between(picture.stations, travel);
  const said = picture.levers
    .filter(({ isDriven }) => isDriven)
    .map((lever) => {
      const rotation = figureAt(lever.rotation, at);
      return Number.isNaN(rotation) ? `${lever.name} has no position` : `${lever.name} opened ${degrees(lever.sense * rotation)}`;
    });
  return `At ${percent(travel)} of pedal travel: ${said.length === 0 ? 'nothing moves' : said.join(', ')}.`;
}

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
    const more = levers.length > NAMED ? ` and ${levers.length - NAMED} more` : '';
    const where = station < 0 ? 'as drawn: no position at any travel' : `as at ${percent(picture.stations[station]!)}: no position here`;
    return { lever: levers[0]!, text: `${names.join(', ')}${more} ${levers.length === 1 ? 'stands' : 'stand'} ${where}` };
  });
}

const NAMED = 3;

/** What a part is called aloud, with its dimensions as written. */
export function describePart(part: { readonly kind: string; readonly name: string }, reported: ReportedPart | undefined): string {
  const name = part.name === part.kind ? part.name : `${part.kind} ${part.name}`;
  return reported === undefined || reported.dimensions.length === 0 ? name : `${name}: ${reported.dimensions.join(', ')}`;
}
