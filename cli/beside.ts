/** CSV files beside a throttle file. */
import type { BesideFile, ReadBeside } from '../src/studies/fit/gather.ts';
import { LARGEST_CSV } from '../src/studies/fit/csvReadings.ts';
import type { Io } from './io.ts';
import { decode } from './source.ts';

/**
 * Reads the files named, so that they are there when they are asked for.
 * @param file the throttle file as the person wrote it; of standard input the current folder counts
 */
export async function readFilesBeside(file: string, names: readonly string[], io: Io): Promise<ReadBeside> {
  const folder = file.slice(0, Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1);
  const read = new Map<string, BesideFile>();
  for (const name of names) read.set(name, await readBeside(`${folder}${name}`, io));
  return (name) => read.get(name) ?? { kind: 'missing' };
}

/** Enough for the largest that is read, whatever its characters. */
const READ_LIMIT = 4 * LARGEST_CSV;

async function readBeside(path: string, io: Io): Promise<BesideFile> {
  const reading = await io.readFile(path, READ_LIMIT);
  switch (reading.kind) {
    case 'missing':
      return { kind: 'missing' };
    case 'folder':
      return { kind: 'unreadable', reason: 'is a folder, not a file' };
    case 'forbidden':
      return { kind: 'unreadable', reason: 'may not be read: check its permissions' };
    case 'failed':
      return { kind: 'unreadable', reason: `could not be read: ${reading.reason}` };
    case 'bytes': {
      const text = decode(reading.bytes, reading.cut);
      return typeof text === 'string' ? { kind: 'text', text } : { kind: 'unreadable', reason: text.reason };
    }
  }
}
