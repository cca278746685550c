/** Outline, breadcrumbs and “go to symbol”: blocks, the parts in them, and their arms and drums, each with the figure that matters. */
import { DocumentSymbol, languages, SymbolKind } from 'vscode';
import type { Disposable, TextDocument } from 'vscode';
import { outline, type OutlineEntry, type OutlineKind } from '../../src/language/symbols.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';

export function provideSymbols({ names, solved }: DocumentAnswers): Disposable {
  return languages.registerDocumentSymbolProvider(THROTTLE_FILES, {
    async provideDocumentSymbols(document, token) {
      const answers = await solved(document, token);
      return answers && outline(names(document), answers).map((entry) => symbolOf(document, entry));
    },
  });
}

function symbolOf(document: TextDocument, { name, detail, kind, span, selection, children }: OutlineEntry): DocumentSymbol {
  const symbol = new DocumentSymbol(name, detail, SYMBOL_KINDS[kind], rangeOf(document, span), rangeOf(document, selection));
  symbol.children = children.map((child) => symbolOf(document, child));
  return symbol;
}

/** Which of the editor's pictures comes nearest; the words are in the detail. */
const SYMBOL_KINDS: Readonly<Record<OutlineKind, SymbolKind>> = {
  block: SymbolKind.Namespace,
  key: SymbolKind.Property,
  let: SymbolKind.Variable,
  point: SymbolKind.Constant,
  lever: SymbolKind.Class,
  arm: SymbolKind.Field,
  drum: SymbolKind.Field,
  cable: SymbolKind.Interface,
  rod: SymbolKind.Interface,
  slot: SymbolKind.Interface,
  coupling: SymbolKind.Interface,
  plates: SymbolKind.Struct,
  sensor: SymbolKind.Event,
  spring: SymbolKind.Operator,
  obstacle: SymbolKind.Object,
  movement: SymbolKind.Object,
  requirement: SymbolKind.Boolean,
};
