/** Rename: a name and every place that refers to it, or a word on why it cannot be done, which the editor shows at the cursor. */
import { languages, WorkspaceEdit } from 'vscode';
import type { Disposable } from 'vscode';
import { prepareRename, renameAt } from '../../src/language/rename.ts';
import type { DocumentAnswers } from '../answers.ts';
import { THROTTLE_FILES } from '../language.ts';
import { rangeOf } from '../places.ts';

export function provideRename({ names }: DocumentAnswers): Disposable {
  return languages.registerRenameProvider(THROTTLE_FILES, {
    prepareRename(document, position) {
      const prepared = prepareRename(names(document), document.offsetAt(position));
      if (prepared.kind === 'refused') throw new Error(prepared.reason);
      return { range: rangeOf(document, prepared.span), placeholder: prepared.placeholder };
    },
    provideRenameEdits(document, position, newName) {
      const renamed = renameAt(names(document), document.offsetAt(position), newName);
      if (renamed.kind === 'refused') throw new Error(renamed.reason);
      const edit = new WorkspaceEdit();
      for (const { span, text } of renamed.edits) edit.replace(document.uri, rangeOf(document, span), text);
      return edit;
    },
  });
}
