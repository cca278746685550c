import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { sayingWhenLong } from '../../../extension/features/longWork.ts';
import { cancelledToken, PATIENT, tidyUp } from '../../support/editorRequests.ts';
import { impatience, told } from '../../support/vscode.ts';

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  expect(vi.getTimerCount()).toBe(0);
  vi.useRealTimers();
  tidyUp();
});

/** Ends after some time or soon after it is not wanted. */
function lasting(milliseconds: number): (isWanted: () => boolean) => Promise<string> {
  const begin = Date.now();
  return async (isWanted) => {
    while (isWanted()) {
      if (Date.now() - begin >= milliseconds) return 'done';
      await new Promise((resolve) => setTimeout(resolve, 1));
    }
    return 'cancelled';
  };
}

async function after<T>(work: Promise<T>): Promise<T> {
  await vi.runAllTimersAsync();
  return work;
}

test('what is over soon is not mentioned', async () => {
  expect(await after(sayingWhenLong('Solving', PATIENT, lasting(100)))).toBe('done');
  expect(told).toEqual([]);
});

test('what takes long is said, once, and goes when it is done', async () => {
  expect(await after(sayingWhenLong('Solving', PATIENT, lasting(2000)))).toBe('done');
  expect(told).toEqual(['progress: Solving', 'done: Solving']);
});

test('it can be cancelled where it is said', async () => {
  impatience.cancelsProgress = true;
  expect(await after(sayingWhenLong('Solving', PATIENT, lasting(2000)))).toBe('cancelled');
});

test('it ends where the editor does not want it any more', async () => {
  expect(await after(sayingWhenLong('Solving', cancelledToken(), lasting(2000)))).toBe('cancelled');
  expect(told).toEqual([]);
});

test('what goes wrong is handed on, and the progress goes', async () => {
  const failing = sayingWhenLong('Solving', PATIENT, () => Promise.reject(new Error('broken')));
  await expect(failing).rejects.toThrow('broken');
});
