/** Asking what the extension has registered, as the editor would; and what is left of it once it is disposed of. */
import { readFileSync } from 'node:fs';
import type * as vscode from 'vscode';
import { afterEach, beforeEach, expect, vi } from 'vitest';
import { keepAnswers, type DocumentAnswers } from '../../extension/answers.ts';
import {
  CancellationTokenSource,
  closeDocument,
  collections,
  impatience,
  listening,
  openDocument,
  providers,
  registeredCommands,
  setSetting,
  shownProblems,
  type TextDocument,
  told,
  window,
  workspace,
} from './vscode.ts';

/** A whole linkage without an error. */
export const FOUR_BARREL = example('four-barrel');
/** One that binds before the plates are wide open. */
export const BINDING = example('binding-broken');

export function example(name: string): string {
  return readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');
}

/** What is served to a test. */
export interface Served {
  /** Those that the feature goes by. */
  readonly answers: () => DocumentAnswers;
  /** Ends it before the test does. */
  readonly end: () => void;
}

/** Has a feature live during each test of a file, over its own answers, and demands that it leaves nothing behind. */
export function serveEach(feature: (answers: DocumentAnswers) => vscode.Disposable): Served {
  let answers: DocumentAnswers | undefined;
  let ending: (() => void) | undefined;
  beforeEach(() => {
    const own = keepAnswers();
    const served = feature(own);
    answers = own;
    ending = () => {
      served.dispose();
      own.dispose();
    };
  });
  afterEach(() => {
    ending?.();
    tidyUp();
  });
  return {
    end: () => ending?.(),
    answers: () => {
      if (answers === undefined) throw new Error('nothing is served outside a test');
      return answers;
    },
  };
}

/** The same, with a clock that goes when the test says so, and on which nothing may be left waiting. */
export function serveEachInTime(feature: (answers: DocumentAnswers) => vscode.Disposable): Served {
  beforeEach(() => void vi.useFakeTimers());
  // Hooks of this kind run last first: this one once the feature has ended.
  afterEach(() => {
    expect(vi.getTimerCount()).toBe(0);
    vi.useRealTimers();
  });
  return serveEach(feature);
}

/** Closes what a test has opened, and demands that nobody is registered or listening any more. */
export function tidyUp(): void {
  expect(leftBehind()).toEqual(NOTHING);
  [...workspace.textDocuments].forEach(closeDocument);
  window.visibleTextEditors.length = 0;
  told.length = 0;
  impatience.cancelsProgress = false;
  for (const key of settings.splice(0)) setSetting(key, undefined);
}

const settings: string[] = [];

/** Until the end of the test. */
export function set(key: string, value: unknown): void {
  settings.push(key);
  setSetting(key, value);
}

export const NOTHING = { providers: [], commands: [], listeners: 0, collections: 0, problems: 0 };

export function leftBehind(): unknown {
  return {
    providers: [...providers.keys()],
    commands: [...registeredCommands.keys()],
    listeners: listening.count,
    collections: collections.count,
    problems: shownProblems.size,
  };
}

/** What each function of `languages` registers. */
interface ProviderTypes {
  readonly registerCodeActionsProvider: vscode.CodeActionProvider;
  readonly registerCodeLensProvider: vscode.CodeLensProvider;
  readonly registerCompletionItemProvider: vscode.CompletionItemProvider;
  readonly registerDefinitionProvider: vscode.DefinitionProvider;
  readonly registerDocumentHighlightProvider: vscode.DocumentHighlightProvider;
  readonly registerDocumentSemanticTokensProvider: vscode.DocumentSemanticTokensProvider;
  readonly registerDocumentSymbolProvider: vscode.DocumentSymbolProvider;
  readonly registerFoldingRangeProvider: vscode.FoldingRangeProvider;
  readonly registerHoverProvider: vscode.HoverProvider;
  readonly registerInlayHintsProvider: vscode.InlayHintsProvider;
  readonly registerReferenceProvider: vscode.ReferenceProvider;
  readonly registerRenameProvider: vscode.RenameProvider;
  readonly registerSelectionRangeProvider: vscode.SelectionRangeProvider;
}

export function providerOf<Name extends keyof ProviderTypes>(name: Name): ProviderTypes[Name] {
  const found = providers.get(name);
  if (found === undefined) throw new Error(`nothing was registered by ${name}`);
  return found.provider as ProviderTypes[Name];
}

let count = 0;

/** An open throttle file; each has its own address. */
export function openThrottle(text: string, uri = `file:///${++count}.throttle.yaml`): vscode.TextDocument {
  return forEditor(openDocument(uri, 'throttle-linkage', text));
}

/** The same object, as the editor's own types have it. */
export function forEditor(document: TextDocument): vscode.TextDocument {
  return document as unknown as vscode.TextDocument;
}

export function forTest(document: vscode.TextDocument): TextDocument {
  return document as unknown as TextDocument;
}

/** Where words begin, as the editor counts. @param behind how many characters further */
export function positionOf(document: vscode.TextDocument, words: string, behind = 0): vscode.Position {
  return document.positionAt(offsetOf(document.getText(), words) + behind);
}

function offsetOf(text: string, words: string): number {
  const offset = text.indexOf(words);
  if (offset < 0) throw new Error(`there is no “${words}”`);
  return offset;
}

/** The text that a range covers. */
export function textIn(document: vscode.TextDocument, range: { start: vscode.Position; end: vscode.Position }): string {
  return document.getText().slice(document.offsetAt(range.start), document.offsetAt(range.end));
}

/** Nobody cancels. */
export const PATIENT = new CancellationTokenSource().token;

export function cancelledToken(): vscode.CancellationToken {
  const source = new CancellationTokenSource();
  source.cancel();
  return source.token;
}

/** The text after the edits, which stand as they were made for the text before. */
export function applied(document: vscode.TextDocument, edit: vscode.WorkspaceEdit | undefined): string {
  const { edits } = edit as unknown as { readonly edits: readonly { range: vscode.Range; newText: string }[] };
  const inOrder = [...edits].sort((a, b) => document.offsetAt(b.range.start) - document.offsetAt(a.range.start));
  return inOrder.reduce(
    (text, { range, newText }) => text.slice(0, document.offsetAt(range.start)) + newText + text.slice(document.offsetAt(range.end)),
    document.getText(),
  );
}
