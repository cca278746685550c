/**
 * The studies of a view: asked for by a person, one at a time, the newest alone; kept with the text that they are of, and told to the page
 * again whenever it comes anew. What one found is written only into a text in which it gives what it was found to give, and only while the
 * files of readings beside it are those that it is of.
 */
import { l10n, ProgressLocation, window } from 'vscode';
import type { TextDocument } from 'vscode';
import { applyEdits } from '../../src/definition/edit.ts';
import { editsOfWrites } from '../../src/picture/studies/blocks.ts';
import type { Requests, Source } from '../../src/protocol/messages.ts';
import type { StudyKind, StudyStage, StudyWrite } from '../../src/protocol/studies.ts';
import { solve } from '../../src/solve.ts';
import type { StudyAsk } from '../../src/studyText.ts';
import { logFailure } from '../logFailure.ts';
import { estimateTimeLeft } from '../studies/timeLeft.ts';
import type { RunningStudy, StudyRunner } from '../studies/runStudy.ts';
import { sourceOf } from './livePicture.ts';
import type { Notify } from './line.ts';
import { refuseReadOnly, writeEdits } from './writeTrial.ts';

export interface Studying {
  /** @param show whether the page is to lead there: it was asked for elsewhere */
  run(ask: StudyAsk, show: boolean): Promise<void>;
  cancel(kind: StudyKind): void;
  /** Rejects with what the person is told where nothing was written. */
  write(asks: Requests['answer']['asks']): Promise<Requests['answer']['answers']>;
  /** A file of readings beside the text was written, came or went. */
  touched(): Promise<void>;
  /** Tells a page that knows nothing. */
  greet(): void;
  dispose(): void;
}

export interface StudyingOptions {
  /** Throws what the person is told where the file is not there. */
  readonly present: () => TextDocument;
  /** The files of readings beside a text as they are on the disk now. */
  readonly beside: (document: TextDocument) => Promise<Beside>;
  readonly runner: StudyRunner;
  readonly notify: Notify;
  readonly isWatched: () => boolean;
}

type Beside = (StudyAsk & { readonly kind: 'fit' })['beside'];

interface Known {
  readonly source: Source;
  /** That it is of. */
  readonly text: string;
  readonly ask: StudyAsk;
  readonly now: StudyStage;
  /** Whether files beside the text are others than those that it is of. */
  readonly isOutrun: boolean;
  readonly show: boolean;
}

