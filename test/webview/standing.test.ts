/** How all stands at the slider, in the page in Chromium: in words that move nothing, and as a number that is typed. */
import { describe, expect, test } from 'vitest';
import type { Trial } from '../../src/protocol/messages.ts';
import { BINDING, EXAMPLE, showOf, source, viewForAll } from '../support/viewForAll.ts';

const { view, open, travel, playReturn, openReturns } = viewForAll();

const words = async () => (await view().text('.standing .at-pedal span:last-child span:last-child')).replaceAll('\u00a0', ' ');
const number = () => view().page.evaluate<string>('document.querySelector(".pedal-number").value');
const type = async (...keys: readonly string[]) => {
  await view().page.evaluate('document.querySelector(".pedal-number").focus()');
  for (const key of keys) await view().page.keyboard.press(key);
  await view().drawn();
};

describe('the words at the slider', () => {
  test('say travel, throttle and effort, and follow the slider, a trial and the next text', async () => {
    await open(showOf(EXAMPLE));
    await view().enter('Pedal travel', '40');
    expect(await number()).toBe('40.0');
    expect(await words()).toBe('throttle 33.8 % open (27.7°), effort 10.8 N, coming back 5.4 N');
    await view().enter('crank_reach, number', '41');
    const trial: Trial = [{ kind: 'value', path: 'let.crank_reach', value: 41 }];
    // The drawing of what is tried comes first, and effort after it.
    const tried = showOf(EXAMPLE.replace('38 mm', '41 mm'));
    await view().tell({ ...tried, trial, charts: tried.charts.filter(({ id }) => id !== 'effort'), coming: ['effort'] });
    expect(await words()).toMatch(/^throttle 35\.9 % open .*effort 10\.8 N, coming back 5\.4 N$/);
    expect(await view().page.evaluate('document.querySelector(".at-pedal").classList.contains("late")')).toBe(true);
    const effort = tried.charts.filter(({ id }) => id === 'effort');
    await view().tell({ type: 'follows', source, trial, charts: effort, without: [], report: undefined, facts: undefined });
    expect(await words()).not.toContain('effort 10.8 N');
    expect(await view().page.evaluate('document.querySelector(".at-pedal").classList.contains("late")')).toBe(false);
  });

  test.each([300, 700, 1600])('move nothing while it plays, at %i px', async (width) => {
    for (const text of [EXAMPLE, BINDING]) {
      await open(showOf(text), { width, height: 800 });
      await view().enter('Speed', '2');
      const heights = await view().page.evaluate<string[]>(`new Promise((done) => {
        const seen = new Set();
        let texts = 0;
        let last = '';
        named('button', 'Play').click();
        const look = () => {
          const { height } = document.querySelector('.pedal').getBoundingClientRect();
          const { left, top } = document.querySelector('.play-button').getBoundingClientRect();
          seen.add([height, left, top].join());
          const text = document.querySelector('.standing').textContent;
          if (text !== last) texts += 1;
          last = text;
          if (texts > 10 && document.querySelector('.play-button').textContent === 'Play') done([...seen]);
          else requestAnimationFrame(look);
        };
        look();
      })`);
      expect(heights).toEqual([heights[0]]);
    }
  });

  test('say that the slider does not drive the drawing while a snap-back is shown', async () => {
    await open(showOf(EXAMPLE));
    await openReturns(EXAMPLE);
    await playReturn(EXAMPLE, 'rod link');
    expect(await words()).toBe('does not drive the drawing now');
  });
});

describe('a chart', () => {
  test('tells in its text alternative where each curve is least and greatest, and marks them', async () => {
    await open(showOf(EXAMPLE), { width: 300, height: 700 });
    const said = `(() => { const drawing = document.querySelector('[data-chart=ratio] .chart-drawing');
      return [drawing.getAttribute('role'), document.getElementById(drawing.getAttribute('aria-describedby')).textContent]; })()`;
    const [role, alternative] = await view().page.evaluate<[string, string]>(said);
    expect(role).toBe('img');
    expect(alternative.replaceAll('\u00a0', ' ')).toMatch(/^shaft: least 0\.00 at 0\.0 %, greatest 4\.0\d at 98\.\d %\.$/);
    expect(await view().page.evaluate('document.querySelectorAll("[data-chart=ratio] .extremes").length')).toBe(1);
    expect(await view().text('[data-chart=margins] .limits-shaded')).toMatch(
      /^Over 10, drawn at the upper edge: shaft from 0\.0 to 100\.0/,
    );
  });
});

describe('a travel that is typed', () => {
  test('is taken with Enter, with a point or a comma, and ends a stroke', async () => {
    await open(showOf(EXAMPLE));
    await view().click('Play');
    await type('6', '2', ',', '5', 'Enter');
    expect([await travel(), await number(), await view().text('.play-button')]).toEqual([62.5, '62.5', 'Play']);
    await type('8', '0', '.', '5', 'Enter');
    expect(await travel()).toBe(80.5);
  });

  test('is not overwritten by the pedal while it is typed, and dropped with Escape', async () => {
    await open(showOf(EXAMPLE));
    await view().click('Play');
    await type('7', '7');
    await view().drawn();
    expect(await number()).toBe('77');
    await view().page.keyboard.press('Escape');
    await view().drawn();
    expect(await number()).not.toBe('77');
    expect(await view().text('.play-button')).toBe('Pause');
  });

  test.each(['140', '-3', 'half', ''])('of “%s” is refused in words, and goes as the focus leaves', async (typed) => {
    await open(showOf(EXAMPLE));
    await view().enter('Pedal travel', '40');
    await type('Delete', ...Array.from(typed), 'Enter');
    expect(await view().text('#pedal-wrong')).toBe('Not taken: write a number from 0 to 100.');
    const said = `(() => { const field = document.querySelector('.pedal-number');
      return [field.ariaInvalid, document.getElementById(field.getAttribute('aria-describedby')).textContent]; })()`;
    expect(await view().page.evaluate(said)).toEqual(['true', 'Not taken: write a number from 0 to 100.']);
    expect(await travel()).toBe(40);
    await view().page.keyboard.press('Tab');
    await view().drawn();
    expect([await view().text('#pedal-wrong'), await number(), await travel()]).toEqual(['', '40.0', 40]);
  });

  test('left as it is changes nothing, be it of more digits than are shown', async () => {
    await open(showOf(EXAMPLE));
    await view().page.evaluate('document.querySelector(".pedal-slider").focus()');
    for (const key of ['ArrowRight', 'Shift+ArrowRight']) await view().page.keyboard.press(key);
    await type('Enter', 'Tab');
    expect(await travel()).toBe(1.1);
  });

  test('goes up and down by the keys of the slider', async () => {
    await open(showOf(EXAMPLE));
    await type('ArrowUp', 'ArrowUp', 'PageUp', 'ArrowDown');
    expect([await travel(), await number()]).toEqual([11, '11.0']);
  });
});
