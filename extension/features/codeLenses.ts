/**
 * One line above each part of the load path: the figure that matters for it. While a text is half-typed and a part cannot be solved its line
 * stays where it is, without a figure, so that the text does not jump under the hands.
 */
import { CodeLens, Disposable, EventEmitter, l10n, languages, workspace } from 'vscode';
import type { TextDocument } from 'vscode';
import type { Span } from '../../src/definition/span.ts';
import { lensesOf } from '../../src/language/lenses.ts';
import type { DocumentAnswers } from '../answers.ts';
import { SETTINGS, THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';
import { declaredPart, REVEAL_PART, type RevealedPart } from './revealPart.ts';

export function provideCodeLenses({ names, solved }: DocumentAnswers): Disposable {
  const changed = new EventEmitter<void>();
  /** The parts that had a lens last. */
  const shown = new WeakMap<TextDocument, readonly RevealedPart[]>();
  return Disposable.from(
    languages.registerCodeLensProvider(THROTTLE_FILES, {
      onDidChangeCodeLenses: changed.event,
      async provideCodeLenses(document, token) {
        if (!workspace.getConfiguration(SETTINGS, document).get<boolean>('codeLens', true)) return [];
        const answers = await solved(document, token);
        if (answers === undefined) return undefined;
        const uri = document.uri.toString();
        const lenses = lensesOf(answers).map(({ span, title, action: { part, name } }) => ({ span, title, part: { uri, part, name } }));
        const kept = answers.problems.length === 0 ? [] : unsolvedParts(document, lenses);
        const all = [...lenses, ...kept];
        shown.set(
          document,
          all.map(({ part }) => part),
        );
        return all.map(({ span, title, part }) => new CodeLens(rangeOf(document, span), commandOf(title, part)));
      },
    }),
    workspace.onDidChangeConfiguration((event) => {
      if (event.affectsConfiguration(`${SETTINGS}.codeLens`)) changed.fire();
    }),
    changed,
  );

  function unsolvedParts(document: TextDocument, solvedParts: readonly ShownPart[]): readonly ShownPart[] {
    const isSolved = ({ part, name }: RevealedPart): boolean =>
      solvedParts.some((each) => each.part.part === part && each.part.name === name);
    return (shown.get(document) ?? []).flatMap((part): readonly ShownPart[] => {
      const declared = isSolved(part) ? undefined : declaredPart(names(document), part);
      return declared === undefined ? [] : [{ span: declared.span, title: l10n.t('not solved'), part }];
    });
  }
}

interface ShownPart {
  readonly span: Span;
  readonly title: string;
  readonly part: RevealedPart;
}

function commandOf(title: string, part: RevealedPart): NonNullable<CodeLens['command']> {
  return { command: REVEAL_PART, title, arguments: [part] };
}
