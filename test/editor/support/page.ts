/**
 * What stands in the window that no extension can read: it is asked of the process outside, which looks at the page. Its other end is
 * `scripts/editorHosts/pageQuestions.mjs`.
 */
import { window } from 'vscode';

/** What can be looked at, as `LOOKS` at the other end has it; each is lines of text. */
export type Look =
  | 'tests'
  | 'results'
  | 'status'
  | 'problems'
  | 'steps'
  | 'clickStatus'
  | 'views'
  | 'viewTroubles'
  | 'viewButtons'
  | 'viewChoices'
  | 'viewContrast'
  | 'dragPivot'
  | 'stepInView'
  | 'outcomes'
  | 'loads';

/**
 * What is to be seen once all the expected lines are there, or as it stands when they do not come.
 */
export async function seen(at: Look, expected: readonly string[] = []): Promise<readonly string[]> {
  // The answer comes through the only thing that both ends reach: what is typed into the window. Its title is unlike that of any other, so
  // that nothing but this question gets it.
  const title = `Look ${(asked += 1)}: ${at}`;
  // A key that was pressed before and comes late may take back what is typed: nothing is no answer.
  const validateInput = (typed: string): string | undefined => (typed === '' ? 'Not answered yet' : undefined);
  const answer = window.showInputBox({ title, ignoreFocusOut: true, validateInput });
  console.log(`# look ${JSON.stringify({ at, expected, title })}`);
  const typed = await answer;
  if (typed === undefined) throw new Error(`nobody looked at ${at}`);
  return JSON.parse(typed) as readonly string[];
}

let asked = 0;

/** Fails unless all the expected lines come to be seen. */
export async function expectSeen(at: Look, expected: readonly string[]): Promise<readonly string[]> {
  const found = await seen(at, expected);
  const missing = expected.filter((line) => !found.includes(line));
  if (missing.length > 0) throw new Error(`there is no ${JSON.stringify(missing)} among the ${at}:\n${found.join('\n')}`);
  return found;
}

/** Fails unless what is seen comes to be as it should, which no single line tells. */
export async function untilSeen(at: Look, what: string, holds: (found: readonly string[]) => boolean): Promise<void> {
  let found: readonly string[] = [];
  for (let look = 0; look < MANY_LOOKS; look++) {
    found = await seen(at);
    if (holds(found)) return;
  }
  throw new Error(`${what} did not come about; the ${at} are:\n${found.join('\n')}`);
}

/** Each opens and closes an input box. */
const MANY_LOOKS = 100;
