/**
 * How many cells of a terminal a text takes.
 *
 * East Asian wide characters and emoji take two, combining marks and joiners none, all others one. The stretches of
 * wide characters are the large ones of Unicode's East Asian Width, from memory; a terminal may differ on a rare one.
 */

export function widthOf(text: string): number {
  let width = 0;
  for (const character of text) width += cells(character);
  return width;
}

/** Cells of one character (one code point). */
export function cells(character: string): number {
  if (ZERO.test(character)) return 0;
  return WIDE.test(character) ? 2 : 1;
}

/** Fills up with blanks to a width, on the right; on the left where `toRight`. */
export function pad(text: string, width: number, toRight = false): string {
  const blanks = ' '.repeat(Math.max(0, width - widthOf(text)));
  return toRight ? blanks + text : text + blanks;
}

/** Lines of at most `width` cells, broken at blanks; a word that is wider stands alone. */
export function wrap(text: string, width: number): string[] {
  const rows: string[] = [];
  for (const word of text.split(' ')) {
    const last = rows.at(-1);
    if (last !== undefined && widthOf(last) + 1 + widthOf(word) <= width) rows[rows.length - 1] = `${last} ${word}`;
    else rows.push(word);
  }
  return rows;
}

/** Joins items by `; ` into lines that fit; an item that is wider stands alone. */
export function gather(items: readonly string[], width: number): string[] {
  const rows: string[] = [];
  for (const item of items) {
    const last = rows.at(-1);
    if (last !== undefined && widthOf(last) + 2 + widthOf(item) <= width) rows[rows.length - 1] = `${last}; ${item}`;
    else rows.push(item);
  }
  return rows;
}

const ZERO = /^(?:\p{Mn}|\p{Me}|\u200b|\u200c|\u200d|\ufeff)$/u;
const WIDE =
  /^[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6\u{1f300}-\u{1f64f}\u{1f680}-\u{1f6ff}\u{1f900}-\u{1f9ff}\u{20000}-\u{3fffd}]$/u;
