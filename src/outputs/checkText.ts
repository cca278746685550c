/**
 * What a check has to say, as text: the load path, what is wrong or worth knowing with its place, the facts, what was
 * not checked, the caution, and in the last line how it stands.
 */
import { indexLines, type LineIndex, type Span } from '../definition/span.ts';
import type { Problem } from '../definition/problem.ts';
import type { Fact, Finding, FindingSeverity, NotChecked } from '../findings/finding.ts';
import type { PartFigure, PathPart } from '../findings/part.ts';
import type { Answers } from '../solve.ts';
import { CAUTION } from './caution.ts';
import { excerpt, placeName } from './excerpt.ts';
import { countText, figureText, NO_VALUE, percentText, travelText } from './figure.ts';
import { plain, printable, type Paint } from './paint.ts';
import { pad, widthOf, wrap } from './width.ts';

export interface CheckTextOptions {
  /** Name of the file, as the person gave it. */
  readonly file: string;
  readonly paint?: Paint;
  /** Cells to a line for what can be broken or trimmed. */
  readonly width?: number;
}

/** The whole verdict, with a line ending. */
export function checkText(answers: Answers, { file, paint = plain, width = DEFAULT_WIDTH }: CheckTextOptions): string {
  const page: Page = { file, paint, width, text: answers.text, lines: indexLines(answers.text) };
  const sections = [
    headline(answers, page),
    pathSection(answers.parts, page),
    ...marksOf(answers).map((mark) => markSection(mark, page)),
    factSection(answers.facts, page),
    notCheckedSection(answers.notChecked, page),
    answers.definition === undefined ? [] : [...wrap(`Caution. ${CAUTION}`, width)],
    [summary(answers, page)],
  ];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

/** Problems of the text alone, each with its line: for outputs that show something else than the verdict. */
export function problemsText(answers: Answers, { file, paint = plain, width = DEFAULT_WIDTH }: CheckTextOptions): string {
  const page: Page = { file, paint, width, text: answers.text, lines: indexLines(answers.text) };
  return answers.problems.map((problem) => `${markSection(problem, page).join('\n')}\n`).join('');
}

/** Whether anything is an error, of the text or of the linkage. */
export function hasError({ problems, findings }: Pick<Answers, 'problems' | 'findings'>): boolean {
  return [...problems, ...findings].some(({ severity }) => severity === 'error');
}

const DEFAULT_WIDTH = 110;
const INDENT = '  ';

interface Page {
  readonly file: string;
  readonly paint: Paint;
  readonly width: number;
  readonly text: string;
  readonly lines: LineIndex;
}

type Mark = Problem | Finding;

function headline({ definition }: Answers, { file, paint }: Page): string[] {
  const title = definition?.title;
  return [paint('strong', printable(file)), ...(title === undefined ? [] : [printable(title)])];
}

function pathSection(parts: readonly PathPart[], { paint, width }: Page): string[] {
  if (parts.length === 0) return [];
  const names = parts.map(({ name, depth }) => INDENT.repeat(Math.min(depth, DEEPEST_INDENT)) + name);
  const nameWidth = Math.max(...names.map(widthOf));
  const kindWidth = Math.max(...parts.map(({ kind }) => kind.length));
  const lead = INDENT.length + nameWidth + kindWidth + 2 * INDENT.length;
  const rows = parts.flatMap((part, index) => {
    const start = `${INDENT}${pad(names[index] ?? '', nameWidth)}${INDENT}${paint('quiet', pad(part.kind, kindWidth))}${INDENT}`;
    const [first = '', ...more] = gather(part.figures.map(partFigureText), Math.max(SHORTEST, width - lead));
    return [(start + first).trimEnd(), ...more.map((line) => ' '.repeat(lead) + line)];
  });
  return [paint('strong', 'Load path'), ...rows];
}

const DEEPEST_INDENT = 12;
const SHORTEST = 30;

function partFigureText({ label, figure, text, travel }: PartFigure): string {
  const value = figure === undefined ? (text ?? NO_VALUE) : [figureText(figure), text].filter((word) => word !== undefined).join(' ');
  return printable([label, value, ...(travel === undefined ? [] : [`at ${percentText(travel)}`])].filter((word) => word !== '').join(' '));
}

/** Problems and findings together: errors first, then warnings, then notes, each in the order of the file. */
function marksOf({ problems, findings }: Answers): Mark[] {
  const rank: Readonly<Record<FindingSeverity, number>> = { error: 0, warning: 1, note: 2 };
  return [...problems, ...findings].sort((a, b) => rank[a.severity] - rank[b.severity] || a.span.start - b.span.start);
}

function markSection(mark: Mark, page: Page): string[] {
  const { paint, lines, text, file, width } = page;
  const place = paint('strong', `${placeName(file, mark.span, lines)}:`);
  const head = `${place} ${paint(mark.severity, `${mark.severity}[${mark.code}]:`)} ${printable(mark.message)}`;
  const source = excerpt(text, mark.span, { paint, style: mark.severity, lines, width: width - 10 });
  const details = [
    ...('part' in mark ? findingDetails(mark) : []),
    ...(mark.cure === undefined ? [] : [`cure: ${printable(mark.cure)}`]),
    ...(mark.related ?? []).map((other) => `see line ${lineNumber(other.span, lines)}: ${printable(other.message)}`),
  ];
  return [head, ...[...source, ...details].map((line) => INDENT + line)];
}

/** The limit and where it comes from: the message itself has the figure and the stretch of the pedal where it holds. */
function findingDetails({ limit }: Finding): string[] {
  return limit === undefined ? [] : [`limit: ${figureText(limit)} (${printable(limit.from)})`];
}

function factSection(facts: readonly Fact[], { paint }: Page): string[] {
  if (facts.length === 0) return [];
  const nameWidth = Math.max(...facts.map(({ part }) => widthOf(part)));
  const labelWidth = Math.max(...facts.map(({ label }) => widthOf(label)));
  const rows = facts.map(
    (fact) => `${INDENT}${pad(fact.part, nameWidth)}${INDENT}${pad(fact.label, labelWidth)}${INDENT}${factText(fact)}`,
  );
  return [paint('strong', 'Facts'), ...rows.map(printable)];
}

function factText({ label, figure, travel, why }: Fact): string {
  if (travel === undefined) return figure === undefined ? (why ?? NO_VALUE) : figureText(figure);
  if (figure === undefined) return why ?? percentText(travel);
  // The fact may be the travel itself, or be told of a travel that its label names.
  if (figure.dimension === 'number' && figure.value === travel) return percentText(travel);
  return label.endsWith(travelText(travel)) ? figureText(figure) : `${figureText(figure)} ${travelText(travel)}`;
}

function notCheckedSection(notChecked: readonly NotChecked[], { paint, lines }: Page): string[] {
  if (notChecked.length === 0) return [];
  const places = notChecked.map(({ span }) => `line ${lineNumber(span, lines)}`);
  const placeWidth = Math.max(...places.map(widthOf));
  const nameWidth = Math.max(...notChecked.map(({ part }) => widthOf(part)));
  const rows = notChecked.map(({ part, message }, index) =>
    printable(
      `${INDENT}${pad(places[index] ?? '', placeWidth)}${INDENT}${pad(part, nameWidth)}${INDENT}${message.replace(/^Not checked: /, '')}`,
    ),
  );
  return [paint('strong', 'Not checked'), ...rows];
}

function summary(answers: Answers, { file, paint }: Page): string {
  const name = printable(file);
  if (answers.definition === undefined) return `${name}: ${paint('error', 'cannot be used')}`;
  const marks = marksOf(answers);
  const counts = (['error', 'warning', 'note'] as const).map((severity) => {
    const count = marks.filter((mark) => mark.severity === severity).length;
    return count === 0 ? countText(0, severity) : paint(severity, countText(count, severity));
  });
  const open = answers.notChecked.length;
  return `${name}: ${counts.join(', ')}${open === 0 ? '' : `; ${countText(open, 'thing')} not checked`}`;
}

function lineNumber(span: Span, lines: LineIndex): number {
  return lines.positionAt(span.start).line + 1;
}

/** Joins items by `; ` into lines that fit. */
function gather(items: readonly string[], width: number): string[] {
  const rows: string[] = [];
  for (const item of items) {
    const last = rows.at(-1);
    if (last !== undefined && widthOf(last) + 2 + widthOf(item) <= width) rows[rows.length - 1] = `${last}; ${item}`;
    else rows.push(item);
  }
  return rows;
}
