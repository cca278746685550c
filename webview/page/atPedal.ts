/** What the pedal does where it stands, in words: how far each throttle shaft is open, and what the foot feels. */
import type { Chart } from '../../src/protocol/charts.ts';
import type { Picture } from '../../src/protocol/picture.ts';
import { valueAt } from '../charts/curve.ts';
import type { Stations } from '../charts/drawn.ts';
import { figureText, longestText, percentText, withUnit } from '../charts/figures.ts';
import { between, figureAt } from '../drawing/interpolate.ts';
import { WORDS } from '../words.ts';

/** The chart of effort with the stations that it is of; undefined where the file has none. */
export interface HeldEffort {
  readonly chart: Chart;
  readonly picture: Stations;
}

/**
 * E.g. `throttle 41.7 % open (34.2°), effort 24.3 N, coming back 15.1 N`; empty where the file has neither plates nor a place for the foot.
 * @param at pedal travel, a fraction; without one, the longest that there can be
 */
export function atPedalText(picture: Picture, effort: HeldEffort | undefined, at: number | undefined): string {
  const { lastSolved } = picture.pedal;
  const beyond = lastSolved === undefined ? '' : WORDS.beyondSolved(percentText(lastSolved));
  if (at !== undefined && lastSolved !== undefined && at > lastSolved + SAME) return beyond;
  const text = [...throttleTexts(picture, at), ...(effort === undefined ? [] : effortTexts(picture, effort, at))].join(', ');
  return at === undefined && beyond.length > text.length ? beyond : text;
}

/** A fraction of the travel: rounding of the computation. */
const SAME = 1e-9;

interface Shaft {
  readonly name: string;
  /** rad; NaN where it has no place. */
  readonly opening: number;
  /** At which its plates are fully open, rad. */
  readonly full: number;
}

function throttleTexts(picture: Picture, at: number | undefined): readonly string[] {
  const shafts = shaftsOf(picture, at);
  if (shafts.length === 0) return [];
  if (shafts.length <= NAMED) return shafts.map((shaft) => shaftText(shaft, shafts.length === 1, at === undefined));
  const shares = shafts.map(({ opening, full }) => opening / full).filter((share) => !Number.isNaN(share));
  if (shares.length < shafts.length) return [WORDS.throttlesUnknown(shafts.length - shares.length, shafts.length)];
  return [WORDS.throttlesOpen(shafts.length, figureText(100 * Math.min(...shares), 1), figureText(100 * Math.max(...shares), 1))];
}

/** So many are told one by one; of more, the least open and the most open. */
const NAMED = 2;

/** Full is the open stop, and where there is none, where the first of its plates stands square to its bore. */
function shaftsOf({ stations, levers, plates }: Picture, at: number | undefined): readonly Shaft[] {
  const place = between(stations, at ?? 1);
  return [...new Set(plates.map(({ lever }) => lever))].flatMap((index) => {
    const lever = levers[index];
    if (lever === undefined) return [];
    const square = plates.flatMap((each) => (each.lever === index ? Math.PI / 2 - each.drawnAngle : []));
    const full = lever.stops.open ?? Math.min(...square);
    return [{ name: lever.name, full, opening: at === undefined ? full : lever.sense * figureAt(lever.rotation, place) }];
  });
}

function shaftText({ name, opening, full }: Shaft, isOnly: boolean, isLongest: boolean): string {
  const called = isOnly ? WORDS.throttle : name;
  if (Number.isNaN(opening)) return WORDS.throttleUnknown(called);
  if (Math.abs(opening) <= SHUT && !isLongest) return WORDS.throttleClosed(called);
  return WORDS.throttleOpen(called, figureText((100 * opening) / full, 1), figureText((opening * 180) / Math.PI, 1));
}

/** 0.05°, rad: what one decimal shows as closed. */
const SHUT = (0.05 * Math.PI) / 180;

function effortTexts({ pedal }: Picture, { chart, picture: { stations } }: HeldEffort, at: number | undefined): readonly string[] {
  const words = { 'pedal.effort': WORDS.effort(pedal.padIs), 'pedal.release': WORDS.comingBack } as const;
  return chart.curves.flatMap(({ column, values, digits }) => {
    if (column !== 'pedal.effort' && column !== 'pedal.release') return [];
    const text = at === undefined ? longestText(values, digits) : figureText(valueAt(stations, values, at), digits);
    return [`${words[column]} ${withUnit(text, chart.unit)}`];
  });
}
