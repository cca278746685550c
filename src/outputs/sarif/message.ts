/** Text as SARIF takes it for a message. */
import { printable } from '../paint.ts';
import type { SarifText } from './log.ts';

/** Sentences, each given without its full stop; empty ones are left out. */
export function sarifMessage(...sentences: readonly (string | undefined)[]): SarifText {
  const told = sentences.filter((sentence) => sentence !== undefined && sentence !== '');
  return { text: told.map((sentence) => `${sarifText(sentence ?? '')}.`).join(' ') };
}

/**
 * Text that holds no placeholder and no link, whatever a person wrote: braces are doubled (3.11.5), and the brackets of what would be
 * read as a link get a backslash (3.11.6). Elsewhere brackets stay as they are.
 */
export function sarifText(text: string): string {
  const braced = printable(text.replace(LINE_BREAKS, ' ')).replace(/[{}]/g, '$&$&');
  return braced.includes('](') ? braced.replace(/[\\[\]]/g, '\\$&') : braced;
}

const LINE_BREAKS = /\s*[\r\n\u2028\u2029]+\s*/g;
