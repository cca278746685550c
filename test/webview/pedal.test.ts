/** The pedal of the page in Chromium, and all that is done by keyboard. */
import { describe, expect, test } from 'vitest';
import { handMadeShow } from '../support/handMadeShown.ts';
import { EXAMPLE, showOf, viewForAll } from '../support/viewForAll.ts';

const { view, open, travel, openFull } = viewForAll();

describe('the pedal', () => {
  test('is a slider in percent and millimetres, by words', async () => {
    await open(showOf(EXAMPLE));
    await view().enter('Pedal travel', '40');
    expect(await view().page.evaluate('document.querySelector(".pedal-slider").getAttribute("aria-valuetext")')).toMatch(
      /^40\.0.% of pedal travel, 45\.2.mm at the pad, throttle 33\.8.% open \(27\.7°\), effort 10\.8.N, coming back 5\.4.N$/,
    );
    expect(await view().text('.values span:last-child')).toMatch(/^At 40\.0.%: shaft opening [\d.]+.%, bank area [\d.]+.%$/);
  });

  test('plays one stroke and rests at 0, saying nothing to the editor on the way', async () => {
    await open(showOf(EXAMPLE));
    await view().enter('Speed', '2');
    // What was chosen is kept at rest; after that nothing is.
    await view().until('window.keptState?.speed === 2');
    const kept = await view().timesKept();
    const seen = await view().page.evaluate<number[]>(`new Promise((done) => {
      const slider = document.querySelector('.pedal-slider');
      const seen = [];
      named('button', 'Play').click();
      const look = () => {
        seen.push(Number(slider.value));
        if (seen.length > 5 && document.querySelector('.play-button').textContent === 'Play') done(seen);
        else requestAnimationFrame(look);
      };
      look();
    })`);
    const top = seen.indexOf(Math.max(...seen));
    expect(seen[top]).toBeGreaterThan(95);
    expect(seen.slice(0, top).every((at, index) => index === 0 || at >= seen[index - 1]!)).toBe(true);
    expect(seen.at(-1)).toBe(0);
    expect(view().told()).toEqual([{ type: 'ready' }]);
    expect(await view().timesKept()).toBe(kept);
    expect(await view().text('main ~ [role=status]')).toBe('At rest, pedal at 0 %');
  });

  test.each(['system', 'class'] as const)(
    'goes in tenths where motion is unwelcome to the %s, and keeps nothing on the way',
    async (lessMotion) => {
      await open(showOf(EXAMPLE), { lessMotion });
      expect(await view().text('.play-button')).toBe('Play');
      await view().until('window.timesKept === 1');
      const seen = await view().page.evaluate<number[]>(`new Promise((done) => {
      const slider = document.querySelector('.pedal-slider');
      const seen = new Set();
      named('button', 'Play').click();
      const look = () => {
        seen.add(Number(slider.value));
        if (seen.size === 4) done([...seen]);
        else requestAnimationFrame(look);
      };
      look();
    })`);
      // A frame that comes late skips a tenth, as a clock would.
      expect(seen.filter((place) => place % 10 !== 0)).toEqual([]);
      expect(seen).toEqual([...seen].sort((a, b) => a - b));
      expect(seen[0]).toBe(0);
      expect(await view().timesKept()).toBe(1);
    },
  );

  test('stops where nobody sees it', async () => {
    await open(showOf(EXAMPLE));
    await view().click('Play');
    await view().page.evaluate(
      `Object.defineProperty(document, 'hidden', { value: true }); document.dispatchEvent(new Event('visibilitychange'))`,
    );
    await view().drawn();
    expect(await view().text('.play-button')).toBe('Play');
  });

  test('goes to the worst place of each finding by key and by button', async () => {
    await open(handMadeShow());
    await view().page.keyboard.press('.');
    expect(await travel()).toBe(100);
    await view().page.keyboard.press('.');
    expect(await travel()).toBe(40);
    await view().page.keyboard.press(',');
    expect(await travel()).toBe(100);
    await view().click('Go to the worst, at 40.0');
    expect(await travel()).toBe(40);
  });

  test('follows the pointer on any chart', async () => {
    await open(showOf(EXAMPLE), { height: 2600 });
    const [left, right, y] = await view().page.evaluate<[number, number, number]>(`(() => {
      const grid = document.querySelector('.chart-drawing .axis:not(g .axis)') ?? document.querySelector('.chart-drawing > .axis');
      grid.scrollIntoView({ block: 'center' });
      const box = grid.getBoundingClientRect();
      return [box.left, box.right, box.top - 40];
    })()`);
    await view().page.mouse.move(left + 0.25 * (right - left), y);
    await view().page.mouse.down();
    await view().page.mouse.move(left + 0.75 * (right - left), y);
    await view().drawn();
    expect(await travel()).toBeCloseTo(75, 0);
    await view().page.mouse.up();
    await view().page.mouse.move(left, y);
    expect(await travel()).toBeCloseTo(75, 0);
  });
});

