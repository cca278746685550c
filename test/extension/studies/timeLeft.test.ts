import { expect, test } from 'vitest';
import { estimateTimeLeft } from '../../../extension/studies/timeLeft.ts';

test('is told once enough is done, as fast as it went so far', () => {
  const left = estimateTimeLeft();
  expect(left({ share: 0, note: 'searching' }, 1000)).toBeUndefined();
  expect(left({ share: 0.01, note: 'searching' }, 3000)).toBeUndefined();
  // A quarter in 2 s: three more of them.
  expect(left({ share: 0.25, note: 'searching' }, 3000)).toBeCloseTo(6, 9);
  expect(left({ share: 1, note: 'searching' }, 5000)).toBe(0);
});

test('is counted anew with what is done next, and where it begins again', () => {
  const left = estimateTimeLeft();
  left({ share: 0, note: 'searching' }, 0);
  expect(left({ share: 0.5, note: 'searching' }, 4000)).toBeCloseTo(4, 9);
  expect(left({ share: 0.5, note: 'bands' }, 5000)).toBeUndefined();
  expect(left({ share: 0.75, note: 'bands' }, 6000)).toBeCloseTo(1, 9);
  expect(left({ share: 0.1, note: 'bands' }, 9000)).toBeUndefined();
});
