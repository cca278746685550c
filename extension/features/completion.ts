/** Completion: keys, names, units and words that may stand at the cursor, and whole blocks to fill in. */
import { CompletionItem, CompletionItemKind, languages, MarkdownString, Range, SnippetString } from 'vscode';
import type { Command, Disposable, TextDocument } from 'vscode';
import { completionsAt, type CompletionItem as Item, type CompletionKind } from '../../src/language/completion.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';

export function provideCompletion({ latest }: DocumentAnswers): Disposable {
  return languages.registerCompletionItemProvider(
    THROTTLE_FILES,
    {
      provideCompletionItems(document, position, token): CompletionItem[] {
        if (token.isCancellationRequested) return [];
        const offset = document.offsetAt(position);
        // What was solved before the last letter is good enough for what is said of a name, and there without waiting.
        return completionsAt(document.getText(), offset, latest(document)).map((item) => itemOf(document, offset, item));
      },
    },
    ...TRIGGERS,
  );
}

/** Behind a part's dot, behind a key's colon and its blank, and at the beginning of what stands in brackets. Letters trigger anyway. */
const TRIGGERS = ['.', ' ', '{', '['] as const;

function itemOf(document: TextDocument, offset: number, item: Item): CompletionItem {
  const { label, kind, detail, documentation, insertText, snippet, replace, sortText, filterText, asksAgain } = item;
  const made = new CompletionItem(label, KINDS[kind]);
  if (detail !== undefined) made.detail = detail;
  if (documentation !== undefined) made.documentation = new MarkdownString(documentation);
  made.insertText = snippet ? new SnippetString(insertText) : insertText;
  const replacing = rangeOf(document, replace);
  made.range = { inserting: new Range(replacing.start, document.positionAt(offset)), replacing };
  made.sortText = sortText;
  if (filterText !== undefined) made.filterText = filterText;
  if (asksAgain) made.command = ASK_AGAIN;
  return made;
}

/** The editor's own command; the item shows no title. */
const ASK_AGAIN: Command = { command: 'editor.action.triggerSuggest', title: '' };

const KINDS: Readonly<Record<CompletionKind, CompletionItemKind>> = {
  key: CompletionItemKind.Property,
  snippet: CompletionItemKind.Snippet,
  'part-name': CompletionItemKind.Class,
  pin: CompletionItemKind.Field,
  point: CompletionItemKind.Constant,
  let: CompletionItemKind.Variable,
  function: CompletionItemKind.Function,
  constant: CompletionItemKind.Constant,
  operator: CompletionItemKind.Operator,
  unit: CompletionItemKind.Unit,
  word: CompletionItemKind.EnumMember,
  column: CompletionItemKind.Value,
  example: CompletionItemKind.Text,
};
