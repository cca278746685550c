/** Views in the stand-in for the editor, with a page behind each, over clocks that the test turns. */
import { afterEach, beforeEach, expect, vi } from 'vitest';
import type * as vscode from 'vscode';
import { keepAnswers } from '../../extension/answers.ts';
import type { MeasuredFiles } from '../../extension/measuredFiles.ts';
import { keepViews, type Views } from '../../extension/view/views.ts';
import { forEditor, forTest, openThrottle, tidyUp } from './editorRequests.ts';
import { loadPage, type FakePage } from './fakePage.ts';
import {
  chosenFile,
  contexts,
  dialogs,
  emptyDisk,
  EventEmitter,
  focusDocument,
  git,
  openDocument,
  panels,
  refusals,
  type TextDocument,
  undoSteps,
  Uri,
  type WebviewPanel,
  window,
  writeFile,
} from './vscode.ts';

export interface OpenedView {
  readonly document: TextDocument;
  readonly panel: WebviewPanel;
  page: FakePage;
}

let views: Views | undefined;
/** A file of readings beside a text was written, came or went. */
export const touching = new EventEmitter<vscode.TextDocument>();

/** Those that live during this test. */
export function served(): Views {
  if (views === undefined) throw new Error('No views are served');
  return views;
}

/**
 * Has views live during each test of a file, and demands that they leave nothing behind.
 * @param beside the files of readings, as they are on the disk when that is asked
 */
export function serveViews(beside: MeasuredFiles['beside'] = () => Promise.resolve([])): void {
  let end: (() => void) | undefined;
  beforeEach(() => {
    vi.useFakeTimers();
    const answers = keepAnswers();
    const kept = keepViews(answers, { beside, onDidTouch: touching.event }, Uri.parse('file:///extension') as unknown as vscode.Uri);
    views = kept;
    end = () => {
      kept.dispose();
      answers.dispose();
    };
  });
  afterEach(async () => {
    end?.();
    await turns();
    expect(panels).toEqual([]);
    expect(vi.getTimerCount()).toBe(0);
    vi.useRealTimers();
    focusDocument(undefined);
    tidyUp();
    emptyDisk();
    contexts.clear();
    dialogs.length = 0;
    undoSteps.length = 0;
    refusals.edits = false;
    refusals.saving = false;
    chosenFile.uri = undefined;
    git.commits = undefined;
    git.isEnabled = true;
    expect(window.visibleTextEditors).toEqual([]);
  });
}

/** Lets everything that waits have its turn. */
export async function turns(): Promise<void> {
  await vi.runAllTimersAsync();
}

/** Gives a command of the view; what it waits for has no turn yet. */
export async function command(name: Parameters<Views['run']>[0], argument?: unknown): Promise<void> {
  await views?.run(name, argument);
}

/** Runs a command of the view, and lets the editor have its turns. */
export async function run(name: Parameters<Views['run']>[0], argument?: unknown): Promise<void> {
  const done = command(name, argument);
  await turns();
  await done;
  await turns();
}

export function revive(panel: WebviewPanel, state: unknown): void {
  views?.revive(panel as unknown as vscode.WebviewPanel, state);
}

/** A file of the open folder, its document with the focus, and its view. */
export async function openView(text: string, uri = 'file:///folder/a.throttle.yaml'): Promise<OpenedView> {
  if (!uri.startsWith('untitled:')) writeFile(uri, text);
  const document = uri.startsWith('untitled:') ? forTest(openThrottle(text, uri)) : openDocument(uri, 'throttle-linkage', text);
  focusDocument(document);
  await run('openView');
  const panel = panels.find(({ title }) => title.endsWith(uri.slice(uri.lastIndexOf('/') + 1).replace('untitled:', '')));
  if (panel === undefined) throw new Error(`no view of ${uri} was opened`);
  const page = loadPage(panel);
  await turns();
  return { document, panel, page };
}

/** Sends a panel to the back, where its page goes, and brings it to the front with a new one. */
export function hide({ panel }: OpenedView): void {
  panel.webview.arriving = undefined;
  panel.turn({ visible: false, active: false });
}

export async function bringBack(view: OpenedView): Promise<void> {
  view.panel.turn({ visible: true });
  view.page = loadPage(view.panel);
  await turns();
}

export { forEditor };
