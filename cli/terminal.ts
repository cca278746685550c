/** Colour on a terminal. */
import { plain, type Paint, type Style } from '../src/outputs/paint.ts';
import type { Io } from './io.ts';

/**
 * Colour where the stream is a terminal that can show it and nobody asked for none (`NO_COLOR` set to anything,
 * `TERM=dumb`). A terminal only: what goes into a pipe or a file is never coloured unless `--color` asks for it.
 * @param asked `--color` or `--no-color`; undefined where neither was given
 */
export function painterFor(asked: boolean | undefined, isTerminal: boolean, environment: Io['environment']): Paint {
  const quiet = (environment.NO_COLOR ?? '') !== '' || environment.TERM === 'dumb';
  return (asked ?? (isTerminal && !quiet)) ? coloured : plain;
}

/** SGR codes of ECMA-48: 31 red, 33 yellow, 36 cyan, 1 bold, 2 faint. */
const CODES: Readonly<Record<Style, string>> = { error: '1;31', warning: '1;33', note: '36', strong: '1', quiet: '2' };

const coloured: Paint = (style, text) => `\u001b[${CODES[style]}m${text}\u001b[0m`;

/** Columns of the terminal that a page may fill; none where there is no terminal. */
export function pageWidth({ columns }: Io): { readonly width?: number } {
  return columns === undefined ? {} : { width: Math.max(NARROWEST, columns) };
}

/** Narrower terminals wrap by themselves. */
const NARROWEST = 60;
