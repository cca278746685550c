/**
 * The test view: each line of `require` of a throttle file is a test. Files that are open are listed at once, with their unsaved text; those
 * of the workspace when the view asks for them.
 */
import { Disposable, l10n, TestRunProfileKind, TestRunRequest, tests, workspace } from 'vscode';
import type { TestItem, Uri } from 'vscode';
import type { DocumentAnswers } from './answers.ts';
import { logFailure } from './logFailure.ts';
import { GLOB, keepTestFiles } from './testFiles.ts';
import { runTests } from './testRun.ts';

/** Offers the tests of all throttle files until disposed of. */
export function provideTests(answers: DocumentAnswers): Disposable {
  const controller = tests.createTestController('pedalToPlate.requirements', l10n.t('Throttle Requirements'));
  const files = keepTestFiles(controller, answers);
  /** What shall run again whenever a text changes, each with what ends it. */
  const watches = new Map<TestRunRequest, Disposable>();
  const listening: { dispose(): unknown }[] = [];

  const changed = (item: TestItem | undefined): void => {
    if (item === undefined) return;
    for (const watch of watches.keys()) {
      const include = watchedIn(item, watch);
      if (include.length > 0) logFailure(runTests(controller, files, new TestRunRequest(include, watch.exclude, watch.profile, true)));
    }
  };
  const watchWorkspace = (): void => {
    const watcher = workspace.createFileSystemWatcher(GLOB);
    const on = (what: 'created' | 'changed' | 'deleted') => async (uri: Uri) => changed(await files.touched(uri, what));
    listening.push(watcher, watcher.onDidCreate(on('created')), watcher.onDidChange(on('changed')), watcher.onDidDelete(on('deleted')));
  };
  let isWatching = false;
  const listAll: typeof files.scan = async (token) => {
    if (!isWatching) watchWorkspace();
    isWatching = true;
    await files.scan(token);
  };

  controller.resolveHandler = async (item) => {
    if (item === undefined) await listAll();
    else if (item.uri !== undefined) await files.check(item.uri);
  };
  controller.refreshHandler = listAll;
  controller.createRunProfile(
    l10n.t('Check'),
    TestRunProfileKind.Run,
    async (request, token) => {
      if (request.continuous !== true) {
        // All are all of the workspace, whether the view has been looked at or not. Where it cannot be searched, those that are known.
        if (request.include === undefined && !isWatching) await listAll(token).catch(() => undefined);
        return runTests(controller, files, request, token);
      }
      const end = token.onCancellationRequested(() => {
        end.dispose();
        watches.delete(request);
      });
      watches.set(request, end);
    },
    true,
    undefined,
    true,
  );

  listening.push(
    answers.onDidSolve(({ document, answers: solved }) => changed(files.place(document.uri, solved))),
    answers.onDidForget((document) => logFailure(files.leave(document.uri))),
  );
  return new Disposable(() => {
    for (const each of [...listening, ...watches.values()]) each.dispose();
    watches.clear();
    controller.dispose();
  });
}

/** What of one file shall run again; items of the same id may have come in place of those that were asked for. */
function watchedIn(file: TestItem, { include }: TestRunRequest): readonly TestItem[] {
  if (include === undefined) return [file];
  return include.flatMap((each) => {
    if (each.id === file.id) return [file];
    return each.parent?.id === file.id ? (file.children.get(each.id) ?? []) : [];
  });
}
