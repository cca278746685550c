/** What goes wrong while a person works: too much pasted, the wrong thing pasted, all taken back, the file gone. */
import { commands, EndOfLine, languages, Position, Range, WorkspaceEdit, workspace, type TextDocument } from 'vscode';
import type { Suite } from '../suite.ts';
import { LANGUAGE_ID, openFile, openUntitled, rangeOf, replaceText, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { ours, shownProblems, untilProblem, untilProblems } from '../support/problems.ts';
import { hoverAt, positionOf, renameEdits } from '../support/requests.ts';
import { EXAMPLE } from '../support/solved.ts';
import { until } from '../support/wait.ts';

const WRONG = 'nonsense: 2\n';

export const mishaps: Suite = {
  about: 'mishaps',
  tests: {
    'five thousand lines that are pasted are read to their end, and everything answers': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const lines = Array.from({ length: 5000 }, (_, index) => `  n${index}: ${index} mm\n`).join('');
      await insert(document, positionOf(document, '  reach: 40'), lines);
      await insert(document, new Position(document.lineCount, 0), WRONG);
      const problem = await untilProblem(document.uri, 'unknown-key');
      expectEqual(problem.range, rangeOf(document, 'nonsense'), 'the place of the mistake');
      expectTrue((await hoverAt(document, positionOf(document, 'reach, angle'))).includes('40 mm'), 'hover says what reach is');
    },

    'what is no text at all is a problem, and none is left of it once it is taken out': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      // A text that was never saved has the name of the last one, whose problems may still stand there.
      await untilProblems(document.uri, []);
      await insert(document, positionOf(document, 'let:'), '\u0000\u0001\ud800PK\u0003\u0004\ufffd{[\u0007"\n');
      await until('a problem', languages.onDidChangeDiagnostics, () => (ours(document.uri).length > 0 ? true : undefined));
      await commands.executeCommand('undo');
      await untilProblems(document.uri, []);
      expectEqual(document.getText(), EXAMPLE, 'the text');
    },

    'many changes that are all taken back and made again leave the problems of the text that is there': async () => {
      const { document } = await openFile(await writeFile('undone.throttle.yaml', `${EXAMPLE}${WRONG}`));
      await untilProblem(document.uri, 'unknown-key');
      const before = shownProblems(document.uri);
      const text = document.getText();
      for (let count = 0; count < MANY; count++) await insert(document, new Position(0, 0), `# ${count}\n`);
      for (const command of ['undo', 'redo', 'undo']) for (let count = 0; count < MANY; count++) await commands.executeCommand(command);
      expectEqual(document.getText(), text, 'the text');
      await untilProblems(document.uri, before);
    },

    'a name is given another also while the text is wrong elsewhere': async () => {
      const document = await openUntitled(LANGUAGE_ID, EXAMPLE);
      const count = async (): Promise<number> => {
        const edits = await renameEdits(document, positionOf(document, 'reach, angle'), 'arm_length');
        return edits.entries().reduce((sum, [, each]) => sum + each.length, 0);
      };
      const whole = await count();
      await replaceText(document, 'travel: 60 deg', 'travel: 60 de');
      await insert(document, new Position(document.lineCount, 0), 'springs: {back: {lever: shaft,');
      expectEqual(await count(), whole, 'places that change');
    },

    'a file of several kinds of line ends has its problems at their places': async () => {
      const { document } = await openFile(await writeFile('mixed.throttle.yaml', 'format: 1\r\nnonsense: 2\n# a\r\n'));
      const problem = await untilProblem(document.uri, 'unknown-key');
      expectEqual(problem.range, rangeOf(document, 'nonsense'), 'the place of the mistake');
      expectTrue([EndOfLine.CRLF, EndOfLine.LF].includes(document.eol), 'the editor has one of them');
    },

    'a file that is deleted beneath its editor is read on as it is typed': async () => {
      const uri = await writeFile('gone.throttle.yaml', 'format: 1\n');
      const { document } = await openFile(uri);
      await insert(document, new Position(1, 0), '# kept\n');
      await workspace.fs.delete(uri);
      await insert(document, new Position(1, 0), WRONG);
      await untilProblem(uri, 'unknown-key');
      await replaceText(document, WRONG, '');
      await until('the problem to go', languages.onDidChangeDiagnostics, () =>
        shownProblems(uri).some((each) => each.includes('unknown-key')) ? undefined : true,
      );
    },
  },
};

const MANY = 20;

async function insert(document: TextDocument, at: Position, text: string): Promise<void> {
  const edit = new WorkspaceEdit();
  edit.replace(document.uri, new Range(at, at), text);
  if (!(await workspace.applyEdit(edit))) throw new Error('the editor refused to insert a text');
}
