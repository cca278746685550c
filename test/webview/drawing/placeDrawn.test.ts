import { expect, test } from 'vitest';
import { placeDrawn, type Drawn } from '../../../webview/drawing/paper.ts';
import type { Pose } from '../../../webview/drawing/pose.ts';

const pose = (pixel: number): Pose => ({ pixel }) as Pose;

function drawnOf(from: readonly number[] | undefined): { readonly drawn: Drawn; count(): number; follow(next: readonly number[]): void } {
  let count = 0;
  const place = (): void => {
    count += 1;
  };
  const mark = (next: readonly number[] | undefined): Drawn['mark'] => ({
    moves: false,
    place,
    ...(next === undefined ? {} : { from: next }),
  });
  const drawn = { mark: mark(from), placed: undefined } as Drawn;
  return { drawn, count: () => count, follow: (next) => (drawn.mark = mark(next)) };
}

test('a mark that says what it follows from is placed again only where that or the zoom is another', () => {
  const { drawn, count, follow } = drawnOf([1, 2]);
  placeDrawn(drawn, pose(1));
  placeDrawn(drawn, pose(1));
  expect(count()).toBe(1);
  follow([1, 2]);
  placeDrawn(drawn, pose(1));
  expect(count()).toBe(1);
  follow([1, 2.5]);
  placeDrawn(drawn, pose(1));
  expect(count()).toBe(2);
  placeDrawn(drawn, pose(2));
  expect(count()).toBe(3);
});

test('one that says nothing of it is placed each time', () => {
  const { drawn, count } = drawnOf(undefined);
  placeDrawn(drawn, pose(1));
  placeDrawn(drawn, pose(1));
  expect(count()).toBe(2);
});
