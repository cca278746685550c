import { describe, expect, it } from 'vitest';
import { askedFor } from '../../src/numeric/askedFor.ts';
import { keptOn } from '../../src/numeric/keptOn.ts';

interface Sum {
  readonly sum: number;
  readonly first: number | undefined;
}

const summed = askedFor<Sum>('sum', 'first');

describe('members that are asked for', () => {
  it('are worked out when asked for, each time, and by each object for itself', () => {
    const asked: string[] = [];
    const make = (name: string, list: readonly number[]): Sum & { name: string } =>
      summed(
        { name },
        {
          sum() {
            asked.push(name);
            return list.reduce((all, each) => all + each, 0);
          },
          first: () => list[0],
        },
      );
    const [one, other] = [make('one', [1, 2]), make('other', [])];
    expect(asked).toEqual([]);
    expect([one.sum, other.sum, one.first, other.first]).toEqual([3, 0, 1, undefined]);
    expect(asked).toEqual(['one', 'other']);
  });

  it('stand in copies, as those written with `get` do', () => {
    const copy = { ...summed({ name: 'one' }, { sum: () => 4, first: () => 4 }) };
    expect(copy).toEqual({ name: 'one', sum: 4, first: 4 });
    expect(Object.getOwnPropertyDescriptor(copy, 'sum')).toMatchObject({ value: 4 });
  });
});

describe('what is kept on an object', () => {
  it('is known of that object alone, and of no copy', () => {
    const known = keptOn<object, number>();
    const [one, other] = [{ name: 'one' }, { name: 'one' }];
    known.set(one, 1);
    known.set(one, 2);
    expect([known.get(one), known.get(other), known.get({ ...one })]).toEqual([2, undefined, undefined]);
    expect(Object.keys(one)).toEqual(['name']);
  });

  it('is kept apart from what others keep on it', () => {
    const [known, alike] = [keptOn<readonly number[], string>(), keptOn<readonly number[], string>()];
    const list = [1];
    known.set(list, 'a list');
    expect([known.get(list), alike.get(list), list.length]).toEqual(['a list', undefined, 1]);
  });
});
