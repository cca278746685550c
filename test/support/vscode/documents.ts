/** Stand-in for the workspace: documents that the test opens, changes and closes itself, and settings that it sets. */
import { indexLines } from '../../../src/definition/span.ts';
import { EventEmitter } from './events.ts';
import { files } from './files.ts';
import { Position, Uri } from './places.ts';

export class TextDocument {
  isClosed = false;
  version = 1;
  readonly uri: Uri;
  languageId: string;
  private text: string;
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
    this.version++;
  }
  positionAt(offset: number): Position {
    const { line, character } = indexLines(this.text).positionAt(offset);
    return new Position(line, character);
  }
  offsetAt({ line, character }: Position): number {
    const lines = indexLines(this.text);
    return lines.lineStart(line) + Math.min(character, lines.lineText(line).length);
  }
}

const opened = new EventEmitter<TextDocument>();
const changed = new EventEmitter<{ readonly document: TextDocument; readonly contentChanges: readonly unknown[] }>();
const closed = new EventEmitter<TextDocument>();
const configured = new EventEmitter<{ affectsConfiguration(section: string): boolean }>();
const textDocuments: TextDocument[] = [];
const settings = new Map<string, unknown>();
const untitled = { count: 0 };

export const workspace = {
  ...files,
  textDocuments,
  openTextDocument: ({ language, content }: { readonly language: string; readonly content: string }) => {
    untitled.count++;
    return Promise.resolve(openDocument(`untitled:Untitled-${untitled.count}`, language, content));
  },
  onDidOpenTextDocument: opened.event,
  onDidChangeTextDocument: changed.event,
  onDidCloseTextDocument: closed.event,
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

/** As the editor does it: the document is closed in its old language and opened in the new one, and is the same object. */
export function changeLanguage(document: TextDocument, languageId: string): void {
  closed.fire(document);
  document.languageId = languageId;
  opened.fire(document);
}

export function closeDocument(document: TextDocument): void {
  document.isClosed = true;
  textDocuments.splice(textDocuments.indexOf(document), 1);
  closed.fire(document);
}
