/** What a person does in the editor. */
import {
  commands,
  ConfigurationTarget,
  extensions,
  Range,
  type TextDocument,
  type TextDocumentShowOptions,
  type TextEditor,
  Uri,
  window,
  workspace,
  WorkspaceEdit,
} from 'vscode';
import { until } from './wait.ts';

/** The extension under test. */
export const EXTENSION_ID = 'pedal-to-plate.pedal-to-plate';
export const LANGUAGE_ID = 'throttle-linkage';

export function ourExtension(): { readonly isActive: boolean; readonly packageJSON: unknown } {
  const extension = extensions.getExtension(EXTENSION_ID);
  if (extension === undefined) throw new Error(`the editor does not know ${EXTENSION_ID}`);
  return extension;
}

/** A file of the folder that is open, or of the one with that index; each holds the bundled examples. */
export function inWorkspace(name: string, index = 0): Uri {
  const folder = workspace.workspaceFolders?.[index];
  if (folder === undefined) throw new Error(`no folder ${index} is open`);
  return Uri.joinPath(folder.uri, name);
}

/** Path of the open folder, with the separator behind it. */
export function folderPath(): string {
  const { path } = inWorkspace('');
  return path.endsWith('/') ? path : `${path}/`;
}

/** Writes a file, UTF-8 with its line ends as given. */
export async function writeFile(name: string, text: string): Promise<Uri> {
  const uri = inWorkspace(name);
  await workspace.fs.writeFile(uri, utf8(text));
  return uri;
}

/**
 * Opens a file as a click on it does. Not by `openTextDocument`: that keeps a document alive for minutes after its editor has
 * been closed.
 */
export async function openFile(uri: Uri, options: TextDocumentShowOptions = {}): Promise<TextEditor> {
  await commands.executeCommand('vscode.open', uri, { preview: false, ...options });
  return until(`an editor of ${uri.path}`, window.onDidChangeActiveTextEditor, () => activeEditorOf(uri), openEditors);
}

/**
 * A document that has never been saved. Its name is the one of the last that was closed, and where the editor is slow to drop the backup of
 * that one, it takes the text from there.
 */
export async function openUntitled(language: string, content: string): Promise<TextDocument> {
  const document = await workspace.openTextDocument({ language, content });
  await window.showTextDocument(document, { preview: false });
  const found = document.getText();
  if (found !== content) {
    console.log(`# ${document.uri.path} began with ${found.length} characters of another text`);
    const edit = new WorkspaceEdit();
    edit.replace(document.uri, new Range(document.positionAt(0), document.positionAt(found.length)), content);
    if (!(await workspace.applyEdit(edit))) throw new Error('the editor refused to replace the text of a backup');
  }
  return document;
}

/** In a browser the editor saves by itself a second after typing, and the next test would find what one has typed in its file. */
export async function saveOnlyWhenAsked(): Promise<void> {
  await workspace.getConfiguration('files').update('autoSave', 'off', ConfigurationTarget.Global);
}

/** Types over the one place where `before` stands. Does not save. */
export async function replaceText(document: TextDocument, before: string, after: string): Promise<void> {
  const range = rangeOf(document, before);
  const edit = new WorkspaceEdit();
  edit.replace(document.uri, range, after);
  if (!(await workspace.applyEdit(edit))) throw new Error(`the editor refused to replace “${before}”`);
}

/** Where a text stands; it must stand there once. */
export function rangeOf(document: TextDocument, wanted: string): Range {
  const text = document.getText();
  const start = text.indexOf(wanted);
  if (start < 0 || text.includes(wanted, start + 1)) throw new Error(`“${wanted}” does not stand once in ${document.uri.path}`);
  return new Range(document.positionAt(start), document.positionAt(start + wanted.length));
}

/** Closes the editor that has the focus, and drops what was not saved. */
export async function closeActiveEditor(): Promise<void> {
  await commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
}

/** Closes every editor, and drops what was not saved. */
export async function closeEverything(): Promise<void> {
  for (const group of window.tabGroups.all) {
    for (const tab of group.tabs) {
      if (!tab.isDirty) continue;
      const uri = uriOfInput(tab.input);
      if (uri !== undefined) await openFile(uri, { viewColumn: group.viewColumn });
      await closeActiveEditor();
    }
  }
  await commands.executeCommand('workbench.action.closeAllEditors');
  await until('all editors to be closed', window.tabGroups.onDidChangeTabs, () => (tabCount() === 0 ? true : undefined), openEditors);
}

function uriOfInput(input: unknown): Uri | undefined {
  return typeof input === 'object' && input !== null && 'uri' in input && input.uri instanceof Uri ? input.uri : undefined;
}

function activeEditorOf(uri: Uri): TextEditor | undefined {
  const editor = window.activeTextEditor;
  return editor?.document.uri.toString() === uri.toString() ? editor : undefined;
}

const tabCount = (): number => window.tabGroups.all.reduce((count, group) => count + group.tabs.length, 0);
const openEditors = (): string => `open: ${window.visibleTextEditors.map(({ document }) => document.uri.path).join(', ')}`;

/** There is no TextEncoder in the types that all hosts share. */
export function utf8(text: string): Uint8Array {
  const bytes = encodeURIComponent(text).replace(/%([0-9A-F]{2})/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16)));
  return Uint8Array.from(bytes, (byte) => byte.charCodeAt(0));
}
