/** What is seen of each file in each view, so that a page that was hidden or loaded anew can show it again. */
import { signal } from '@preact/signals';
import { and, either, isFiniteNumber, isText, listOf, oneOf, shape, type Guard } from '../../src/protocol/guard.ts';
import type { ViewDirection } from '../state.ts';
import type { Size, Viewport } from './viewport.ts';

/** What a view is fitted to, as long as nobody has looked elsewhere. */
export type Fit = 'all' | 'engine';

export interface Look {
  /** Address of the file. */
  readonly uri: string;
  readonly direction: ViewDirection;
  readonly seen: Fit | Middle;
}

/** What stands in the middle, mm of the paper, and how large. */
export interface Middle {
  readonly x: number;
  readonly y: number;
  /** Pixels a millimetre. */
  readonly scale: number;
}

/** Of one file only: a page shows one. */
export const looks = signal<readonly Look[]>([]);

/** Beyond any drawing, and small enough to be computed with. */
const LARGEST = 1e6;
const isBounded: Guard<number> = and(isFiniteNumber, (value) => Math.abs(value) <= LARGEST);
const isScale: Guard<number> = and(isBounded, (value) => value > 1 / LARGEST);
const isLook: Guard<Look> = shape<Look>({
  uri: isText,
  direction: oneOf<ViewDirection>('front', 'top', 'side'),
  seen: either(oneOf<Fit>('all', 'engine'), shape<Middle>({ x: isBounded, y: isBounded, scale: isScale })),
});
export const areLooks: Guard<readonly Look[]> = listOf(isLook);

/** Undefined where nothing was kept of this view. */
export const lookOf = (uri: string, direction: ViewDirection): Look['seen'] | undefined =>
  looks.peek().find((look) => look.uri === uri && look.direction === direction)?.seen;

/** Keeps it; what was kept of other files goes. */
export function keepLook(look: Look): void {
  const others = looks.peek().filter(({ uri, direction }) => uri === look.uri && direction !== look.direction);
  looks.value = [...others, look];
}

export const middleIn = ({ scale, x, y }: Viewport, { width, height }: Size): Middle => ({
  x: (width / 2 - x) / scale,
  y: (height / 2 - y) / scale,
  scale,
});

export const viewportAt = ({ x, y, scale }: Middle, { width, height }: Size): Viewport => ({
  scale,
  x: width / 2 - scale * x,
  y: height / 2 - scale * y,
});
