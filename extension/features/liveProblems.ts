/**
 * Problems in the editor, kept current: what is wrong with the text of every open throttle file, and what was found about the linkage that
 * it describes. Works on the text as it stands in the editor, saved or not.
 */
import { Disposable, languages, workspace } from 'vscode';
import type { Diagnostic, TextDocument } from 'vscode';
import type { Answers } from '../../src/solve.ts';
import type { DocumentAnswers } from '../answers.ts';
import { LANGUAGE_ID } from '../language.ts';
import type { MeasuredFiles } from '../measuredFiles.ts';
import { toDiagnostic } from './diagnostic.ts';
import { asChosen, SEVERITY_SETTING } from './severities.ts';

/**
 * Keeps the problems of all open throttle files current until disposed of.
 * @param measured files of readings, whose problems stand among the others; absent where there are none
 */
export function publishProblems(
  { onDidSolve, onDidLookAtFailures, onDidForget, latestWhole }: DocumentAnswers,
  measured?: Pick<MeasuredFiles, 'problems' | 'onDidChange'>,
): Disposable {
  const collection = languages.createDiagnosticCollection(LANGUAGE_ID);
  const publish = (document: TextDocument, answers: Answers): void => {
    if (NOT_BEING_WRITTEN.has(document.uri.scheme)) return;
    const beside = (measured?.problems(document) ?? []).map((problem) => toDiagnostic(document, problem));
    collection.set(document.uri, [...diagnosticsOf(document, answers), ...beside]);
  };
  return Disposable.from(
    collection,
    onDidSolve(({ document, answers }) => publish(document, answers)),
    // What single failures do comes behind, once typing rests.
    onDidLookAtFailures(({ document, answers }) => publish(document, answers)),
    measured?.onDidChange(({ document, answers }) => publish(document, latestWhole(document) ?? answers)) ??
      new Disposable(() => undefined),
    onDidForget((document) => collection.delete(document.uri)),
    workspace.onDidChangeConfiguration((event) => {
      if (!event.affectsConfiguration(SEVERITY_SETTING)) return;
      for (const document of workspace.textDocuments) {
        const answers = latestWhole(document);
        // Of a text that has changed since, the new answers come by themselves.
        if (answers?.text === document.getText()) publish(document, answers);
      }
    }),
  );
}

/** Other revisions, as comparisons open them beside the file itself: nothing is to be mended there. */
const NOT_BEING_WRITTEN: ReadonlySet<string> = new Set(['git']);

/** What is wrong with the text first; what was found about the linkage may follow from it. */
function diagnosticsOf(document: TextDocument, answers: Answers): Diagnostic[] {
  const { problems, findings } = asChosen(document, answers);
  return [...problems, ...findings].map((mark) => toDiagnostic(document, mark));
}
