/** Shows a place of the text in an editor, beside the view where none has it; the focus goes there only for what the editor itself does. */
import { commands, Selection, TabInputText, TextEditorRevealType, ViewColumn, window } from 'vscode';
import type { TextDocument, TextEditor } from 'vscode';
import type { Span } from '../../src/definition/span.ts';
import { rangeOf } from '../places.ts';

/** @param viewColumn of the view; undefined where it is not shown */
export async function revealText(document: TextDocument, span: Span, viewColumn: ViewColumn | undefined): Promise<void> {
  const { version } = document;
  const editor = editorOf(document) ?? (await openBeside(document, viewColumn));
  if (document.version !== version) return;
  const { start, end } = rangeOf(document, span);
  editor.selection = new Selection(start, end);
  editor.revealRange(editor.selection, TextEditorRevealType.InCenterIfOutsideViewport);
}

/** Goes to a place of the text and opens the editor’s list of fixes for what was found there. */
export async function chooseFix(document: TextDocument, span: Span, viewColumn: ViewColumn | undefined): Promise<void> {
  const { version } = document;
  await focusText(document, viewColumn);
  if (document.version !== version) return;
  await revealText(document, { start: span.start, end: span.start }, viewColumn);
  await commands.executeCommand('editor.action.quickFix');
}

/** Takes the newest change of the text back, or makes it again. An editor does that to the text that has the focus. */
export async function takeBack(way: 'undo' | 'redo', document: TextDocument, viewColumn: ViewColumn | undefined): Promise<void> {
  await focusText(document, viewColumn);
  const { version } = document;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    // The page may have the focus still, and then it would be asked for that.
    await commands.executeCommand('workbench.action.focusActiveEditorGroup');
    await commands.executeCommand(way);
    if (document.version !== version) return;
    await new Promise<void>((resolve) => setTimeout(resolve, BETWEEN_TRIES_MS));
  }
}

/** Where there is nothing to take back, nothing comes of any of them. */
const MOST_TRIES = 5;
const BETWEEN_TRIES_MS = 100;

async function focusText(document: TextDocument, viewColumn: ViewColumn | undefined): Promise<void> {
  const { viewColumn: own } = editorOf(document) ?? (await openBeside(document, viewColumn));
  await window.showTextDocument(document, { ...(own === undefined ? {} : { viewColumn: own }), preserveFocus: false, preview: false });
}

/** The one that has the focus, else any that shows the document. */
export function editorOf(document: TextDocument): TextEditor | undefined {
  const { activeTextEditor, visibleTextEditors } = window;
  if (activeTextEditor?.document === document) return activeTextEditor;
  return visibleTextEditors.find((editor) => editor.document === document);
}

async function openBeside(document: TextDocument, viewColumn: ViewColumn | undefined): Promise<TextEditor> {
  const uri = document.uri.toString();
  const own = window.tabGroups.all.find(({ tabs }) =>
    tabs.some(({ input }) => input instanceof TabInputText && input.uri.toString() === uri),
  )?.viewColumn;
  const beside = own === undefined || own === viewColumn ? (viewColumn === ViewColumn.One ? ViewColumn.Two : ViewColumn.One) : own;
  return window.showTextDocument(document, { viewColumn: beside, preserveFocus: true, preview: false });
}
