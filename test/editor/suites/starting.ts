/** Starting a file from nothing. */
import { commands, DiagnosticSeverity, type TextDocument, window } from 'vscode';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { ours } from '../support/problems.ts';
import { untilSolved } from '../support/solved.ts';
import { until } from '../support/wait.ts';

const NEW = 'pedalToPlate.newThrottleFile';

export const starting: Suite = {
  about: 'starting',
  tests: {
    'a new file asks what from, and opens it unsaved': async () => {
      const asked = commands.executeCommand(NEW);
      await whileAsked('workbench.action.acceptSelectedQuickOpenItem');
      await asked;
      const document = await untilOpen('My linkage');
      expectTrue(document.isUntitled && document.languageId === LANGUAGE_ID, `it is ${document.uri.toString()}, ${document.languageId}`);
      await untilSolved(document);
      expectEqual(
        ours(document.uri).filter(({ severity }) => severity <= DiagnosticSeverity.Warning),
        [],
        'its problems',
      );
    },

    'a new file is the example that is asked for': async () => {
      await commands.executeCommand(NEW, 'two-banks');
      const { isUntitled } = await untilOpen('Two banks from one leaning bellcrank');
      expectTrue(isUntitled, 'it is not saved yet');
    },

    'a new file that nobody decides on is none': async () => {
      const asked = commands.executeCommand(NEW);
      // Asking something else closes the list, as Escape does.
      void window.showQuickPick(['another list']);
      await asked;
      await commands.executeCommand('workbench.action.closeQuickOpen');
      expectEqual(window.activeTextEditor?.document.uri.path, undefined, 'what is open');
    },
  },
};

/** Nothing tells an extension that a list is open; accepting does nothing until it is. */
async function whileAsked(command: string): Promise<void> {
  for (let turn = 0; turn < MANY_TURNS && window.activeTextEditor === undefined; turn++) await commands.executeCommand(command);
}

/** Each is a round trip to the window. */
const MANY_TURNS = 2000;

/** One of that title. What was open in a test before may be named as the active one for a moment longer. */
function untilOpen(title: string): Promise<TextDocument> {
  const active = (): TextDocument | undefined => window.activeTextEditor?.document;
  const read = (): TextDocument | undefined => (active()?.getText().includes(`\ntitle: ${title}`) === true ? active() : undefined);
  return until(`“${title}” to be open`, window.onDidChangeActiveTextEditor, read, () => `there is\n${active()?.getText() ?? 'nothing'}`);
}
