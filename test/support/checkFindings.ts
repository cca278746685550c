/**
 * Solves a throttle file whose expected findings are written under the lines where they belong:
 *
 *     link: {from: pedal.out, to: shaft.arm}
 *   # ^^^^ warning[transmission-angle]: under 40°
 *
 * The carets mark the place; where they touch the `#`, it counts as the first of them, and `#<` marks one character. After the colon
 * stands a part of the message or of the cure. A finding that is not written down fails, and so does one that does not appear; a
 * problem with the text fails too. The lines with carets are taken out before solving.
 */
import { expect } from 'vitest';
import { indexLines, type LineIndex, type Span } from '../../src/definition/span.ts';
import type { FindingCode } from '../../src/findings/codes.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { foundBy } from './foundBy.ts';
import { takeApart } from './marks.ts';

export interface Checked {
  readonly answers: Answers;
  /** The only finding with this code, also one told beside its cause; throws where there are none or several. */
  only(code: FindingCode): Finding;
}

export function checkFindings(annotated: string): Checked {
  const { text, expected } = takeApart(annotated);
  const answers = solve(text);
  expect(answers.problems).toEqual([]);
  const lines = indexLines(text);
  const open = [...expected];
  const actual = answers.findings.map((finding) => {
    const place = `${placeOf(finding.span, lines)} ${finding.severity}[${finding.code}]`;
    const told = `${finding.message} | ${finding.cure ?? ''}`;
    const index = open.findIndex((mark) => mark.place === place && told.includes(mark.words));
    return index < 0 ? `${place}: ${told}` : `${place}: ${open.splice(index, 1)[0]?.words ?? ''}`;
  });
  expect(actual.sort()).toEqual(expected.map((mark) => `${mark.place}: ${mark.words}`).sort());
  return {
    answers,
    only(code) {
      const found = foundBy(answers, code);
      const [first] = found;
      if (first === undefined || found.length > 1) throw new Error(`${found.length} findings ${code}`);
      return first;
    },
  };
}

/** A text with carets under the first place that reads `words`, for texts that are put together. @param told e.g. `note[off-plane]: …` */
export function marked(text: string, words: string, told: string): string {
  const start = text.indexOf(words);
  if (start < 0) throw new Error(`There is no ${words} in\n${text}`);
  const lineStart = text.lastIndexOf('\n', start) + 1;
  const lineEnd = text.indexOf('\n', start);
  const carets = `#${' '.repeat(start - lineStart - 1)}${'^'.repeat(words.length)} ${told}`;
  return `${text.slice(0, lineEnd)}\n${carets}${text.slice(lineEnd)}`;
}

function placeOf(span: Span, lines: LineIndex): string {
  const from = lines.positionAt(span.start);
  const to = lines.positionAt(span.end);
  // A place over several lines is marked to the end of its first.
  const end = to.line === from.line ? to.character : lines.lineText(from.line).length;
  return `${from.line + 1}:${from.character}-${end}`;
}
