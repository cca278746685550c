/** The figures at the slider, in words. While it plays they change with each frame, and nothing is rendered anew. */
import { useRef } from 'preact/hooks';
import type { Chart, ChartCurve } from '../../src/protocol/charts.ts';
import type { Picture } from '../../src/protocol/picture.ts';
import { useFollow } from '../page/useFollow.ts';
import { lit, travel } from '../state.ts';
import { WORDS } from '../words.ts';
import { valueAt } from './curve.ts';
import { figureText, longestText, percentText, withUnit } from './figures.ts';
import { LABELLED } from './layOut.ts';
import type { Ghost } from './layOut.ts';

interface Props {
  readonly chart: Chart;
  readonly picture: Picture;
  readonly ghosts: readonly Ghost[];
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
export function valuesInWords({ chart, picture, ghosts }: Props, at: number | undefined, part: string | undefined): string {
  const ofPart = chart.curves.length > LABELLED ? chart.curves.filter((curve) => curve.part === part) : [];
  const told = ofPart.length > 0 ? ofPart : chart.curves.slice(0, LABELLED);
  const texts = told.map((curve) => {
    const own = textAt(curve, picture, chart.unit, at);
    const others = ghosts.flatMap((ghost) => {
      const same = ghost.charts.find(({ id }) => id === chart.id)?.curves.find(({ column }) => column === curve.column);
      const text = same === undefined ? own : textAt(same, ghost.picture, chart.unit, at);
      return text === own && at !== undefined ? [] : [`${ghost.label} ${text}`];
    });
    return `${curve.label} ${own}${others.length === 0 ? '' : ` (${others.join(', ')})`}`;
  });
  return WORDS.valuesAt(percentText(at ?? 1), texts);
}

const textAt = ({ values, digits }: ChartCurve, { stations }: Picture, unit: string, at: number | undefined) =>
  withUnit(at === undefined ? longestText(values, digits) : figureText(valueAt(stations, values, at), digits), unit);
