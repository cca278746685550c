/** The page of each code, which comes with the extension: a click on the code of a problem opens it, rendered. */
import { commands, Uri, window } from 'vscode';
import type { Disposable } from 'vscode';
import { PROBLEM_CODES } from '../../src/definition/codes.ts';
import { FINDING_CODES } from '../../src/findings/codes.ts';

/** Takes a code. Not in the palette: it stands behind the codes of problems. */
export const OPEN_CODE_PAGE = 'pedalToPlate.openCodePage';

/** What a click on a code runs; nothing is fetched from anywhere. */
export function linkToCodePage(code: string): Uri {
  return Uri.parse(`command:${OPEN_CODE_PAGE}?${encodeURIComponent(JSON.stringify([code]))}`);
}

/** @param extensionUri where the extension is installed */
export function openCodePages(extensionUri: Uri): Disposable {
  return commands.registerCommand(OPEN_CODE_PAGE, async (code: unknown) => {
    // Any page of any extension can link to a command.
    if (typeof code !== 'string' || !CODES.has(code)) return;
    const page = Uri.joinPath(extensionUri, 'docs', 'codes', `${code}.md`);
    try {
      // Wakes the editor's own Markdown: before, the command is not among those that are known.
      await commands.executeCommand(SHOW_PREVIEW, page);
    } catch {
      // It can be switched off; the text is readable as it is.
      await window.showTextDocument(page);
    }
  });
}

const SHOW_PREVIEW = 'markdown.showPreview';

const CODES: ReadonlySet<string> = new Set([...PROBLEM_CODES, ...FINDING_CODES]);
