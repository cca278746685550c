/**
 * What has changed between two throttle files, as Markdown for a comment in a pull request: how the new file stands to the old one, what
 * changed in the file, what it did and the first figures as tables; further figures and the curves can be opened.
 */
import type { Comparison, Curve } from '../studies/compare/comparison.ts';
import { CAUTION } from './caution.ts';
import { compareLimits, compareVerdict, effectRows } from './compareEffects.ts';
import { curveRows, figureRows, SHOWN_FIGURES, type FigureRow } from './compareFigures.ts';
import { fileRows, type ChangeRow } from './compareFile.ts';
import { markdownCode, markdownDetails, markdownMessage, markdownTable, markdownText } from './markdown.ts';

/** With a line ending. @param names of the files, as the person gave them */
export function compareMarkdown(comparison: Comparison, names: { readonly was: string; readonly is: string }): string {
  const { columns, curves } = comparison;
  const sections = [
    [`## ${markdownText(names.was)} → ${markdownText(names.is)}`],
    [`**${markdownText(compareVerdict(comparison))}**`],
    compareLimits(comparison).map((line) => `${markdownText(line)}.`),
    changeSection('What changed in the file', fileRows(comparison), markdownCode),
    changeSection('What it did', effectRows(comparison), markdownMessage),
    figureSection(figureRows(comparison)),
    columnSection(columns),
    curves.length === 0 ? [] : markdownDetails('Curves', curves.flatMap(curveSection)),
    [`> **Caution.** ${markdownText(CAUTION)}`],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

function changeSection(title: string, rows: readonly ChangeRow[], text: (words: string) => string): string[] {
  if (rows.length === 0) return [];
  const cells = rows.map((row) => [row.status, markdownCode(row.subject), text(row.text)]);
  return [`### ${title}`, '', ...markdownTable(['', 'Where', 'What'], cells)];
}

function figureSection(rows: readonly FigureRow[]): string[] {
  if (rows.length === 0) return [];
  const cells = rows.map(({ part, label, was, is, difference, at }) => [
    markdownCode(part),
    ...[label, was, is, difference, at].map((cell) => markdownText(cell)),
  ]);
  const table = (some: readonly (readonly string[])[]): string[] =>
    markdownTable(['Part', 'Figure', 'Was', 'Is', 'Difference', 'At pedal travel'], some);
  const left = cells.length - SHOWN_FIGURES;
  return [
    '### Figures',
    '',
    ...table(cells.slice(0, SHOWN_FIGURES)),
    ...(left > 0 ? ['', ...markdownDetails(`${left} more ${left === 1 ? 'figure' : 'figures'}`, table(cells.slice(SHOWN_FIGURES)))] : []),
  ];
}

function columnSection({ added, gone }: Comparison['columns']): string[] {
  const line = (word: string, names: readonly string[]): string[] =>
    names.length === 0 ? [] : [`${word} columns: ${names.map((name) => markdownCode(name)).join(', ')}`];
  return [...line('New', added), ...line('Gone', gone)].flatMap((each, index) => (index === 0 ? [each] : ['', each]));
}

function curveSection(curve: Curve): string[] {
  const { title, stations, was, is, difference, most } = curveRows(curve);
  const rows = [
    ['was', ...was],
    ['is', ...is],
    ['difference', ...difference],
  ].map((row) => row.map((cell) => markdownText(cell)));
  return [
    `**${markdownText(title)}**`,
    '',
    ...markdownTable(['Pedal', ...stations.map((each) => markdownText(each))], rows),
    '',
    markdownText(most),
    '',
  ];
}
