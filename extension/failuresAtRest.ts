/**
 * Single failures of every open throttle file, looked at once its typing rests. They take many times as long as the problems of a key press,
 * so that they are worked out in small pieces, between which the editor has its turn, and given up as soon as the text moves on.
 */
import { Disposable, EventEmitter, workspace } from 'vscode';
import type { Event, TextDocument } from 'vscode';
import { withFailures } from '../src/outputs/withFailures.ts';
import type { Failures } from '../src/findings/failures.ts';
import type { Answers } from '../src/solve.ts';
import type { SolvedDocument } from './answers.ts';
import { PIECE_MS } from './turns.ts';

export interface FailuresAtRest {
  /** Answers with what single failures do, of the text as it was looked at. Never of a text that has changed since. */
  readonly onDidLook: Event<SolvedDocument>;
  /** Those answers, made of these; undefined where they were not looked at, or not yet. */
  made(of: Answers): Answers | undefined;
  dispose(): void;
}

export interface RestOptions {
  /** A text was opened, or its typing has paused. */
  readonly onDidSolve: Event<SolvedDocument>;
  readonly onDidForget: Event<TextDocument>;
}

/** Looks at each text that was solved, until disposed of. */
export function lookAtFailures({ onDidSolve, onDidForget }: RestOptions): FailuresAtRest {
  const looked = new EventEmitter<SolvedDocument>();
  const known = new WeakMap<Answers, Answers>();
  const timers = new Map<TextDocument, number>();

  const stop = (document: TextDocument): void => {
    clearTimeout(timers.get(document));
    timers.delete(document);
  };
  const begin = ({ document, answers }: SolvedDocument): void => {
    stop(document);
    const { version } = document;
    let work: ReturnType<Failures['work']> | undefined;
    const go = (): void => {
      timers.delete(document);
      if (document.version !== version || document.isClosed) return;
      const until = Date.now() + PIECE_MS;
      // Asking for them may solve the linkage, which is not needed before.
      work ??= answers.failures()?.work('closing');
      if (work === undefined) return;
      do {
        if (work.next().done !== true) continue;
        const whole = withFailures(answers);
        known.set(answers, whole);
        looked.fire({ document, answers: whole });
        return;
      } while (Date.now() < until);
      timers.set(document, setTimeout(go, 0));
    };
    timers.set(document, setTimeout(go, REST_MS));
  };

  const listening = Disposable.from(
    looked,
    onDidSolve(begin),
    onDidForget(stop),
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (contentChanges.length > 0) stop(document);
    }),
  );
  return {
    onDidLook: looked.event,
    made: (of) => known.get(of),
    dispose() {
      listening.dispose();
      for (const document of [...timers.keys()]) stop(document);
    },
  };
}

/** After the pause in typing in which problems are told: together some 0.6 s, longer than one stops between two words. */
const REST_MS = 480;
