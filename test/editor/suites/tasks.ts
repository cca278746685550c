/** The problem matcher of a task, on lines as the command line prints them. Neither host can start programs in its terminal. */
import { CustomExecution, DiagnosticSeverity, EventEmitter, languages, Task, tasks as running, workspace } from 'vscode';
import type { Pseudoterminal, TaskExecution, Uri } from 'vscode';
import type { Suite } from '../suite.ts';
import { inWorkspace, openFile } from '../support/editor.ts';
import { expectEqual } from '../support/expect.ts';
import { codeOf, untilProblems, writtenProblems } from '../support/problems.ts';
import { until } from '../support/wait.ts';

const FILE = 'binding-broken.throttle.yaml';
const OTHER = 'four-barrel.throttle.yaml';
const LAST = 'two-banks.throttle.yaml';

/** Files checked in one run, with what else stands between the marks. The editor marks a file once it comes to the next. */
const PRINTED = [
  FILE,
  '',
  `${FILE}:31:3: error[toggle-opening]: link comes in line with the arm of shaft`,
  '  31 |   link:',
  '     |   ^^^^',
  `${FILE}:38:3: warning[single-return-spring]: return_one is the only return spring`,
  `${OTHER}:31:34: note[opening-early]: shaft meets its open stop early`,
  '  31 |     stops: {closed: 0 deg, open: 82 deg}',
  `${LAST}:1:1: note[opening-early]: front meets its open stop early`,
  '',
];
const NOTE = ['31:34 Information opening-early: shaft meets its open stop early'];

export const tasks: Suite = {
  about: 'tasks',
  tests: {
    'mark nothing twice in a file that is open': async () => {
      const { document } = await openFile(inWorkspace(FILE));
      const written = writtenProblems(document.getText());
      await untilProblems(document.uri, written);
      const task = await runPrinting(PRINTED);
      await untilMarks(inWorkspace(OTHER), NOTE);
      expectEqual(marksOf(document.uri).length, written.length, 'problems of the open file');
      task.terminate();
    },

    'with our problem matcher mark files that are not open, each at its place': async () => {
      const task = await runPrinting(PRINTED);
      await untilMarks(inWorkspace(FILE), [
        '31:3 Error toggle-opening: link comes in line with the arm of shaft',
        '38:3 Warning single-return-spring: return_one is the only return spring',
      ]);
      await untilMarks(inWorkspace(OTHER), NOTE);
      task.terminate();
    },

    'unmark files of which the next run has nothing to say': async () => {
      const task = await runPrinting(PRINTED);
      await untilMarks(inWorkspace(OTHER), NOTE);
      task.terminate();
      const next = await runPrinting([`${OTHER}:1:1: error[format-missing]: The file does not say its format`, PRINTED[8] ?? '']);
      await untilMarks(inWorkspace(OTHER), ['1:1 Error format-missing: The file does not say its format']);
      next.terminate();
      await untilMarks(inWorkspace(FILE), []);
    },
  },
};

async function untilMarks(uri: Uri, expected: readonly string[]): Promise<void> {
  const read = (): true | undefined => (JSON.stringify(marksOf(uri)) === JSON.stringify(expected) ? true : undefined);
  await until(
    `the marks of ${uri.path}`,
    languages.onDidChangeDiagnostics,
    read,
    () => `found ${JSON.stringify(languages.getDiagnostics().map(([each]) => `${each.toString()} ${marksOf(each).join(', ')}`))}`,
  );
}

/** Line and column as a person counts them. */
function marksOf(uri: Uri): readonly string[] {
  return languages
    .getDiagnostics(uri)
    .map((mark) => {
      const { line, character } = mark.range.start;
      return `${line + 1}:${character + 1} ${DiagnosticSeverity[mark.severity]} ${codeOf(mark)}: ${mark.message}`;
    })
    .sort();
}

/** It goes on until it is ended: what is printed last would else be lost with its terminal. */
async function runPrinting(lines: readonly string[]): Promise<TaskExecution> {
  const [folder] = workspace.workspaceFolders ?? [];
  if (folder === undefined) throw new Error('no folder is open');
  const execution = new CustomExecution(() => Promise.resolve(printing(lines)));
  return running.executeTask(new Task({ type: 'printing' }, folder, 'check the linkages', 'test', execution, '$pedal-to-plate'));
}

function printing(lines: readonly string[]): Pseudoterminal {
  const written = new EventEmitter<string>();
  return {
    onDidWrite: written.event,
    open: () => written.fire(lines.map((line) => `${line}\r\n`).join('')),
    close: () => written.dispose(),
  };
}
