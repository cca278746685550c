/** Files that cannot be written. The editor changes even their text where an extension asks it to, and then it can never be saved. */
import { FilePermission, l10n, workspace } from 'vscode';
import type { TextDocument, Uri } from 'vscode';
import { fileNameOf } from './view/fileName.ts';

/** In words, where a file cannot be written: for its place, or by whom keeps it. That a person holds it so in the editor is told nowhere. */
export async function whyReadOnly({ uri }: TextDocument): Promise<string | undefined> {
  // As what a comparison with an older version opens.
  if (uri.scheme === 'git') return l10n.t('This is a version of the file that cannot be changed.');
  const isKept = workspace.fs.isWritableFileSystem(uri.scheme) === false || (await isProtected(uri));
  return isKept ? readOnlyText(uri) : undefined;
}

export function readOnlyText(uri: Uri): string {
  return l10n.t('{0} is read-only.', fileNameOf(uri));
}

/** What stands on no disk yet is protected by nobody. */
async function isProtected(uri: Uri): Promise<boolean> {
  try {
    const { permissions = 0 } = await workspace.fs.stat(uri);
    return (permissions & FilePermission.Readonly) !== 0;
  } catch {
    return false;
  }
}
