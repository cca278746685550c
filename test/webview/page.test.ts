/** The page in Chromium, beside a stub of the editor: what it shows of what it is told. */
import { describe, expect, test } from 'vitest';
import { PROTOCOL } from '../../src/protocol/messages.ts';
import type { ToView } from '../../src/protocol/messages.ts';
import { solve } from '../../src/solve.ts';
import { handMadeShow } from '../support/handMadeShown.ts';
import { longChain } from '../support/longChain.ts';
import { BINDING, EXAMPLE, showOf, source, viewForAll } from '../support/viewForAll.ts';

const { view, open, toldOf, travel } = viewForAll();

describe('the page', () => {
  test('says what it is waiting for until something comes', async () => {
    await view().load();
    expect(await view().text('main')).toContain('Waiting for the throttle file');
    expect(view().told()).toEqual([{ type: 'ready' }]);
    expect(view().errors()).toEqual([]);
  });

  test('shows verdict, caution, findings, requirements, load path, charts and figures of a file', async () => {
    const show = showOf(EXAMPLE);
    await open(show);
    expect(await view().text('h1')).toBe('Four barrels, one shaft');
    expect(await view().text('.verdict-line')).toBe(show.report.verdict);
    expect(await view().page.evaluate(`document.body.textContent.split(${JSON.stringify(show.report.caution)}).length - 1`)).toBe(1);
    expect(await view().page.evaluate('[...document.querySelectorAll("h2")].map((title) => title.textContent)')).toEqual([
      'Findings',
      'Requirements',
      'Load path',
      'Try values',
      'Figures',
      'If one part fails',
      'Studies',
      'Charts',
      'Compare',
      'Save',
      'Not checked',
      'Keys',
    ]);
    expect(await view().page.evaluate('document.querySelectorAll(".chart").length')).toBe(show.charts.length);
    expect(view().errors()).toEqual([]);
  });

  test('says in the load path where the figure of a part holds', async () => {
    await open(showOf(EXAMPLE));
    const rows = await view().page.evaluate<string[]>('[...document.querySelectorAll(".part-row")].map((row) => row.textContent)');
    // The same as the command line prints of this example.
    expect(rows.find((row) => row.startsWith('link'))).toMatch(/least transmission angle 51\.2° at 98\.1.%$/);
  });

  test('shows markup in any text as text', async () => {
    const hostile = '<img src=x onerror=alert(1)><b>x</b>&amp;';
    const TEXTS = new Set(['title', 'verdict', 'caution', 'message', 'cure', 'label', 'text', 'takes', 'gives', 'fileName']);
    // These are looked up by one another, so each keeps what it is.
    const NAMES = new Set(['name', 'part', 'drum', 'column']);
    const markedAt = (key: string, value: unknown): unknown =>
      TEXTS.has(key) ? hostile : NAMES.has(key) && typeof value === 'string' ? `${value}${hostile}` : marked(value);
    const marked = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(marked)
        : value instanceof Float64Array || typeof value !== 'object' || value === null
          ? value
          : Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, markedAt(key, inner)]));
    const show = marked(handMadeShow()) as ToView;
    await open(show);
    await view().tell({
      type: 'compare',
      source: handMadeShow().source,
      label: hostile,
      other: undefined,
      changes: [],
      effects: [hostile],
    });
    expect(await view().text('h1')).toBe(hostile);
    await view().page.evaluate(`document.querySelector('.drawing .sheet').focus()`);
    await view().page.keyboard.press('n');
    await view().drawn();
    const names = await view().page.evaluate<string[]>('[...document.querySelectorAll(".overlay .name")].map((name) => name.textContent)');
    expect(names.length).toBeGreaterThan(2);
    // The pedal's lever is called so whatever its name.
    for (const name of names.filter((each) => each !== 'pedal')) expect(name).toContain(hostile);
    expect(await view().page.evaluate('document.querySelectorAll("#view b, #view img, main b, main img").length')).toBe(0);
    expect(view().errors()).toEqual([]);
  });

  test('leads from a finding to the fixes for it, where there are any', async () => {
    await open(handMadeShow());
    expect(
      await view().page.evaluate(
        '[...document.querySelectorAll("[aria-labelledby=findings-title] .finding")].map((each) => each.textContent.includes("Fixes…"))',
      ),
    ).toEqual([true, false, false]);
    await view().click('Fixes…');
    expect(toldOf('mend')).toEqual([{ type: 'mend', source: handMadeShow().source, place: { start: 40, end: 44 } }]);
  });

  test('keeps the last good picture of a broken file, and leads to what is missing', async () => {
    await open(showOf(EXAMPLE));
    const missing = [{ message: '`pedal` has no `opens`', place: { start: 7, end: 12 } }];
    await view().tell({ type: 'broken', source: { ...source, version: 2 }, fileName: 'linkage.throttle.yaml', missing });
    expect(await view().text('.broken')).toContain('pedal has no opens');
    expect(await view().page.evaluate('document.querySelector(".drawing").classList.contains("dimmed")')).toBe(true);
    expect(await view().text('.verdict')).toContain('What follows is of the last picture');
    await view().click('pedal has no');
    expect(toldOf('reveal')).toEqual([{ type: 'reveal', source: { ...source, version: 2 }, place: { start: 7, end: 12 } }]);
    await view().tell(showOf(EXAMPLE, 3));
    expect(await view().page.evaluate('document.querySelector(".broken")')).toBe(null);
  });

  test('tells in an empty file what to write, and that can be drawn', async () => {
    await view().load();
    await view().tell({ type: 'broken', source, fileName: 'a', missing: [{ message: 'the file is empty', place: { start: 0, end: 0 } }] });
    const example = await view().text('pre');
    expect(showOf(example).picture.levers.map(({ name }) => name)).toEqual(['pedal']);
    expect(solve(example).problems).toEqual([]);
  });

  test('says that the file is gone, and comes back with it', async () => {
    await open(showOf(EXAMPLE));
    await view().tell({ type: 'gone', reason: 'The file was deleted' });
    expect(await view().text('.notice')).toBe('The file was deleted');
    await view().tell(showOf(EXAMPLE, 0));
    expect(await view().text('.notice')).toBe('nothing there');
  });

  test('leaves aside what is malformed, unknown, late or repeated, and goes on', async () => {
    const show = showOf(EXAMPLE, 5);
    await open(show);
    for (const message of [
      undefined,
      'show',
      { protocol: PROTOCOL, kind: 'notice', notice: { ...show, charts: 7 } },
      { protocol: PROTOCOL, kind: 'sing' },
    ]) {
      await view().tellRaw(message);
    }
    await view().tell({ ...showOf(BINDING, 4) });
    await view().tell(show);
    expect(await view().text('h1')).toBe('Four barrels, one shaft');
    expect(await view().page.evaluate('document.querySelector("[data-ignoredmalformed]").dataset.ignoredmalformed')).toBe('4');
    await view().tellRaw({ protocol: 99, kind: 'notice', notice: show });
    expect(await view().text('[role=alert]:not(:empty)')).toContain('another version');
    expect(view().errors()).toEqual([]);
  });

  test('shows 64 loops, the first parts and curves with names', async () => {
    await open(showOf(longChain(64)));
    expect(await view().page.evaluate('document.querySelectorAll(".part-row").length')).toBe(12);
    await view().click('Show all 1');
    expect(await view().page.evaluate('document.querySelectorAll(".part-row").length')).toBeGreaterThan(128);
    const labels = 'document.querySelector("[aria-labelledby=chart-angles]").querySelectorAll';
    expect(await view().page.evaluate(`${labels}(".label").length`)).toBe(8);
    expect(await view().page.evaluate(`${labels}(".line").length`)).toBe(8);
    // The others are one shape, until the part of one of them is lit.
    expect(await view().page.evaluate(`${labels}(".others").length`)).toBe(1);
    const other = 'rod_20';
    expect(await view().page.evaluate(`[...${labels}(".curve title")].map((title) => title.textContent)`)).not.toContain(
      `${other}.transmission`,
    );
    await view().tell({ type: 'select', source, part: { kind: 'rod', name: other }, step: false, dial: undefined });
    expect(await view().page.evaluate(`[...${labels}(".curve.lit title")].map((title) => title.textContent).sort()`)).toEqual([
      `${other}.drive`,
      `${other}.transmission`,
    ]);
    expect(view().errors()).toEqual([]);
  });

  test('shows as far as it goes what cannot be assembled beyond half travel', async () => {
    await open(showOf(BINDING));
    await view().enter('Pedal travel', '80');
    expect(await view().page.evaluate('document.querySelector(".pedal-slider").getAttribute("aria-valuetext")')).toMatch(
      /^80\.0.% of pedal travel, .*, no position here: the last that could be solved is at 54\.6.%$/,
    );
    expect(await view().text('.values span:last-child')).toMatch(/^At 80\.0.%: shaft opening –/);
    expect(view().errors()).toEqual([]);
  });
});

