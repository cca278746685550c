/** A chart as a table: its figures at the slider and at every tenth of the pedal's travel. */
import { useRef } from 'preact/hooks';
import { useFollow } from '../page/useFollow.ts';
import { travel } from '../state.ts';
import { WORDS } from '../words.ts';
import { valueAt } from './curve.ts';
import type { DrawnChart, Stations } from './drawn.ts';
import { curveText } from './extremes.ts';
import { figureText } from './figures.ts';

const ROWS = Array.from({ length: 11 }, (_, index) => index / 10);

export function ChartTable({ chart, picture }: { readonly chart: DrawnChart; readonly picture: Stations }) {
  const live = useRef<HTMLTableRowElement>(null);
  const cells = (at: number) =>
    chart.curves.map(({ values, digits }) => curveText({ ...chart, unit: '' }, valueAt(picture.stations, values, at), digits));
  const write = () => {
    const at = travel.value;
    [figureText(100 * at, 1), ...cells(at)].forEach((text, index) => {
      const cell = live.current?.cells[index];
      if (cell !== undefined) cell.textContent = text;
    });
  };
  useFollow(write);
  return (
    <div class="table-frame" role="region" aria-label={WORDS.tableFrame(chart.title)} tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">{WORDS.pedalColumn}</th>
            {chart.curves.map(({ column, label }) => (
              <th key={column} scope="col" title={column}>
                {label}
                {chart.unit !== '' && `, ${chart.unit}`}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr ref={live} class="at-slider">
            <th scope="row" />
            {chart.curves.map(({ column }) => (
              <td key={column} />
            ))}
          </tr>
          {ROWS.map((at) => (
            <tr key={at}>
              <th scope="row">{100 * at}</th>
              {cells(at).map((text, index) => (
                <td key={chart.curves[index]!.column}>{text}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
