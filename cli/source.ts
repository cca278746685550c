/** From what a person named on the command line to the text of a throttle file. */
import { LARGEST_FILE } from '../src/definition/read.ts';
import { nearestWord } from '../src/definition/names.ts';
import { printable } from '../src/outputs/paint.ts';
import type { Io } from './io.ts';

export type Source = { readonly kind: 'text'; readonly text: string; readonly label: string } | UnusableSource;

export interface UnusableSource {
  readonly kind: 'unusable';
  readonly label: string;
  /** Without the file's name. */
  readonly reason: string;
  /** With it. */
  readonly message: string;
}

/** @param file a path, or `-` for standard input */
export async function readSource(file: string, io: Io): Promise<Source> {
  const reading = await (file === '-' ? io.readInput(READ_LIMIT) : io.readFile(file, READ_LIMIT));
  const label = file === '-' ? '<stdin>' : file;
  const unusable = (reason: string): Source => ({ kind: 'unusable', label, reason, message: printable(`${label}: ${reason}`) });
  switch (reading.kind) {
    case 'missing':
      return unusable(`there is no such file${nearHint(file, io)}`);
    case 'folder':
      return unusable(`is a folder, not a file${folderHint(file, io)}`);
    case 'forbidden':
      return unusable('may not be read: check its permissions');
    case 'failed':
      return unusable(`could not be read: ${reading.reason}`);
    case 'bytes': {
      const text = decode(reading.bytes, reading.cut);
      if (typeof text !== 'string') return unusable(text.reason);
      if (reading.cut) return unusable(`is larger than ${READ_LIMIT / 1024} kB; ${LARGEST_FILE / 1024} kB are read at most`);
      return { kind: 'text', text, label };
    }
  }
}

/** Enough to say of any file that is read how much too large it is, and little enough for an endless one. */
const READ_LIMIT = 4 * LARGEST_FILE;

/** @param cut whether there is more @returns what is wrong in words that follow the file's name, where it is no text */
export function decode(bytes: Uint8Array, cut: boolean): string | { readonly reason: string } {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return { reason: 'is UTF-16 text; save it as UTF-8' };
  if (bytes.includes(0)) return { reason: 'is not text: it has zero bytes' };
  try {
    // The byte order mark stays: places in the text count it. A cut may fall within a character.
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes, { stream: cut });
  } catch {
    return { reason: 'is not UTF-8 text; save it as UTF-8' };
  }
}

function nearHint(file: string, io: Io): string {
  const at = Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1;
  const names = throttleFiles(io.listFolder(file.slice(0, at) || '.'));
  const wanted = file.slice(at);
  const near = names.find((name) => name === `${wanted}.throttle.yaml`) ?? nearestWord(wanted, names);
  return near === undefined ? '' : `; did you mean \`${file.slice(0, at)}${near}\`?`;
}

function folderHint(file: string, io: Io): string {
  const names = throttleFiles(io.listFolder(file));
  if (names.length === 0) return '';
  const folder = /[/\\]$/.test(file) ? file : `${file}/`;
  const more = names.length > SHOWN_NAMES ? `, and ${names.length - SHOWN_NAMES} more` : '';
  return `; in it: ${names
    .slice(0, SHOWN_NAMES)
    .map((name) => folder + name)
    .join(', ')}${more}`;
}

const SHOWN_NAMES = 5;

function throttleFiles(names: readonly string[]): string[] {
  return names.filter((name) => name.endsWith('.throttle.yaml')).sort();
}
