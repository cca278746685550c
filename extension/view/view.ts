/** One view: its panel, its file, and what goes between them. */
import { Disposable, l10n, Uri, window } from 'vscode';
import type { TextDocument, WebviewPanel } from 'vscode';
import type { PartKey } from '../../src/protocol/report.ts';
import type { ToEditor } from '../../src/protocol/messages.ts';
import type { StudyKind } from '../../src/protocol/studies.ts';
import type { DocumentAnswers } from '../answers.ts';
import { declaredPart } from '../features/revealPart.ts';
import { logFailure } from '../logFailure.ts';
import type { MeasuredFiles } from '../measuredFiles.ts';
import type { StudyRunner } from '../studies/runStudy.ts';
import { askFigure, type HalfAsked } from './askFigure.ts';
import { keepComparing } from './comparing.ts';
import { fileNameOf } from './fileName.ts';
import { followCursor } from './followCursor.ts';
import { holdFile } from './heldFile.ts';
import { openLine } from './line.ts';
import { isOf, keepPicture } from './livePicture.ts';
import { headOf, pickedFile, revisionOf, type Asked } from './oldStates.ts';
import { pageHtml, pageOptions } from './page.ts';
import { answerReturns } from './returning.ts';
import { chooseFix, editorOf, revealText, takeBack } from './reveal.ts';
import { exportTable, saveExport } from './saveExport.ts';
import { partBeside } from './stepping.ts';
import { keepStudies } from './studying.ts';
import { tellWords } from './words.ts';
import { writeTrial } from './writeTrial.ts';

export type CompareWith = (ToEditor & { readonly type: 'compare-with' })['other'];

export interface View {
  readonly panel: WebviewPanel;
  uri(): Uri;
  /** To the part after or before the chosen one, in load-path order. */
  step(way: 1 | -1): Promise<void>;
  compareWith(other: CompareWith): Promise<void>;
  isComparing(): boolean;
  /** Begins a study of the text as it stands, and leads there. */
  study(kind: StudyKind): Promise<void>;
  /** Asks what is not known of the question, and begins. */
  solveFigure(known: HalfAsked): Promise<void>;
  dispose(): void;
}

export interface ViewOptions {
  readonly panel: WebviewPanel;
  readonly uri: Uri;
  readonly answers: DocumentAnswers;
  readonly extensionUri: Uri;
  /** The files of readings beside it. */
  readonly measured: Pick<MeasuredFiles, 'beside' | 'onDidTouch'>;
  readonly runner: StudyRunner;
  /** Comparing has begun or ended, or the view is of another file. */
  readonly onSwitched: () => void;
}

