/** A solved table for the eye: columns in line, few digits, folded to the width of a terminal. */
import type { Table, TableColumn } from '../table/column.ts';
import { decimal, NO_VALUE } from './figure.ts';
import { plain, type Paint } from './paint.ts';
import { pad, widthOf } from './width.ts';

export interface TableTextOptions {
  readonly paint?: Paint;
  /** Cells to a line; wider tables go on below, with their first column again. Not folded where absent. */
  readonly width?: number;
}

export function tableText(table: Table, { paint = plain, width = Infinity }: TableTextOptions = {}): string {
  const columns = table.columns.map((column) => shownColumn(column, table.stations.length));
  return fold(columns, width)
    .map((block) => blockText(block, table.stations.length, paint))
    .join('\n');
}

interface ShownColumn {
  readonly name: string;
  readonly unit: string;
  readonly cells: readonly string[];
  readonly width: number;
}

const GAP = '  ';

function shownColumn({ name, unit, values }: TableColumn, count: number): ShownColumn {
  const cells = Array.from({ length: count }, (_, row) => cellText(values[row] ?? null, unit));
  return { name, unit, cells, width: Math.max(...[name, unit, ...cells].map(widthOf)) };
}

function cellText(value: number | null, unit: string): string {
  return value === null ? NO_VALUE : decimal(value, DIGITS[unit] ?? DEFAULT_DIGITS);
}

const DIGITS: Readonly<Record<string, number>> = { '%': 1, deg: 2, mm: 2, 'mm²': 0, V: 3, N: 1, 'N·mm': 0 };
const DEFAULT_DIGITS = 3;

function fold(columns: readonly ShownColumn[], width: number): ShownColumn[][] {
  const [first, ...rest] = columns;
  if (first === undefined) return [];
  const blocks: ShownColumn[][] = [[first]];
  let used = first.width;
  let block = blocks[0]!;
  for (const column of rest) {
    if (block.length > 1 && used + GAP.length + column.width > width) {
      block = [first];
      blocks.push(block);
      used = first.width;
    }
    block.push(column);
    used += GAP.length + column.width;
  }
  return blocks;
}

function blockText(columns: readonly ShownColumn[], count: number, paint: Paint): string {
  const line = (text: (column: ShownColumn) => string): string =>
    columns
      .map((column) => pad(text(column), column.width, true))
      .join(GAP)
      .trimEnd();
  const lines = [
    paint(
      'strong',
      line(({ name }) => name),
    ),
    paint(
      'quiet',
      line(({ unit }) => unit),
    ),
  ];
  for (let row = 0; row < count; row++) lines.push(line(({ cells }) => cells[row] ?? ''));
  return `${lines.join('\n')}\n`;
}
