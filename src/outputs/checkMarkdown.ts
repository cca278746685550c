/**
 * What a check has to say, as Markdown for a comment in a pull request: a heading a file, how it stands in one line, tables of what is
 * wrong or worth knowing, of the requirements, and of what bears on closing and was not checked; the rest can be opened.
 */
import type { ProblemCode } from '../definition/codes.ts';
import { indexLines, type LineIndex } from '../definition/span.ts';
import type { FindingCode } from '../findings/codes.ts';
import type { Fact, NotChecked } from '../findings/finding.ts';
import type { PathPart } from '../findings/part.ts';
import type { Comparison, RequirementAnswer } from '../requirements/requirement.ts';
import type { Answers } from '../solve.ts';
import { CAUTION } from './caution.ts';
import type { CheckedFile } from './checkedFile.ts';
import { codeDoc } from './codeDoc.ts';
import { docsPage } from './docsPage.ts';
import { placeName } from './excerpt.ts';
import { factText, partFigureText } from './factText.ts';
import { figureText, percentText } from './figure.ts';
import { LINE_BREAK, markdownCode, markdownDetails, markdownMessage, markdownTable, markdownText } from './markdown.ts';
import { marksOf, notCheckedText, verdictText, type Mark } from './marks.ts';
import { withMinus } from './minus.ts';
import { comparedText, demandText, distinct, OUTCOMES } from './requirementText.ts';

/** With a line ending. */
export function checkMarkdown(files: readonly CheckedFile[]): string {
  const codes = [
    ...new Set(files.flatMap(({ answers }) => (answers === undefined ? [] : marksOf(answers).map(({ code }) => code)))),
  ].sort();
  const sections = [...files.flatMap(fileSections), codeSection(codes), [`> **Caution.** ${markdownText(CAUTION)}`]];
  return `${sections
    .filter((section) => section.length > 0)
    .map((section) => section.join('\n'))
    .join('\n\n')}\n`;
}

function fileSections(file: CheckedFile): string[][] {
  const { name, answers } = file;
  const title = answers?.definition?.title;
  const heading = [`## ${markdownText(name)}${title === undefined ? '' : `: ${markdownText(title)}`}`];
  if (answers === undefined) return [heading, [`**cannot be read**: ${markdownMessage(file.reason)}`]];
  const [open = [], folded = []] = notCheckedSections(answers, name);
  return [
    heading,
    [`**${verdictText(answers)}**`],
    markSection(answers, name),
    requirementSection(answers.requirements),
    open,
    pathSection(answers.parts),
    factSection(answers.facts),
    folded,
  ];
}

function markSection(answers: Answers, name: string): string[] {
  const marks = marksOf(answers);
  if (marks.length === 0) return [];
  const lines = indexLines(answers.text);
  const rows = marks.map((mark) => [
    mark.severity,
    codeLink(mark.code),
    markdownText(placeName(name, mark.span, lines)),
    markdownMessage(messageOf(mark)),
    cureCell(mark, lines),
  ]);
  return markdownTable(['Severity', 'Code', 'Place', 'Message', 'Cure'], rows);
}

/** What would help, and other places that the mark speaks of. */
function cureCell({ cure, related = [] }: Mark, lines: LineIndex): string {
  const places = related.map(({ span, message }) => `see line ${lines.positionAt(span.start).line + 1}: ${message}`);
  return [...(cure === undefined ? [] : [cure]), ...places].map(markdownMessage).join(LINE_BREAK);
}

/** The message, and the limit that it is held against with its source. */
function messageOf(mark: Mark): string {
  if (!('part' in mark) || mark.limit === undefined) return mark.message;
  return `${mark.message}; limit ${figureText(mark.limit)} (${mark.limit.from})`;
}

function codeLink(code: ProblemCode | FindingCode): string {
  return `[${code}](${docsPage(code)})`;
}

