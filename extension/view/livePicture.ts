/**
 * The picture, kept up with the text: as it is typed, and as figures are tried that are not written. Solved only while somebody looks.
 *
 * Each change is solved in the editor's next turn, so that the picture moves with the keys. Where that has taken long, it waits for the pause
 * in typing, after which everything else is solved too. The drawing goes first; what was found out, the charts and all else follow.
 */
import { Disposable, l10n, workspace } from 'vscode';
import type { TextDocument, WebviewPanel } from 'vscode';
import { applyEdits } from '../../src/definition/edit.ts';
import { editsFor } from '../../src/edits/editsFor.ts';
import { trialReport } from '../../src/edits/trialReport.ts';
import { dialsOf } from '../../src/picture/dials.ts';
import { placeIn } from '../../src/picture/place.ts';
import { showFirst } from '../../src/picture/showAnswers.ts';
import type { ChartId } from '../../src/protocol/charts.ts';
import type { Coming, Drawn, Missing, Source, Trial } from '../../src/protocol/messages.ts';
import type { Report } from '../../src/protocol/report.ts';
import { solve, type Answers } from '../../src/solve.ts';
import type { DocumentAnswers } from '../answers.ts';
import { fileNameOf } from './fileName.ts';
import { keepFollowing } from './following.ts';
import type { HeldFile } from './heldFile.ts';
import type { Notify } from './line.ts';

export interface LivePicture {
  /** A page has come, or has come anew, and knows nothing. */
  greet(): void;
  /** Shows what figures would do, in the next turn; the newest wins. An empty list shows the text again. */
  try(source: Source, trial: Trial): void;
  /** The page shows these charts, and no others can be seen. */
  look(charts: readonly ChartId[]): void;
  /** Some of what should have followed has not come. */
  follow(source: Source, trial: Trial, coming: readonly Coming[]): void;
  dispose(): void;
}

export interface PictureOptions {
  readonly panel: Pick<WebviewPanel, 'visible'>;
  readonly file: HeldFile;
  readonly answers: DocumentAnswers;
  readonly notify: Notify;
  /** The page has been told of a text. */
  readonly onShown: (document: TextDocument) => void;
}

