/**
 * Markdown as editors show it in hovers, without HTML: a person's words stay words whatever they hold.
 *
 * In CommonMark a backslash before any ASCII punctuation makes it a plain character ("Backslash escapes"), and a run of backticks is
 * code up to a run of the same length ("Code spans").
 */

/** One line of plain text. Addresses in it are no links: many renderers look for `www.` and `://`. */
export function plain(text: string): string {
  return oneLine(text)
    .replace(MARKUP, '\\$&')
    .replace(/\b(www)\./gi, '$1\\.')
    .replace(/:(?=\/\/)/g, '\\:')
    .replace(/^(\d+)([.)])(?=\s|$)/, '$1\\$2')
    .replace(/^[-+=:]/, '\\$&');
}

/** Text in the type of code. */
export function code(text: string): string {
  const line = oneLine(text);
  if (line === '') return '';
  const longest = Math.max(0, ...[...line.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = '`'.repeat(longest + 1);
  const gap = line.startsWith('`') || line.endsWith('`') ? ' ' : '';
  return `${fence}${gap}${line}${gap}${fence}`;
}

/** A message, in which words between backticks are quoted. */
export function message(text: string): string {
  const pieces = text.split('`');
  return pieces
    .map((piece, index) => {
      if (index % 2 === 0) return plain(piece);
      return index < pieces.length - 1 ? code(piece) : plain(`\`${piece}`);
    })
    .join('');
}

/** Within a line. */
const MARKUP = /[\\`*_{}[\]<>&~|#!$^@]/g;

function oneLine(text: string): string {
  return text.replace(/\s*[\r\n\u2028\u2029]+\s*/g, ' ').replace(UNSEEN, '');
}

/** Control characters, and those that turn the direction of the text around them. */
const UNSEEN = /[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;
