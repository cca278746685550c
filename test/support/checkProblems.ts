/**
 * Reads a throttle file whose expected problems are written under the lines where they belong:
 *
 *     pivit: [0, 0]
 *   # ^^^^^ error[unknown-key]: There is no key
 *
 * The carets mark the place; where they touch the `#`, it counts as the first of them, and `#<` marks one character.
 * After the colon stands a part of the message or of the cure. A problem that is not written down fails, and so does
 * one that does not appear. The lines with carets are taken out before reading.
 */
import { expect } from 'vitest';
import { readDefinition, type DefinitionReading } from '../../src/definition/read.ts';
import type { Problem } from '../../src/definition/problem.ts';
import { indexLines } from '../../src/definition/span.ts';
import { takeApart } from './marks.ts';

export function checkProblems(annotated: string): DefinitionReading {
  const { text, expected } = takeApart(annotated);
  const reading = readDefinition(text);
  const lines = indexLines(text);
  const open = [...expected];
  const actual = reading.problems.map((problem) => {
    const place = placeOf(problem, lines);
    const told = `${problem.message} | ${problem.cure ?? ''}`;
    const index = open.findIndex((mark) => mark.place === place && told.includes(mark.words));
    return index < 0 ? `${place}: ${told}` : `${place}: ${open.splice(index, 1)[0]?.words ?? ''}`;
  });
  expect(actual.sort()).toEqual(expected.map((mark) => `${mark.place}: ${mark.words}`).sort());
  return reading;
}

function placeOf({ span, severity, code }: Problem, lines: ReturnType<typeof indexLines>): string {
  const from = lines.positionAt(span.start);
  const to = lines.positionAt(span.end);
  // A place over several lines is marked to the end of its first.
  const end = to.line === from.line ? to.character : lines.lineText(from.line).length;
  return `${from.line + 1}:${from.character}-${end} ${severity}[${code}]`;
}
