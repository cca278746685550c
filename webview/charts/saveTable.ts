/** Tables saved as CSV: the whole one, which the editor has, and the figures of one chart. */
import { fileNameFor } from '../page/fileNameFor.ts';
import { requestTable, saveFile } from '../send.ts';
import type { DrawnChart, Stations } from './drawn.ts';

/** Every column of the table. */
export async function saveTable(): Promise<void> {
  const csv = await requestTable();
  if (csv !== undefined) await saveFile({ name: fileNameFor('table', 'csv'), kind: 'csv', content: csv });
}

/** The curves of a chart at every station. */
export const saveChartTable = (chart: DrawnChart, picture: Stations): Promise<void> =>
  saveFile({ name: fileNameFor(chart.id, 'csv'), kind: 'csv', content: chartCsv(chart, picture) });

/** Numbers as a program reads them, an empty field where there is none; names of columns are free of commas and quotes. */
export function chartCsv({ curves, unit, upTo }: DrawnChart, { stations }: Stations): string {
  const measure = [unit, ...(upTo === undefined ? [] : [`up to ${upTo}`])].filter((word) => word !== '').join(' ');
  const names = ['pedal.travel [%]', ...curves.map(({ column }) => (measure === '' ? column : `${column} [${measure}]`))];
  const rows = Array.from(stations, (at, index) => [
    written(100 * at, 4),
    ...curves.map(({ values, digits }) => written(values[index]!, digits + 3)),
  ]);
  return [names, ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}

const written = (value: number, digits: number) => (Number.isNaN(value) ? '' : String(Number(value.toFixed(digits))));
