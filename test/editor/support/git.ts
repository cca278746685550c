/** The editor's own git, as far as its extension offers it to others. */
import { type Event, extensions, type Uri } from 'vscode';
import { inWorkspace } from './editor.ts';
import { until } from './wait.ts';

interface GitExtension {
  getAPI(version: 1): Git;
}

export interface Git {
  init(folder: Uri): Promise<Repository | null>;
}

export interface Repository {
  readonly state: { readonly HEAD?: { readonly name?: string; readonly commit?: string }; readonly onDidChange: Event<unknown> };
  setConfig(key: string, value: string): Promise<string>;
  add(paths: readonly string[]): Promise<void>;
  commit(message: string): Promise<void>;
  createBranch(name: string, checkout: boolean): Promise<void>;
  checkout(name: string): Promise<void>;
}

/** Undefined where the editor has none: as on the web. */
export async function editorsGit(): Promise<Git | undefined> {
  const exported = await extensions.getExtension<GitExtension>('vscode.git')?.activate();
  return exported?.getAPI(1);
}

/** Makes one of the open folder, without a commit. */
export async function makeRepository(git: Git): Promise<Repository> {
  const repository = await git.init(inWorkspace(''));
  if (repository === null) throw new Error('the editor made no repository');
  await repository.setConfig('user.name', 'Test');
  await repository.setConfig('user.email', 'test@example.com');
  return repository;
}

/** Gives the commit's hash, once the editor knows of it. */
export async function commit(repository: Repository, uri: Uri, message: string): Promise<string> {
  const before = repository.state.HEAD?.commit;
  await repository.add([uri.fsPath]);
  await repository.commit(message);
  return until(`the commit “${message}”`, repository.state.onDidChange, () => {
    const now = repository.state.HEAD?.commit;
    return now === before ? undefined : now;
  });
}

/** Goes to another branch, which changes the files of the folder. */
export async function switchTo(repository: Repository, branch: string): Promise<void> {
  await repository.checkout(branch);
  await until(`branch ${branch}`, repository.state.onDidChange, () => (repository.state.HEAD?.name === branch ? true : undefined));
}
