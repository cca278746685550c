/** A document as the text of a JSON file. */

/** With a line ending. What a terminal would obey stands in it as an escape of JSON's own: the same to whoever parses it. */
export function jsonText(document: object): string {
  const text = JSON.stringify(document, undefined, 2);
  return `${text.replace(OBEYED, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`)}\n`;
}

/** As in `printable`, without what JSON escapes by itself and the line breaks between its own lines. */
const OBEYED = /[\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]/g;
