/** The figures at the slider, in words. While it plays they change with each frame, and nothing is rendered anew. */
import { useRef } from 'preact/hooks';
import type { ChartCurve } from '../../src/protocol/charts.ts';
import { useFollow } from '../page/useFollow.ts';
import { lit, travel } from '../state.ts';
import { WORDS } from '../words.ts';
import { valueAt } from './curve.ts';
import type { DrawnChart, Spread, Stations } from './drawn.ts';
import { curveText } from './extremes.ts';
import { figureText, longestText, percentText, withUnit } from './figures.ts';
import { LABELLED } from './layOut.ts';
import type { Ghost } from './layOut.ts';

interface Props {
  readonly chart: DrawnChart;
  readonly picture: Stations;
  readonly ghosts: readonly Ghost[];
  readonly spread: Spread | undefined;
}

/** Behind the line stands the longest that it can become, unseen, so that what follows does not move while it plays. */
export function ValuesInWords(props: Props) {
  const place = useRef<HTMLSpanElement>(null);
  const part = lit.value?.name;
  const write = () => {
    if (place.current !== null) place.current.textContent = valuesInWords(props, travel.value, part);
  };
  useFollow(write);
  return (
    <p class="values">
      <span class="longest" aria-hidden="true">
        {valuesInWords(props, undefined, part)}
      </span>
      <span ref={place} />
    </p>
  );
}

/**
 * E.g. `At 25.0 %: shaft 17.2°, idler 20.1° (HEAD 19.8°)`. Another state's figure stands where it differs. Of many curves, those of the lit
 * part. Without a travel, the longest that there can be.
 */
export function valuesInWords({ chart, picture, ghosts, spread }: Props, at: number | undefined, part: string | undefined): string {
  const ofPart = chart.curves.length > LABELLED ? chart.curves.filter((curve) => curve.part === part) : [];
  const told = ofPart.length > 0 ? ofPart : chart.curves.slice(0, LABELLED);
  const texts = told.map((curve) => {
    const own = textAt(curve, picture, chart, at);
    const others = ghosts.flatMap((ghost) => {
      const same = ghost.charts.find(({ id }) => id === chart.id)?.curves.find(({ column }) => column === curve.column);
      const text = same === undefined ? own : textAt(same, ghost.picture, chart, at);
      return text === own && at !== undefined ? [] : [`${ghost.label} ${text}`];
    });
    const within = spread && withinAt(curve, spread, at);
    if (within !== undefined) others.unshift(within);
    return `${curve.label} ${own}${others.length === 0 ? '' : ` (${others.join(', ')})`}`;
  });
  return WORDS.valuesAt(percentText(at ?? 1), texts);
}

/** Between what most builds lie; undefined where that is not known. */
function withinAt({ column, digits }: ChartCurve, { stations, columns }: Spread, at: number | undefined): string | undefined {
  const spread = columns.find((each) => each.column === column);
  if (spread === undefined) return undefined;
  const [low, high] = [spread.low, spread.high].map((values) =>
    at === undefined ? longestText(values, digits + 1) : figureText(valueAt(stations, values, at), digits + 1),
  );
  // Where nothing varies there is nothing to tell.
  return low === high && at !== undefined ? undefined : WORDS.buildsWithin(low!, high!);
}

function textAt({ values, digits }: ChartCurve, { stations }: Stations, chart: DrawnChart, at: number | undefined): string {
  if (at !== undefined) return curveText(chart, valueAt(stations, values, at), digits);
  const longest = withUnit(longestText(values, digits), chart.unit);
  const over = chart.upTo === undefined ? '' : curveText(chart, chart.upTo, digits);
  return over.length > longest.length ? over : longest;
}
