/** Hover at `$0`. */
import { expect } from 'vitest';
import { hoverAt, type Hover } from '../../../src/language/hover.ts';
import { solve } from '../../../src/solve.ts';
import { atCaret } from './atCaret.ts';

/** What is shown, without the marks of Markdown; undefined where nothing is. */
export function hoverText(marked: string): { readonly about: string; readonly shown: string; readonly hover: Hover } | undefined {
  const { text, offset } = atCaret(marked);
  const hover = hoverAt(solve(text), offset);
  if (hover === undefined) return undefined;
  const shown = hover.markdown
    .replace(/\*\*/g, '')
    .replace(/`/g, '')
    .replace(/\\([!-/:-@[-`{-~])/g, '$1');
  return { about: text.slice(hover.span.start, hover.span.end), shown, hover };
}

/** @param about the text that the hover is for; @param expected pieces of what is shown, in their order */
export function checkHover(marked: string, about: string, expected: readonly string[]): void {
  const found = hoverText(marked);
  expect(found?.about).toBe(about);
  let rest = found?.shown ?? '';
  for (const piece of expected) {
    expect(rest).toContain(piece);
    rest = rest.slice(rest.indexOf(piece) + piece.length);
  }
}
