/** Everything of a file that has one right answer, mended at once: what `source.fixAll` does, also on saving where a person sets that. */
import type { Replacement } from '../../src/definition/problem.ts';
import { textFixes, type TextAnswers } from '../../src/language/fixes.ts';
import { touches } from '../../src/language/touches.ts';

/** Edits that do not meet, in the order of the text; of fixes that would cross only the first is among them. */
export function editsOfAll(answers: TextAnswers): readonly Replacement[] {
  const fixes = textFixes(answers, { start: 0, end: answers.text.length }).filter(({ preferred }) => preferred);
  const edits: Replacement[] = [];
  for (const fix of fixes.slice(0, MOST_AT_ONCE)) {
    const fresh = fix.edits.filter((edit) => !edits.some((other) => isSame(edit, other)));
    if (!fresh.some(({ span }) => edits.some((other) => touches(other.span, span)))) edits.push(...fresh);
  }
  return edits.sort((a, b) => a.span.start - b.span.start);
}

/** More than that were not made by a person typing; the rest is mended by asking again. */
const MOST_AT_ONCE = 200;

function isSame(one: Replacement, other: Replacement): boolean {
  return one.span.start === other.span.start && one.span.end === other.span.end && one.text === other.text;
}
