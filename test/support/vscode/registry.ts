/** Stand-in for what is registered with the editor: providers, commands and diagnostics, for the test to ask. */
import type { Diagnostic } from './data.ts';
import type { TextDocument } from './documents.ts';
import { CancellationTokenSource, Disposable, EventEmitter } from './events.ts';
import { Selection, type Range, type Uri } from './places.ts';
import { createOutputChannel } from './logs.ts';
import { createStatusBarItem } from './statusBar.ts';
import { webviews } from './webviews.ts';

/** What is shown under Problems, by document uri, of all collections together. */
export const shownProblems = new Map<string, readonly Diagnostic[]>();

/** How many collections there are. */
export const collections = { count: 0 };
const live = new Set<Map<string, readonly Diagnostic[]>>();

/** A provider as it was registered. */
export interface Registered {
  readonly selector: unknown;
  readonly provider: unknown;
  /** What was given besides: trigger characters, a legend, kinds. */
  readonly rest: readonly unknown[];
}

/** By the function that registered it, e.g. `registerHoverProvider`; what further features register by the same has a number behind it. */
export const providers = new Map<string, Registered>();

const register =
  (name: string) =>
  (selector: unknown, provider: unknown, ...rest: readonly unknown[]): Disposable => {
    let key = name;
    for (let count = 2; providers.has(key); count++) key = `${name} ${count}`;
    providers.set(key, { selector, provider, rest });
    return new Disposable(() => providers.delete(key));
  };

export const languages = {
  createDiagnosticCollection: () => {
    const own = new Map<string, readonly Diagnostic[]>();
    const show = (name: string): void => {
      const all = [...live].map((each) => each.get(name)).filter((each) => each !== undefined);
      if (all.length > 0) shownProblems.set(name, all.flat());
      else shownProblems.delete(name);
    };
    live.add(own);
    collections.count = live.size;
    return {
      set(uri: Uri, diagnostics: readonly Diagnostic[]) {
        own.set(uri.toString(), diagnostics);
        show(uri.toString());
      },
      delete(uri: Uri) {
        own.delete(uri.toString());
        show(uri.toString());
      },
      dispose() {
        live.delete(own);
        collections.count = live.size;
        [...own.keys()].forEach(show);
      },
    };
  },
  registerDefinitionProvider: register('registerDefinitionProvider'),
  registerReferenceProvider: register('registerReferenceProvider'),
  registerDocumentHighlightProvider: register('registerDocumentHighlightProvider'),
  registerRenameProvider: register('registerRenameProvider'),
  registerFoldingRangeProvider: register('registerFoldingRangeProvider'),
  registerSelectionRangeProvider: register('registerSelectionRangeProvider'),
  registerDocumentSymbolProvider: register('registerDocumentSymbolProvider'),
  registerDocumentSemanticTokensProvider: register('registerDocumentSemanticTokensProvider'),
  registerHoverProvider: register('registerHoverProvider'),
  registerCompletionItemProvider: register('registerCompletionItemProvider'),
  registerInlayHintsProvider: register('registerInlayHintsProvider'),
  registerCodeLensProvider: register('registerCodeLensProvider'),
  registerCodeActionsProvider: register('registerCodeActionsProvider'),
};

/** What `when` clauses can ask for, as the extension has set it. */
export const contexts = new Map<string, unknown>();

/** Commands by name; a test may put the editor's own there. */
export const registeredCommands = new Map<string, (...given: readonly unknown[]) => unknown>();

export const commands = {
  registerCommand(name: string, run: (...given: readonly unknown[]) => unknown): Disposable {
    if (registeredCommands.has(name)) throw new Error(`${name} was registered twice`);
    registeredCommands.set(name, run);
    return new Disposable(() => registeredCommands.delete(name));
  },
  executeCommand: (name: string, ...given: readonly unknown[]): Promise<unknown> => {
    if (name === 'setContext') {
      contexts.set(String(given[0]), given[1]);
      return Promise.resolve();
    }
    const run = registeredCommands.get(name);
    return run === undefined ? Promise.reject(new Error(`command '${name}' not found`)) : Promise.resolve(run(...given));
  },
  getCommands: () => Promise.resolve([...registeredCommands.keys()]),
};

export interface ShownEditor {
  readonly document: TextDocument;
  selection: Selection;
  /** What was asked to be seen. */
  revealed?: Range;
  revealRange(range: Range): void;
}

export const TextEditorRevealType = { InCenterIfOutsideViewport: 2 } as const;
export const ProgressLocation = { Window: 10, Notification: 15 } as const;

/** What the editor told the person, in order: messages, status bar texts, progress titles, files shown. */
export const told: string[] = [];

