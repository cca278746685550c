/** Writes figures into the text: one edit, so that one undo takes back a whole drag. */
import { l10n, workspace, WorkspaceEdit } from 'vscode';
import type { TextDocument } from 'vscode';
import { editsFor } from '../../src/edits/editsFor.ts';
import type { Requests } from '../../src/protocol/messages.ts';
import type { DocumentAnswers } from '../answers.ts';
import { rangeOf } from '../places.ts';
import { isOf } from './livePicture.ts';

/** Throws what the person is told where nothing was written. */
export async function writeTrial(
  document: TextDocument,
  { solveNow }: DocumentAnswers,
  { source, trial }: Requests['write']['asks'],
): Promise<Requests['write']['answers']> {
  if (!isOf(source, document)) throw new Error(l10n.t('The text has changed meanwhile, so nothing was written.'));
  if (isReadOnly(document)) throw new Error(l10n.t('This is a version of the file that cannot be changed.'));
  const edited = editsFor(solveNow(document), trial);
  if ('why' in edited) throw new Error(edited.why);
  if (edited.edits.length > 0) {
    const edit = new WorkspaceEdit();
    for (const { span, text } of edited.edits) edit.replace(document.uri, rangeOf(document, span), text);
    if (!(await workspace.applyEdit(edit))) throw new Error(l10n.t('The editor did not take the change.'));
  }
  return { version: document.version };
}

/** As what a comparison with an older version opens. */
function isReadOnly({ uri }: TextDocument): boolean {
  return workspace.fs.isWritableFileSystem(uri.scheme) === false;
}