export function keepPicture({ panel, file, answers, notify, onShown }: PictureOptions): LivePicture {
  let isGreeted = false;
  /** Whether the page has a picture of a solved text, which stays behind one that cannot be solved. */
  let hasGood = false;
  let wanted: { readonly source: Source; readonly trial: Trial } | undefined;
  let timer: number | undefined;
  let lastMs = 0;
  let told: string | undefined;
  /** Of which file the page has had a picture. */
  let pageHas: string | undefined;
  let inSight: ReadonlySet<ChartId> = new Set();
  const isWatched = (): boolean => isGreeted && panel.visible;
  const following = keepFollowing(notify, isWatched, () => inSight);

  const soon = (): void => {
    timer ??= setTimeout(() => {
      timer = undefined;
      turn();
    }, 0);
  };
  const turn = (): void => {
    if (!isWatched()) return;
    const document = file.document();
    const start = Date.now();
    if (document === undefined) {
      told = undefined;
      wanted = undefined;
      following.drop();
      return notify({ type: 'gone', reason: file.reason() });
    }
    const asked = wanted;
    wanted = undefined;
    if (asked !== undefined && isOf(asked.source, document)) tryOn(document, asked.source, asked.trial);
    else {
      // Figures of a text that is past are dropped, and with them what was shown of them.
      if (asked !== undefined) told = undefined;
      showText(document);
    }
    lastMs = Date.now() - start;
  };
  const showText = (document: TextDocument): void => {
    const source = sourceOf(document);
    if (told === keyOf(source)) return;
    told = keyOf(source);
    const solved = answers.solveNow(document);
    send(document, { source, trial: [], solved, shown: showFirst(solved, pageHas !== source.uri), reported: (report) => report });
    onShown(document);
  };
  const tryOn = (document: TextDocument, source: Source, trial: Trial): void => {
    const written = answers.solveNow(document);
    const edited = editsFor(written, trial);
    if ('why' in edited) return notify({ type: 'refused', source, trial, reason: edited.why });
    const tried = solve(applyEdits(written.text, edited.edits));
    const reported = (report: Report): Report => trialReport(edited.edits, report);
    const shown = showFirst(tried, pageHas !== source.uri);
    if (cannotBeShown(tried, shown)) return notify({ type: 'refused', source, trial, reason: whyUnsolved(tried) });
    // Dials say what is written, and turn between the ends that they had.
    const asWritten = { ...shown, report: shown.report && reported(shown.report), dials: dialsOf(written) };
    send(document, { source, trial, solved: tried, shown: asWritten, reported });
    // It stays until the page drops it or the text is another: the pause in typing before it takes nothing back.
    told = keyOf(source);
  };
  const cannotBeShown = ({ study }: Answers, shown: Drawn | undefined): shown is undefined =>
    shown === undefined || (study === undefined && hasGood);
  const send = ({ uri }: TextDocument, { source, trial, solved, shown, reported }: Sent): void => {
    const fileName = fileNameOf(uri);
    if (cannotBeShown(solved, shown)) {
      following.drop();
      return notify({ type: 'broken', source, fileName, missing: missingIn(solved) });
    }
    hasGood ||= solved.study !== undefined;
    pageHas = source.uri;
    notify({ type: 'show', source, fileName, trial, ...shown });
    following.begin({ source, trial, answers: solved, coming: shown.coming, reported });
  };

  const listening = Disposable.from(
    workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      if (document !== file.document() || contentChanges.length === 0) return;
      following.drop();
      // What was to be tried is of the text before, and is left aside by that.
      if (lastMs <= LONG_MS) soon();
    }),
    answers.onDidSolve(({ document }) => {
      if (document === file.document() && timer === undefined) turn();
    }),
    file.onDidChange(soon),
  );

  return {
    greet() {
      isGreeted = true;
      hasGood = false;
      pageHas = undefined;
      told = undefined;
      wanted = undefined;
      inSight = new Set();
      following.drop();
      soon();
    },
    try(source, trial) {
      // What is refused leaves what was shown before it.
      if (trial.length === 0) told = undefined;
      wanted = trial.length === 0 ? undefined : { source, trial };
      soon();
    },
    look(charts) {
      inSight = new Set(charts);
    },
    follow: following.again,
    dispose() {
      clearTimeout(timer);
      following.drop();
      listening.dispose();
    },
  };
}

interface Sent {
  readonly source: Source;
  readonly trial: Trial;
  readonly solved: Answers;
  readonly shown: Drawn | undefined;
  /** A report about what was solved, with places of the text as it stands. */
  readonly reported: (report: Report) => Report;
}

/** What takes longer would be felt under the keys. Common practice, no source. */
const LONG_MS = 60;

function keyOf({ uri, version }: Source): string {
  return `${uri} ${version}`;
}

export function sourceOf({ uri, version }: TextDocument): Source {
  return { uri: uri.toString(), version };
}

/** Whether a message speaks of the text as it stands. */
export function isOf({ uri, version }: Source, document: TextDocument): boolean {
  return uri === document.uri.toString() && version === document.version;
}

/** Mistakes first; where the text has none, that nothing of it can be drawn. */
function missingIn({ text, problems }: Answers): readonly Missing[] {
  const errors = problems.filter(({ severity }) => severity === 'error');
  return errors.map(({ message, span }) => ({ message, place: placeIn(text, span) }));
}

/** Without a place: the text that was tried is nowhere that a person could go. */
function whyUnsolved({ problems }: Answers): string {
  const error = problems.find(({ severity }) => severity === 'error');
  return error?.message ?? l10n.t('With these figures the linkage cannot be solved.');
}
