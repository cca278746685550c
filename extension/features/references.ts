/** References: every place that speaks of the name under the cursor. */
import { languages, Location } from 'vscode';
import type { Disposable } from 'vscode';
import { findReferences } from '../../src/language/references.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';

export function provideReferences({ names }: DocumentAnswers): Disposable {
  return languages.registerReferenceProvider(THROTTLE_FILES, {
    provideReferences: (document, position, { includeDeclaration }) =>
      findReferences(names(document), document.offsetAt(position), includeDeclaration).map(
        (span) => new Location(document.uri, rangeOf(document, span)),
      ),
  });
}
