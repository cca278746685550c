/** A world for the command line that holds a few files and keeps what is written. */
import { run } from '../../cli/run.ts';
import type { FileReading, Io } from '../../cli/io.ts';

export { FAULTY_FILE, SOUND_FILE } from '../support/soundFile.ts';

export interface World {
  /** By path: text, bytes, or what reading comes to. */
  readonly files?: Readonly<Record<string, string | Uint8Array | FileReading>>;
  readonly input?: string;
  readonly terminal?: boolean;
  readonly columns?: number;
  readonly environment?: Readonly<Record<string, string>>;
}

export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

export async function call(argv: readonly string[], world: World = {}): Promise<Outcome> {
  const { files = {}, input = '', terminal = false, columns, environment = {} } = world;
  let out = '';
  let error = '';
  const io: Io = {
    readFile: (path, limit) => Promise.resolve(reading(files[path], limit)),
    readInput: (limit) => Promise.resolve(reading(input, limit)),
    listFolder: (folder) => {
      const under = folder === '.' ? '' : folder.replace(/\/?$/, '/');
      return Object.keys(files)
        .filter((path) => path.startsWith(under))
        .map((path) => path.slice(under.length));
    },
    writeOut: (text) => {
      out += text;
    },
    writeError: (text) => {
      error += text;
    },
    outIsTerminal: terminal,
    errorIsTerminal: terminal,
    columns,
    environment,
    version: '1.2.3',
  };
  return { code: await run(argv, io), out, error };
}

function reading(held: string | Uint8Array | FileReading | undefined, limit: number): FileReading {
  if (held === undefined) return { kind: 'missing' };
  if (typeof held !== 'string' && !(held instanceof Uint8Array)) return held;
  const bytes = typeof held === 'string' ? new TextEncoder().encode(held) : held;
  return { kind: 'bytes', bytes: bytes.subarray(0, limit), cut: bytes.length > limit };
}
