/** What the editor's own commands give for a document: it asks the extension as it does for a person. */
import {
  type CodeAction,
  type CodeLens,
  commands,
  type CompletionList,
  type DocumentHighlight,
  type DocumentSymbol,
  type FoldingRange,
  type Hover,
  type InlayHint,
  type Location,
  type LocationLink,
  MarkdownString,
  type Position,
  Range,
  type SelectionRange,
  type SemanticTokens,
  type SemanticTokensLegend,
  type TextDocument,
  type WorkspaceEdit,
} from 'vscode';
import { rangeOf } from './editor.ts';

/** The start of a text that stands once in the document, or so many characters into it. */
export function positionOf(document: TextDocument, wanted: string, into = 0): Position {
  return document.positionAt(document.offsetAt(rangeOf(document, wanted).start) + into);
}

export function wholeOf(document: TextDocument): Range {
  return document.validateRange(new Range(0, 0, Number.MAX_SAFE_INTEGER, 0));
}

/**
 * The quick fixes at a place, as the menu that a person opens has them.
 *
 * @param resolved of how many, from the first, is worked out what waits until it is chosen
 */
export function fixesAt({ uri }: TextDocument, at: Position, kind = 'quickfix', resolved = MANY): Promise<readonly CodeAction[]> {
  return ask('vscode.executeCodeActionProvider', uri, new Range(at, at), kind, resolved);
}

export async function completionsAt({ uri }: TextDocument, at: Position, trigger?: string): Promise<CompletionList> {
  return ask('vscode.executeCompletionItemProvider', uri, at, trigger, MANY);
}

/** The text of all hovers at a place. */
export async function hoverAt({ uri }: TextDocument, at: Position): Promise<string> {
  const hovers = await ask<readonly Hover[]>('vscode.executeHoverProvider', uri, at);
  return hovers.flatMap(({ contents }) => contents.map((each) => (each instanceof MarkdownString ? each.value : ''))).join('\n');
}

/** Where each definition of what stands at a place begins and ends. */
export async function definitionsAt({ uri }: TextDocument, at: Position): Promise<readonly Range[]> {
  const found = await ask<readonly (Location | LocationLink)[]>('vscode.executeDefinitionProvider', uri, at);
  return found.map((each) => ('targetUri' in each ? (each.targetSelectionRange ?? each.targetRange) : each.range));
}

export function referencesAt({ uri }: TextDocument, at: Position): Promise<readonly Location[]> {
  return ask('vscode.executeReferenceProvider', uri, at);
}

export function highlightsAt({ uri }: TextDocument, at: Position): Promise<readonly DocumentHighlight[]> {
  return ask('vscode.executeDocumentHighlights', uri, at);
}

/** Rejects with the reason where the name cannot be had. */
export function renameEdits({ uri }: TextDocument, at: Position, name: string): Promise<WorkspaceEdit> {
  return ask('vscode.executeDocumentRenameProvider', uri, at, name);
}

export function outlineOf({ uri }: TextDocument): Promise<readonly DocumentSymbol[]> {
  return ask('vscode.executeDocumentSymbolProvider', uri);
}

export function foldsOf({ uri }: TextDocument): Promise<readonly FoldingRange[]> {
  return ask('vscode.executeFoldingRangeProvider', uri);
}

export function selectionsAt({ uri }: TextDocument, at: Position): Promise<readonly SelectionRange[]> {
  return ask('vscode.executeSelectionRangeProvider', uri, [at]);
}

export function hintsOf(document: TextDocument): Promise<readonly InlayHint[]> {
  return ask('vscode.executeInlayHintProvider', document.uri, wholeOf(document));
}

export function lensesOf({ uri }: TextDocument): Promise<readonly CodeLens[]> {
  return ask('vscode.executeCodeLensProvider', uri, MANY);
}

export function tokensOf({ uri }: TextDocument): Promise<SemanticTokens> {
  return ask('vscode.provideDocumentSemanticTokens', uri);
}

export function legendOf({ uri }: TextDocument): Promise<SemanticTokensLegend> {
  return ask('vscode.provideDocumentSemanticTokensLegend', uri);
}

/** More than there are. */
const MANY = 1000;

/** The commands give what their names say; undefined where no provider answers, which no test here expects. */
async function ask<T>(command: string, ...words: readonly unknown[]): Promise<T> {
  const given = await commands.executeCommand<T | undefined>(command, ...words);
  if (given === undefined) throw new Error(`${command} gives nothing`);
  return given;
}
