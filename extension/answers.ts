/**
 * The answers of every open throttle file, shared by all that shows them: each version of a text is solved at most once, and what was
 * asked of an older version is never answered.
 */
import { Disposable, EventEmitter, workspace } from 'vscode';
import type { CancellationToken, Event, TextDocument } from 'vscode';
import { indexNames, type NameIndex } from '../src/language/names.ts';
import { solve, type Answers } from '../src/solve.ts';
import { lookAtFailures } from './failuresAtRest.ts';
import { isThrottleFile } from './language.ts';
import { nextTurn } from './turns.ts';

export interface SolvedDocument {
  readonly document: TextDocument;
  readonly answers: Answers;
}

export interface DocumentAnswers {
  /**
   * Answers of a document as it stands. Undefined where nobody waits for them any more: the request is cancelled, the text has changed
   * since, or the document is closed.
   */
  solved(document: TextDocument, token?: CancellationToken): Promise<Answers | undefined>;
  /** The same, at once: for what cannot wait. */
  solveNow(document: TextDocument): Answers;
  /** What is known without solving, of this text or of one before; undefined where nothing was solved yet. */
  latest(document: TextDocument): Answers | undefined;
  /** The same with what single failures do, once they were looked at: for what counts or lists all that was found. */
  latestWhole(document: TextDocument): Answers | undefined;
  /** The names of a document as it stands. */
  names(document: TextDocument): NameIndex;
  /** A text was opened, or its typing has paused: these are its answers. */
  readonly onDidSolve: Event<SolvedDocument>;
  /** Typing has rested, and single failures of the text were looked at: these are its answers with them. */
  readonly onDidLookAtFailures: Event<SolvedDocument>;
  /** A document was closed or has become one of another language, and nothing of it is kept. */
  readonly onDidForget: Event<TextDocument>;
  dispose(): void;
}

/** Answers for all throttle files that are open or will be, until disposed of. */
export function keepAnswers(): DocumentAnswers {
  const kept = new Map<TextDocument, Kept>();
  const solvedEmitter = new EventEmitter<SolvedDocument>();
  const forgottenEmitter = new EventEmitter<TextDocument>();

  const keptOf = (document: TextDocument): Kept => {
    const known = kept.get(document) ?? {};
    kept.set(document, known);
    return known;
  };
  const solveNow = (document: TextDocument): Answers => {
    const { version } = document;
    // What is closed is not kept: no event would come to drop it.
    const known = document.isClosed ? {} : keptOf(document);
    if (known.answers?.version !== version) known.answers = { version, value: solve(document.getText()) };
    return known.answers.value;
  };
  const stopWaiting = (known: Kept | undefined): void => {
    clearTimeout(known?.timer);
    delete known?.timer;
  };
  const solveIn = (document: TextDocument, milliseconds: number): void => {
    if (!isThrottleFile(document)) return;
    const known = keptOf(document);
    stopWaiting(known);
    known.timer = setTimeout(() => {
      delete known.timer;
      if (isAnswerable(document)) solvedEmitter.fire({ document, answers: solveNow(document) });
    }, milliseconds);
  };
  const forget = (document: TextDocument): void => {
    const known = kept.get(document);
    if (known === undefined) return;
    stopWaiting(known);
    kept.delete(document);
    forgottenEmitter.fire(document);
  };

  const listening = Disposable.from(
    workspace.onDidOpenTextDocument((document) => solveIn(document, 0)),
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (contentChanges.length > 0) solveIn(document, TYPING_PAUSE_MS);
    }),
    // Also sent when a document is given another language, with the language that it had.
    workspace.onDidCloseTextDocument(forget),
    solvedEmitter,
    forgottenEmitter,
  );
  const failures = lookAtFailures({ onDidSolve: solvedEmitter.event, onDidForget: forgottenEmitter.event });
  for (const document of workspace.textDocuments) solveIn(document, 0);

  return {
    async solved(document, token) {
      const { version } = document;
      // Requests come in bundles, and while typing most are cancelled right away: the editor has its turn to say so.
      await nextTurn();
      if (token?.isCancellationRequested === true || document.version !== version || !isAnswerable(document)) return undefined;
      return solveNow(document);
    },
    solveNow,
    latest: (document) => kept.get(document)?.answers?.value,
    latestWhole(document) {
      const known = kept.get(document)?.answers?.value;
      return known && (failures.made(known) ?? known);
    },
    names(document) {
      const { version } = document;
      const known = document.isClosed ? {} : keptOf(document);
      if (known.names?.version !== version) known.names = { version, value: indexNames(document.getText()) };
      return known.names.value;
    },
    onDidSolve: solvedEmitter.event,
    onDidLookAtFailures: failures.onDidLook,
    onDidForget: forgottenEmitter.event,
    dispose() {
      failures.dispose();
      listening.dispose();
      for (const known of kept.values()) stopWaiting(known);
      kept.clear();
    },
  };
}

/** Long enough that a word in the middle of being typed is not marked, short enough to feel immediate. */
const TYPING_PAUSE_MS = 120;

/** What is known of one document, of each kind the newest. */
interface Kept {
  answers?: Versioned<Answers>;
  names?: Versioned<NameIndex>;
  /** Set while the text waits to be solved. */
  timer?: number;
}

interface Versioned<T> {
  readonly version: number;
  readonly value: T;
}

function isAnswerable(document: TextDocument): boolean {
  return !document.isClosed && isThrottleFile(document);
}
