/** A world for the command line that holds a few files and keeps what is written. */
import { run } from '../../cli/run.ts';
import type { FileReading, Io } from '../../cli/io.ts';

/** A whole linkage without an error. */
export const SOUND_FILE = `format: 1
levers:
  bellcrank:
    pivot: [0, 0]
    arms: {out: {radius: 30 mm, angle: 120 deg}}
    drums: {quadrant: {radius: 24 mm, wraps: clockwise, groove: 120 deg}}
  shaft:
    pivot: [90, 10]
    arms: {arm: {radius: 32 mm, angle: 115 deg}}
    stops: {closed: 0 deg, open: 70 deg}
pedal: {cable: main, pull: 32 mm}
cables:
  main: {to: bellcrank.quadrant, enters: [-60, 30], stiffness: 50 N/mm}
rods:
  link: {from: bellcrank.out, to: shaft.arm, ends: {kind: rod_end}}
plates:
  bank: {lever: shaft, count: 2, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}
`;

/** The same with a spring that works on a lever that there is not; the linkage itself is as before. */
export const FAULTY_FILE = `${SOUND_FILE}springs:
  return: {lever: shfat, rate: 2 N*mm/deg}
`;

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
