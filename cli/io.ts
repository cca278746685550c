/** What the command line needs of the world around it, so that tests can give it another. */

export interface Io {
  /** What a path holds; `path` as the person wrote it. Reads `limit` bytes at most. Never rejects. */
  readFile(path: string, limit: number): Promise<FileReading>;
  /** The whole of standard input, `limit` bytes at most. Never rejects. */
  readInput(limit: number): Promise<FileReading>;
  /** Names in the folder of a path, for hints; empty where they cannot be told. */
  listFolder(path: string): readonly string[];
  writeOut(text: string): void;
  writeError(text: string): void;
  readonly outIsTerminal: boolean;
  readonly errorIsTerminal: boolean;
  /** Cells to a line of the terminal that standard output is; undefined where it is none. */
  readonly columns: number | undefined;
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** Version of this program. */
  readonly version: string;
}

export type FileReading =
  /** `cut` where there was more than the limit. */
  | { readonly kind: 'bytes'; readonly bytes: Uint8Array; readonly cut: boolean }
  | { readonly kind: 'missing' | 'folder' | 'forbidden' }
  /** In the system's words. */
  | { readonly kind: 'failed'; readonly reason: string };

/** Exit codes: nothing is an error; something is; a file or the arguments cannot be used. */
export const SOUND = 0;
export const WRONG = 1;
export const UNUSABLE = 2;
