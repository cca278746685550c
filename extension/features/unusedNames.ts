/**
 * Names that nothing uses, faded in the text and told by hover. No problem: they stand in no list. They are looked for once typing rests,
 * so that a name does not fade between its being declared and its being used.
 */
import { Diagnostic, DiagnosticSeverity, DiagnosticTag, Disposable, l10n, languages } from 'vscode';
import type { DocumentAnswers } from '../answers.ts';
import { LANGUAGE_ID } from '../language.ts';
import { unusedNames } from '../../src/language/unusedNames.ts';
import { rangeOf } from '../places.ts';
import { SOURCE } from './diagnostic.ts';

export function fadeUnusedNames({ names, onDidSolve, onDidLookAtFailures, onDidForget }: DocumentAnswers): Disposable {
  const collection = languages.createDiagnosticCollection(`${LANGUAGE_ID} unused names`);
  return Disposable.from(
    collection,
    // What could not be read may use them.
    onDidSolve(({ document, answers }) => {
      if (answers.problems.length > 0) collection.delete(document.uri);
    }),
    onDidLookAtFailures(({ document, answers }) => {
      const unused = answers.problems.length > 0 ? [] : unusedNames(names(document));
      if (unused.length === 0) return collection.delete(document.uri);
      const faded = unused.map(({ name, keySpan }) => {
        const hint = new Diagnostic(rangeOf(document, keySpan), l10n.t('Nothing in this file uses {0}', name), DiagnosticSeverity.Hint);
        hint.source = SOURCE;
        hint.tags = [DiagnosticTag.Unnecessary];
        return hint;
      });
      collection.set(document.uri, faded);
    }),
    onDidForget((document) => collection.delete(document.uri)),
  );
}
