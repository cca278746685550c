/** The test view over texts that are open, closed, changed, renamed. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { keepAnswers } from '../../extension/answers.ts';
import { provideTests } from '../../extension/tests.ts';
import {
  CancellationTokenSource,
  changeDocument,
  changeLanguage,
  closeDocument,
  disk,
  diskAccess,
  emptyDisk,
  listening,
  openDocument,
  runInView,
  testControllers,
  TestItem,
  TestRunRequest,
  testRuns,
  workspace,
  writeFile,
  type TestController,
  type TestRun,
} from '../support/vscode.ts';

const ID = 'pedalToPlate.requirements';
const A = 'file:///folder/a.throttle.yaml';
const B = 'file:///folder/b.throttle.yaml';

/** A drum of 24 mm that is pulled by 24 mm: it turns by a radian, 57.3°. */
const file = (requirements: string): string => `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}
pedal: {cable: main, pull: 24 mm}
cables:
  main: {enters: [40, 24], to: shaft.wheel}
require:
${requirements}`;
const OPENS = '  opens: at(100%, shaft.opening) >= 50 deg\n';
const OPENS_MORE = '  opens: at(100%, shaft.opening) >= 80 deg\n';
const UNKNOWN = '  unknown: at(100%, nothing.opening) >= 80 deg\n';
const BARE = '  bare: shaft.opening >= 80 deg\n';

let disposables: { dispose(): void }[] = [];
let listenedBefore = 0;

beforeEach(() => {
  vi.useFakeTimers();
  listenedBefore = listening.count;
});

afterEach(() => {
  disposables.forEach((each) => each.dispose());
  disposables = [];
  [...workspace.textDocuments].forEach(closeDocument);
  emptyDisk();
  testRuns.length = 0;
  vi.useRealTimers();
  expect([testControllers.size, listening.count]).toEqual([0, listenedBefore]);
});

async function settle<T>(work: Promise<T> | T): Promise<T> {
  const done = Promise.resolve(work);
  await vi.runAllTimersAsync();
  return done;
}

function offer(): TestController {
  const answers = keepAnswers();
  disposables.push(provideTests(answers), answers);
  return testControllers.get(ID)!;
}

const tree = ({ items }: TestController): unknown =>
  Object.fromEntries([...items].map(([, item]) => [item.label, [...item.children].map(([, child]) => child.label)]));

function item({ items }: TestController, uri: string, label?: string): TestItem {
  const found = label === undefined ? items.get(uri) : [...items.get(uri)!.children].find(([, child]) => child.label === label)?.[1];
  if (found === undefined) throw new Error(`there is no ${label ?? ''} of ${uri}`);
  return found;
}

const run = (controller: TestController, include?: readonly TestItem[], exclude?: readonly TestItem[]): Promise<TestRun> =>
  settle(runInView(controller, new TestRunRequest(include, exclude)));

