/**
 * A solved table as comma-separated values after RFC 4180: a header line, CRLF line ends, quotes where a field needs
 * them. Every digit; an empty field where there is no value.
 */
import type { Table } from '../table/column.ts';

/** Headers are the column's name with its unit in brackets, e.g. `shaft.opening [deg]`. */
export function tableCsv({ stations, columns }: Table): string {
  const rows = [columns.map(({ name, unit }) => field(unit === '' ? name : `${name} [${unit}]`))];
  for (let row = 0; row < stations.length; row++) rows.push(columns.map(({ values }) => numberField(values[row] ?? null)));
  return rows.map((fields) => `${fields.join(',')}\r\n`).join('');
}

function field(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function numberField(value: number | null): string {
  // String(-0) is 0.
  return value === null ? '' : String(value);
}