/** One row a comparison; a requirement that has none is one row, with the reason. */
function requirementSection(answers: readonly RequirementAnswer[]): string[] {
  if (answers.length === 0) return [];
  const rows = answers.flatMap(({ requirement, outcome, reason, comparisons }) => {
    const start = [markdownCode(requirement.name), OUTCOMES[outcome].word];
    if (comparisons.length === 0) return [[...start, markdownMessage(reason ?? ''), markdownCode(requirement.text), '']];
    return comparisons.map((comparison, index) => [...(index === 0 ? start : ['', '']), ...comparisonCells(comparison)]);
  });
  return markdownTable(['Requirement', 'Outcome', 'Actual', 'Demanded', 'Margin'], rows);
}

function comparisonCells(comparison: Comparison): string[] {
  const { text, actual, demanded, margin, reason, travel } = comparison;
  if (reason !== undefined || actual === undefined || demanded === undefined)
    return [markdownMessage(reason ?? ''), markdownCode(text), ''];
  const [shown, limit] = distinct(actual, demanded);
  const place = travel === undefined ? '' : ` at ${percentText(travel)}`;
  return [
    markdownText(withMinus(shown) + place),
    markdownText(withMinus(demandText(comparison, limit))),
    margin === undefined ? '' : markdownText(withMinus(comparedText(margin))),
  ];
}

function pathSection(parts: readonly PathPart[]): string[] {
  if (parts.length === 0) return [];
  const rows = parts.map(({ name, kind, depth, figures }) => [
    `${'&emsp;'.repeat(Math.min(depth, DEEPEST_INDENT))}${markdownCode(name)}`,
    kind,
    figures.map((figure) => markdownText(partFigureText(figure))).join('; '),
  ]);
  return markdownDetails('Load path', markdownTable(['Part', 'Kind', 'Figures'], rows));
}

const DEEPEST_INDENT = 12;

function factSection(facts: readonly Fact[]): string[] {
  if (facts.length === 0) return [];
  const rows = facts.map((fact) => [markdownCode(fact.part), markdownText(fact.label), markdownText(factText(fact))]);
  return markdownDetails('Facts', markdownTable(['Part', 'Fact', 'Figure'], rows));
}

/** What bears on closing lies open, the rest can be opened. */
function notCheckedSections({ notChecked, text, definition }: Answers, name: string): string[][] {
  const lines = indexLines(text);
  const row = ({ part, span, message }: NotChecked): string[] => [
    markdownCode(part),
    markdownText(placeName(name, span, lines)),
    markdownMessage(notCheckedText(message)),
  ];
  const table = (some: readonly NotChecked[]): string[] => markdownTable(['Part', 'Place', 'What'], some.map(row));
  const own = new Set(['pedal', ...[...(definition?.springs ?? []), ...(definition?.plates ?? [])].map((part) => part.name)]);
  const bearsOnClosing = ({ part, message }: NotChecked): boolean => own.has(part) || CLOSING.test(message);
  const closing = notChecked.filter(bearsOnClosing);
  const rest = notChecked.filter((each) => !bearsOnClosing(each));
  return [
    closing.length === 0 ? [] : ['**Not checked, of what closes the throttle**', '', ...table(closing)],
    rest.length === 0 ? [] : markdownDetails(`Not checked${closing.length === 0 ? '' : ' besides'}: ${rest.length}`, table(rest)),
  ];
}

const CLOSING = /\b(?:clos(?:es|ed|ing)|springs?|snap-back)\b/;

/** The codes that occur, in a sentence each: the links lead nowhere in a repository that has not the docs. */
function codeSection(codes: readonly (ProblemCode | FindingCode)[]): string[] {
  if (codes.length === 0) return [];
  const rows = codes.map((code) => {
    const { title, cure } = codeDoc(code);
    return [codeLink(code), markdownMessage(title), markdownMessage(cure)];
  });
  return markdownDetails('What the codes mean', markdownTable(['Code', 'Meaning', 'Cure'], rows));
}
