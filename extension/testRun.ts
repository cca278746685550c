/** Deciding requirements when the test view asks for it. */
import { l10n, Location, TestMessage } from 'vscode';
import type { CancellationToken, TestController, TestItem, TestRun, TestRunRequest, Uri } from 'vscode';
import type { Problem } from '../src/definition/problem.ts';
import type { RequirementTest } from '../src/language/requirementTests.ts';
import { unusableText, type CheckedFile, type TestFiles } from './testFiles.ts';

/** Decides what is asked for, file by file, on the texts as they stand. Whatever happens, the run comes to its end. */
export async function runTests(
  controller: TestController,
  files: TestFiles,
  request: TestRunRequest,
  token?: CancellationToken,
): Promise<void> {
  const run = controller.createTestRun(request);
  try {
    const wanted = wantedOf(controller, request);
    for (const file of wanted) testsOf(file).forEach((test) => run.enqueued(test));
    for (const file of wanted) {
      if (run.token.isCancellationRequested || token?.isCancellationRequested === true) testsOf(file).forEach((test) => run.skipped(test));
      else await runFile(run, files, file);
    }
  } finally {
    run.end();
  }
}

/** What of a request lies in one file. */
interface WantedFile {
  readonly item: TestItem;
  readonly uri: Uri;
  /** Tests asked for by themselves; undefined where it is the whole file. */
  readonly only: readonly TestItem[] | undefined;
  readonly excluded: ReadonlySet<TestItem>;
}

function wantedOf({ items }: TestController, { include, exclude }: TestRunRequest): readonly WantedFile[] {
  const excluded = new Set(exclude);
  const wanted = new Map<TestItem, TestItem[] | undefined>();
  for (const item of include ?? [...items].map(([, each]) => each)) {
    const { parent } = item;
    if (parent === undefined) wanted.set(item, undefined);
    else if (!wanted.has(parent)) wanted.set(parent, [item]);
    else wanted.get(parent)?.push(item);
  }
  return [...wanted].flatMap(([item, only]) => {
    const { uri } = item;
    return uri === undefined || excluded.has(item) ? [] : [{ item, uri, only, excluded }];
  });
}

/** As far as they are known now. */
function testsOf({ item, only, excluded }: WantedFile): readonly TestItem[] {
  return (only ?? [...item.children].map(([, test]) => test)).filter((test) => !excluded.has(test));
}

async function runFile(run: TestRun, files: TestFiles, file: WantedFile): Promise<void> {
  const known = testsOf(file);
  known.forEach((test) => run.started(test));
  const start = Date.now();
  const checked = await files.check(file.uri);
  // The text may have got more tests since the view was told of any.
  const tests = testsOf(file);
  tests.filter((test) => !known.includes(test)).forEach((test) => run.started(test));
  const targets = tests.length === 0 ? [file.item] : tests;
  // One solution decides all of them.
  const milliseconds = (Date.now() - start) / targets.length;
  for (const test of targets) report(run, test, checked, milliseconds);
  known.filter((test) => !tests.includes(test)).forEach((test) => run.skipped(test));
}

function report(run: TestRun, item: TestItem, checked: CheckedFile | undefined, milliseconds: number): void {
  if (checked === undefined) return run.errored(item, new TestMessage(l10n.t('The file can be read no more.')), milliseconds);
  if (checked.isUnusable) return run.errored(item, new TestMessage(unusableText()), milliseconds);
  const test = checked.tests.find(({ id }) => id === item.id);
  if (test === undefined) return run.skipped(item);
  run.appendOutput(`${test.label}: ${test.message}\r\n`.replace(/\r?\n/g, '\r\n'), undefined, item);
  if (test.outcome === 'passed') return run.passed(item, milliseconds);
  const mistake = test.outcome === 'errored' ? checked.mistakeIn(test.span) : undefined;
  const message = messageOf(test, mistake);
  if (item.uri !== undefined) message.location = new Location(item.uri, checked.rangeOf(mistake?.span ?? test.place));
  if (test.outcome === 'failed') run.failed(item, message, milliseconds);
  else run.errored(item, message, milliseconds);
}

/** With both figures side by side where there are any; where the text has a mistake, with that instead of a hint at it. */
function messageOf({ outcome, message, expected, actual }: RequirementTest, mistake: Problem | undefined): TestMessage {
  if (outcome === 'errored') return new TestMessage(l10n.t('Not decidable: {0}', mistake?.message ?? message));
  if (expected === undefined || actual === undefined) return new TestMessage(message);
  return TestMessage.diff(message, expected, actual);
}
