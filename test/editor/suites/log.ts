/** The extension's own log: what failed where nobody waited for it, for who looks for why. */
import { commands, Disposable, type Event, workspace } from 'vscode';
import type { Suite } from '../suite.ts';
import { openFile } from '../support/editor.ts';
import { expectTrue } from '../support/expect.ts';
import { makePlace } from '../support/places.ts';
import { untilProblem } from '../support/problems.ts';
import { WITH_READINGS } from '../support/solved.ts';
import { until } from '../support/wait.ts';

export const log: Suite = {
  about: 'log',
  tests: {
    'has what the editor said of a file that cannot be read, and is shown to who asks for it': async () => {
      const place = makePlace('failing', { files: { 'a.throttle.yaml': WITH_READINGS }, failing: ['bench.csv'] });
      const { document } = await openFile(place.at('a.throttle.yaml'));
      const { message } = await untilProblem(document.uri, 'wrong-value');
      expectTrue(message.startsWith('`bench.csv` could not be read; why is in the log: '), `the problem: ${message}`);
      await commands.executeCommand('pedalToPlate.showLog');
      const lines = await untilLogged('Reading failing:/bench.csv: Unavailable (FileSystemError): nobody answers');
      expectTrue(/\[info\] Version \d+\.\d+\.\d+, in VS Code \d/.test(lines), `the log begins with what runs in what:\n${lines}`);
      await commands.executeCommand('workbench.action.closePanel');
      place.ending.dispose();
    },
  },
};

/** Until a line stands in the log that is shown. @returns all of it */
export function untilLogged(line: string): Promise<string> {
  const read = (): string | undefined => texts().find((text) => text.includes(line));
  return until(`“${line}” to be logged`, shownOrChanged, read, () => `there is:\n${texts().join('\n')}`);
}

/** A log that is shown is a document. */
function texts(): readonly string[] {
  return workspace.textDocuments
    .filter(({ uri }) => uri.scheme === 'output' && /Pedal to Plate(?:\.log)?$/.test(decodeURIComponent(uri.path)))
    .map((each) => each.getText());
}

const shownOrChanged: Event<unknown> = (listener, self: unknown) =>
  Disposable.from(workspace.onDidOpenTextDocument(listener, self), workspace.onDidChangeTextDocument(listener, self));
