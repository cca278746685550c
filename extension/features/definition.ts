/** Go to definition: from a name to where it is declared, with the whole entry to be seen in a peek. */
import { languages } from 'vscode';
import type { Disposable, LocationLink } from 'vscode';
import { findDefinition } from '../../src/language/definition.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';

export function provideDefinition({ names }: DocumentAnswers): Disposable {
  return languages.registerDefinitionProvider(THROTTLE_FILES, {
    provideDefinition(document, position): LocationLink[] {
      const found = findDefinition(names(document), document.offsetAt(position));
      if (found === undefined) return [];
      return [
        {
          originSelectionRange: rangeOf(document, found.origin),
          targetUri: document.uri,
          targetRange: rangeOf(document, found.targetEntry),
          targetSelectionRange: rangeOf(document, found.target),
        },
      ];
    },
  });
}
