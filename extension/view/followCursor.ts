/** What the cursor stands on in the text lights up in the view, and what is chosen in the view is shown in the text. */
import { Disposable, window } from 'vscode';
import type { TextDocument, TextEditor } from 'vscode';
import { partAt } from '../../src/language/partAt.ts';
import { dialAt } from '../../src/picture/dialAt.ts';
import type { Dial, PartKey } from '../../src/protocol/report.ts';
import type { DocumentAnswers } from '../answers.ts';
import type { HeldFile } from './heldFile.ts';
import type { Notify } from './line.ts';
import { sourceOf } from './livePicture.ts';
import { editorOf } from './reveal.ts';

export interface FollowedCursor {
  /** The page knows nothing of it yet. */
  greet(): void;
  /** Tells of it anew where that is another part or figure than was told: the text has another meaning. */
  look(): void;
  /** Chooses a part by a command or in the view. @param step whether its card is wanted */
  choose(document: TextDocument, part: PartKey, step: boolean): void;
  /** The part that was chosen last, in either; undefined where none is. */
  chosen(): PartKey | undefined;
  dispose(): void;
}

/** @param isWatched whether the page is there to be told */
export function followCursor(file: HeldFile, answers: DocumentAnswers, notify: Notify, isWatched: () => boolean): FollowedCursor {
  let part: PartKey | undefined;
  let told: string | undefined;
  /** A command has gone to a part while there was no page: its card is wanted still. */
  let isStepOwed = false;
  let timer: number | undefined;

  const tell = (document: TextDocument, dial: Dial | undefined, step: boolean): void => {
    isStepOwed ||= step;
    const what = JSON.stringify([part, dial]);
    if (!isWatched() || (told === what && !isStepOwed)) return;
    told = what;
    notify({ type: 'select', source: sourceOf(document), part, step: isStepOwed, dial });
    isStepOwed = false;
  };
  const look = (): void => {
    const document = file.document();
    const editor = document && editorOf(document);
    if (document === undefined || editor === undefined) return;
    const offset = document.offsetAt(editor.selection.active);
    part = partAt(answers.names(document), offset);
    const known = answers.latest(document);
    tell(document, known?.text === document.getText() ? dialAt(known, offset) : undefined, false);
  };
  const lookSoon = (editor: TextEditor | undefined): void => {
    if (editor === undefined || editor.document !== file.document()) return;
    timer ??= setTimeout(() => {
      timer = undefined;
      look();
    }, 0);
  };

  const listening = Disposable.from(
    window.onDidChangeTextEditorSelection(({ textEditor }) => lookSoon(textEditor)),
    window.onDidChangeActiveTextEditor(lookSoon),
  );
  return {
    greet() {
      told = undefined;
    },
    look,
    choose(document, chosen, step) {
      part = chosen;
      const editor = editorOf(document);
      const known = answers.latest(document);
      const dial = editor && known?.text === document.getText() ? dialAt(known, document.offsetAt(editor.selection.active)) : undefined;
      tell(document, dial, step);
    },
    chosen: () => part,
    dispose() {
      clearTimeout(timer);
      listening.dispose();
    },
  };
}
