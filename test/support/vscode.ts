/**
 * A stand-in for the part of `vscode` that the extension uses, for tests outside the editor: plain data classes, and a
 * workspace whose documents the test opens, changes and closes itself.
 */
import { indexLines } from '../../src/definition/span.ts';

export class Position {
  readonly line: number;
  readonly character: number;
  constructor(line: number, character: number) {
    this.line = line;
    this.character = character;
  }
}

export class Range {
  readonly start: Position;
  readonly end: Position;
  constructor(start: Position, end: Position) {
    this.start = start;
    this.end = end;
  }
}

export class Location {
  readonly uri: unknown;
  readonly range: Range;
  constructor(uri: unknown, range: Range) {
    this.uri = uri;
    this.range = range;
  }
}

export const DiagnosticSeverity = { Error: 0, Warning: 1, Information: 2, Hint: 3 } as const;

export class DiagnosticRelatedInformation {
  readonly location: Location;
  readonly message: string;
  constructor(location: Location, message: string) {
    this.location = location;
    this.message = message;
  }
}

export class Diagnostic {
  source?: string;
  code?: string | number;
  relatedInformation?: DiagnosticRelatedInformation[];
  readonly range: Range;
  readonly message: string;
  readonly severity: number;
  constructor(range: Range, message: string, severity: number) {
    this.range = range;
    this.message = message;
    this.severity = severity;
  }
}

export class Disposable {
  readonly dispose: () => void;
  constructor(dispose: () => void) {
    this.dispose = dispose;
  }
  static from(...parts: { dispose(): void }[]): Disposable {
    return new Disposable(() => parts.forEach((part) => part.dispose()));
  }
}

export class TextDocument {
  isClosed = false;
  readonly uri: string;
  readonly languageId: string;
  private text: string;
  constructor(uri: string, languageId: string, text: string) {
    this.uri = uri;
    this.languageId = languageId;
    this.text = text;
  }
  getText(): string {
    return this.text;
  }
  setText(text: string): void {
    this.text = text;
  }
  positionAt(offset: number): Position {
    const { line, character } = indexLines(this.text).positionAt(offset);
    return new Position(line, character);
  }
}

/** What is shown under Problems, by document uri. */
export const shownProblems = new Map<string, readonly Diagnostic[]>();

export const languages = {
  createDiagnosticCollection: () => ({
    set: (uri: string, diagnostics: readonly Diagnostic[]) => shownProblems.set(uri, diagnostics),
    delete: (uri: string) => shownProblems.delete(uri),
    dispose: () => shownProblems.clear(),
  }),
};

const opened = listeners<TextDocument>();
const changed = listeners<{ readonly document: TextDocument; readonly contentChanges: readonly unknown[] }>();
const closed = listeners<TextDocument>();
const textDocuments: TextDocument[] = [];

export const workspace = {
  textDocuments,
  onDidOpenTextDocument: opened.add,
  onDidChangeTextDocument: changed.add,
  onDidCloseTextDocument: closed.add,
};

export function openDocument(uri: string, languageId: string, text: string): TextDocument {
  const document = new TextDocument(uri, languageId, text);
  textDocuments.push(document);
  opened.send(document);
  return document;
}

export function changeDocument(document: TextDocument, text: string): void {
  document.setText(text);
  changed.send({ document, contentChanges: [{ text }] });
}

export function closeDocument(document: TextDocument): void {
  document.isClosed = true;
  textDocuments.splice(textDocuments.indexOf(document), 1);
  closed.send(document);
}

interface Listeners<T> {
  readonly add: (listener: (event: T) => void) => Disposable;
  readonly send: (event: T) => void;
}

function listeners<T>(): Listeners<T> {
  const all = new Set<(event: T) => void>();
  return {
    add(listener) {
      all.add(listener);
      return new Disposable(() => all.delete(listener));
    },
    send: (event) => all.forEach((listener) => listener(event)),
  };
}
