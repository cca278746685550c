/** What helps to read the page, in Chromium: an index, what was opened and scrolled to found again, and plain words. */
import { describe, expect, test } from 'vitest';
import { handMadeShow } from '../support/handMadeShown.ts';
import { EXAMPLE, showOf, source, viewForAll } from '../support/viewForAll.ts';

const { view, open } = viewForAll();

const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('the index of the page', () => {
  test('names every section in order, is unseen until the focus comes to it, and leads there with the focus', async () => {
    await open(showOf(EXAMPLE), { width: 700, height: 700 });
    const titles = (selector: string) =>
      view().page.evaluate<string[]>(`[...document.querySelectorAll('${selector}')].map((each) => each.textContent)`);
    expect(await titles('.index a')).toEqual(await titles('.side h2'));
    const size = () => view().page.evaluate<number>('document.querySelector(".index").getBoundingClientRect().width');
    expect(await size()).toBe(1);
    await view().page.keyboard.press('Tab');
    expect(await view().page.evaluate('document.activeElement.textContent')).toBe('Findings');
    expect(await size()).toBeGreaterThan(100);
    await view().page.evaluate('document.querySelector(".index a[href=\\"#charts-title\\"]").focus()');
    await view().page.keyboard.press('Enter');
    await view().drawn();
    const at = `[document.activeElement.id, document.activeElement.getBoundingClientRect().top]`;
    const [id, top] = await view().page.evaluate<[string, number]>(at);
    expect(id).toBe('charts-title');
    // Beneath the pedal, which stays in sight.
    expect(top).toBeGreaterThanOrEqual(
      await view().page.evaluate<number>('document.querySelector(".pedal").getBoundingClientRect().bottom'),
    );
    expect(top).toBeLessThan(350);
    expect(await size()).toBe(1);
    expect(view().errors()).toEqual([]);
  });

  test('follows what comes and goes', async () => {
    await open(showOf(EXAMPLE));
    const has = (title: string) =>
      view().page.evaluate(`[...document.querySelectorAll('.index a')].some((each) => each.textContent.startsWith('${title}'))`);
    expect(await has('rod link')).toBe(false);
    await view().tell({ type: 'select', source, part: { kind: 'rod', name: 'link' }, step: true, dial: undefined });
    await view().drawn();
    expect(await has('rod link')).toBe(true);
  });
});

describe('where somebody has read to', () => {
  test('is found again with the lists that were opened', async () => {
    await open(showOf(EXAMPLE), { width: 700, height: 700 });
    await view().click('Show all');
    await view().page.evaluate('window.scrollTo(0, 1234)');
    await view().until('window.keptState?.scrolled === 1234 && window.keptState.lists?.length === 1');
    const state = await view().state();
    await open(showOf(EXAMPLE), { width: 700, height: 700, state });
    await view().until('Math.round(scrollY) === 1234');
    expect(await view().page.evaluate('named("button", "Show the first").ariaExpanded')).toBe('true');
    // What was kept may be anything.
    await open(showOf(EXAMPLE), { width: 700, height: 700, state: { scrolled: 'far', lists: 7 } });
    expect(await view().page.evaluate('scrollY')).toBe(0);
  });

  test('is left to whoever moves the page first', async () => {
    await view().load({ width: 700, height: 700, state: { scrolled: 1234 } });
    await view().page.keyboard.press('Shift');
    await view().tell(showOf(EXAMPLE));
    await view().drawn();
    expect(await view().page.evaluate('scrollY')).toBe(0);
  });
});

describe('the card of a part', () => {
  const card = async (kind: 'rod' | 'lever' | 'sensor' | 'plates', name: string) => {
    await open(showOf(EXAMPLE));
    await view().tell({ type: 'select', source, part: { kind, name }, step: true, dial: undefined });
    return (
      await view().page.evaluate<string[]>(`[...document.querySelectorAll('.step-card .figures > div')].map((row) => row.textContent)`)
    ).map(plain);
  };

  test('says the limits of a figure beside it, and those of no figure by themselves', async () => {
    const rows = await card('rod', 'link');
    expect(rows).toContainEqual(expect.stringMatching(/^least transmission angle51\.2°at 98\.1 %.*warning below 40°, error below 25°$/));
    expect(rows.slice(0, 2)).toEqual(['Goes inbellcrank opens 75.3° at 98.1 %', 'Comes outshaft opens 82° at 98.1 %']);
    expect(rows).toContainEqual(expect.stringMatching(/^greatest end tilt0°at 0\.0 %.*error above 12°$/));
    await view().tell(handMadeShow());
    await view().tell({ type: 'select', source: handMadeShow().source, part: { kind: 'rod', name: 'link' }, step: true, dial: undefined });
    expect(await view().page.evaluate(`document.querySelector('.step-card .plain li').textContent`)).toBe(
      'transmission angle: warning below 40°, error below 25°',
    );
  });

  test('says nothing twice, and no backticks', async () => {
    expect((await card('lever', 'shaft')).map((row) => row.slice(0, 8))).toEqual(['Goes inl', 'opens82°']);
    expect(await card('sensor', 'position')).toHaveLength(3);
    expect((await card('plates', 'bank')).slice(0, 2)).toEqual([
      'Goes inshaft opens 82° at 98.1 %',
      'Comes out0.4 % at rest, 100 % at full pedal, of its greatest open area',
    ]);
    expect(await view().text('.step-card')).not.toContain('`');
    expect(await view().page.evaluate(`[...document.querySelectorAll('.step-card code')].map((each) => each.textContent)`)).toContain(
      'vacuum',
    );
  });
});