export function openView({ panel, uri, answers, measured, extensionUri, runner, onSwitched }: ViewOptions): View {
  const file = holdFile(uri);
  const present = (): TextDocument => {
    const document = file.document();
    if (document === undefined) throw new Error(file.reason());
    return document;
  };

  const returning = answerReturns(present, answers, (working) => line.notify({ type: 'working', ...working }));

  // Listens before there is a page that could speak.
  const line = openLine(panel.webview, (notice) => logFailure(hear(notice)), {
    write: async (asks) => writeTrial(present(), answers, asks),
    save: (asks) => saveExport(file.uri(), asks),
    table: (asks) => Promise.resolve().then(() => exportTable(present(), answers, asks)),
    returns: returning.returns,
    trace: returning.trace,
    answer: (asks) => studies.write(asks),
  });
  const { notify } = line;
  let isGreeted = false;
  const isWatched = (): boolean => isGreeted && panel.visible;
  const cursor = followCursor(file, answers, notify, isWatched);
  const picture = keepPicture({ panel, file, answers, notify, onShown: () => cursor.look() });
  const comparing = keepComparing({ file, answers, notify, isWatched, onSwitched });
  const beside = (document: TextDocument): ReturnType<MeasuredFiles['beside']> => measured.beside(document, answers.solveNow(document));
  const studies = keepStudies({ present, beside, runner, notify, isWatched });
  const touched = measured.onDidTouch((document) => {
    if (document === file.document()) logFailure(studies.touched());
  });

  const show = async (document: TextDocument, part: PartKey, isStep: boolean): Promise<void> => {
    cursor.choose(document, part, isStep);
    const declared = declaredPart(answers.names(document), { uri: '', part: part.kind, name: part.name });
    if (declared !== undefined) await revealText(document, declared.span, panel.viewColumn);
  };
  const step = async (way: 1 | -1): Promise<void> => {
    const document = file.document();
    if (document === undefined) return;
    const part = partBeside(answers.solveNow(document).parts, cursor.chosen(), way);
    if (part !== undefined) return show(document, part, true);
    window.setStatusBarMessage(l10n.t('The linkage is not solved, so there are no parts to step through: see Problems'), TOLD_MS);
  };
  const solveFigure = async (known: HalfAsked, show: boolean): Promise<void> => {
    const document = present();
    const cursor = editorOf(document)?.selection.active;
    const offset = cursor === undefined ? {} : { offset: document.offsetAt(cursor) };
    const question = await askFigure(answers.solveNow(document), { ...offset, ...known });
    if (question !== undefined) await studies.run({ kind: 'solve', question }, show);
  };
  const runStudy = async (kind: StudyKind, show: boolean): Promise<void> => {
    switch (kind) {
      case 'tune':
      case 'tolerance':
        return studies.run({ kind }, show);
      case 'fit':
        return studies.run({ kind, beside: await beside(present()) }, show);
      case 'solve':
        return solveFigure({}, show);
    }
  };
  let comparisons = 0;
  const compareWith = async (other: CompareWith): Promise<void> => {
    const mine = ++comparisons;
    if (other === 'nothing') return comparing.stop();
    const asked = await OLD_STATES[other](file.uri());
    // What was asked for last counts, whichever was answered last.
    if (asked === undefined || mine !== comparisons) return;
    if ('why' in asked) return comparing.stop(asked.why);
    await comparing.with(asked.state);
  };

  const hear = async (notice: ToEditor): Promise<void> => {
    const document = file.document();
    switch (notice.type) {
      case 'ready':
        isGreeted = true;
        tellWords(notify);
        cursor.greet();
        picture.greet();
        studies.greet();
        return comparing.look();
      case 'try':
        return picture.try(notice.source, notice.trial);
      case 'in-sight':
        return picture.look(notice.charts);
      case 'follow':
        return picture.follow(notice.source, notice.trial, notice.coming);
      case 'step':
        return step(notice.way);
      case 'compare-with':
        return compareWith(notice.other);
      case 'run-study':
        return runStudy(notice.kind, false);
      case 'cancel-study':
        return studies.cancel(notice.kind);
      case 'reveal':
        // A place of an older text is nowhere.
        if (document !== undefined && isOf(notice.source, document)) await revealText(document, notice.place, panel.viewColumn);
        return;
      case 'mend':
        if (document !== undefined && isOf(notice.source, document)) await chooseFix(document, notice.place, panel.viewColumn);
        return;
      case 'undo':
      case 'redo':
        if (document === undefined) return;
        await takeBack(notice.type, document, panel.viewColumn);
        // So that the next key is the view's again.
        return panel.reveal(undefined, false);
      case 'reveal-part':
        if (document !== undefined) await show(document, notice.part, false);
    }
  };

  const name = (): void => {
    panel.title = l10n.t('Mechanism: {0}', fileNameOf(file.uri()));
  };
  const listening = Disposable.from(
    file.onDidChange(() => {
      name();
      onSwitched();
      comparing.look();
    }),
    answers.onDidSolve(({ document }) => {
      if (document === file.document()) comparing.look();
    }),
    panel.onDidChangeViewState(() => {
      // A hidden page is gone, and says so itself when it comes anew.
      if (!panel.visible) isGreeted = false;
    }),
  );

  name();
  panel.iconPath = icons(extensionUri);
  panel.webview.options = pageOptions(extensionUri);
  panel.webview.html = pageHtml(panel.webview, extensionUri);

  return {
    panel,
    uri: file.uri,
    step,
    compareWith,
    isComparing: comparing.isOn,
    async study(kind) {
      await file.ready();
      await runStudy(kind, true);
    },
    async solveFigure(known) {
      await file.ready();
      await solveFigure(known, true);
    },
    dispose() {
      for (const each of [listening, touched, comparing, studies, picture, cursor, returning, line, file]) each.dispose();
    },
  };
}

const TOLD_MS = 5000;

const OLD_STATES: Readonly<Record<Exclude<CompareWith, 'nothing'>, (uri: Uri) => Promise<Asked>>> = {
  head: headOf,
  revision: revisionOf,
  file: pickedFile,
};

function icons(extensionUri: Uri): { readonly light: Uri; readonly dark: Uri } {
  const icon = (theme: string): Uri => Uri.joinPath(extensionUri, 'extension', 'icons', `throttleFile-${theme}.svg`);
  return { light: icon('light'), dark: icon('dark') };
}
