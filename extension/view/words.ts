/** The words of the page in the editor's language: the page has the English ones itself, and asks for nothing else. */
import { env, l10n } from 'vscode';
import type { Notify } from './line.ts';

/** All texts of the extension that the editor has in its language; nothing where it has none. What is no text is left out. */
export function tellWords(notify: Notify): void {
  const { bundle } = l10n;
  if (bundle === undefined) return;
  const texts = Object.entries<unknown>(bundle).filter((entry): entry is [string, string] => typeof entry[1] === 'string');
  notify({ type: 'words', language: env.language, texts: Object.fromEntries(texts) });
}