describe('tests of open files', () => {
  test('are listed without being asked for, with the line of each', async () => {
    const controller = offer();
    openDocument(A, 'throttle-linkage', file(`${OPENS}${BARE}`));
    await settle(undefined);
    expect(tree(controller)).toEqual({ 'a.throttle.yaml': ['opens', 'bare'] });
    expect(item(controller, A, 'bare').range).toMatchObject({ start: { line: 8 }, end: { line: 8 } });
  });

  test('are none where a file requires nothing, and none for other languages and older versions of a file', async () => {
    const controller = offer();
    openDocument(A, 'throttle-linkage', 'format: 1\n');
    openDocument('file:///folder/b.yaml', 'yaml', file(OPENS));
    openDocument('git:/folder/a.throttle.yaml?HEAD', 'throttle-linkage', file(OPENS));
    await settle(undefined);
    expect(tree(controller)).toEqual({});
  });

  test('follow typing, and what keeps its name keeps its item', async () => {
    const controller = offer();
    const document = openDocument(A, 'throttle-linkage', file(`${OPENS}${BARE}`));
    await settle(undefined);
    const before = item(controller, A, 'bare');
    changeDocument(document, file(`\n  first: 1 > 0\n${OPENS_MORE}${BARE}`));
    await settle(undefined);
    expect(tree(controller)).toEqual({ 'a.throttle.yaml': ['first', 'opens', 'bare'] });
    expect(item(controller, A, 'bare')).toBe(before);
    expect(before.range?.start.line).toBe(10);
  });

  test('are of files that are not saved yet, too', async () => {
    const controller = offer();
    openDocument('untitled:Untitled-1', 'throttle-linkage', file(OPENS));
    await settle(undefined);
    expect((await run(controller)).told).toEqual(['enqueued opens', 'started opens', 'passed opens', 'end']);
  });

  test('go with a file that closes, changes its language or is renamed', async () => {
    const controller = offer();
    const [a, b] = [openDocument(A, 'throttle-linkage', file(OPENS)), openDocument(B, 'throttle-linkage', file(OPENS))];
    await settle(undefined);
    closeDocument(a);
    changeLanguage(b, 'yaml');
    openDocument('file:///folder/c.throttle.yaml', 'throttle-linkage', file(OPENS));
    await settle(undefined);
    expect(tree(controller)).toEqual({ 'c.throttle.yaml': ['opens'] });
  });

  test('cannot be told of a text that is no YAML, which the file says', async () => {
    const controller = offer();
    const document = openDocument(A, 'throttle-linkage', file(OPENS));
    await settle(undefined);
    const { children } = item(controller, A);
    expect(children.size).toBe(1);
    changeDocument(document, '- \n');
    await settle(undefined);
    expect([children.size, item(controller, A).error]).toEqual([0, 'The file cannot be used as it stands: see its problems.']);
    const { told, messages } = await run(controller);
    expect(told).toEqual(['errored a.throttle.yaml', 'end']);
    expect(messages.get('a.throttle.yaml')?.message).toBe('The file cannot be used as it stands: see its problems.');
    changeDocument(document, file(OPENS));
    await settle(undefined);
    expect([children.size, item(controller, A).error]).toEqual([1, undefined]);
  });
});

describe('tests of the workspace', () => {
  test('are looked for when the view asks, and read when it asks again', async () => {
    writeFile(A, file(OPENS));
    writeFile(B, file(BARE));
    writeFile('file:///elsewhere/c.throttle.yaml', file(BARE));
    const controller = offer();
    await settle(undefined);
    expect(diskAccess).toEqual([]);
    await settle(controller.resolveHandler?.());
    expect([tree(controller), diskAccess]).toEqual([{ 'a.throttle.yaml': [], 'b.throttle.yaml': [] }, ['find']]);
    expect(item(controller, B).canResolveChildren).toBe(true);
    await settle(controller.resolveHandler?.(item(controller, B)));
    expect([tree(controller), diskAccess]).toEqual([{ 'a.throttle.yaml': [], 'b.throttle.yaml': ['bare'] }, ['find', `read ${B}`]]);
  });

  test('say so where a file turns out to require nothing', async () => {
    writeFile(A, 'format: 1\n');
    const controller = offer();
    await settle(controller.resolveHandler?.());
    await settle(controller.resolveHandler?.(item(controller, A)));
    expect(item(controller, A)).toMatchObject({ canResolveChildren: false, description: 'requires nothing' });
    expect((await run(controller)).told).toEqual(['skipped a.throttle.yaml', 'end']);
  });

  test('come, change and go with the files', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    await settle(controller.resolveHandler?.());
    await settle(controller.resolveHandler?.(item(controller, A)));
    writeFile(B, file(BARE));
    writeFile(A, file(BARE));
    await settle(undefined);
    expect(tree(controller)).toEqual({ 'a.throttle.yaml': ['bare'], 'b.throttle.yaml': [] });
    writeFile(A, undefined);
    await settle(undefined);
    expect(tree(controller)).toEqual({ 'b.throttle.yaml': [] });
  });

  test('are those of the disk again once a changed file is closed without being saved', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    await settle(controller.resolveHandler?.());
    const document = openDocument(A, 'throttle-linkage', file(BARE));
    await settle(undefined);
    expect(tree(controller)).toEqual({ 'a.throttle.yaml': ['bare'] });
    closeDocument(document);
    await settle(undefined);
    expect(tree(controller)).toEqual({ 'a.throttle.yaml': ['opens'] });
  });

  test('leave nothing behind of a file that is renamed while it is open', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    await settle(controller.resolveHandler?.());
    const document = openDocument(A, 'throttle-linkage', file(OPENS));
    await settle(undefined);
    writeFile(B, file(OPENS));
    writeFile(A, undefined);
    closeDocument(document);
    openDocument(B, 'throttle-linkage', file(OPENS));
    await settle(undefined);
    expect(tree(controller)).toEqual({ 'b.throttle.yaml': ['opens'] });
  });

  test('of a text that came late from the disk do not replace those of a newer one', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    await settle(controller.resolveHandler?.());
    disk.milliseconds = 1000;
    const reading = controller.resolveHandler?.(item(controller, A));
    openDocument(A, 'throttle-linkage', file(BARE));
    await vi.advanceTimersByTimeAsync(500);
    expect([tree(controller), diskAccess]).toEqual([{ 'a.throttle.yaml': ['bare'] }, ['find']]);
    closeDocument(workspace.textDocuments[0]!);
    await vi.advanceTimersByTimeAsync(500);
    openDocument(A, 'throttle-linkage', file(`${BARE}${OPENS}`));
    await settle(reading);
    expect(diskAccess).toEqual(['find', `read ${A}`]);
    expect(tree(controller)).toEqual({ 'a.throttle.yaml': ['bare', 'opens'] });
  });

  test('are looked for anew by a refresh, which can be cancelled', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    const cancelled = new CancellationTokenSource();
    const scan = controller.refreshHandler?.(cancelled.token);
    cancelled.cancel();
    await settle(scan);
    expect(tree(controller)).toEqual({});
    await settle(controller.refreshHandler?.(new CancellationTokenSource().token));
    expect(tree(controller)).toEqual({ 'a.throttle.yaml': [] });
  });
});

