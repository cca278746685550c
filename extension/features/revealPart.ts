/** Shows a part of an open throttle file where it is described; what a lens does when it is chosen. */
import { commands, TextEditorRevealType, Selection, window } from 'vscode';
import type { Disposable, TextDocument } from 'vscode';
import type { DeclaredName, NameIndex } from '../../src/language/names.ts';
import { NAME_KINDS } from '../../src/language/partKinds.ts';
import type { PartKind } from '../../src/protocol/report.ts';
import type { DocumentAnswers } from '../answers.ts';
import { isThrottleFile } from '../language.ts';
import { rangeOf } from '../places.ts';

/** Takes a {@link RevealedPart}. Not in the palette: without a part it has nothing to show. */
export const REVEAL_PART = 'pedalToPlate.revealPart';

export interface RevealedPart {
  readonly uri: string;
  readonly part: PartKind;
  readonly name: string;
}

export function revealParts({ names }: DocumentAnswers): Disposable {
  return commands.registerCommand(REVEAL_PART, (argument: unknown) => {
    if (!isRevealedPart(argument)) return;
    const isMeant = (document: TextDocument): boolean => document.uri.toString() === argument.uri && isThrottleFile(document);
    const editor = window.visibleTextEditors.find(({ document }) => isMeant(document));
    // Where it stands now: the text may have changed since the lens was made.
    const declared = editor && declaredPart(names(editor.document), argument);
    if (editor === undefined || declared === undefined) return;
    const range = rangeOf(editor.document, declared.span);
    editor.selection = new Selection(range.start, range.end);
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  });
}

/** Where a text declares a part; undefined where it does not. */
export function declaredPart({ names }: NameIndex, { part, name }: RevealedPart): DeclaredName | undefined {
  return names.find((each) => each.kind === NAME_KINDS[part] && each.name === name);
}

function isRevealedPart(value: unknown): value is RevealedPart {
  if (typeof value !== 'object' || value === null) return false;
  const { uri, part, name } = value as Readonly<Record<string, unknown>>;
  return typeof uri === 'string' && typeof name === 'string' && typeof part === 'string' && Object.hasOwn(NAME_KINDS, part);
}
