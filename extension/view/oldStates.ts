/** Other states of a file to compare with: of git, or of another file. Each asks the person for what it needs. */
import { l10n, Uri, window, workspace } from 'vscode';
import type { Event, QuickPickItem } from 'vscode';
import { fileNameOf } from './fileName.ts';
import { pathOf, repositoryOf, type GitCommit, type GitRepository } from './git.ts';

export interface OldState {
  /** E.g. `HEAD`, `3f2a91c`, `rev_a.throttle.yaml`. */
  readonly label: string;
  /** Its text; rejects where there is none. */
  read(): Promise<string>;
  /** It may be another text; undefined where it stays the same. */
  readonly onDidChange: Event<unknown> | undefined;
}

/** Undefined where the person decided otherwise. */
export type Asked = { readonly state: OldState } | { readonly why: string } | undefined;

/** The last commit; as that moves on, so does what is compared with. */
export async function headOf(uri: Uri): Promise<Asked> {
  const repository = await repositoryOf(uri);
  if (repository === undefined) return { why: noGit(uri) };
  const path = pathOf(uri);
  const state: OldState = { label: 'HEAD', read: () => repository.show('HEAD', path), onDidChange: commitChanges(repository) };
  if (await canBeRead(state)) return { state };
  const hasCommits = (await commitsOf(repository, { maxEntries: 1 })).length > 0;
  return { why: hasCommits ? l10n.t('The last commit has no {0}.', fileNameOf(uri)) : l10n.t('Nothing has been committed yet.') };
}

/** Told only where the last commit is another one: the repository also speaks whenever a file is saved. */
function commitChanges({ state }: GitRepository): Event<unknown> {
  return (listener, self: unknown, disposables) => {
    let last = state.HEAD?.commit;
    const look = (): void => {
      const commit = state.HEAD?.commit;
      if (commit === last) return;
      last = commit;
      listener.call(self, undefined);
    };
    return state.onDidChange(look, undefined, disposables);
  };
}

/** One of the file's commits, which the person picks. */
export async function revisionOf(uri: Uri): Promise<Asked> {
  const repository = await repositoryOf(uri);
  if (repository === undefined) return { why: noGit(uri) };
  const path = pathOf(uri);
  const commits = await commitsOf(repository, { maxEntries: MOST_COMMITS, path });
  if (commits.length === 0) return { why: l10n.t('No commit has {0}.', fileNameOf(uri)) };
  const options = { title: l10n.t('Compare with Revision'), placeHolder: l10n.t('Which commit to compare with'), matchOnDescription: true };
  const picked = await window.showQuickPick(commits.map(itemOf), options);
  if (picked === undefined) return undefined;
  const { hash } = picked.commit;
  const state: OldState = { label: hash.slice(0, SHORT_HASH), read: () => repository.show(hash, path), onDidChange: undefined };
  return (await canBeRead(state)) ? { state } : { why: l10n.t('That commit has no {0}.', fileNameOf(uri)) };
}

/** Another file, which the person picks. */
export async function pickedFile(uri: Uri): Promise<Asked> {
  const [picked] =
    (await window.showOpenDialog({
      ...(uri.scheme !== 'untitled' && { defaultUri: Uri.joinPath(uri, '..') }),
      filters: { [l10n.t('Throttle files')]: ['yaml'] },
      openLabel: l10n.t('Compare'),
      title: l10n.t('Compare with File'),
    })) ?? [];
  if (picked === undefined) return undefined;
  const label = fileNameOf(picked);
  // As it stands in the editor where it is open, and in the encoding that the editor reads it in.
  const read = async (): Promise<string> => (await workspace.openTextDocument(picked)).getText();
  const state: OldState = { label, read, onDidChange: undefined };
  return (await canBeRead(state)) ? { state } : { why: l10n.t('{0} cannot be read.', label) };
}

function noGit(uri: Uri): string {
  // There may well be a repository, of which the editor then wants to know nothing.
  if (!workspace.isTrusted) return l10n.t('The editor uses no git in a folder that you do not trust.');
  return l10n.t('{0} is in no git repository that the editor knows.', fileNameOf(uri));
}

async function canBeRead({ read }: OldState): Promise<boolean> {
  try {
    await read();
    return true;
  } catch {
    return false;
  }
}

async function commitsOf(repository: GitRepository, wanted: Parameters<GitRepository['log']>[0]): Promise<readonly GitCommit[]> {
  try {
    return await repository.log(wanted);
  } catch {
    // Nothing has been committed yet.
    return [];
  }
}

/** More than a person looks through. */
const MOST_COMMITS = 200;
const SHORT_HASH = 7;

function itemOf(commit: GitCommit): QuickPickItem & { readonly commit: GitCommit } {
  const [subject = ''] = commit.message.split('\n');
  const detail = [commit.authorDate?.toLocaleDateString(), commit.authorName].filter((each) => each !== undefined).join(', ');
  return { label: subject, description: commit.hash.slice(0, SHORT_HASH), detail, commit };
}
