/** The Problems list while files are opened, typed in, mended and closed. */
import { DiagnosticSeverity, EndOfLine, languages, ViewColumn, window } from 'vscode';
import type { Suite } from '../suite.ts';
import { closeActiveEditor, inWorkspace, LANGUAGE_ID, openFile, openUntitled, replaceText, rangeOf, writeFile } from '../support/editor.ts';
import { expectEqual, expectTrue } from '../support/expect.ts';
import { ours, shownProblems, untilNoProblem, untilProblem, untilProblems, writtenProblems } from '../support/problems.ts';

const BROKEN = 'binding-broken.throttle.yaml';

const WRONG = 'format: 1\nnonsense: 2\n';

export const problems: Suite = {
  about: 'problems',
  tests: {
    'of an example stand where its own lines say': async () => {
      const { document } = await openFile(inWorkspace(BROKEN));
      const written = writtenProblems(document.getText());
      expectTrue(written.length > 1, 'the example has several problems');
      await untilProblems(document.uri, written);
      const severities = new Set(ours(document.uri).map(({ severity }) => severity));
      expectTrue(severities.has(DiagnosticSeverity.Error) && severities.has(DiagnosticSeverity.Warning), 'errors and warnings differ');
    },

    'move with what is typed above them, without saving': async () => {
      const { document } = await openFile(inWorkspace(BROKEN));
      const written = writtenProblems(document.getText());
      await untilProblems(document.uri, written);
      await replaceText(document, 'format: 1\n', '# one more line\nformat: 1\n');
      await untilProblems(document.uri, written.map(lineDown));
      expectTrue(document.isDirty, 'the file was saved');
    },

    'go once the mistake is mended, without saving': async () => {
      const { document } = await openFile(inWorkspace(BROKEN));
      const written = writtenProblems(document.getText());
      await untilProblems(document.uri, written);
      await replaceText(document, 'format: 1\n', 'format: 1\nnonsense: 2\n');
      const problem = await untilProblem(document.uri, 'unknown-key');
      expectEqual(problem.range, rangeOf(document, 'nonsense'), 'the place of the mistake');
      await replaceText(document, 'nonsense: 2\n', '');
      await untilProblems(document.uri, written);
      expectTrue(document.isDirty, 'the file was saved');
    },

    'go when the file is closed': async () => {
      const { document } = await openFile(inWorkspace(BROKEN));
      await untilProblem(document.uri, 'toggle-opening');
      await closeActiveEditor();
      await untilProblems(document.uri, []);
    },

    'go when the file is closed while a change still waits to be read': async () => {
      const { document } = await openFile(inWorkspace(BROKEN));
      await untilProblem(document.uri, 'toggle-opening');
      await replaceText(document, 'format: 1\n', 'format: 1\nnonsense: 2\n');
      await closeActiveEditor();
      await untilProblems(document.uri, []);
      expectEqual(document.isClosed, true, 'the document is closed');
    },

    'are shown in a document that was never saved': async () => {
      const document = await openUntitled(LANGUAGE_ID, WRONG);
      expectTrue(document.isUntitled, 'the document has a file');
      const problem = await untilProblem(document.uri, 'unknown-key');
      expectEqual(problem.range, rangeOf(document, 'nonsense'), 'the place of the mistake');
      await replaceText(document, 'nonsense: 2\n', '');
      await untilNoProblem(document.uri, 'unknown-key');
    },

    'come and go with the language that a person chooses': async () => {
      const document = await openUntitled('yaml', WRONG);
      expectEqual(shownProblems(document.uri), [], 'problems of a YAML document');
      const ourDocument = await languages.setTextDocumentLanguage(document, LANGUAGE_ID);
      await untilProblem(ourDocument.uri, 'unknown-key');
      await languages.setTextDocumentLanguage(ourDocument, 'yaml');
      await untilProblems(document.uri, []);
    },

    'stand at the right characters in a file with CRLF line ends': async () => {
      const { document } = await openFile(await writeFile('crlf.throttle.yaml', WRONG.replaceAll('\n', '\r\n')));
      expectEqual(document.eol, EndOfLine.CRLF, 'the line ends');
      const problem = await untilProblem(document.uri, 'unknown-key');
      expectEqual(problem.range, rangeOf(document, 'nonsense'), 'the place of the mistake');
    },

    'of two files side by side do not mix': async () => {
      const left = await openFile(inWorkspace(BROKEN), { viewColumn: ViewColumn.One });
      const right = await openFile(await writeFile('right.throttle.yaml', WRONG), { viewColumn: ViewColumn.Two });
      expectEqual(window.visibleTextEditors.length, 2, 'editors that are visible');
      const written = writtenProblems(left.document.getText());
      await untilProblems(left.document.uri, written);
      await untilProblem(right.document.uri, 'unknown-key');
      const before = shownProblems(right.document.uri);
      await replaceText(right.document, 'format: 1\n', '# one more line\nformat: 1\n');
      await untilProblems(right.document.uri, before.map(lineDown));
      await untilProblems(left.document.uri, written);
      await closeActiveEditor();
      await untilProblems(right.document.uri, []);
      await untilProblems(left.document.uri, written);
    },
  },
};

const lineDown = (problem: string): string => problem.replace(/^\d+/, (line) => String(Number(line) + 1));
