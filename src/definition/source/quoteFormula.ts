/**
 * Formulas inside `{}` or `[]` whose commas and brackets YAML takes for its own: where they stand, and how they are written.
 */
import type { Problem } from '../problem.ts';
import type { Span } from '../span.ts';
import { slice } from './stretches.ts';
import { shortened } from './shortened.ts';

/**
 * The stretch of a formula with brackets that was written without quotes inside `{}` or `[]`, where `at` is its
 * first bracket; undefined where it is no such thing.
 */
export function bracketFormula(at: number, text: string): Span | undefined {
  if (text[at] !== '[' && text[at] !== '{') return undefined;
  let start = at;
  while (start > 0 && !/[,:[{\r\n]/.test(text[start - 1] ?? '')) start--;
  while (text[start] === ' ') start++;
  if (start >= at || !/^[\w.)+*/^ -]+$/.test(text.slice(start, at))) return undefined;
  let depth = 0;
  let end = at;
  for (; end < text.length && !/[\r\n]/.test(text[end] ?? ''); end++) {
    const character = text[end] ?? '';
    if (depth === 0 && /[,}\]]/.test(character)) break;
    if (/[[{(]/.test(character)) depth++;
    if (/[\]})]/.test(character)) depth--;
  }
  return { start, end: start + text.slice(start, end).trimEnd().length };
}

/** The problem of a formula that must stand in quotes. */
export function quoteProblem(span: Span, text: string): Problem {
  // A quoted formula stands on one line, where a comment inside it would be lost.
  const commented = /\s#/.test(slice(text, span));
  const written = slice(text, span).replace(/\s*[\r\n]\s*/g, ' ');
  const quoted = /["\\]/.test(written) ? `'${written.replaceAll("'", "''")}'` : `"${written}"`;
  return {
    code: 'quote-formula',
    severity: 'error',
    span,
    message: `Inside \`{}\` or \`[]\` a comma or bracket ends the value, so \`${shortened(written)}\` falls apart`,
    cure: commented ? 'Put it in quotes, on one line' : `Put it in quotes: ${shortened(quoted)}`,
    ...(commented ? {} : { replacements: [{ span, text: quoted }] }),
  };
}