export function keepStudies({ present, beside, runner, notify, isWatched }: StudyingOptions): Studying {
  const known = new Map<StudyKind, Known>();
  let running: { readonly kind: StudyKind; readonly study: RunningStudy } | undefined;

  const isCurrent = (study: RunningStudy): boolean => running?.study === study;
  const tell = (kind: StudyKind): void => {
    const each = known.get(kind);
    if (each === undefined || !isWatched()) return;
    const { source, now, isOutrun, show } = each;
    notify({ type: 'study', kind, source, now, isOutrun, show });
    // It is led there once.
    if (show) known.set(kind, { ...each, show: false });
  };
  const put = (kind: StudyKind, state: Omit<Known, 'isOutrun'>): void => {
    const before = known.get(kind);
    known.set(kind, { ...state, isOutrun: before?.ask === state.ask && before.isOutrun });
    tell(kind);
  };
  const isOfTheseFiles = async (document: TextDocument, { ask }: Known): Promise<boolean> =>
    ask.kind !== 'fit' || JSON.stringify(await beside(document)) === JSON.stringify(ask.beside);
  const cancel = (kind: StudyKind): void => {
    if (running?.kind !== kind) return;
    running.study.cancel();
    running = undefined;
    const each = known.get(kind);
    if (each !== undefined) put(kind, { ...each, now: { stage: 'cancelled' } });
  };

  return {
    async run(ask, show) {
      const document = present();
      const { kind } = ask;
      if (running !== undefined) cancel(running.kind);
      const of = { source: sourceOf(document), text: document.getText(), ask };
      put(kind, { ...of, show, now: { stage: 'running', progress: undefined, left: undefined } });
      const timeLeft = estimateTimeLeft();
      const heard: ((note: string, left: number | undefined) => void)[] = [];
      const study = runner.run({ text: of.text, ask }, (progress) => {
        if (!isCurrent(study)) return;
        const left = timeLeft(progress, Date.now());
        put(kind, { ...of, show: false, now: { stage: 'running', progress, left } });
        for (const each of heard) each(progress.note, left);
      });
      running = { kind, study };
      if (show)
        tellWhenLong(
          NAMES[kind](),
          study,
          (listener) => heard.push(listener),
          () => cancel(kind),
        );
      const now = await study.done.then(
        (outcome): StudyStage => {
          if (outcome === undefined) return { stage: 'cancelled' };
          return outcome.kind === 'found' ? { stage: 'found', found: outcome.found } : { stage: 'refused', why: outcome.why };
        },
        (error: unknown): StudyStage => ({ stage: 'refused', why: error instanceof Error ? error.message : String(error) }),
      );
      // What is cancelled has been told so, and something newer may stand there.
      if (isCurrent(study)) {
        running = undefined;
        put(kind, { ...of, show: false, now });
      }
    },
    cancel,
    async write({ kind, source, block }) {
      const each = known.get(kind);
      const found = each?.now.stage === 'found' ? each.now.found.blocks[block] : undefined;
      if (each?.source.uri !== source.uri || each.source.version !== source.version || found?.kind !== 'answer')
        throw new Error(l10n.t('This study is not there any more: run it again.'));
      const document = present();
      await refuseReadOnly(document);
      const isSame = await isOfTheseFiles(document, each);
      const edits = editsInto(document.getText(), each.text, found.writes);
      if (!isSame) throw new Error(l10n.t('A file of readings has changed since: run the study again.'));
      return { version: await writeEdits(document, edits) };
    },
    async touched() {
      const each = known.get('fit');
      if (each === undefined) return;
      const isOutrun = !(await isOfTheseFiles(present(), each));
      const now = known.get('fit');
      if (now?.ask !== each.ask || now.isOutrun === isOutrun) return;
      known.set('fit', { ...now, isOutrun });
      tell('fit');
    },
    greet() {
      for (const kind of known.keys()) tell(kind);
    },
    dispose() {
      running?.study.cancel();
      running = undefined;
      known.clear();
    },
  };
}

/**
 * Recomputed for the text as it stands. It may have changed since in the figures themselves, as by another answer, and in nothing else: with
 * the answer in it, it must be the text of which the study told.
 */
function editsInto(text: string, studied: string, writes: readonly StudyWrite[]) {
  const [there, then] = [text, studied].map((each) => {
    const { study } = solve(each);
    const edits = study && editsOfWrites(each, study, writes);
    return edits && { edits, after: applyEdits(each, edits) };
  });
  if (there === undefined || there.after !== then?.after) throw new Error(l10n.t('The text has changed since: run the study again.'));
  return there.edits;
}

const NAMES: Readonly<Record<StudyKind, () => string>> = {
  tune: () => l10n.t('Finding dimensions'),
  tolerance: () => l10n.t('Looking at what tolerances do'),
  solve: () => l10n.t('Solving for a figure'),
  fit: () => l10n.t('Fitting to the measurements'),
};

/** What takes longer than half a second is told by the editor too, where it can be cancelled. */
function tellWhenLong(
  title: string,
  { done }: RunningStudy,
  listen: (listener: (note: string, left: number | undefined) => void) => void,
  cancel: () => void,
): void {
  const ended = done.then(
    () => undefined,
    () => undefined,
  );
  const timer = setTimeout(() => {
    const where = { location: ProgressLocation.Notification, title, cancellable: true };
    const telling = window.withProgress(where, async (progress, cancelling) => {
      listen((note, left) =>
        progress.report({ message: left === undefined ? note : l10n.t('{0}, about {1} s left', note, Math.ceil(left)) }),
      );
      const listening = cancelling.onCancellationRequested(cancel);
      await ended;
      listening.dispose();
    });
    logFailure(Promise.resolve(telling));
  }, LONG_MS);
  void ended.then(() => clearTimeout(timer));
}

/** What takes less is over before it could be read. */
const LONG_MS = 500;
