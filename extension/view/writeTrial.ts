/** Writes figures into the text: one edit, so that one undo takes back a whole drag. */
import { l10n, workspace, WorkspaceEdit } from 'vscode';
import type { TextDocument } from 'vscode';
import type { Replacement } from '../../src/definition/problem.ts';
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
  const edited = editsFor(solveNow(document), trial);
  if ('why' in edited) throw new Error(edited.why);
  return { version: await writeEdits(document, edited.edits) };
}

/** As one undo step. @returns the version that has them; throws what the person is told where nothing was written */
export async function writeEdits(document: TextDocument, edits: readonly Replacement[]): Promise<number> {
  if (isReadOnly(document)) throw new Error(l10n.t('This is a version of the file that cannot be changed.'));
  if (edits.length > 0) {
    const edit = new WorkspaceEdit();
    for (const { span, text } of edits) edit.replace(document.uri, rangeOf(document, span), text);
    if (!(await workspace.applyEdit(edit))) throw new Error(l10n.t('The editor did not take the change.'));
  }
  return document.version;
}

/** As what a comparison with an older version opens. */
function isReadOnly({ uri }: TextDocument): boolean {
  return workspace.fs.isWritableFileSystem(uri.scheme) === false;
}
