/** Everything that open throttle files are given, over one set of answers. */
import { Disposable } from 'vscode';
import type { Uri } from 'vscode';
import { keepAnswers } from './answers.ts';
import { provideCodeActions } from './features/codeActions.ts';
import { provideCodeLenses } from './features/codeLenses.ts';
import { openCodePages } from './features/codePages.ts';
import { provideCompletion } from './features/completion.ts';
import { provideDefinition } from './features/definition.ts';
import { provideFolding } from './features/folding.ts';
import { provideHighlights } from './features/highlights.ts';
import { provideHover } from './features/hover.ts';
import { provideInlayHints } from './features/inlayHints.ts';
import { publishProblems } from './features/liveProblems.ts';
import { provideReferences } from './features/references.ts';
import { provideRename } from './features/rename.ts';
import { revealParts } from './features/revealPart.ts';
import { provideSelectionRanges } from './features/selectionRanges.ts';
import { provideStudyActions } from './features/studyActions.ts';
import { provideSymbols } from './features/symbols.ts';
import { provideTokens } from './features/tokens.ts';
import { fadeUnusedNames } from './features/unusedNames.ts';
import { keepMeasuredFiles } from './measuredFiles.ts';
import type { Log } from './log.ts';
import { failuresGoTo } from './logFailure.ts';
import { showStatus } from './statusBar.ts';
import { provideTests } from './tests.ts';
import { keepViews, type Views } from './view/views.ts';

export { serveStudies } from './studies/serveStudies.ts';

export interface ServedThrottleFiles {
  readonly views: Views;
  dispose(): void;
}

/**
 * @param extensionUri where the extension is installed; its pages of the codes stand there, and what the view is built of
 * @param log where failures go that nobody waits for
 */
export function serveThrottleFiles(extensionUri: Uri, log: Pick<Log, 'failed'>): ServedThrottleFiles {
  const answers = keepAnswers();
  const measured = keepMeasuredFiles(answers);
  const views = keepViews(answers, measured, extensionUri);
  const serving = Disposable.from(
    views,
    measured,
    publishProblems(answers, measured),
    openCodePages(extensionUri),
    provideCodeActions(answers),
    provideStudyActions(answers),
    provideCompletion(answers),
    provideHover(answers),
    provideInlayHints(answers),
    provideCodeLenses(answers, views),
    revealParts(answers),
    provideSymbols(answers),
    provideFolding(answers),
    provideSelectionRanges(answers),
    provideDefinition(answers),
    provideReferences(answers),
    provideHighlights(answers),
    provideRename(answers),
    provideTokens(answers),
    provideTests(answers),
    showStatus(answers),
    fadeUnusedNames(answers),
    failuresGoTo(log),
    answers,
  );
  return { views, dispose: () => void serving.dispose() };
}
