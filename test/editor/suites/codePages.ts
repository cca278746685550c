/** The page of each code, by a click on it. */
import { commands, type Diagnostic, type Extension, extensions, type Tab, TabInputWebview, Uri, window, workspace } from 'vscode';
import type { Suite } from '../suite.ts';
import { EXTENSION_ID, LANGUAGE_ID, openUntitled } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { codeOf, untilProblem } from '../support/problems.ts';
import { until } from '../support/wait.ts';

export const codePages: Suite = {
  about: 'code pages',
  tests: {
    'open by a click on the code of a problem, as rendered pages': async () => {
      const { uri } = await openUntitled(LANGUAGE_ID, 'format: 1\nnonsense: 2\n');
      await click(await untilProblem(uri, 'unknown-key'));
      await untilPreview('unknown-key');
    },

    'come with the extension, whatever kind of host it is in': async () => {
      const { uri } = await openUntitled(LANGUAGE_ID, 'format: 1\nnonsense: 2\n');
      const { extensionUri } = extensionOf();
      const page = await workspace.fs.readFile(
        Uri.joinPath(extensionUri, 'docs', 'codes', `${codeOf(await untilProblem(uri, 'unknown-key'))}.md`),
      );
      expectTrue(String.fromCharCode(...page).includes('\n# unknown-key\n'), 'the page speaks of another code');
    },

    'are opened for known codes only': async () => {
      await openUntitled(LANGUAGE_ID, 'format: 1\n');
      for (const word of ['../../README', 'no-such-code', 7, undefined]) await commands.executeCommand('pedalToPlate.openCodePage', word);
      expectEqual(labels().length, 1, `the tabs: ${labels().join(', ')}`);
    },
  },
};

/** What the editor does with the target of a code: a command with what it takes. */
async function click({ code }: Diagnostic): Promise<void> {
  const target = typeof code === 'object' ? code.target : undefined;
  if (target?.scheme !== 'command') throw new Error(`the code leads to ${String(target)}`);
  await commands.executeCommand(target.path, ...(JSON.parse(target.query) as readonly unknown[]));
}

/** A page that is rendered is a view of the editor's Markdown; the text of the page would be an editor. */
async function untilPreview(word: string): Promise<void> {
  const isPreview = ({ label, input }: Tab): boolean =>
    label.includes(word) && input instanceof TabInputWebview && input.viewType.includes('markdown.preview');
  const read = (): true | undefined => (tabs().some(isPreview) ? true : undefined);
  await until(`a preview of ${word}`, window.tabGroups.onDidChangeTabs, read, () => `there are ${labels().join(', ')}`);
}

const tabs = (): readonly Tab[] => window.tabGroups.all.flatMap((group) => group.tabs);
const labels = (): readonly string[] => tabs().map(({ label }) => label);

function extensionOf(): Extension<unknown> {
  const extension = extensions.getExtension(EXTENSION_ID);
  if (extension === undefined) throw new Error('the extension is not there');
  return extension;
}
