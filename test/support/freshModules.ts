/**
 * Each file of tests begins with modules that no other file has used, in a process that several files share, and leaves them a clock that
 * goes: with one that stands still, whatever the next file waits for would never come.
 */
import { afterAll, expect, vi } from 'vitest';

vi.resetModules();

afterAll(() => {
  const standsStill = vi.isFakeTimers();
  vi.useRealTimers();
  expect(standsStill, 'whether the file leaves the clock standing').toBe(false);
});
