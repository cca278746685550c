/** Stand-ins for what providers give back: plain data, kept as it was given. */
import type { Position, Range } from './places.ts';

export const DiagnosticTag = { Unnecessary: 1, Deprecated: 2 } as const;
export const DiagnosticSeverity = { Error: 0, Warning: 1, Information: 2, Hint: 3 } as const;

export class DiagnosticRelatedInformation {
  readonly location: { readonly range: Range };
  readonly message: string;
  constructor(location: { readonly range: Range }, message: string) {
    this.location = location;
    this.message = message;
  }
}

export class Diagnostic {
  source?: string;
  code?: string | number | { readonly value: string | number; readonly target: unknown };
  relatedInformation?: DiagnosticRelatedInformation[];
  tags?: number[];
  readonly range: Range;
  readonly message: string;
  readonly severity: number;
  constructor(range: Range, message: string, severity: number) {
    this.range = range;
    this.message = message;
    this.severity = severity;
  }
}

export class MarkdownString {
  value: string;
  constructor(value = '') {
    this.value = value;
  }
  appendMarkdown(value: string): this {
    this.value += value;
    return this;
  }
  appendText(value: string): this {
    this.value += value.replace(/[\\`*_{}[\]()#+\-!~<>]/g, '\\$&');
    return this;
  }
}

export class SnippetString {
  readonly value: string;
  constructor(value: string) {
    this.value = value;
  }
}

export class Hover {
  readonly contents: MarkdownString;
  readonly range: Range;
  constructor(contents: MarkdownString, range: Range) {
    this.contents = contents;
    this.range = range;
  }
}

export class CompletionItem {
  readonly label: string;
  readonly kind: number;
  detail?: string;
  documentation?: MarkdownString;
  insertText?: string | SnippetString;
  range?: { readonly inserting: Range; readonly replacing: Range };
  sortText?: string;
  filterText?: string;
  command?: { readonly command: string };
  constructor(label: string, kind: number) {
    this.label = label;
    this.kind = kind;
  }
}

export const CompletionItemKind = {
  Text: 0,
  Function: 2,
  Field: 4,
  Variable: 5,
  Class: 6,
  Property: 9,
  Unit: 10,
  Value: 11,
  Snippet: 14,
  EnumMember: 19,
  Constant: 20,
  Operator: 23,
} as const;

export class InlayHint {
  tooltip?: MarkdownString;
  paddingLeft?: boolean;
  readonly position: Position;
  readonly label: string;
  readonly kind: number;
  constructor(position: Position, label: string, kind: number) {
    this.position = position;
    this.label = label;
    this.kind = kind;
  }
}

export const InlayHintKind = { Type: 1, Parameter: 2 } as const;

export class CodeLens {
  readonly range: Range;
  command?: { readonly command: string; readonly title: string; readonly arguments: readonly unknown[] };
  constructor(range: Range, command?: CodeLens['command']) {
    this.range = range;
    if (command !== undefined) this.command = command;
  }
}

export class DocumentSymbol {
  children: DocumentSymbol[] = [];
  readonly name: string;
  readonly detail: string;
  readonly kind: number;
  readonly range: Range;
  readonly selectionRange: Range;
  constructor(name: string, detail: string, kind: number, range: Range, selectionRange: Range) {
    this.name = name;
    this.detail = detail;
    this.kind = kind;
    this.range = range;
    this.selectionRange = selectionRange;
  }
}

export const SymbolKind = {
  Namespace: 2,
  Class: 4,
  Property: 6,
  Field: 7,
  Interface: 10,
  Variable: 12,
  Constant: 13,
  Boolean: 16,
  Object: 18,
  Struct: 22,
  Event: 23,
  Operator: 24,
} as const;

export class FoldingRange {
  readonly start: number;
  readonly end: number;
  readonly kind: number | undefined;
  constructor(start: number, end: number, kind?: number) {
    this.start = start;
    this.end = end;
    this.kind = kind;
  }
}

export const FoldingRangeKind = { Comment: 1 } as const;

export class SelectionRange {
  readonly range: Range;
  readonly parent: SelectionRange | undefined;
  constructor(range: Range, parent?: SelectionRange) {
    this.range = range;
    this.parent = parent;
  }
}

export class DocumentHighlight {
  readonly range: Range;
  readonly kind: number;
  constructor(range: Range, kind: number) {
    this.range = range;
    this.kind = kind;
  }
}

export const DocumentHighlightKind = { Text: 0, Read: 1, Write: 2 } as const;

export class SemanticTokensLegend {
  readonly tokenTypes: readonly string[];
  readonly tokenModifiers: readonly string[];
  constructor(tokenTypes: readonly string[], tokenModifiers: readonly string[]) {
    this.tokenTypes = tokenTypes;
    this.tokenModifiers = tokenModifiers;
  }
}

/** Each token as it was given: line, character, length, type, modifiers. */
export interface SemanticTokens {
  readonly pushed: readonly (readonly number[])[];
}

export class SemanticTokensBuilder {
  private readonly pushed: number[][] = [];
  push(...token: number[]): void {
    this.pushed.push(token);
  }
  build(): SemanticTokens {
    return { pushed: this.pushed };
  }
}

/** The edits of a file, in the order in which they were asked for. */
export class WorkspaceEdit {
  readonly edits: { readonly uri: unknown; readonly range: Range; readonly newText: string }[] = [];
  replace(uri: unknown, range: Range, newText: string): void {
    this.edits.push({ uri, range, newText });
  }
}

export class CodeActionKind {
  static readonly QuickFix = new CodeActionKind('quickfix');
  static readonly Refactor = new CodeActionKind('refactor');
  static readonly Source = new CodeActionKind('source');
  static readonly SourceFixAll = new CodeActionKind('source.fixAll');
  readonly value: string;
  private constructor(value: string) {
    this.value = value;
  }
  append(part: string): CodeActionKind {
    return new CodeActionKind(`${this.value}.${part}`);
  }
  contains(other: CodeActionKind): boolean {
    return other.value === this.value || other.value.startsWith(`${this.value}.`);
  }
}

export const CodeActionTriggerKind = { Invoke: 1, Automatic: 2 } as const;

export class CodeAction {
  diagnostics?: Diagnostic[];
  edit?: WorkspaceEdit;
  command?: { readonly command: string; readonly arguments: readonly unknown[] };
  isPreferred?: boolean;
  disabled?: { readonly reason: string };
  title: string;
  readonly kind: CodeActionKind;
  constructor(title: string, kind: CodeActionKind) {
    this.title = title;
    this.kind = kind;
  }
}