describe('a run', () => {
  test('takes the text as it stands, unsaved', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    const document = openDocument(A, 'throttle-linkage', file(OPENS));
    await settle(undefined);
    changeDocument(document, file(OPENS_MORE));
    const { told } = await run(controller, [item(controller, A, 'opens')]);
    expect(told).toEqual(['enqueued opens', 'started opens', 'failed opens', 'end']);
    expect(diskAccess).toEqual([]);
  });

  test('takes the text on the screen also where it is open as another language', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    await settle(controller.resolveHandler?.());
    openDocument(A, 'yaml', file(OPENS_MORE));
    await settle(undefined);
    expect((await run(controller)).told).toEqual(['started opens', 'failed opens', 'end']);
    expect(diskAccess).not.toContain(`read ${A}`);
  });

  test('tells expected, actual and margin of what fails, at the comparison', async () => {
    const controller = offer();
    const text = file(OPENS_MORE).replaceAll('\n', '\r\n');
    openDocument(A, 'throttle-linkage', text);
    await settle(undefined);
    const { messages, output } = await run(controller);
    expect(messages.get('opens')).toMatchObject({
      message: '57.3°, not ≥ 80° (22.7° short, at 100 %)',
      expectedOutput: 'at least 80°',
      actualOutput: '57.3°',
      location: { range: { start: { line: 7, character: 9 }, end: { line: 7 } } },
    });
    expect(output).toEqual(['opens: 57.3°, not ≥ 80° (22.7° short, at 100 %)\r\n']);
  });

  test('errors where it is not decidable, with the reason', async () => {
    const controller = offer();
    openDocument(A, 'throttle-linkage', file(`${UNKNOWN}${BARE}`));
    await settle(undefined);
    const { told, messages } = await run(controller);
    expect(told.slice(-3)).toEqual(['errored unknown', 'errored bare', 'end']);
    expect(messages.get('unknown')).toMatchObject({
      message: expect.stringMatching(/^Not decidable: .*`nothing/) as unknown,
      location: { range: { start: { line: 7 } } },
    });
    expect(messages.get('bare')?.message).toMatch(/^Not decidable: .*; write `at\(/);
  });

  test('reads files of the workspace that nobody has looked into yet', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    await settle(controller.resolveHandler?.());
    expect((await run(controller)).told).toEqual(['started opens', 'passed opens', 'end']);
  });

  test('of all is of all files of the workspace, also where the view was never asked', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    openDocument(B, 'throttle-linkage', file(OPENS_MORE));
    await settle(undefined);
    const { told } = await run(controller);
    expect(told).toEqual(['enqueued opens', 'started opens', 'failed opens', 'started opens', 'passed opens', 'end']);
  });

  test('leaves out what is excluded', async () => {
    const controller = offer();
    openDocument(A, 'throttle-linkage', file(`${OPENS}${BARE}`));
    openDocument(B, 'throttle-linkage', file(OPENS));
    await settle(undefined);
    const { told } = await run(controller, undefined, [item(controller, A, 'bare'), item(controller, B)]);
    expect(told).toEqual(['enqueued opens', 'started opens', 'passed opens', 'end']);
  });

  test('skips what is left when it is cancelled, and ends', async () => {
    const controller = offer();
    openDocument(A, 'throttle-linkage', file(OPENS));
    openDocument(B, 'throttle-linkage', file(BARE));
    await settle(undefined);
    const source = new CancellationTokenSource();
    const running = runInView(controller, new TestRunRequest([item(controller, A), item(controller, B)]), source);
    source.cancel();
    const { told } = await settle(running);
    expect(told).toEqual(['enqueued opens', 'enqueued bare', 'started opens', 'passed opens', 'skipped bare', 'end']);
  });

  test('says of a file that is gone that it is, and ends', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    await settle(controller.resolveHandler?.());
    await settle(controller.resolveHandler?.(item(controller, A)));
    const chosen = item(controller, A, 'opens');
    emptyDisk();
    const { told } = await run(controller, [chosen]);
    expect([told, tree(controller)]).toEqual([['enqueued opens', 'started opens', 'errored opens', 'end'], {}]);
  });

  test('goes on with every change of what it watches, until it is cancelled', async () => {
    const controller = offer();
    const [a, b] = [openDocument(A, 'throttle-linkage', file(OPENS)), openDocument(B, 'throttle-linkage', file(BARE))];
    await settle(undefined);
    const source = new CancellationTokenSource();
    const watched = new TestRunRequest([item(controller, A)], undefined, undefined, true);
    await settle(controller.profiles[0]?.runHandler(watched, source.token));
    expect(testRuns).toEqual([]);
    changeDocument(b, file(OPENS));
    changeDocument(a, file(OPENS_MORE));
    await settle(undefined);
    expect(testRuns.map(({ told }) => told)).toEqual([['enqueued opens', 'started opens', 'failed opens', 'end']]);
    source.cancel();
    changeDocument(a, file(OPENS));
    await settle(undefined);
    expect(testRuns.length).toBe(1);
  });
});