describe('the load path', () => {
  test('selects a part in the text by a click, and steps from part to part', async () => {
    await open(showOf(EXAMPLE));
    await view().click('link');
    expect(toldOf('reveal-part')).toEqual([{ type: 'reveal-part', source, part: { kind: 'rod', name: 'link' } }]);
    await view().click('Step through');
    expect(await view().text('#step-title')).toBe('rod link, 4 of 9');
    await view().click('Next');
    expect(await view().text('#step-title')).toBe('lever shaft, 5 of 9');
    expect(toldOf('reveal-part').at(-1)!.part).toEqual({ kind: 'lever', name: 'shaft' });
  });
});

describe('the card of a part', () => {
  test.each([
    [300, 700],
    [700, 800],
    [1600, 900],
  ])('is in sight together with the drawing on a page of %i × %i px, wherever it was before', async (width, height) => {
    await open(showOf(EXAMPLE), { width, height });
    await view().click('link');
    await view().click('Step through');
    await view().page.evaluate('window.scrollTo(0, document.documentElement.scrollHeight)');
    await view().page.evaluate(`named('button', 'Next').click()`);
    await view().drawn();
    await view().drawn();
    const seen = await view().page.evaluate<
      readonly number[]
    >(`[document.querySelector('.stage > .drawing'), document.getElementById('step-title')]
      .flatMap((each) => { const { top, bottom } = each.getBoundingClientRect(); return [top, bottom]; })`);
    expect(Math.min(...seen)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...seen)).toBeLessThanOrEqual(height);
  });
});

