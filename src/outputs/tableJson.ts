/** A solved table as JSON: every digit, `null` where there is no value, a column a line. */
import type { Table } from '../table/column.ts';

/** `{"columns":[{"name","unit","values"}, …]}`, with a line ending. */
export function tableJson({ columns }: Table): string {
  const lines = columns.map(({ name, unit, values }) => JSON.stringify({ name, unit, values }));
  return `{"columns":[\n${lines.join(',\n')}\n]}\n`;
}
