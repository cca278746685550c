/** Carets under a word that occurs more than once, for texts that are put together. */

/**
 * @param place a stretch of one line with bars around the words that are meant, e.g. `  |tail|: {from`
 * @param told e.g. `warning[spring-slack]: …`
 */
export function markedAt(text: string, place: string, told: string): string {
  const [before = '', words = '', after = ''] = place.split('|');
  const found = text.indexOf(before + words + after);
  if (found < 0) throw new Error(`There is no ${place} in\n${text}`);
  const start = found + before.length;
  const lineStart = text.lastIndexOf('\n', start) + 1;
  const lineEnd = text.indexOf('\n', start);
  const column = start - lineStart;
  const carets = column === 0 ? `#${'^'.repeat(words.length - 1)}` : `#${' '.repeat(column - 1)}${'^'.repeat(words.length)}`;
  return `${text.slice(0, lineEnd)}\n${carets} ${told}${text.slice(lineEnd)}`;
}

/** Several of them. */
export function markedAll(text: string, marks: readonly (readonly [place: string, told: string])[]): string {
  return marks.reduce((marked, [place, told]) => markedAt(marked, place, told), text);
}
