/** Of a workspace of two folders with files of the same names. */
import { closeActiveEditor, inWorkspace, openFile, replaceText } from './editor.ts';
import { untilProblem, untilProblems, writtenProblems } from './problems.ts';

/** An example with problems, which lies in both folders. */
export const BROKEN = 'binding-broken.throttle.yaml';

export async function eachHasItsOwnProblems(): Promise<void> {
  const first = (await openFile(inWorkspace(BROKEN, 0))).document;
  const second = (await openFile(inWorkspace(BROKEN, 1))).document;
  const written = writtenProblems(first.getText());
  await untilProblems(first.uri, written);
  await untilProblems(second.uri, written);
  await replaceText(second, 'format: 1\n', 'format: 1\nnonsense: 2\n');
  await untilProblem(second.uri, 'unknown-key');
  await untilProblems(first.uri, written);
  await closeActiveEditor();
  await untilProblems(second.uri, []);
  await untilProblems(first.uri, written);
}
