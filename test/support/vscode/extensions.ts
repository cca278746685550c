/** Stand-in for other extensions: the editor's git, where a test gives it a repository. */
import { EventEmitter } from './events.ts';
import type { Uri } from './places.ts';

export interface FakeCommit {
  readonly hash: string;
  readonly message: string;
  /** Text of each file by its path. */
  readonly files: Readonly<Record<string, string>>;
}

export const git = {
  /** The commits of the one repository, the newest first; undefined where there is no git. */
  commits: undefined as FakeCommit[] | undefined,
  isEnabled: true,
  /** The text of a file at a revision. */
  read(revision: string, path: string): Promise<string> {
    const found = revision === 'HEAD' ? git.commits?.[0] : git.commits?.find(({ hash }) => hash === revision);
    const text = found?.files[path];
    return text === undefined ? Promise.reject(new Error(`no ${path} at ${revision}`)) : Promise.resolve(text);
  },
};

const changed = new EventEmitter<void>();
const extensionsChanged = new EventEmitter<void>();

/** As when an extension is installed, switched on or off. */
export function extensionsHaveChanged(): void {
  extensionsChanged.fire();
}

/** Takes the repository a commit further. */
export function commit(made: FakeCommit): void {
  git.commits = [made, ...(git.commits ?? [])];
  changed.fire();
}

/** As when a file is saved, or git has looked again. */
export function repositoryChanged(): void {
  changed.fire();
}

const repository = {
  state: {
    get HEAD() {
      return { commit: git.commits?.[0]?.hash };
    },
    onDidChange: changed.event,
  },
  show: (revision: string, path: string) => git.read(revision, path),
  /** As git does, it fails where there is no commit at all. */
  log: ({ path }: { readonly path?: string }) =>
    git.commits === undefined || git.commits.length === 0
      ? Promise.reject(new Error('your current branch does not have any commits yet'))
      : Promise.resolve(git.commits.filter(({ files }) => path === undefined || path in files)),
};

const api = {
  state: 'initialized',
  onDidChangeState: new EventEmitter<unknown>().event,
  getRepository: (uri: Uri) => (uri.path.startsWith('/folder/') ? repository : null),
};

const exported = {
  get enabled() {
    return git.isEnabled;
  },
  getAPI: () => api,
};

export const extensions = {
  onDidChange: extensionsChanged.event,
  getExtension: (id: string) =>
    id === 'vscode.git' && git.commits !== undefined ? { activate: () => Promise.resolve(exported), exports: exported } : undefined,
};
