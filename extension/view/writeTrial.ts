/** Writes figures into the text: one edit, so that one undo takes back a whole drag. */
import { l10n, Range, workspace, WorkspaceEdit } from 'vscode';
import type { TextDocument } from 'vscode';
import type { Replacement } from '../../src/definition/problem.ts';
import { editsFor } from '../../src/edits/editsFor.ts';
import type { Requests } from '../../src/protocol/messages.ts';
import type { DocumentAnswers } from '../answers.ts';
import { rangeOf } from '../places.ts';
import { readOnlyText, whyReadOnly } from '../readOnly.ts';
import { isOf } from './livePicture.ts';

/** Throws what the person is told where nothing was written. */
export async function writeTrial(
  document: TextDocument,
  { solveNow }: DocumentAnswers,
  { source, trial }: Requests['write']['asks'],
): Promise<Requests['write']['answers']> {
  await refuseReadOnly(document);
  if (!isOf(source, document)) throw new Error(l10n.t('The text has changed meanwhile.'));
  const edited = editsFor(solveNow(document), trial);
  if ('why' in edited) throw new Error(edited.why);
  return { version: await writeEdits(document, edited.edits) };
}

/** Throws what the person is told where nothing can be written. Before the text is looked at: it may change meanwhile. */
export async function refuseReadOnly(document: TextDocument): Promise<void> {
  const why = await whyReadOnly(document);
  if (why !== undefined) throw new Error(why);
}

/** As one undo step. @returns the version that has them; throws what the person is told where nothing was written */
export async function writeEdits(document: TextDocument, edits: readonly Replacement[]): Promise<number> {
  if (edits.length === 0) return document.version;
  const { uri } = document;
  const before = document.getText();
  const edit = new WorkspaceEdit();
  for (const { span, text } of edits) edit.replace(uri, rangeOf(document, span), text);
  const saved: TextDocument[] = [];
  const listening = workspace.onDidSaveTextDocument((each) => saved.push(each));
  const isTaken = await workspace.applyEdit(edit);
  listening.dispose();
  if (!isTaken) throw new Error(l10n.t('The editor did not take the change.'));
  const isToBeSaved = document.isDirty || document.isUntitled || saved.includes(document) || document.getText() === before;
  // The person holds the file read-only: the editor has changed its text all the same, and would never save it.
  if (!isToBeSaved) {
    const back = new WorkspaceEdit();
    back.replace(uri, new Range(document.positionAt(0), document.positionAt(document.getText().length)), before);
    await workspace.applyEdit(back);
    throw new Error(readOnlyText(uri));
  }
  return document.version;
}
