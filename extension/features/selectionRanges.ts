/** Growing the selection: from the word under the cursor over its value, key and block to the whole file. */
import { languages, Range, SelectionRange } from 'vscode';
import type { Disposable } from 'vscode';
import { selectionSpans } from '../../src/language/selectionRanges.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';

export function provideSelectionRanges({ names }: DocumentAnswers): Disposable {
  return languages.registerSelectionRangeProvider(THROTTLE_FILES, {
    // One for each cursor.
    provideSelectionRanges: (document, positions) =>
      positions.map((position) => {
        const spans = selectionSpans(names(document), document.offsetAt(position));
        const outward = spans.toReversed();
        return (
          outward.reduce<SelectionRange | undefined>((parent, span) => new SelectionRange(rangeOf(document, span), parent), undefined) ??
          new SelectionRange(new Range(position, position))
        );
      }),
  });
}
