/** One chart: its title, its values at the slider in words, the drawing or the table, and what can be saved of it. */
import { useMemo, useRef } from 'preact/hooks';
import { saveDrawn } from '../page/saveDrawn.ts';
import { openTables } from '../state.ts';
import { WORDS } from '../words.ts';
import { ChartDrawing } from './chartDrawing.tsx';
import { ChartTable } from './chartTable.tsx';
import type { DrawnChart, Spread, Stations } from './drawn.ts';
import { beyondShown, extremesInWords } from './extremes.ts';
import { figureText } from './figures.ts';
import { LABELLED, layOutChart } from './layOut.ts';
import type { Ghost, Margins } from './layOut.ts';
import { saveChartTable } from './saveTable.ts';
import { textWidth } from './textWidth.ts';
import { ValuesInWords } from './valuesInWords.tsx';

interface Props {
  readonly chart: DrawnChart;
  readonly picture: Stations;
  readonly ghosts: readonly Ghost[];
  /** Undefined where nothing is known of how far its curves spread. */
  readonly spread?: Spread | undefined;
  /** px */
  readonly width: number;
  readonly margins: Margins;
}

export function ChartFigure({ chart, picture, ghosts, spread, width, margins }: Props) {
  const drawing = useRef<SVGSVGElement>(null);
  const { value: measure } = textWidth;
  const laid = useMemo(
    () => layOutChart(chart, picture, ghosts, width, margins, measure, spread),
    [chart, picture, ghosts, width, margins, measure, spread],
  );
  const words = useMemo(() => chartInWords(chart, picture), [chart, picture]);
  const beyond = useMemo(() => beyondShown(chart, picture), [chart, picture]);
  const isTable = openTables.value.includes(chart.id);
  const titleId = `chart-${chart.id}`;
  const toggle = () => (openTables.value = isTable ? openTables.value.filter((id) => id !== chart.id) : [...openTables.value, chart.id]);
  const save = (kind: 'svg' | 'png') => {
    if (drawing.current !== null) void saveDrawn(drawing.current, kind, chart.id, chart.title);
  };
  return (
    <figure class="chart" aria-labelledby={titleId}>
      <div class="title-row">
        <h3 id={titleId}>
          {chart.title}
          {chart.unit !== '' && <span class="unit">{`, ${chart.unit}`}</span>}
        </h3>
        <div class="tools">
          <button type="button" class="quiet" aria-pressed={isTable} aria-label={WORDS.tableOf(chart.title)} onClick={toggle}>
            {WORDS.table}
          </button>
          {isTable ? (
            <button
              type="button"
              class="quiet"
              aria-label={WORDS.saveAs(chart.title, OF_TABLE)}
              onClick={() => void saveChartTable(chart, picture)}
            >
              {OF_TABLE}
            </button>
          ) : (
            (['svg', 'png'] as const).map((kind) => (
              <button
                key={kind}
                type="button"
                class="quiet"
                aria-label={WORDS.saveAs(chart.title, kind.toUpperCase())}
                onClick={() => save(kind)}
              >
                {kind.toUpperCase()}
              </button>
            ))
          )}
        </div>
      </div>
      {!isTable && <ValuesInWords chart={chart} picture={picture} ghosts={ghosts} spread={spread} />}
      {isTable ? (
        <ChartTable chart={chart} picture={picture} />
      ) : (
        <>
          <ChartDrawing drawing={drawing} chart={chart} picture={picture} laid={laid} />
          <p id={`words-${chart.id}`} class="unseen">
            {words}
          </p>
        </>
      )}
      {beyond.length > 0 && <p class="limits-shaded">{WORDS.beyondShown(figureText(chart.upTo ?? NaN, 0), beyond)}</p>}
      {!isTable && laid.others !== undefined && <p class="limits-shaded">{WORDS.othersShaded(LABELLED, laid.others.count)}</p>}
      {!isTable && laid.bands.length > 0 && <p class="limits-shaded">{WORDS.limitsShaded(laid.bands)}</p>}
    </figure>
  );
}

/** The kind of file that a table is saved as. */
const OF_TABLE = 'CSV';

/** Least and greatest of each curve that has a label, with their places. */
const chartInWords = (chart: DrawnChart, picture: Stations): string =>
  WORDS.chartInWords(
    chart.curves.slice(0, LABELLED).map((curve) => extremesInWords(chart, curve, picture)),
    Math.max(0, chart.curves.length - LABELLED),
  );
