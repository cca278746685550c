/**
 * Problems in the editor, kept current: what is wrong with the text of every open throttle file, and what was found
 * about the linkage that it describes. Works on the text as it stands in the editor, saved or not.
 */
import { Disposable, languages, workspace } from 'vscode';
import type { TextDocument } from 'vscode';
import { solve } from '../src/solve.ts';
import { toDiagnostic } from './problems.ts';

export const LANGUAGE_ID = 'throttle-linkage';

/** Keeps the problems of all open throttle files current until disposed of. */
export function publishProblems(): Disposable {
  const collection = languages.createDiagnosticCollection(LANGUAGE_ID);
  const timers = new Map<TextDocument, number>();

  const stopWaiting = (document: TextDocument): void => {
    clearTimeout(timers.get(document));
    timers.delete(document);
  };
  const publish = (document: TextDocument): void => {
    stopWaiting(document);
    if (document.isClosed || document.languageId !== LANGUAGE_ID) return;
    const { problems, findings } = solve(document.getText());
    collection.set(
      document.uri,
      [...problems, ...findings].map((remark) => toDiagnostic(document, remark)),
    );
  };
  const publishSoon = (document: TextDocument): void => {
    if (document.languageId !== LANGUAGE_ID) return;
    stopWaiting(document);
    timers.set(
      document,
      setTimeout(() => {
        publish(document);
      }, TYPING_PAUSE_MS),
    );
  };
  const withdraw = (document: TextDocument): void => {
    stopWaiting(document);
    if (document.languageId === LANGUAGE_ID) collection.delete(document.uri);
  };

  // What is open already is published after activation has returned, so that the editor does not wait for it.
  workspace.textDocuments.forEach(publishSoon);
  return Disposable.from(
    collection,
    workspace.onDidOpenTextDocument(publish),
    workspace.onDidChangeTextDocument((event) => {
      if (event.contentChanges.length > 0) publishSoon(event.document);
    }),
    // Also sent when a document is given another language, with the language that it had.
    workspace.onDidCloseTextDocument(withdraw),
    new Disposable(() => {
      for (const timer of timers.values()) clearTimeout(timer);
      timers.clear();
    }),
  );
}

/** Long enough that a word in the middle of being typed is not marked, short enough to feel immediate. */
const TYPING_PAUSE_MS = 120;
