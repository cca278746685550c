/** Highlights: the places of the name under the cursor, marked in the text. */
import { DocumentHighlight, DocumentHighlightKind, languages } from 'vscode';
import type { Disposable } from 'vscode';
import { findHighlights } from '../../src/language/highlights.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';

export function provideHighlights({ names }: DocumentAnswers): Disposable {
  return languages.registerDocumentHighlightProvider(THROTTLE_FILES, {
    provideDocumentHighlights: (document, position) =>
      findHighlights(names(document), document.offsetAt(position)).map(
        ({ span, kind }) =>
          new DocumentHighlight(rangeOf(document, span), kind === 'write' ? DocumentHighlightKind.Write : DocumentHighlightKind.Read),
      ),
  });
}
