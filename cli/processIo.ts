/** The world as a process sees it: disk, standard streams, environment. */
import { createReadStream, readdirSync, readFileSync, statSync } from 'node:fs';
import process from 'node:process';
import type { FileReading, Io } from './io.ts';

export function processIo(): Io {
  return {
    readFile: (path, limit) => readFile(path, limit),
    readInput: (limit) => gather(process.stdin, limit),
    listFolder,
    writeOut: writerTo(process.stdout),
    writeError: writerTo(process.stderr),
    outIsTerminal: process.stdout.isTTY,
    errorIsTerminal: process.stderr.isTTY,
    // Some terminals do not know their width and give none, or 0.
    columns: process.stdout.isTTY && process.stdout.columns > 0 ? process.stdout.columns : undefined,
    environment: process.env,
    version: ownVersion(),
  };
}

/** Whoever reads may go before all is written (`| head`): the rest is then nobody's, and no failure of ours. */
function writerTo(stream: NodeJS.WriteStream): (text: string) => void {
  let open = true;
  stream.on('error', (error: NodeJS.ErrnoException) => {
    open = false;
    if (error.code !== 'EPIPE') process.exitCode = 2;
  });
  return (text) => {
    if (open) stream.write(text);
  };
}

async function readFile(path: string, limit: number): Promise<FileReading> {
  try {
    if (statSync(path).isDirectory()) return { kind: 'folder' };
  } catch (error) {
    return failure(error);
  }
  return gather(createReadStream(path, { end: limit }), limit);
}

async function gather(stream: AsyncIterable<unknown>, limit: number): Promise<FileReading> {
  const chunks: Uint8Array[] = [];
  let length = 0;
  try {
    for await (const chunk of stream) {
      const bytes = chunk instanceof Uint8Array ? chunk : new TextEncoder().encode(String(chunk));
      chunks.push(bytes);
      length += bytes.length;
      if (length > limit) break;
    }
  } catch (error) {
    return failure(error);
  }
  return { kind: 'bytes', bytes: Buffer.concat(chunks).subarray(0, limit), cut: length > limit };
}

function failure(error: unknown): FileReading {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT' || code === 'ENOTDIR') return { kind: 'missing' };
  if (code === 'EISDIR') return { kind: 'folder' };
  if (code === 'EACCES' || code === 'EPERM') return { kind: 'forbidden' };
  return { kind: 'failed', reason: error instanceof Error ? error.message : String(error) };
}

function listFolder(path: string): readonly string[] {
  try {
    return readdirSync(path);
  } catch {
    return [];
  }
}

/** Source and bundle stand at different depths below package.json. */
function ownVersion(): string {
  for (const up of ['../package.json', '../../package.json']) {
    try {
      const manifest: unknown = JSON.parse(readFileSync(new URL(up, import.meta.url), 'utf8'));
      if (typeof manifest !== 'object' || manifest === null || !('name' in manifest) || !('version' in manifest)) continue;
      if (manifest.name === 'pedal-to-plate' && typeof manifest.version === 'string') return manifest.version;
    } catch {
      continue;
    }
  }
  return 'unknown';
}
