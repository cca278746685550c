/** The sign of figures below zero, as it is printed everywhere in a comparison. */

export const MINUS = '\u2212';

/** With the one minus sign before figures; what is quoted between backticks, and a hyphen or range within a word, stay as they are. */
export function withMinus(text: string): string {
  return text
    .split('`')
    .map((piece, index) => (index % 2 === 0 ? piece.replace(HYPHEN, MINUS) : piece))
    .join('`');
}

const HYPHEN = /(?<![\w.\-%°])-(?=\.?\d)/g;
