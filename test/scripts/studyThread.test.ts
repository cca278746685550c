/** A study in a thread that runs the extension's own bundle, in Node. That of a web host is tested in a real editor. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, test } from 'vitest';
import { isFromThread, type FromThread, type Job } from '../../extension/studies/jobs.ts';
import { startThread, type Thread } from '../../extension/studies/thread.ts';
import { buildExtension } from '../../scripts/build.mjs';
import { finished } from '../../src/studies/finished.ts';
import { studyText } from '../../src/studyText.ts';
import { example } from '../support/editorRequests.ts';

const FOLDER = 'build/studyThread/';
const TUNE = example('tune-a-bellcrank');

let bundle = '';

beforeAll(async () => {
  await buildExtension({ folder: FOLDER, sourcemap: false });
  bundle = readFileSync(`${fileURLToPath(new URL('../../', import.meta.url))}${FOLDER}extension.js`, 'utf8');
}, 120_000);

/** Starts a thread that is given a job once it listens. */
async function runInThread(job: Job, heard: (message: FromThread, thread: Thread) => void): Promise<string> {
  let end: (why: string) => void = () => undefined;
  const ended = new Promise<string>((resolve) => {
    end = resolve;
  });
  const coming: Promise<Thread> = startThread(bundle, {
    failed: end,
    heard(message) {
      if (!isFromThread(message)) return end(`it said ${JSON.stringify(message)}`);
      void coming.then((thread) => (message.type === 'ready' ? thread.post(job) : heard(message, thread)));
    },
  });
  await coming;
  return ended;
}

test('it gives the same, bit for bit, as where it is asked for', async () => {
  const job: Job = { text: TUNE, ask: { kind: 'fit', beside: [] } };
  let outcome: unknown;
  const why = await runInThread(job, (message, thread) => {
    if (message.type === 'end') ({ outcome } = message);
    if (message.type === 'end' || message.type === 'failed') thread.stop();
  });
  expect(why).toBe('The thread ended');
  expect(outcome).toEqual(finished(studyText(job.text, job.ask)));
});

test('it is stopped in the midst of what it does, and says nothing any more', async () => {
  const said: string[] = [];
  const why = await runInThread({ text: TUNE, ask: { kind: 'tune' } }, ({ type }, thread) => {
    said.push(type);
    thread.stop();
  });
  expect(why).toBe('The thread ended');
  expect(said[0]).toBe('progress');
  expect(said).not.toContain('end');
});
