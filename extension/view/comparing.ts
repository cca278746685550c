/**
 * Another state of the file beside this one, kept up with the text: what changed, what all of it did, and what each change does alone. The
 * last is worked out in turns, one solution each, and begun again when the text changes.
 */
import type { Disposable, TextDocument } from 'vscode';
import { listChanges, type ListedChange } from '../../src/compared/changes.ts';
import { effectLines, effectsAlone } from '../../src/compared/effects.ts';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import type { ChangedValue } from '../../src/protocol/messages.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { compareAnswers } from '../../src/studies/compare.ts';
import { l10n } from 'vscode';
import type { DocumentAnswers } from '../answers.ts';
import { logFailure } from '../logFailure.ts';
import { nextTurn } from '../turns.ts';
import type { HeldFile } from './heldFile.ts';
import type { Notify } from './line.ts';
import { sourceOf } from './livePicture.ts';
import type { OldState } from './oldStates.ts';

export interface Comparing {
  /** Whether there is something to stop. */
  isOn(): boolean;
  with(state: OldState): Promise<void>;
  /** @param reason where the person did not ask for it, in words */
  stop(reason?: string): void;
  /** Tells the page of it anew: the text is another, or the page is. */
  look(): void;
  dispose(): void;
}

export interface ComparingOptions {
  readonly file: HeldFile;
  readonly answers: DocumentAnswers;
  readonly notify: Notify;
  /** Whether the page is there to be told. */
  readonly isWatched: () => boolean;
  readonly onSwitched: () => void;
}

export function keepComparing({ file, answers, notify, isWatched, onSwitched }: ComparingOptions): Comparing {
  let old: { readonly label: string; readonly answers: Answers; readonly shown: ReturnType<typeof showAnswers> } | undefined;
  let listening: Disposable | undefined;
  /** Rises with everything that makes an old text that is being read worthless. */
  let reading = 0;
  /** The same of what is being worked out. */
  let round = 0;
  let isDisposed = false;
  /** Why it ended, for a page that was not there to be told. */
  let untold: string | undefined;

  const stop = (reason?: string): void => {
    reading++;
    round++;
    stopListening();
    if (old === undefined && reason === undefined) return;
    old = undefined;
    if (isWatched()) notify({ type: 'compare-ended', reason });
    else untold = reason;
    onSwitched();
  };

  const take = async (state: OldState, mine: number): Promise<void> => {
    const text = await state.read().catch(() => undefined);
    if (mine !== reading) return;
    if (text === undefined) return stop(l10n.t('{0} can be read no more.', state.label));
    await nextTurn();
    if (mine !== reading || (old?.answers.text === text && old.label === state.label)) return;
    const solved = solve(text);
    old = { label: state.label, answers: solved, shown: showAnswers(solved) };
    onSwitched();
    look();
  };

  const look = (): void => {
    const document = file.document();
    const mine = ++round;
    if (!isWatched()) return;
    if (untold !== undefined) notify({ type: 'compare-ended', reason: untold });
    untold = undefined;
    if (old !== undefined && document !== undefined) logFailure(workOut(document, old, mine));
  };

  const workOut = async (document: TextDocument, was: NonNullable<typeof old>, mine: number): Promise<void> => {
    const { version } = document;
    const isWanted = (): boolean => mine === round && document.version === version;
    const is = await answers.solved(document);
    if (is === undefined || !isWanted()) return;
    const comparison = compareAnswers(was.answers, is);
    const changes = listChanges(comparison.file, was.answers.text, is.text);
    const done: (readonly string[])[] = [];
    const tell = (): void =>
      notify({
        type: 'compare',
        source: sourceOf(document),
        label: was.label,
        other: was.shown && { picture: was.shown.picture, charts: was.shown.charts },
        changes: changes.map((change, index): ChangedValue => ({ ...change.changed, effects: done[index] ?? pending(change, index) })),
        effects: effectLines(comparison),
      });
    tell();
    for (const [index, change] of changes.entries()) {
      if (change.alone === undefined || index >= MOST_ALONE) continue;
      await nextTurn();
      if (!isWanted()) return;
      done[index] =
        changes.length === 1
          ? [l10n.t('The only change: all that the comparison lists comes of it.')]
          : effectsAlone(change, was.answers, is, solve);
    }
    if (done.length > 0 && isWanted()) tell();
  };

  return {
    isOn: () => old !== undefined,
    async with(state) {
      stopListening();
      untold = undefined;
      // The person was asked for it, and may have closed the view meanwhile.
      if (isDisposed) return;
      listening = state.onDidChange?.(() => logFailure(take(state, ++reading)));
      await take(state, ++reading);
    },
    stop,
    look,
    dispose() {
      isDisposed = true;
      reading++;
      round++;
      stopListening();
    },
  };

  function stopListening(): void {
    listening?.dispose();
    listening = undefined;
  }
}

/** Each takes a solution; more than a person reads. */
const MOST_ALONE = 40;

function pending({ alone }: ListedChange, index: number): readonly string[] {
  if (alone === undefined) return [];
  if (index >= MOST_ALONE) return [l10n.t('Not worked out: only the first {0} changes are taken one at a time.', MOST_ALONE)];
  return [l10n.t('Being worked out …')];
}
