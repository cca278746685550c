/**
 * The command New Throttle File: an example or an empty start, opened as a file that is not saved yet. Nothing on a disk is read or written,
 * so it works in virtual workspaces and in the browser.
 */
import { commands, l10n, window, workspace } from 'vscode';
import type { Disposable, QuickPickItem } from 'vscode';
import { EXAMPLE_FILES } from './exampleFiles.ts';
import { LANGUAGE_ID } from './language.ts';
import { EMPTY_START, type StartingFile } from './startingFile.ts';

export const NEW_FILE_COMMAND = 'pedalToPlate.newThrottleFile';

/** In the order in which they are offered. */
export const STARTING_FILES: readonly StartingFile[] = [EMPTY_START, ...EXAMPLE_FILES];

/** The command takes the name of a starting file as an argument; without one, or with an unknown one, it asks. */
export function offerNewFile(): Disposable {
  return commands.registerCommand(NEW_FILE_COMMAND, async (name: unknown) => {
    const start = STARTING_FILES.find((each) => each.name === name) ?? (await ask());
    if (start === undefined) return;
    const document = await workspace.openTextDocument({ language: LANGUAGE_ID, content: start.text });
    await window.showTextDocument(document, { preview: false });
  });
}

/** Undefined where the person decided otherwise. */
async function ask(): Promise<StartingFile | undefined> {
  const items = STARTING_FILES.map((start): QuickPickItem & { readonly start: StartingFile } => ({
    label: start.title,
    description: start.name,
    detail: start.about,
    start,
  }));
  const options = { title: l10n.t('New Throttle File'), placeHolder: l10n.t('What to start from'), matchOnDetail: true };
  return (await window.showQuickPick(items, options))?.start;
}
