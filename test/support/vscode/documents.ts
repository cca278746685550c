/** Stand-in for the workspace: documents that the test opens, changes and closes itself, and settings that it sets. */
import { indexLines, type LineIndex } from '../../../src/definition/span.ts';
import { EventEmitter } from './events.ts';
import type { WorkspaceEdit } from './data.ts';
import { files, textOnDisk } from './files.ts';
import { Position, Uri } from './places.ts';

export class TextDocument {
  isClosed = false;
  isDirty = false;
  version = 1;
  readonly uri: Uri;
  languageId: string;
  private text: string;
  private lines: LineIndex | undefined;
  constructor(uri: string, languageId: string, text: string) {
    this.uri = Uri.parse(uri);
    this.languageId = languageId;
    this.text = text;
  }
  get isUntitled(): boolean {
    return this.uri.scheme === 'untitled';
  }
  getText(): string {
    return this.text;
  }
  setText(text: string): void {
    this.text = text;
    this.lines = undefined;
    this.version++;
  }
  positionAt(offset: number): Position {
    const { line, character } = this.lineIndex().positionAt(offset);
    return new Position(line, character);
  }
  offsetAt({ line, character }: Position): number {
    const lines = this.lineIndex();
    return lines.lineStart(line) + Math.min(character, lines.lineText(line).length);
  }
  /** Made once a version, as the editor has one at hand. */
  private lineIndex(): LineIndex {
    return (this.lines ??= indexLines(this.text));
  }
}

const opened = new EventEmitter<TextDocument>();
const changed = new EventEmitter<{ readonly document: TextDocument; readonly contentChanges: readonly unknown[] }>();
const closed = new EventEmitter<TextDocument>();
const configured = new EventEmitter<{ affectsConfiguration(section: string): boolean }>();
const saved = new EventEmitter<TextDocument>();
const renamed = new EventEmitter<{ readonly files: readonly { readonly oldUri: Uri; readonly newUri: Uri }[] }>();
const textDocuments: TextDocument[] = [];

/** The texts before each edit that was applied. */
export const undoSteps: string[] = [];
/** Set by the test where the editor shall take no edit, or none that could be saved. */
export const refusals = { edits: false, saving: false };

function openFromDisk(uri: Uri): Promise<TextDocument> {
  const open = textDocuments.find((document) => document.uri.toString() === uri.toString());
  if (open !== undefined) return Promise.resolve(open);
  const text = textOnDisk(uri.toString());
  if (text === undefined) return Promise.reject(new Error(`no file ${uri.toString()}`));
  const language = uri.path.endsWith('.throttle.yaml') ? 'throttle-linkage' : 'plaintext';
  return Promise.resolve(openDocument(uri.toString(), language, text));
}

const settings = new Map<string, unknown>();
const untitled = { count: 0 };

export const workspace = {
  ...files,
  isTrusted: true,
  textDocuments,
  workspaceFolders: [{ uri: Uri.parse('file:///folder') }],
  openTextDocument: (what: Uri | { readonly language: string; readonly content: string }) => {
    if (what instanceof Uri) return openFromDisk(what);
    untitled.count++;
    return Promise.resolve(openDocument(`untitled:Untitled-${untitled.count}`, what.language, what.content));
  },
  /** One step that can be undone. */
  applyEdit(edit: WorkspaceEdit): Promise<boolean> {
    const document = textDocuments.find(({ uri }) => uri.toString() === String(edit.edits[0]?.uri));
    if (document === undefined || refusals.edits) return Promise.resolve(false);
    undoSteps.push(document.getText());
    const inOrder = [...edit.edits].sort((a, b) => document.offsetAt(b.range.start) - document.offsetAt(a.range.start));
    const text = inOrder.reduce(
      (before, { range, newText }) =>
        before.slice(0, document.offsetAt(range.start)) + newText + before.slice(document.offsetAt(range.end)),
      document.getText(),
    );
    // The editor changes the text of a file that a person holds read-only as well, and does not call it unsaved.
    document.isDirty = !refusals.saving;
    changeDocument(document, text);
    return Promise.resolve(true);
  },
  onDidRenameFiles: renamed.event,
  onDidOpenTextDocument: opened.event,
  onDidChangeTextDocument: changed.event,
  onDidCloseTextDocument: closed.event,
  onDidSaveTextDocument: saved.event,
  onDidChangeConfiguration: configured.event,
  getConfiguration: (section?: string) => ({
    get: (name: string, otherwise?: unknown): unknown => {
      const key = section === undefined ? name : `${section}.${name}`;
      return settings.has(key) ? settings.get(key) : otherwise;
    },
  }),
};

/** @param value undefined takes the setting back */
export function setSetting(key: string, value: unknown): void {
  if (value === undefined) settings.delete(key);
  else settings.set(key, value);
  configured.fire({ affectsConfiguration: (section) => key === section || key.startsWith(`${section}.`) });
}

export function openDocument(uri: string, languageId: string, text: string): TextDocument {
  const document = new TextDocument(uri, languageId, text);
  textDocuments.push(document);
  opened.fire(document);
  return document;
}

export function changeDocument(document: TextDocument, text: string): void {
  document.setText(text);
  changed.fire({ document, contentChanges: [{ text }] });
}

/** What the editor also sends when a document is saved or its dirty mark goes: an event without a change. */
export function touchDocument(document: TextDocument): void {
  changed.fire({ document, contentChanges: [] });
}

export function saveDocument(document: TextDocument): void {
  document.isDirty = false;
  saved.fire(document);
}

/** As the editor does it: the document is closed in its old language and opened in the new one, and is the same object. */
export function changeLanguage(document: TextDocument, languageId: string): void {
  closed.fire(document);
  document.languageId = languageId;
  opened.fire(document);
}

/** As the explorer does it, once the file has its new name. */
export function renameFiles(oldUri: string, newUri: string): void {
  renamed.fire({ files: [{ oldUri: Uri.parse(oldUri), newUri: Uri.parse(newUri) }] });
}

export function closeDocument(document: TextDocument): void {
  document.isClosed = true;
  textDocuments.splice(textDocuments.indexOf(document), 1);
  closed.fire(document);
}