/** Set by the test to press cancel as soon as a progress is shown. */
export const impatience = { cancelsProgress: false };

/** What was offered in quick picks, in order, and the label that the test picks; none is a person who leaves without. */
export const offered: { readonly label: string }[] = [];
export const choice: { label: string | undefined } = { label: undefined };

/** What the test types into an input box; Enter at once where it is undefined. What is refused is told, and the box left then. */
export const typed: { line: string | undefined } = { line: undefined };

const visibleTextEditors: ShownEditor[] = [];
const activated = new EventEmitter<ShownEditor | undefined>();
const selected = new EventEmitter<{ readonly textEditor: ShownEditor }>();

export class TabInputText {
  readonly uri: Uri;
  constructor(uri: Uri) {
    this.uri = uri;
  }
}

const tabsChanged = new EventEmitter<unknown>();

/** Addresses of documents that have a tab, whether it is before the others or behind. */
const tabbed = new Map<string, Uri>();

/** Gives a document a tab, or takes it away. */
export function putInTab(uri: Uri, isThere: boolean): void {
  if (isThere) tabbed.set(uri.toString(), uri);
  else tabbed.delete(uri.toString());
  tabsChanged.fire(undefined);
}

/** Where the test saves, and which file it picks; undefined is a person who leaves without. */
export const chosenFile: { uri: Uri | undefined } = { uri: undefined };

/** What dialogs proposed. */
export const dialogs: { readonly defaultUri?: Uri }[] = [];

export const window = {
  ...webviews,
  visibleTextEditors,
  tabGroups: {
    get all() {
      return [{ viewColumn: 1, tabs: [...tabbed.values()].map((uri) => ({ input: new TabInputText(uri) })) }];
    },
    onDidChangeTabs: tabsChanged.event,
  },
  showSaveDialog(options: { readonly defaultUri?: Uri }) {
    dialogs.push(options);
    return Promise.resolve(chosenFile.uri);
  },
  showOpenDialog(options: { readonly defaultUri?: Uri }) {
    dialogs.push(options);
    return Promise.resolve(chosenFile.uri && [chosenFile.uri]);
  },
  /** Set by `focusDocument`. */
  activeTextEditor: undefined as ShownEditor | undefined,
  onDidChangeActiveTextEditor: activated.event,
  onDidChangeTextEditorSelection: selected.event,
  createStatusBarItem,
  createOutputChannel,
  showQuickPick(items: readonly { readonly label: string }[]) {
    offered.push(...items);
    return Promise.resolve(items.find(({ label }) => label === choice.label));
  },
  showInputBox({ value = '', validateInput }: { readonly value?: string; validateInput?(line: string): string | undefined }) {
    const line = typed.line ?? value;
    const wrong = validateInput?.(line);
    told.push(wrong === undefined ? `typed: ${line}` : `refused: ${wrong}`);
    return Promise.resolve(wrong === undefined ? line : undefined);
  },
  showInformationMessage(text: string) {
    told.push(`message: ${text}`);
    return Promise.resolve(undefined);
  },
  setStatusBarMessage(text: string) {
    told.push(`status: ${text}`);
    return new Disposable(() => undefined);
  },
  showTextDocument(what: Uri | TextDocument) {
    told.push(`shown: ${('uri' in what ? what.uri : what).toString()}`);
    return Promise.resolve('uri' in what ? showEditor(what) : undefined);
  },
  async withProgress(options: { readonly title: string }, task: (progress: unknown, token: unknown) => Promise<unknown>) {
    told.push(`progress: ${options.title}`);
    const source = new CancellationTokenSource();
    const done = task({ report: () => undefined }, source.token);
    if (impatience.cancelsProgress) source.cancel();
    await done;
    told.push(`done: ${options.title}`);
    source.dispose();
  },
};

export function showEditor(document: TextDocument): ShownEditor {
  let selection = new Selection(0, 0, 0, 0);
  const editor: ShownEditor = {
    document,
    get selection() {
      return selection;
    },
    set selection(next) {
      selection = next;
      selected.fire({ textEditor: editor });
    },
    revealRange(range) {
      editor.revealed = range;
    },
  };
  visibleTextEditors.push(editor);
  return editor;
}

/** Gives a document the focus; undefined takes it from all. */
export function focusDocument(document: TextDocument | undefined): void {
  window.activeTextEditor = document && showEditor(document);
  activated.fire(window.activeTextEditor);
}

/** Puts the cursor of the editor that has the focus at an offset of its document. */
export function putCursor(offset: number): void {
  const editor = window.activeTextEditor;
  if (editor === undefined) throw new Error('no editor has the focus');
  const at = editor.document.positionAt(offset);
  editor.selection = new Selection(at, at);
}
