/** Semantic tokens: quantities, units, formulas and names, which a grammar cannot tell apart. */
import { languages, SemanticTokens, SemanticTokensBuilder, SemanticTokensLegend } from 'vscode';
import type { Disposable, TextDocument } from 'vscode';
import { semanticTokens, TOKEN_MODIFIERS, TOKEN_TYPES, type SemanticToken } from '../../src/language/tokens.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { nextTurn } from '../turns.ts';

export function provideTokens({ names }: DocumentAnswers): Disposable {
  const legend = new SemanticTokensLegend([...TOKEN_TYPES], [...TOKEN_MODIFIERS]);
  return languages.registerDocumentSemanticTokensProvider(
    THROTTLE_FILES,
    {
      async provideDocumentSemanticTokens(document, token): Promise<SemanticTokens | undefined> {
        const { version } = document;
        await nextTurn();
        if (token.isCancellationRequested || document.version !== version) return undefined;
        const builder = new SemanticTokensBuilder(legend);
        for (const each of semanticTokens(names(document))) push(builder, document, each);
        return builder.build();
      },
    },
    legend,
  );
}

function push(builder: SemanticTokensBuilder, document: TextDocument, { span, type, modifiers }: SemanticToken): void {
  const { line, character } = document.positionAt(span.start);
  const bits = modifiers.reduce((sum, modifier) => sum | (1 << TOKEN_MODIFIERS.indexOf(modifier)), 0);
  builder.push(line, character, span.end - span.start, TOKEN_TYPES.indexOf(type), bits);
}
