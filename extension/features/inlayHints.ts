/** Inlay hints: results of formulas, lengths of rods and offsets at rest, each kind with its own switch. */
import { EventEmitter, Disposable, InlayHint, InlayHintKind, languages, MarkdownString, workspace } from 'vscode';
import type { InlayHintsProvider, TextDocument } from 'vscode';
import { INLAY_KINDS, inlayHints, type InlayHint as Hint, type InlayKind } from '../../src/language/inlayHints.ts';
import type { DocumentAnswers } from '../answers.ts';
import { SETTINGS, THROTTLE_FILES } from '../language.ts';
import { spanOf } from '../places.ts';

export function provideInlayHints({ solved }: DocumentAnswers): Disposable {
  const changed = new EventEmitter<void>();
  const tooltips = new WeakMap<InlayHint, string>();
  const provider: InlayHintsProvider = {
    onDidChangeInlayHints: changed.event,
    async provideInlayHints(document, range, token) {
      const kinds = wantedKinds(document);
      const answers = kinds.length === 0 ? undefined : await solved(document, token);
      if (answers === undefined) return undefined;
      return inlayHints(answers, spanOf(document, range), kinds).map((hint) => {
        const made = hintOf(document, hint);
        tooltips.set(made, hint.tooltip);
        return made;
      });
    },
    resolveInlayHint(hint) {
      const tooltip = tooltips.get(hint);
      if (tooltip !== undefined) hint.tooltip = new MarkdownString(tooltip);
      return hint;
    },
  };
  return Disposable.from(
    languages.registerInlayHintsProvider(THROTTLE_FILES, provider),
    workspace.onDidChangeConfiguration((event) => {
      if (event.affectsConfiguration(`${SETTINGS}.inlayHints`)) changed.fire();
    }),
    changed,
  );
}

/** The setting of each kind, under `pedalToPlate`. */
export const INLAY_SETTINGS: Readonly<Record<InlayKind, string>> = {
  formula: 'inlayHints.formula',
  'rod-length': 'inlayHints.rodLength',
  rest: 'inlayHints.rest',
};

function wantedKinds(document: TextDocument): readonly InlayKind[] {
  const settings = workspace.getConfiguration(SETTINGS, document);
  return INLAY_KINDS.filter((kind) => settings.get<boolean>(INLAY_SETTINGS[kind], true));
}

function hintOf(document: TextDocument, { kind, offset, label }: Hint): InlayHint {
  // What is missing reads like a key with its value; the others are results.
  const made = new InlayHint(document.positionAt(offset), label, kind === 'rod-length' ? InlayHintKind.Parameter : InlayHintKind.Type);
  made.paddingLeft = true;
  return made;
}
