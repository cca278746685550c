/** The page in Chromium at the sizes that it may have. */
import { describe, expect, test } from 'vitest';
import { longChain } from '../support/longChain.ts';
import { OUTSIDE } from '../support/outside.ts';
import { EXAMPLE, showOf, viewForAll } from '../support/viewForAll.ts';

const { view, open, openFull } = viewForAll();

describe('on any screen', () => {
  test.each([
    ['300 px', { width: 300, height: 700 }],
    ['1 600 px', { width: 1600, height: 900 }],
    ['1 600 px at 200 %', { width: 800, height: 450 }],
    ['700 px at 200 %', { width: 350, height: 400 }],
  ])('nothing is cut at %s, and nothing scrolls sideways', async (_, options) => {
    await openFull(options);
    expect(await view().page.evaluate(OUTSIDE)).toEqual([0]);
    await open(showOf(longChain(64)), options);
    expect(await view().page.evaluate(OUTSIDE)).toEqual([0]);
    expect(view().errors()).toEqual([]);
  });

  test('in one column the pedal stays in sight while the charts are read, and hides nothing that has the focus', async () => {
    await openFull({ width: 500, height: 700 });
    const { page } = view();
    await page.evaluate('window.scrollTo(0, document.documentElement.scrollHeight)');
    const [top, bottom] = await page.evaluate<[number, number]>(
      '(({ top, bottom }) => [Math.round(top), bottom])(document.querySelector(".pedal").getBoundingClientRect())',
    );
    expect(top).toBe(0);
    const hidden =
      await page.evaluate(`(() => [...document.querySelectorAll('.side button, .side input, .side select')].filter((element) => {
      if (element.getBoundingClientRect().width === 0) return false;
      window.scrollTo(0, document.documentElement.scrollHeight);
      element.focus();
      return element.getBoundingClientRect().top < ${bottom} - 1;
    }).map((element) => element.outerHTML.slice(0, 120)))()`);
    expect(hidden).toEqual([]);
  });

  test('a very long title leaves the verdict in sight', async () => {
    await open(showOf(EXAMPLE.replace(/^title: .*$/m, `title: ${'A very long title '.repeat(200)}`)), { width: 500, height: 700 });
    const { page } = view();
    const height = await page.evaluate<number>('document.querySelector(".verdict h1").getBoundingClientRect().height');
    const line = await page.evaluate<number>('parseFloat(getComputedStyle(document.querySelector(".verdict h1")).lineHeight)');
    expect(height).toBeLessThanOrEqual(3 * line + 1);
    expect(await page.evaluate('document.querySelector(".verdict h1").scrollHeight')).toBeGreaterThan(height);
  });

  test('stands in two columns where there is room', async () => {
    const besideEachOther = `document.querySelector('.drawing').getBoundingClientRect().right <= document.querySelector('.side').getBoundingClientRect().left + 1`;
    await open(showOf(EXAMPLE), { width: 1600 });
    expect(await view().page.evaluate(besideEachOther)).toBe(true);
    expect(
      await view().page.evaluate('Math.round(100 * document.querySelector(".stage").offsetWidth / document.documentElement.clientWidth)'),
    ).toBe(60);
    await open(showOf(EXAMPLE), { width: 700 });
    expect(await view().page.evaluate(besideEachOther)).toBe(false);
  });
});
