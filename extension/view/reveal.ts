/** Shows a place of the text in an editor, beside the view where none has it, and leaves the focus where it is. */
import { Selection, TabInputText, TextEditorRevealType, ViewColumn, window } from 'vscode';
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