describe('by keyboard alone', () => {
  test('everything is reached in the order of the page, with a focus that shows, and the way leads out again', async () => {
    await openFull();
    await view().page.evaluate(
      `{ const main = document.querySelector('main'); main.tabIndex = -1; main.focus(); main.removeAttribute('tabindex'); }`,
    );
    const expected = await view().page.evaluate<number>(
      `[...document.querySelectorAll('main :is(a[href], button:not(:disabled), input, select, [tabindex="0"])')].filter((element) => element.tabIndex === 0 && element.closest('.drawing') === null).length`,
    );
    const seen: { index: number; isShown: boolean; isInDrawing: boolean }[] = [];
    for (let press = 0; press < expected + 60; press++) {
      await view().page.keyboard.press('Tab');
      const at = await view().page.evaluate<(typeof seen)[0] | null>(`(() => {
        const element = document.activeElement;
        if (element === document.body || element === null) return null;
        const { outlineStyle, outlineWidth } = getComputedStyle(element);
        return {
          index: [...document.querySelectorAll('*')].indexOf(element),
          isShown: outlineStyle !== 'none' && parseFloat(outlineWidth) > 0,
          isInDrawing: element.closest('.drawing') !== null,
        };
      })()`);
      if (at === null) break;
      seen.push(at);
    }
    const beside = seen.filter(({ isInDrawing }) => !isInDrawing);
    expect(beside).toHaveLength(expected);
    expect(beside.filter(({ isShown }) => !isShown)).toEqual([]);
    expect(beside.map(({ index }) => index)).toEqual(beside.map(({ index }) => index).sort((a, b) => a - b));
  });

  test('the pedal moves, plays and pauses, and a list tells the keys', async () => {
    await open(showOf(EXAMPLE));
    await view().page.keyboard.press('ArrowRight');
    expect(await travel()).toBe(1);
    await view().page.evaluate(`named('input', 'Pedal travel').focus()`);
    for (const key of ['End', 'PageDown', 'ArrowLeft', 'Shift+ArrowLeft']) await view().page.keyboard.press(key);
    expect(await travel()).toBe(88.9);
    await view().page.keyboard.press(' ');
    await view().drawn();
    expect(await view().text('.play-button')).toBe('Pause');
    await view().page.keyboard.press(' ');
    await view().drawn();
    expect(await view().text('.play-button')).toBe('Play');
    await view().page.keyboard.press('?');
    expect(await view().page.evaluate('document.querySelector("dialog").open')).toBe(true);
    await view().page.keyboard.press('Escape');
    expect(await view().page.evaluate('document.querySelector("dialog").open')).toBe(false);
    expect(view().told()).toEqual([{ type: 'ready' }]);
  });

  test('a key that a control has its own use for is left to it', async () => {
    await open(showOf(EXAMPLE));
    await view().page.evaluate(`named('input', 'crank_reach, number').focus()`);
    for (const key of ['.', ',', '?', ' ', 'Home']) await view().page.keyboard.press(key);
    expect(await travel()).toBe(0);
    expect(await view().page.evaluate('document.querySelector("dialog").open')).toBe(false);
    await view().page.evaluate(`named('button', 'Step through').focus()`);
    await view().page.keyboard.press(' ');
    expect(await view().text('.play-button')).toBe('Play');
    expect(await view().text('#step-title')).toBe('pedal, 1 of 9');
  });
});
