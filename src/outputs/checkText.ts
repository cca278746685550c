/**
 * What a check has to say, as text: the load path, what is wrong or worth knowing with its place, the requirements, the
 * facts, what was not checked, the caution, and in the last line how it stands.
 */
import { indexLines, type LineIndex, type Span } from '../definition/span.ts';
import type { Fact, Finding, NotChecked } from '../findings/finding.ts';
import type { PathPart } from '../findings/part.ts';
import { GIVEN_BY_RATE } from '../findings/wireNotChecked.ts';
import type { Answers } from '../solve.ts';
import { CAUTION } from './caution.ts';
import { excerpt, placeName } from './excerpt.ts';
import { factText, partFigureText } from './factText.ts';
import { figureText } from './figure.ts';
import { marksOf, notCheckedText, verdictText, type Mark } from './marks.ts';
import { plain, printable, type Paint } from './paint.ts';
import { requirementSection } from './requirementText.ts';
import { gather, pad, widthOf, wrap } from './width.ts';

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
    requirementSection(answers.requirements, page),
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
export function problemsText(answers: Answers, options: CheckTextOptions): string {
  return marksText(answers.text, answers.problems, options);
}

/** Problems or findings about a text, each with its line and a line ending. */
export function marksText(text: string, marks: readonly Mark[], { file, paint = plain, width = DEFAULT_WIDTH }: CheckTextOptions): string {
  const page: Page = { file, paint, width, text, lines: indexLines(text) };
  return marks.map((mark) => `${markSection(mark, page).join('\n')}\n`).join('');
}

/** Whether anything is an error, of the text or of the linkage, or a requirement is not passed: failed, or not decidable. */
export function hasError({ problems, findings, requirements }: Pick<Answers, 'problems' | 'findings' | 'requirements'>): boolean {
  return (
    [...problems, ...findings].some(({ severity }) => severity === 'error') || requirements.some(({ outcome }) => outcome !== 'passed')
  );
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

function notCheckedSection(all: readonly NotChecked[], { paint, lines }: Page): string[] {
  const notChecked = withRatesGathered(all);
  if (notChecked.length === 0) return [];
  const places = notChecked.map(({ span }) => `line ${lineNumber(span, lines)}`);
  const placeWidth = Math.max(...places.map(widthOf));
  const nameWidth = Math.max(...notChecked.map(({ part }) => widthOf(part)));
  const rows = notChecked.map(({ part, message }, index) =>
    printable(`${INDENT}${pad(places[index] ?? '', placeWidth)}${INDENT}${pad(part, nameWidth)}${INDENT}${notCheckedText(message)}`),
  );
  return [paint('strong', 'Not checked'), ...rows];
}

/** Springs given by their rate in the line of the first of them: nothing else is told of them there. */
function withRatesGathered(notChecked: readonly NotChecked[]): readonly NotChecked[] {
  const isOne = ({ message }: NotChecked): boolean => notCheckedText(message) === GIVEN_BY_RATE.one;
  const [first, ...more] = notChecked.filter(isOne);
  if (first === undefined || more.length === 0) return notChecked;
  const part = [first, ...more].map((each) => each.part).join(', ');
  return notChecked.flatMap((each) => (each === first ? [{ ...first, part, message: GIVEN_BY_RATE.several }] : isOne(each) ? [] : [each]));
}

function summary(answers: Answers, { file, paint }: Page): string {
  return `${printable(file)}: ${verdictText(answers, paint)}`;
}

function lineNumber(span: Span, lines: LineIndex): number {
  return lines.positionAt(span.start).line + 1;
}
