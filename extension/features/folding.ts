/** Folding: blocks, parts, values over several lines, and runs of comments. */
import { FoldingRange, FoldingRangeKind, languages } from 'vscode';
import type { Disposable } from 'vscode';
import { foldingRanges } from '../../src/language/folding.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';

export function provideFolding({ names }: DocumentAnswers): Disposable {
  return languages.registerFoldingRangeProvider(THROTTLE_FILES, {
    provideFoldingRanges: (document) =>
      foldingRanges(names(document)).map(
        ({ startLine, endLine, kind }) => new FoldingRange(startLine, endLine, kind === 'comment' ? FoldingRangeKind.Comment : undefined),
      ),
  });
}
