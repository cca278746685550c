/** Files that the extension has written. */
import { Disposable, EventEmitter, RelativePattern, Uri, workspace } from 'vscode';
import { until } from './wait.ts';

/** What stands in a file, once there is something. */
export async function untilWritten(uri: Uri): Promise<Uint8Array> {
  const watcher = workspace.createFileSystemWatcher(new RelativePattern(Uri.joinPath(uri, '..'), '*'));
  const read = new EventEmitter<void>();
  let bytes = new Uint8Array();
  const look = async (): Promise<void> => {
    // In Node it comes as a kind of bytes with ways of its own.
    bytes = await workspace.fs.readFile(uri).then(
      (found) => Uint8Array.from(found),
      () => bytes,
    );
    read.fire();
  };
  const listening = Disposable.from(watcher, read, watcher.onDidCreate(look), watcher.onDidChange(look));
  void look();
  try {
    return await until(`${uri.path} to be written`, read.event, () => (bytes.length > 0 ? bytes : undefined));
  } finally {
    listening.dispose();
  }
}

/** As UTF-8, in which all that is saved as text is. There is no TextDecoder in the types that all hosts share. */
export function textIn(bytes: Uint8Array): string {
  return decodeURIComponent(Array.from(bytes, (byte) => `%${byte.toString(16).padStart(2, '0')}`).join(''));
}

/**
 * Width and height of a PNG in pixels. Throws where it is none, by https://www.w3.org/TR/png-3/#5DataRep: its signature, a header first, and
 * then chunks without a gap up to the one that ends it.
 */
export function sizeOfPng(bytes: Uint8Array): readonly [width: number, height: number] {
  const number = (at: number): number => [0, 1, 2, 3].reduce((sum, index) => sum * 256 + (bytes[at + index] ?? NaN), 0);
  if (String(bytes.slice(0, 8)) !== '137,80,78,71,13,10,26,10') throw new Error(`no PNG begins with ${String(bytes.slice(0, 8))}`);
  const chunks: string[] = [];
  let at = 8;
  while (at < bytes.length) {
    chunks.push(String.fromCharCode(...bytes.slice(at + 4, at + 8)));
    at += 12 + number(at);
  }
  if (at !== bytes.length || chunks[0] !== 'IHDR' || chunks.at(-1) !== 'IEND' || !chunks.includes('IDAT'))
    throw new Error(`not a whole PNG: ${String(bytes.length)} bytes with ${chunks.join(', ')}`);
  return [number(16), number(20)];
}
