/** The language of throttle files, by which everything of the extension is asked for. */
import type { DocumentSelector, TextDocument } from 'vscode';

export const LANGUAGE_ID = 'throttle-linkage';

/** Throttle files wherever they are: on disk, in a remote folder, not yet saved. */
export const THROTTLE_FILES: DocumentSelector = { language: LANGUAGE_ID };

/** Where all settings of the extension stand. */
export const SETTINGS = 'pedalToPlate';

export function isThrottleFile(document: TextDocument): boolean {
  return document.languageId === LANGUAGE_ID;
}