describe('watching', () => {
  const watch = async (controller: TestController, include?: readonly TestItem[]): Promise<void> => {
    const request = new TestRunRequest(include, undefined, undefined, true);
    await settle(controller.profiles[0]?.runHandler(request, new CancellationTokenSource().token));
  };

  test('goes on with a file that was closed and opened again, and with the one test that was asked for', async () => {
    const controller = offer();
    closeDocument(openDocument(A, 'throttle-linkage', file(`${OPENS}${BARE}`)));
    openDocument(A, 'throttle-linkage', file(`${OPENS}${BARE}`));
    await settle(undefined);
    await watch(controller, [item(controller, A, 'opens')]);
    closeDocument(workspace.textDocuments[0]!);
    openDocument(A, 'throttle-linkage', file(`${BARE}${OPENS}`));
    await settle(undefined);
    expect(testRuns.map(({ told }) => told)).toEqual([['enqueued opens', 'started opens', 'passed opens', 'end']]);
  });

  test('takes what changes on the disk, and what is saved only once', async () => {
    writeFile(A, file(OPENS));
    const controller = offer();
    await settle(controller.resolveHandler?.());
    await watch(controller);
    writeFile(A, file(OPENS_MORE));
    await settle(undefined);
    expect(testRuns.map(({ told }) => told.at(-2))).toEqual(['failed opens']);
    const document = openDocument(A, 'throttle-linkage', file(OPENS_MORE));
    await settle(undefined);
    changeDocument(document, file(OPENS));
    await settle(undefined);
    writeFile(A, file(OPENS));
    await settle(undefined);
    expect(testRuns.map(({ told }) => told.at(-2))).toEqual(['failed opens', 'failed opens', 'passed opens']);
  });
});

test('the bundled examples pass what they require', async () => {
  const controller = offer();
  for (const name of ['four-barrel', 'two-banks']) {
    const text = readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');
    openDocument(`file:///folder/${name}.throttle.yaml`, 'throttle-linkage', text);
  }
  await settle(undefined);
  const { told } = await run(controller);
  expect(told.filter((each) => each.startsWith('passed'))).toHaveLength(4);
  expect(told.filter((each) => /^(?:failed|errored|skipped)/.test(each))).toEqual([]);
});
