/** What is worked out once is worked out once, for each thing by itself. */
import { expect, test, vi } from 'vitest';
import { later, once, oncePer } from '../../src/travel/once.ts';

test('an answer that nobody asks for is not worked out, and one that is asked for only once', () => {
  const make = vi.fn(() => [1]);
  const answer = later(make);
  expect(make).not.toHaveBeenCalled();
  expect(answer()).toBe(answer());
  expect(make).toHaveBeenCalledTimes(1);
});

test('each whole, and each part of a whole, has an answer of its own', () => {
  const [one, other] = [{ name: 'one' }, { name: 'other' }];
  const named = once(({ name }: { readonly name: string }) => ({ name }));
  expect(named(one)).toBe(named(one));
  expect([named(one), named(other)]).toEqual([{ name: 'one' }, { name: 'other' }]);
  const make = vi.fn((whole: { readonly name: string }, part: number) => ({ told: `${whole.name} ${part}` }));
  const told = oncePer(make);
  const asked = [told(one, 1), told(one, 2), told(other, 1), told(one, 1)];
  expect(asked.map((each) => each.told)).toEqual(['one 1', 'one 2', 'other 1', 'one 1']);
  expect(asked[3]).toBe(asked[0]);
  expect(make).toHaveBeenCalledTimes(3);
});
