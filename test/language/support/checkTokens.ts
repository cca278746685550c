/** Every semantic token of each marked line, `type` or `type.modifier.modifier`; see `cursorAndMarks.ts`. */
import { expect } from 'vitest';
import { indexLines } from '../../../src/definition/span.ts';
import { indexNames } from '../../../src/language/names.ts';
import { semanticTokens } from '../../../src/language/tokens.ts';
import { shown, takeMarks } from './cursorAndMarks.ts';

/** Lines without marks are not looked at. */
export function checkTokens(annotated: string): void {
  const { text, marks } = takeMarks(annotated);
  const lines = indexLines(text);
  const marked = new Set(marks.map(({ span }) => lines.positionAt(span.start).line));
  const tokens = semanticTokens(indexNames(text)).filter(({ span }) => marked.has(lines.positionAt(span.start).line));
  expect(tokens.map(({ span, type, modifiers }) => `${shown(text, span)} ${[type, ...modifiers].join('.')}`)).toEqual(
    marks.map(({ span, words }) => `${shown(text, span)} ${words}`),
  );
}