describe('what is kept', () => {
  test('is found again, and what is not understood is left aside', async () => {
    await open(showOf(EXAMPLE));
    await view().enter('Pedal travel', '25');
    await view().click('Opening and open area as a table');
    await view().click('Larger');
    await view().until(
      'window.keptState?.travel === 0.25 && window.keptState.tables.length === 1 && window.keptState.looks[0]?.seen.scale > 0',
    );
    const seen =
      'document.querySelector(".drawing .paper").getAttribute("transform").match(/[-.0-9e]+/g).map((figure) => Math.round(1000 * figure))';
    const before = await view().page.evaluate<number[]>(seen);
    const state = await view().state();
    expect(state).toMatchObject({ uri: source.uri, tables: ['progression'] });
    await open(showOf(EXAMPLE), { state });
    expect(await view().page.evaluate(seen)).toEqual(before);
    expect([await travel(), await view().text('.chart table thead')]).toEqual([25, 'pedal, %shaft opening, %bank area, %']);
    await open(showOf(EXAMPLE), {
      state: { travel: 'far', speed: -3, tables: 7, direction: 'below', selected: [], uri: {}, looks: [{ uri: '', seen: NaN }] },
    });
    expect(await travel()).toBe(0);
    expect(view().errors()).toEqual([]);
  });
});
