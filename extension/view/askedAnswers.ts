/** The answers about what the page asks of: the text as it stands, with the figures that are tried in it. */
import { l10n } from 'vscode';
import type { TextDocument } from 'vscode';
import { applyEdits } from '../../src/definition/edit.ts';
import { editsFor } from '../../src/edits/editsFor.ts';
import type { Tried } from '../../src/protocol/returns.ts';
import { solve, type Answers } from '../../src/solve.ts';
import type { DocumentAnswers } from '../answers.ts';
import { isOf } from './livePicture.ts';

/** Throws what the person is told where there are none. */
export function askedAnswers(document: TextDocument, { solveNow }: DocumentAnswers, { source, trial }: Tried): Answers {
  if (!isOf(source, document)) throw new Error(l10n.t('The text has changed meanwhile: try again.'));
  const written = solveNow(document);
  const edited = editsFor(written, trial);
  if ('why' in edited) throw new Error(edited.why);
  return edited.edits.length === 0 ? written : solve(applyEdits(written.text, edited.edits));
}
