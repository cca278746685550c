/** What is asked of the editor's own git extension, which may be missing or switched off: as on the web. */
import { extensions } from 'vscode';
import type { Event, Uri } from 'vscode';

/** As far as it is used; version 1 of what the extension `vscode.git` offers to others. */
interface GitExtension {
  readonly enabled: boolean;
  getAPI(version: 1): GitApi;
}

interface GitApi {
  readonly state: 'uninitialized' | 'initialized';
  readonly onDidChangeState: Event<unknown>;
  getRepository(uri: Uri): GitRepository | null;
}

export interface GitRepository {
  readonly state: { readonly HEAD: { readonly commit?: string } | undefined; readonly onDidChange: Event<void> };
  /** The text of a file at a revision; rejects where it has none there. */
  show(revision: string, path: string): Promise<string>;
  /** The newest first; of one file, or of all. */
  log(options: { readonly maxEntries: number; readonly path?: string }): Promise<readonly GitCommit[]>;
}

export interface GitCommit {
  readonly hash: string;
  readonly message: string;
  readonly authorName?: string;
  readonly authorDate?: Date;
}

const GIT = 'vscode.git';

export function hasGit(): boolean {
  return extensions.getExtension(GIT) !== undefined;
}

/** It may be another: as where the person begins to trust a folder. */
export const onDidChangeHasGit: Event<void> = (...listening) => extensions.onDidChange(...listening);

/** The repository that a file lies in; undefined where there is none, or no git. */
export async function repositoryOf(uri: Uri): Promise<GitRepository | undefined> {
  const extension = extensions.getExtension<GitExtension>(GIT);
  if (extension === undefined || uri.scheme === 'untitled') return undefined;
  try {
    const git = await extension.activate();
    if (!git.enabled) return undefined;
    const api = git.getAPI(1);
    await initialized(api);
    return api.getRepository(onDisk(uri)) ?? undefined;
  } catch {
    // Switched off, or without a program `git`.
    return undefined;
  }
}

/** The path by which git asks for a file: where an older version of it is open, that of the file itself. */
export function pathOf(uri: Uri): string {
  return onDisk(uri).fsPath;
}

/** The file itself, of an older version of it that git has. */
export function onDisk(uri: Uri): Uri {
  return uri.scheme === 'git' ? uri.with({ scheme: 'file', query: '' }) : uri;
}

/** It looks for repositories when it starts. Not waited for without end. */
function initialized(api: GitApi): Promise<void> {
  return new Promise((resolve) => {
    if (api.state === 'initialized') return resolve();
    const end = (): void => {
      clearTimeout(timer);
      listening.dispose();
      resolve();
    };
    const timer = setTimeout(end, LONGEST_START_MS);
    const listening = api.onDidChangeState(() => {
      if (api.state === 'initialized') end();
    });
  });
}

const LONGEST_START_MS = 5000;
