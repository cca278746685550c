/** Wheel and fingers on the drawing, for real: what Chromium makes of them, and what is then under the pointer. */
import { beforeAll, describe, expect, test } from 'vitest';
import type { DevTools } from '../../../scripts/editorHosts/chromium.mjs';
import { EXAMPLE, showOf, viewForAll } from '../../support/viewForAll.ts';

const { view, open, toldOf } = viewForAll();

let devTools: DevTools;

beforeAll(async () => {
  devTools = await view().page.context().newCDPSession(view().page);
});

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What of the paper, mm, is at a spot of the window, by the browser's own account of where it has put the paper; and how many px are 1 mm. */
const under = ({ x, y }: Spot) =>
  view().page.evaluate<Spot & { readonly scale: number }>(`(() => {
    const matrix = document.querySelector('.drawing .paper').getScreenCTM();
    const { x, y } = new DOMPoint(${x}, ${y}).matrixTransform(matrix.inverse());
    return { x, y, scale: matrix.a };
  })()`);

/** The window as a whole is not zoomed, which the browser would do by itself. */
const zoomOfWindow = () => view().page.evaluate('[devicePixelRatio, visualViewport.scale, scrollY]');

const place = async (across: number, down: number): Promise<Spot> => {
  const { left, top, width, height } = await view().page.evaluate<{ left: number; top: number; width: number; height: number }>(
    `(({ left, top, width, height }) => ({ left, top, width, height }))(document.querySelector('.drawing .sheet').getBoundingClientRect())`,
  );
  return { x: Math.round(left + across * width), y: Math.round(top + down * height) };
};

const touch = async (type: 'touchStart' | 'touchMove' | 'touchEnd', ...points: readonly Spot[]) => {
  await devTools.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(({ x, y }, id) => ({ x, y, id })) });
  await view().drawn();
};

const between = (from: Spot, to: Spot, share: number): Spot => ({
  x: from.x + share * (to.x - from.x),
  y: from.y + share * (to.y - from.y),
});

const sameSpot = (a: Spot, b: Spot, within: number) => {
  expect(Math.abs(a.x - b.x)).toBeLessThan(within);
  expect(Math.abs(a.y - b.y)).toBeLessThan(within);
};

describe('a wheel', () => {
  test.each([
    ['alone', 0],
    ['with Ctrl, as a pinch on a touch pad comes', 2],
  ])('%s enlarges and makes smaller about the pointer, and leaves the page as it is', async (_, modifiers) => {
    await open(showOf(EXAMPLE));
    const at = await place(0.3, 0.4);
    const [before, window] = [await under(at), await zoomOfWindow()];
    await devTools.send('Input.dispatchMouseEvent', { type: 'mouseWheel', ...at, deltaX: 0, deltaY: -120, modifiers });
    await view().until(`document.querySelector('.drawing .paper').getScreenCTM().a > ${1.05 * before.scale}`);
    const larger = await under(at);
    // A thousandth of a millimetre: the browser rounds the matrix to single precision.
    sameSpot(larger, before, 1e-2);
    expect(await zoomOfWindow()).toEqual(window);
    await devTools.send('Input.dispatchMouseEvent', { type: 'mouseWheel', ...at, deltaX: 0, deltaY: 120, modifiers });
    await view().until(`document.querySelector('.drawing .paper').getScreenCTM().a < ${0.96 * larger.scale}`);
    const again = await under(at);
    expect(again.scale).toBeCloseTo(before.scale, 4);
    sameSpot(again, before, 1e-2);
    expect(view().errors()).toEqual([]);
  });
});

describe('fingers', () => {
  test('two that part keep under each what was under it, and the page stays', async () => {
    await open(showOf(EXAMPLE));
    const [a, b] = [await place(0.4, 0.5), await place(0.6, 0.5)];
    const [a2, b2] = [await place(0.3, 0.35), await place(0.7, 0.55)];
    const window = await zoomOfWindow();
    await touch('touchStart', a, b);
    const [underA, underB] = [await under(a), await under(b)];
    // The first stretch of a move tells a press from a drag, so what is under the fingers is taken after it.
    for (const share of [0.2, 0.4, 0.6, 0.8, 1]) await touch('touchMove', between(a, a2, share), between(b, b2, share));
    const [nowA, nowB] = [await under(a2), await under(b2)];
    expect(nowA.scale / underA.scale).toBeGreaterThan(1.5);
    // Their direction turned, which a drawing that does not turn can follow along it alone: what was midway stays midway.
    const middle = (one: Spot, other: Spot): Spot => ({ x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 });
    sameSpot(middle(nowA, nowB), middle(underA, underB), 12 / nowA.scale);
    await touch('touchEnd');
    expect(await zoomOfWindow()).toEqual(window);
    expect(toldOf('reveal-part')).toEqual([]);
    expect(view().errors()).toEqual([]);
  });

  test('one moves the paper with it, and a tap chooses a part', async () => {
    await open(showOf(EXAMPLE));
    const [from, to] = [await place(0.5, 0.9), await place(0.6, 0.7)];
    await touch('touchStart', from);
    for (const share of [0.3, 0.6, 1]) await touch('touchMove', between(from, to, share));
    const now = await under(to);
    await touch('touchMove', between(from, to, 0.5));
    sameSpot(await under(between(from, to, 0.5)), now, 1e-2);
    await touch('touchEnd');
    expect(toldOf('reveal-part')).toEqual([]);
    const pivot = await view().page.evaluate<Spot>(`(() => {
      const { left, top, width, height } = document.querySelector('.drawing [data-key^="plates"], .drawing [data-key^="rod"]').getBoundingClientRect();
      return { x: left + width / 2, y: top + height / 2 };
    })()`);
    await touch('touchStart', pivot);
    await touch('touchEnd');
    await view().until('document.querySelector(".load-path [aria-current]") !== null');
    expect(toldOf('reveal-part').length).toBe(1);
  });
});
