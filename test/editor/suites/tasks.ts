/** The problem matcher of a task, on lines as the command line prints them. Neither host can start programs in its terminal. */
import { CustomExecution, DiagnosticSeverity, EventEmitter, languages, Task, tasks as running, workspace } from 'vscode';
import type { Pseudoterminal, TaskExecution, Uri } from 'vscode';
import type { Suite } from '../suite.ts';
import { inWorkspace, openFile, writeFile } from '../support/editor.ts';
import { expectEqual } from '../support/expect.ts';
import { codeOf, untilProblems, writtenProblems } from '../support/problems.ts';
import { until } from '../support/wait.ts';

/** Files of its own for each test, on which no other suite has an editor open: in an open file the editor marks nothing. */
async function filesOf(test: string): Promise<{ readonly bent: Uri; readonly plain: Uri; readonly printed: readonly string[] }> {
  const [bent, plain, last] = [`${test}-bent`, `${test}-plain`, `${test}-last`].map((name) => `${name}.throttle.yaml`);
  if (bent === undefined || plain === undefined || last === undefined) throw new Error('there are three names');
  const text = await textOf(inWorkspace('binding-broken.throttle.yaml'));
  for (const name of [bent, plain, last]) await writeFile(name, text);
  return { bent: inWorkspace(bent), plain: inWorkspace(plain), printed: printedOf(bent, plain, last) };
}

/** Files checked in one run, with what else stands between the marks. The editor marks a file once it comes to the next. */
function printedOf(bent: string, plain: string, last: string): readonly string[] {
  return [
    bent,
    '',
    `${bent}:31:3: error[toggle-opening]: link comes in line with the arm of shaft`,
    '  31 |   link:',
    '     |   ^^^^',
    `${bent}:38:3: warning[single-return-spring]: return_one is the only return spring`,
    `${plain}:31:34: note[opening-early]: shaft meets its open stop early`,
    '  31 |     stops: {closed: 0 deg, open: 82 deg}',
    marked(last),
    '',
  ];
}

const marked = (file: string): string => `${file}:1:1: note[opening-early]: front meets its open stop early`;
const NOTE = ['31:34 Information opening-early: shaft meets its open stop early'];

export const tasks: Suite = {
  about: 'tasks',
  tests: {
    'mark nothing twice in a file that is open': async () => {
      const { bent, plain, printed } = await filesOf('open');
      const { document } = await openFile(bent);
      const written = writtenProblems(document.getText());
      await untilProblems(document.uri, written);
      const task = await runPrinting(printed);
      await untilMarks(plain, NOTE);
      expectEqual(marksOf(document.uri).length, written.length, 'problems of the open file');
      task.terminate();
    },

    'with our problem matcher mark files that are not open, each at its place': async () => {
      const { bent, plain, printed } = await filesOf('closed');
      const task = await runPrinting(printed);
      await untilMarks(bent, [
        '31:3 Error toggle-opening: link comes in line with the arm of shaft',
        '38:3 Warning single-return-spring: return_one is the only return spring',
      ]);
      await untilMarks(plain, NOTE);
      task.terminate();
    },

    'unmark files of which the next run has nothing to say': async () => {
      const { bent, plain, printed } = await filesOf('again');
      const task = await runPrinting(printed);
      await untilMarks(plain, NOTE);
      task.terminate();
      const name = plain.path.slice(plain.path.lastIndexOf('/') + 1);
      const next = await runPrinting([
        `${name}:1:1: error[format-missing]: The file does not say its format`,
        marked('again-last.throttle.yaml'),
      ]);
      await untilMarks(plain, ['1:1 Error format-missing: The file does not say its format']);
      next.terminate();
      await untilMarks(bent, []);
    },
  },
};

async function textOf(uri: Uri): Promise<string> {
  return (await workspace.openTextDocument(uri)).getText();
}

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
