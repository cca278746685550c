/**
 * Runs studies, in threads of their own, so that the editor stays as quick as it is. To cancel ends the thread, so that it really stops.
 * A thread that is done is kept for the next study, for a while. Where the host starts none, as a web host whose policy refuses it, a study
 * runs here, a few milliseconds at a time, with a turn of the editor after each.
 */
import { l10n, Uri, workspace } from 'vscode';
import type { StudyProgress } from '../../src/protocol/studies.ts';
import { studyText, type StudyOutcome } from '../../src/studyText.ts';
import { noteFailure, noteLine } from '../logFailure.ts';
import { inTurns } from '../turns.ts';
import { isFromThread, type Job } from './jobs.ts';
import { startThread, type Thread } from './thread.ts';

export interface RunningStudy {
  /** Undefined where it was cancelled. Rejects with what the person is told where it failed. */
  readonly done: Promise<StudyOutcome | undefined>;
  cancel(): void;
}

export interface StudyRunner {
  run(job: Job, told: (progress: StudyProgress) => void): RunningStudy;
  dispose(): void;
}

/** @param extensionUri where the extension is installed; its own bundle is read from there */
export function createStudyRunner(extensionUri: Uri): StudyRunner {
  let idle: ReadyThread | undefined;
  let timer: number | undefined;
  let isDisposed = false;
  /** Once no thread has come, none is waited for again. */
  let isWithoutThreads = false;

  const taken = async (): Promise<ReadyThread | undefined> => {
    clearTimeout(timer);
    const known = idle;
    idle = undefined;
    if (known?.isAlive() === true) return known;
    if (isWithoutThreads) return undefined;
    const thread = await readyThread(extensionUri);
    isWithoutThreads ||= thread === undefined;
    return thread;
  };
  const putBack = (thread: ReadyThread): void => {
    if (isDisposed || idle !== undefined) return thread.stop();
    idle = thread;
    timer = setTimeout(() => {
      idle?.stop();
      idle = undefined;
    }, KEPT_MS);
  };

  return {
    run(job, told) {
      let isCancelled = false;
      let stop: () => void = () => undefined;
      const cancelled = new Promise<undefined>((resolve) => {
        stop = () => resolve(undefined);
      });
      const isWanted = (): boolean => !isCancelled && !isDisposed;
      const run = async (): Promise<StudyOutcome | undefined> => {
        const thread = await taken();
        if (!isWanted()) {
          if (thread !== undefined) putBack(thread);
          return undefined;
        }
        if (thread === undefined) return runHere(job, told, isWanted);
        const began = Date.now();
        const working = thread.work(job, (progress) => {
          if (isWanted()) told(progress);
        });
        const outcome = await Promise.race([working, cancelled]).catch((error: unknown) => {
          thread.stop();
          noteFailure('A study in a thread of its own', error);
          const why = error instanceof Error ? error.message : String(error);
          throw new Error(l10n.t('The study broke off: {0}. Run it again; “Show Log” of Pedal to Plate says more.', why));
        });
        if (outcome === undefined) thread.stop();
        else putBack(thread);
        noteLine(`Study ${job.ask.kind}, in a thread of its own: ${outcome?.kind ?? 'cancelled'} after ${Date.now() - began} ms`);
        return outcome;
      };
      return {
        done: run(),
        cancel() {
          isCancelled = true;
          stop();
        },
      };
    },
    dispose() {
      isDisposed = true;
      clearTimeout(timer);
      idle?.stop();
      idle = undefined;
    },
  };
}

/** A thread costs some tens of megabytes while it waits. */
const KEPT_MS = 60_000;

/** A thread that has said that it listens, and does one thing at a time. */
interface ReadyThread {
  /** False once it has ended by itself, as for want of memory. */
  isAlive(): boolean;
  work(job: Job, told: (progress: StudyProgress) => void): Promise<StudyOutcome>;
  stop(): void;
}

/** Undefined where the host starts none, or it does not come up. */
async function readyThread(extensionUri: Uri): Promise<ReadyThread | undefined> {
  let thread: Thread | undefined;
  let waiting: { told(progress: StudyProgress): void; end(outcome: StudyOutcome): void; fail(why: string): void } | undefined;
  let hasFailed = false;
  let why = `it said nothing for ${PATIENCE_MS / 1000} s`;
  let isReady: (comes: boolean) => void = () => undefined;
  const coming = new Promise<boolean>((resolve) => {
    isReady = resolve;
  });
  const failed = (reason: string): void => {
    hasFailed = true;
    why = reason;
    isReady(false);
    waiting?.fail(reason);
    waiting = undefined;
  };
  const timer = setTimeout(() => isReady(false), PATIENCE_MS);
  try {
    thread = await startThread(await bundleText(extensionUri), {
      failed,
      heard(message) {
        if (!isFromThread(message)) return failed('What the thread said cannot be read');
        switch (message.type) {
          case 'ready':
            return isReady(true);
          case 'progress':
            return waiting?.told(message.progress);
          case 'end':
            waiting?.end(message.outcome);
            waiting = undefined;
            return;
          case 'failed':
            return failed(message.why);
        }
      },
    });
    if (!(await coming)) throw new Error(why);
  } catch (error) {
    thread?.stop();
    noteFailure('No thread came up for studies, which run in the host instead', error);
    return undefined;
  } finally {
    clearTimeout(timer);
  }
  const { post, stop } = thread;
  return {
    isAlive: () => !hasFailed,
    work: (job, told) =>
      new Promise((resolve, reject) => {
        waiting = { told, end: resolve, fail: (why) => reject(new Error(why)) };
        post(job);
      }),
    stop,
  };
}

/** It starts within a quarter of a second; a host that has not by then refuses quietly. */
const PATIENCE_MS = 20_000;

/** The extension's own bundle, which every host runs. */
async function bundleText(extensionUri: Uri): Promise<string> {
  return new TextDecoder().decode(await workspace.fs.readFile(Uri.joinPath(extensionUri, 'build', 'extension', 'extension.js')));
}

async function runHere(
  { text, ask }: Job,
  told: (progress: StudyProgress) => void,
  isWanted: () => boolean,
): Promise<StudyOutcome | undefined> {
  const steps = studyText(text, ask);
  const began = Date.now();
  let since = began;
  let longest = 0;
  let outcome: StudyOutcome | undefined;
  function* untilTheEnd(): Generator<StudyProgress, void> {
    for (;;) {
      const { done, value } = steps.next();
      longest = Math.max(longest, Date.now() - since);
      if (done !== true) {
        yield value;
        continue;
      }
      outcome = value;
      return;
    }
  }
  try {
    await inTurns(untilTheEnd(), (progress) => {
      if (!isWanted()) throw CANCELLED;
      told(progress);
      since = Date.now();
    });
  } catch (error) {
    if (error !== CANCELLED) throw error;
  }
  const wanted = isWanted() ? outcome : undefined;
  noteLine(
    `Study ${ask.kind}, in the extension host: ${wanted?.kind ?? 'cancelled'} after ${Date.now() - began} ms, the editor's turn after ${longest} ms at most`,
  );
  return wanted;
}

/** Leaves a study from within; it goes no further than `runHere`. */
const CANCELLED = new Error('The study was cancelled');
