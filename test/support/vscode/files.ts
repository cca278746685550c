/** Stand-in for the files of a workspace: a folder in memory, whose files the test writes and takes away. */
import { type Disposable, EventEmitter } from './events.ts';
import { Uri } from './places.ts';

/** Of the one folder that is open. */
const FOLDER = 'file:///folder/';

const texts = new Map<string, string>();
const created = new EventEmitter<Uri>();
const changed = new EventEmitter<Uri>();
const deleted = new EventEmitter<Uri>();

export class RelativePattern {
  readonly baseUri: Uri;
  readonly pattern: string;
  constructor(baseUri: Uri, pattern: string) {
    this.baseUri = baseUri;
    this.pattern = pattern;
  }
}

export const FileType = { Unknown: 0, File: 1, Directory: 2, SymbolicLink: 64 } as const;
export const FilePermission = { Readonly: 1 } as const;

/** As the editor's own error of the name: what went wrong is told by its code. */
export class FileSystemError extends Error {
  readonly code: string;
  constructor(code: string, message: string) {
    super(message);
    this.name = `${code} (FileSystemError)`;
    this.code = code;
  }
}

/** What the extension asked of the disk, in order: `find`, `read file:///…`. */
export const diskAccess: string[] = [];

/** How long reading a file takes; what is read is what stood there at the start. Files that nobody may write, and that fail to be read, by URI. */
export const disk = { milliseconds: 0, readonly: new Set<string>(), failing: new Map<string, string>() };

export const files = {
  async findFiles(glob: string): Promise<readonly Uri[]> {
    diskAccess.push('find');
    const ending = glob.replace(/^\*\*\/\*/, '');
    await Promise.resolve();
    return [...texts.keys()].filter((uri) => uri.startsWith(FOLDER) && uri.endsWith(ending)).map((uri) => Uri.parse(uri));
  },
  createFileSystemWatcher: (pattern: string | RelativePattern) => {
    const listening: Disposable[] = [];
    const isMeant = (uri: Uri): boolean => typeof pattern === 'string' || matches(pattern, uri);
    const own = (event: (listener: (uri: Uri) => void) => Disposable) => (listener: (uri: Uri) => void) => {
      const subscription = event((uri) => {
        if (isMeant(uri)) listener(uri);
      });
      listening.push(subscription);
      return subscription;
    };
    return {
      onDidCreate: own(created.event),
      onDidChange: own(changed.event),
      onDidDelete: own(deleted.event),
      dispose: () => listening.forEach((each) => each.dispose()),
    };
  },
  fs: {
    async readFile(uri: Uri): Promise<Uint8Array> {
      diskAccess.push(`read ${uri.toString()}`);
      const text = texts.get(uri.toString());
      await new Promise((resolve) => setTimeout(resolve, disk.milliseconds));
      if (text === undefined) throw noFile(uri);
      return new TextEncoder().encode(text);
    },
    stat(uri: Uri): Promise<{ readonly type: number; readonly size: number; readonly permissions?: number }> {
      const text = texts.get(uri.toString());
      const failing = disk.failing.get(uri.toString());
      if (failing !== undefined) return Promise.reject(new FileSystemError(failing, `${uri.toString()} fails`));
      if (text === undefined) return Promise.reject(noFile(uri));
      const permissions = disk.readonly.has(uri.toString()) ? { permissions: FilePermission.Readonly } : {};
      return Promise.resolve({ type: FileType.File, size: new TextEncoder().encode(text).length, ...permissions });
    },
    writeFile(uri: Uri, bytes: Uint8Array): Promise<void> {
      if (disk.readonly.has(uri.toString())) return Promise.reject(new FileSystemError('NoPermissions', `${uri.toString()} is kept`));
      diskAccess.push(`write ${uri.toString()}`);
      texts.set(uri.toString(), new TextDecoder().decode(bytes));
      return Promise.resolve();
    },
    /** What older versions are opened from cannot be written to. */
    isWritableFileSystem: (scheme: string): boolean | undefined =>
      scheme === 'untitled' ? undefined : !['git', 'readonly'].includes(scheme),
  },
  asRelativePath: (uri: Uri) => uri.toString().replace(FOLDER, ''),
  getWorkspaceFolder: (uri: Uri) => (uri.toString().startsWith(FOLDER) ? { uri: Uri.parse(FOLDER) } : undefined),
};

/** As the editor reads a pattern: `*`, `?`, `[…]` and `{…,…}` stand for more than themselves. Of one folder, none below it. */
function matches({ baseUri, pattern }: RelativePattern, uri: Uri): boolean {
  const folder = `${baseUri.path.replace(/\/$/, '')}/`;
  if (uri.scheme !== baseUri.scheme || !uri.path.startsWith(folder)) return false;
  const source = pattern
    .replace(/[.+^$()|\\]/g, '\\$&')
    .replace(/[*?]/g, (sign) => (sign === '*' ? '[^/]*' : '[^/]'))
    .replace(/\{([^}]*)\}/g, (_, either: string) => `(?:${either.replaceAll(',', '|')})`);
  return new RegExp(`^${source}$`).test(uri.path.slice(folder.length));
}

const noFile = (uri: Uri): FileSystemError => new FileSystemError('FileNotFound', `no file ${uri.toString()}`);

/** Undefined where there is no such file. */
export function textOnDisk(uri: string): string | undefined {
  return texts.get(uri);
}

/** @param text undefined takes the file away */
export function writeFile(uri: string, text: string | undefined): void {
  const was = texts.has(uri);
  if (text === undefined) texts.delete(uri);
  else texts.set(uri, text);
  const event = text === undefined ? deleted : was ? changed : created;
  event.fire(Uri.parse(uri));
}

export function emptyDisk(): void {
  texts.clear();
  diskAccess.length = 0;
  disk.milliseconds = 0;
  disk.readonly.clear();
  disk.failing.clear();
}
