/**
 * What no extension can do in the window: it is asked of the process outside, which has the mouse and the keys. Its other end is
 * `scripts/editorHosts/pageActs.mjs`.
 */
import { commands, Disposable, StatusBarAlignment, type Uri, window } from 'vscode';
import { seen } from './page.ts';

/** As `ACTS` at the other end has them. */
export type Act =
  | readonly ['press', name: string]
  | readonly ['key', keys: string]
  | readonly ['setPedal', percent: string]
  | readonly ['chooseFile', offer: string, path: string]
  | readonly ['chooseNoFile', offer: string]
  | readonly ['pickRow', text: string]
  | readonly ['untilStored', ...texts: string[]];

/** Chooses a file in the editor's dialog. @param offer pattern of the path that stands there by itself, of the whole of it */
export const chooseFile = (offer: string, uri: Uri): Act => ['chooseFile', offer, uri.path];

/** A path as the pattern that matches nothing but it. */
export const exactly = (path: string): string => path.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&');

/** Does them in order. Gives what they have to say; throws what went wrong with the first that could not be done. */
export async function doInWindow(...acts: readonly Act[]): Promise<readonly string[]> {
  const item = window.createStatusBarItem(StatusBarAlignment.Left);
  const done = new Promise<Disposable>((resolve) => {
    const command = commands.registerCommand(DONE_COMMAND, () => resolve(command));
  });
  // An input box, as by which looks are answered, would shut the dialogs that are to be answered.
  Object.assign(item, { text: 'acts done', command: DONE_COMMAND });
  item.show();
  console.log(`# acts ${JSON.stringify(acts)}`);
  Disposable.from(await done, item).dispose();
  const outcomes = await seen('outcomes');
  const failed = outcomes.find((outcome) => outcome.startsWith('failed: '));
  if (failed !== undefined) throw new Error(failed);
  return outcomes;
}

const DONE_COMMAND = 'editorTests.done';

/** Loads the window anew. With it everything inside begins anew: nothing after this is run. */
export function reloadWindow(): Promise<never> {
  console.log(`# acts ${JSON.stringify([['reload']])}`);
  return new Promise(() => undefined);
}

/** Whether this is not the first time that the window was loaded. */
export async function isReloaded(): Promise<boolean> {
  const [loads] = await seen('loads');
  return loads !== '1';
}
