/** Places to keep files, as other extensions make them: in memory, and not all of them willing. */
import {
  type Disposable,
  Disposable as Ending,
  EventEmitter,
  type FileChangeEvent,
  FilePermission,
  type FileStat,
  FileSystemError,
  type FileSystemProvider,
  FileType,
  Uri,
  workspace,
} from 'vscode';
import { utf8 } from './editor.ts';

export interface Place {
  /** Its files, by name. */
  readonly files: Readonly<Record<string, string>>;
  /** All of it, or by itself each of these files, is not to be written. */
  readonly readonly?: true | readonly string[];
  /** Names of which every question fails, and not because nothing is there. */
  readonly failing?: readonly string[];
}

/** Until disposed of. @param scheme that no other place has @returns the address of a name in it */
export function makePlace(scheme: string, place: Place): { readonly at: (name: string) => Uri; readonly ending: Disposable } {
  const ending = workspace.registerFileSystemProvider(scheme, providerOf(place), {
    isReadonly: place.readonly === true,
    isCaseSensitive: true,
  });
  return { at: (name) => Uri.from({ scheme, path: `/${name}` }), ending };
}

function providerOf({ files, readonly, failing = [] }: Place): FileSystemProvider {
  const written = new Map(Object.entries(files).map(([name, text]) => [name, utf8(text)]));
  const changes = new EventEmitter<FileChangeEvent[]>();
  const find = (uri: Uri): { readonly name: string; readonly bytes: Uint8Array } => {
    const name = uri.path.slice(1);
    if (failing.includes(name)) throw FileSystemError.Unavailable('nobody answers');
    const bytes = written.get(name);
    if (bytes === undefined) throw FileSystemError.FileNotFound(uri);
    return { name, bytes };
  };
  const refuse = (uri: Uri): never => {
    throw FileSystemError.NoPermissions(uri);
  };
  return {
    onDidChangeFile: changes.event,
    watch: () => new Ending(() => undefined),
    stat(uri): FileStat {
      if (uri.path === '/') return { type: FileType.Directory, ctime: 0, mtime: 0, size: 0 };
      const { name, bytes } = find(uri);
      const isKept = Array.isArray(readonly) && readonly.includes(name);
      return { type: FileType.File, ctime: 0, mtime: 0, size: bytes.length, ...(isKept && { permissions: FilePermission.Readonly }) };
    },
    readDirectory: () => [...written.keys()].map((name) => [name, FileType.File]),
    readFile: (uri) => find(uri).bytes,
    writeFile: refuse,
    createDirectory: refuse,
    delete: refuse,
    rename: refuse,
  };
}
