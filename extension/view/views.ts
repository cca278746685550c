/** All views that are open: at most one of each file. */
import { commands, EventEmitter, l10n, Uri, ViewColumn, window, workspace } from 'vscode';
import type { Event, TextDocument, WebviewPanel } from 'vscode';
import type { DocumentAnswers } from '../answers.ts';
import { isThrottleFile, SETTINGS } from '../language.ts';
import type { MeasuredFiles } from '../measuredFiles.ts';
import { createStudyRunner } from '../studies/runStudy.ts';
import { hasGit, onDidChangeHasGit } from './git.ts';
import { VIEW_TYPE, type ViewCommand } from './names.ts';
import { pageOptions } from './page.ts';
import { isStudyPlace } from './studyPlace.ts';
import { openView, type View } from './view.ts';

export interface Views {
  /** @param argument what the command was given: in menus the file */
  run(command: ViewCommand, argument: unknown): Promise<void>;
  /** Whether the view of a file can be seen. */
  isInSight(uri: Uri): boolean;
  /** What can be seen has changed, or which file it is of. */
  readonly onDidChange: Event<void>;
  /** Takes a panel that the editor brings back, with what its page left behind. */
  revive(panel: WebviewPanel, state: unknown): void;
  dispose(): void;
}

export function keepViews(answers: DocumentAnswers, measured: Pick<MeasuredFiles, 'beside' | 'onDidTouch'>, extensionUri: Uri): Views {
  const views = new Set<View>();
  const changed = new EventEmitter<void>();
  let seen = '';
  const runner = createStudyRunner(extensionUri);

  const add = (panel: WebviewPanel, uri: Uri): View => {
    const view = openView({ panel, uri, answers, measured, extensionUri, runner, onSwitched: tellContext });
    views.add(view);
    tellContext();
    panel.onDidDispose(() => {
      views.delete(view);
      view.dispose();
      tellContext();
    });
    panel.onDidChangeViewState(tellContext);
    return view;
  };
  const viewOf = (uri: Uri): View | undefined => [...views].find((view) => view.uri().toString() === uri.toString());
  const focused = (): View | undefined => [...views].find(({ panel }) => panel.active);
  const open = (uri: Uri): View => {
    const there = viewOf(uri);
    if (there !== undefined) {
      there.panel.reveal(undefined, true);
      return there;
    }
    const where = { viewColumn: ViewColumn.Beside, preserveFocus: true };
    return add(window.createWebviewPanel(VIEW_TYPE, l10n.t('Mechanism'), where, pageOptions(extensionUri)), uri);
  };
  /** The view that a command means: that of the file that it was given, the one that has the focus, that of the text that has it. */
  const meant = async (argument: unknown): Promise<View | undefined> => {
    // The menu of a view gives the address of the view.
    if (argument instanceof Uri && (await isThrottle(argument))) return open(argument);
    const view = focused();
    if (view !== undefined) return view;
    const active = window.activeTextEditor?.document;
    const document = active !== undefined && isThrottleFile(active) ? active : active === undefined ? onlyOne() : undefined;
    return document && open(document.uri);
  };

  /** In the view that has the focus or is of the text that has it, where it compares, else in all. Opens none. */
  const stopComparing = async (): Promise<void> => {
    const uri = window.activeTextEditor?.document.uri;
    const view = focused() ?? (uri && viewOf(uri));
    for (const each of view?.isComparing() === true ? [view] : views) await each.compareWith('nothing');
  };

  function tellContext(): void {
    const now = [...views].flatMap((view) => (view.panel.visible ? view.uri().toString() : [])).join(' ');
    if (now !== seen) {
      seen = now;
      changed.fire();
    }
    const isComparing = [...views].some((view) => view.isComparing());
    void commands.executeCommand('setContext', `${SETTINGS}.comparing`, isComparing);
  }
  const tellGit = (): void => void commands.executeCommand('setContext', `${SETTINGS}.hasGit`, hasGit());
  const listening = onDidChangeHasGit(tellGit);
  tellGit();
  tellContext();

  return {
    async run(command, argument) {
      if (command === 'stopComparing') return stopComparing();
      const view = await meant(isStudyPlace(argument) ? Uri.parse(argument.uri) : argument);
      if (view === undefined) return void window.showInformationMessage(l10n.t('Open a throttle file first.'));
      switch (command) {
        case 'openView':
          return;
        case 'nextPart':
          return view.step(1);
        case 'previousPart':
          return view.step(-1);
        case 'compareWithHead':
          return view.compareWith('head');
        case 'compareWithRevision':
          return view.compareWith('revision');
        case 'compareWithFile':
          return view.compareWith('file');
        case 'findDimensions':
          return view.study('tune');
        case 'showTolerances':
          return view.study('tolerance');
        case 'fitMeasurements':
          return view.study('fit');
        case 'solveFigure':
          return view.solveFigure(isStudyPlace(argument) ? argument : {});
      }
    },
    isInSight: (uri) => viewOf(uri)?.panel.visible === true,
    onDidChange: changed.event,
    revive(panel, state) {
      const uri = uriIn(state);
      // Nobody can tell any more what it was of, or there is one already.
      if (uri === undefined || viewOf(uri) !== undefined) return void panel.dispose();
      add(panel, uri);
    },
    dispose() {
      listening.dispose();
      for (const view of [...views]) view.panel.dispose();
      runner.dispose();
      changed.dispose();
    },
  };
}

/** The throttle file that can only be meant where no text has the focus, as from the walkthrough: the one shown, else the one open. */
function onlyOne(): TextDocument | undefined {
  const shown = new Set(window.visibleTextEditors.map(({ document }) => document).filter(isThrottleFile));
  const all = shown.size > 0 ? [...shown] : workspace.textDocuments.filter((each) => isThrottleFile(each) && !each.isClosed);
  return all.length === 1 ? all[0] : undefined;
}

async function isThrottle(uri: Uri): Promise<boolean> {
  try {
    return isThrottleFile(await workspace.openTextDocument(uri));
  } catch {
    return false;
  }
}

/** The address in what a page left behind, which may be of another build, or anything. */
function uriIn(state: unknown): Uri | undefined {
  if (typeof state !== 'object' || state === null || !('uri' in state) || typeof state.uri !== 'string') return undefined;
  try {
    return Uri.parse(state.uri, true);
  } catch {
    return undefined;
  }
}
