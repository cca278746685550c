/**
 * A person's own text within Markdown as pull requests show it, so that it stays text whatever it holds.
 *
 * A character that Markdown, HTML or a formula of mathematics could take for markup is written as its numeric character reference, which
 * never is markup (CommonMark, "Entity and numeric character references"). Addresses, `@names` and `#numbers` are looked for in what has
 * been rendered already; a zero-width space parts them.
 */
import { printable } from './paint.ts';

/** One line of text. */
export function markdownText(text: string): string {
  return printable(text.replace(LINE_BREAKS, ' '))
    .replace(LINK_STARTS, `$1${ZERO_WIDTH_SPACE}`)
    .replace(MARKUP, (character) => `&#${character.codePointAt(0) ?? 0};`);
}

/** The same, with what stands between backticks as code: messages quote a person's words so. */
export function markdownMessage(text: string): string {
  const pieces = text.split('`');
  return pieces
    .map((piece, index) => {
      if (index % 2 === 0) return markdownText(piece);
      // The last backtick of an odd number quotes nothing.
      return index < pieces.length - 1 ? markdownCode(piece) : markdownText(`\`${piece}`);
    })
    .join('');
}

/** Text in the type of code. The tags do what backticks would, and unlike those cannot be ended by the text. */
export function markdownCode(text: string): string {
  return text === '' ? '' : `<code>${markdownText(text)}</code>`;
}

/** Lines of a table; cells are Markdown already. */
export function markdownTable(header: readonly string[], rows: readonly (readonly string[])[]): string[] {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(header), line(header.map(() => '---')), ...rows.map(line)];
}

/** Within a cell of a table. */
export const LINE_BREAK = '<br>';

/** What can be opened, closed at first. An empty line parts the tags from the Markdown within. */
export function markdownDetails(title: string, lines: readonly string[]): string[] {
  return ['<details>', `<summary>${title}</summary>`, '', ...lines, '', '</details>'];
}

const LINE_BREAKS = /\s*[\r\n\u2028\u2029]+\s*/g;
const ZERO_WIDTH_SPACE = '\u200b';
/** Where a name, the number of an issue, the address of a page or the name of a picture (`:smile:`) would begin. */
const LINK_STARTS = /([@#]|:(?=\/\/)|\b(?:www|gh)(?=[.-])|\b(?:mailto|xmpp)(?=:)|:(?=[\w+-]*[a-z+-][\w+-]*:))/gi;
/** Within a line; what is markup only where a line begins never stands there. */
const MARKUP = /[&<>"'\\`*_{}[\]()|~$!#@^]/g;
