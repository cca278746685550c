/**
 * While nothing else is to be done, the fixes for what was found under the cursor are worked out ahead, so that the menu has their figures in
 * its titles when it is opened: the editor shows no title that comes later. It is done in small pieces, and given up as soon as the
 * cursor or the text moves on.
 */
import { Disposable, window } from 'vscode';
import type { TextEditor } from 'vscode';
import { offeredFixes } from '../../src/language/offeredFixes.ts';
import type { DocumentAnswers } from '../answers.ts';
import { isThrottleFile } from '../language.ts';
import { logFailure } from '../logFailure.ts';
import { spanOf } from '../places.ts';
import type { FixWorks } from './fixWorks.ts';
import { chosenSeverities } from './severities.ts';
import { solveInTurns } from './solveInTurns.ts';

/** Works ahead for the editor that has the focus, until disposed of. */
export function solveAhead({ latest, onDidSolve }: DocumentAnswers, works: FixWorks): Disposable {
  /** Counts what has moved on since. */
  let turn = 0;
  let timer: number | undefined;

  const begin = (editor: TextEditor | undefined): void => {
    turn++;
    clearTimeout(timer);
    if (editor === undefined || !isThrottleFile(editor.document)) return;
    timer = setTimeout(() => logFailure(workFor(editor)), RESTED_MS);
  };
  const workFor = async ({ document, selection }: TextEditor): Promise<void> => {
    const [mine, { version }] = [turn, document];
    const answers = latest(document);
    // What was solved may be an older text; once this one is, that is told.
    if (answers?.text !== document.getText()) return;
    const isWanted = (): boolean => turn === mine && document.version === version && !document.isClosed;
    const severities = chosenSeverities(document);
    for (const offer of offeredFixes(answers, spanOf(document, selection))) {
      if (severities.get(offer.code) === 'off') continue;
      if ((await solveInTurns(works(answers, offer), isWanted)) === undefined) return;
    }
  };

  const listening = Disposable.from(
    window.onDidChangeTextEditorSelection(({ textEditor }) => begin(textEditor)),
    window.onDidChangeActiveTextEditor(begin),
    onDidSolve(({ document }) => {
      if (document === window.activeTextEditor?.document) begin(window.activeTextEditor);
    }),
  );
  return new Disposable(() => {
    turn++;
    clearTimeout(timer);
    listening.dispose();
  });
}

/** A cursor that only passes by asks for nothing. About what the editor itself waits before it shows the lamp, from memory. */
const RESTED_MS = 250;
