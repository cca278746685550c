/**
 * Holds a file against the problems and findings that are written under its own lines, as in `checkProblems.ts`:
 *
 *     link: {from: crank.out, to: shaft.arm}
 *   # ^^^^ error[not-assembled]: cannot reach
 *
 * The lines with carets are comments of the file and stay in it. The words after the colon are a part of the message or
 * of the cure.
 */
import { expect } from 'vitest';
import { indexLines, type LineIndex, type Span } from '../../src/definition/span.ts';
import { solve, type Answers } from '../../src/solve.ts';

/**
 * Solves the text; what is not written under a line must not appear, and what is must.
 * @param withFailures whether what single failures do is asked too
 */
export function checkAnnotated(text: string, withFailures = false): Answers {
  const solved = solve(text);
  const late = withFailures ? (solved.failures()?.late ?? []) : [];
  const answers = { ...solved, findings: [...solved.findings, ...late] };
  const lines = indexLines(text);
  const open = [...marksIn(lines)];
  const marks = [...open];
  const actual = [...answers.problems, ...answers.findings].map((found) => {
    const place = placeOf(found.span, `${found.severity}[${found.code}]`, lines);
    const told = `${found.message} | ${found.cure ?? ''}`;
    const index = open.findIndex((mark) => mark.place === place && told.includes(mark.words));
    return index < 0 ? `${place}: ${told}` : `${place}: ${open.splice(index, 1)[0]?.words ?? ''}`;
  });
  expect(actual.sort()).toEqual(marks.map((mark) => `${mark.place}: ${mark.words}`).sort());
  return answers;
}

interface Mark {
  /** `line:from-to severity[code]`, lines from 1, characters from 0. */
  readonly place: string;
  readonly words: string;
}

function marksIn(lines: LineIndex): readonly Mark[] {
  const marks: Mark[] = [];
  let line = 0;
  for (let i = 0; i < lines.lineCount; i++) {
    const mark = /^(\s*#\s+)(\^+) ((?:error|warning|note)\[[a-z-]+\])(?:: (.*))?$/.exec(lines.lineText(i));
    if (mark === null) {
      line = i;
      continue;
    }
    const [, before = '', carets = '', code = '', words = ''] = mark;
    marks.push({ place: `${line + 1}:${before.length}-${before.length + carets.length} ${code}`, words });
  }
  return marks;
}

function placeOf(span: Span, code: string, lines: LineIndex): string {
  const from = lines.positionAt(span.start);
  const to = lines.positionAt(span.end);
  const end = to.line === from.line ? to.character : lines.lineText(from.line).length;
  return `${from.line + 1}:${from.character}-${end} ${code}`;
}
