/** A thread that fails, which no real host can be made to have at will. That threads run at all is tested in real editors. */
import { afterEach, expect, test, vi } from 'vitest';
import { Uri } from 'vscode';
import { failuresGoTo } from '../../../extension/logFailure.ts';
import { createStudyRunner } from '../../../extension/studies/runStudy.ts';
import type { ThreadEars } from '../../../extension/studies/thread.ts';
import { emptyDisk, writeFile } from '../../support/vscode.ts';

/** What the thread does once it has begun; where it throws, none begins. */
const thread = vi.hoisted(() => ({
  begin:
    (_: ThreadEars): ((job: unknown) => void) =>
    () =>
      undefined,
  stopped: 0,
}));

vi.mock('../../../extension/studies/thread.ts', () => ({
  startThread: (_: string, ears: ThreadEars) =>
    Promise.resolve().then(() => ({ post: thread.begin(ears), stop: () => (thread.stopped += 1) })),
}));

const JOB = { text: 'format: 1\n', ask: { kind: 'tune' } } as const;
const REFUSED = { kind: 'refused', why: 'Nothing in the file can be solved' };

function run(begin: typeof thread.begin) {
  thread.begin = begin;
  thread.stopped = 0;
  const logged: unknown[] = [];
  const lines: string[] = [];
  const logging = failuresGoTo({
    failed: (error, during) => void logged.push([during, error instanceof Error ? error.message : error]),
    info: (line) => void lines.push(line.replace(/\d+ ms/g, '… ms')),
  });
  writeFile('file:///extension/build/extension/extension.js', '');
  const runner = createStudyRunner(Uri.parse('file:///extension'));
  ending = () => {
    runner.dispose();
    logging.dispose();
  };
  return { runner, logged, lines };
}

let ending = (): void => undefined;

afterEach(() => {
  ending();
  emptyDisk();
});

const nothingTold = (): void => undefined;

test('a thread that ends in the middle is told to who waits, and logged', async () => {
  const { runner, logged } = run((ears) => {
    ears.heard({ type: 'ready' });
    return () => ears.failed('Out of memory');
  });
  await expect(runner.run(JOB, nothingTold).done).rejects.toThrow(
    'The study broke off: Out of memory. Run it again; “Show Log” of Pedal to Plate says more.',
  );
  expect(logged).toEqual([['A study in a thread of its own', 'Out of memory']]);
  expect(thread.stopped).toBe(1);
});

test.each([
  [
    'cannot begin',
    (): never => {
      throw new Error('refused by policy');
    },
    'refused by policy',
  ],
  [
    'ends at once',
    (ears: ThreadEars) => {
      ears.failed('no such module');
      return nothingTold;
    },
    'no such module',
  ],
])('where a thread %s the study runs in the host, and why is logged once', async (_, begin, why) => {
  const { runner, logged, lines } = run(begin);
  expect(await runner.run(JOB, nothingTold).done).toEqual(REFUSED);
  expect(await runner.run(JOB, nothingTold).done).toEqual(REFUSED);
  expect(logged).toEqual([['No thread came up for studies, which run in the host instead', why]]);
  const told = "Study tune, in the extension host: refused after … ms, the editor's turn after … ms at most";
  expect(lines).toEqual([told, told]);
});

test('the log tells of each study where it ran', async () => {
  const { runner, logged, lines } = run((ears) => {
    ears.heard({ type: 'ready' });
    return () => ears.heard({ type: 'end', outcome: REFUSED });
  });
  expect(await runner.run(JOB, nothingTold).done).toEqual(REFUSED);
  const given = runner.run(JOB, nothingTold);
  given.cancel();
  expect(await given.done).toBeUndefined();
  expect(lines).toEqual(['Study tune, in a thread of its own: refused after … ms']);
  expect(logged).toEqual([]);
});
