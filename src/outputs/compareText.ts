/**
 * What has changed between two throttle files, as text: first in the file, then what it did, worst first, then figures and curves, the
 * caution, and in the last line how the new file stands to the old one.
 */
import type { Comparison, Curve } from '../studies/compare/comparison.ts';
import { CAUTION } from './caution.ts';
import { compareLimits, compareVerdict, effectRows } from './compareEffects.ts';
import { curveRows, figureRows, SHOWN_FIGURES, type FigureRow } from './compareFigures.ts';
import { fileRows, type ChangeRow } from './compareFile.ts';
import { plain, printable, type Paint } from './paint.ts';
import { pad, widthOf, wrap } from './width.ts';

export interface CompareTextOptions {
  /** Names of the files, as the person gave them. */
  readonly was: string;
  readonly is: string;
  readonly paint?: Paint;
  /** Cells to a line for what can be broken. */
  readonly width?: number;
}

/** With a line ending. */
export function compareText(comparison: Comparison, { was, is, paint = plain, width = DEFAULT_WIDTH }: CompareTextOptions): string {
  const page: Page = { paint, width };
  const names = `${printable(was)} → ${printable(is)}`;
  const { columns, curves } = comparison;
  const sections = [
    [paint('strong', names)],
    compareLimits(comparison).flatMap((line) => wrap(line, width)),
    changeSection('What changed in the file', fileRows(comparison), page),
    changeSection('What it did', effectRows(comparison), page),
    figureSection(figureRows(comparison), page),
    columnSection(columns, page),
    ...curves.map((curve, index) => curveSection(curve, index === 0, page)),
    wrap(`Caution. ${CAUTION}`, width),
    [`${names}: ${paint(comparison.verdict.worse ? 'error' : 'strong', compareVerdict(comparison))}`],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

const DEFAULT_WIDTH = 110;
const INDENT = '  ';

interface Page {
  readonly paint: Paint;
  readonly width: number;
}

function changeSection(title: string, rows: readonly ChangeRow[], { paint, width }: Page): string[] {
  if (rows.length === 0) return [];
  const statusWidth = Math.max(...rows.map(({ status }) => widthOf(status)));
  const subjects = rows.map(({ subject }) => printable(subject));
  const subjectWidth = Math.min(LONGEST_SUBJECT, Math.max(...subjects.map(widthOf)));
  const lead = statusWidth + subjectWidth + 3 * INDENT.length;
  const lines = rows.flatMap(({ status, style, text }, index) => {
    const word = pad(status, statusWidth);
    const start = `${INDENT}${style === undefined ? word : paint(style, word)}${INDENT}${pad(subjects[index] ?? '', subjectWidth)}${INDENT}`;
    const [first = '', ...more] = wrap(printable(text), Math.max(SHORTEST, width - lead));
    return [(start + first).trimEnd(), ...more.map((line) => ' '.repeat(lead) + line)];
  });
  return [paint('strong', title), ...lines];
}

/** Longer ones push their own line to the right, not all. */
const LONGEST_SUBJECT = 40;
const SHORTEST = 30;

function figureSection(rows: readonly FigureRow[], { paint }: Page): string[] {
  if (rows.length === 0) return [];
  const told = rows.slice(0, SHOWN_FIGURES);
  const left = rows.length - told.length;
  const header: FigureRow = { part: '', label: '', was: 'was', is: 'is', difference: 'difference', at: 'at pedal travel' };
  const widths = KEYS.map((key) => Math.max(...[header, ...told].map((row) => widthOf(printable(row[key])))));
  const line = (row: FigureRow): string =>
    `${INDENT}${KEYS.map((key, index) => pad(printable(row[key]), widths[index] ?? 0)).join(INDENT)}`.trimEnd();
  const more = left === 0 ? [] : [paint('quiet', `${INDENT}and ${left} more ${left === 1 ? 'figure' : 'figures'}: --format json`)];
  return [paint('strong', 'Figures'), paint('quiet', line(header)), ...told.map(line), ...more];
}

const KEYS = ['part', 'label', 'was', 'is', 'difference', 'at'] as const;

function columnSection({ added, gone }: Comparison['columns'], { paint, width }: Page): string[] {
  const rows = [
    ...(added.length === 0 ? [] : wrap(`new: ${added.join(', ')}`, width - INDENT.length)),
    ...(gone.length === 0 ? [] : wrap(`gone: ${gone.join(', ')}`, width - INDENT.length)),
  ];
  return rows.length === 0 ? [] : [paint('strong', 'Columns'), ...rows.map((row) => INDENT + printable(row))];
}

function curveSection(curve: Curve, isFirst: boolean, { paint }: Page): string[] {
  const { title, stations, was, is, difference, most } = curveRows(curve);
  const table = [
    ['pedal', ...stations],
    ['was', ...was],
    ['is', ...is],
    ['difference', ...difference],
  ];
  const widths = (table[0] ?? []).map((_, column) => Math.max(...table.map((row) => widthOf(row[column] ?? ''))));
  const rows = table.map((row) => INDENT.repeat(2) + row.map((cell, column) => pad(cell, widths[column] ?? 0, column > 0)).join(INDENT));
  return [
    ...(isFirst ? [paint('strong', 'Curves')] : []),
    `${INDENT}${printable(title)}`,
    ...rows,
    ...(most === '' ? [] : [INDENT.repeat(2) + most]),
  ];
}
