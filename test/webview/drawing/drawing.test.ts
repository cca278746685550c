/** The drawing in a browser: what stands in the SVG, and what a person does to it. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { solve } from '../../../src/solve.ts';
import { banks, drawingForAll, four, FOUR_BARREL as TEXT, textOfExample } from '../../support/drawingForAll.ts';
import { shownOf } from '../../support/drawingPage.ts';
import { longChain } from '../../support/longChain.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const broken = shownOf(textOfExample('binding-broken'));
const long = shownOf(longChain(64));

const { view, show, viewport, press, focus, textOf } = drawingForAll();
const kinds = async () => (await view.calls()).map(({ kind }) => kind);

describe('what is drawn', () => {
  it('has its pins to a hundredth of a millimetre where the table has them', async () => {
    const stations = [0, 0.25, 0.5, 0.75, 1];
    const openings = solve(TEXT).table(stations, ['shaft.rotation']).columns[0]!.values;
    for (const [i, station] of stations.entries()) {
      await view.set('travel', station);
      const [x, y] = await view.value<[number, number]>(
        `['cx', 'cy'].map((name) => Number(one('[data-name="shaft.arm"]').getAttribute(name)))`,
      );
      // From the file: pivot [604, 172], radius 32 mm, 140°.
      const angle = ((140 + openings[i]!) * Math.PI) / 180;
      expect(Math.abs(x - (604 + 32 * Math.cos(angle)))).toBeLessThan(0.01);
      expect(Math.abs(-y - (172 + 32 * Math.sin(angle)))).toBeLessThan(0.01);
    }
  });

  it('writes attributes as the pedal moves, and neither makes nor removes an element', async () => {
    const changed = await view.value<[number, number]>(`new Promise((done) => {
      let [attributes, children] = [0, 0];
      const watch = new MutationObserver((records) => {
        for (const { type } of records) if (type === 'attributes') attributes += 1; else children += 1;
      });
      watch.observe(one('.sheet'), { attributes: true, childList: true, subtree: true });
      for (let i = 1; i <= 40; i++) state.travel.value = i / 40;
      setTimeout(() => { watch.disconnect(); done([attributes, children]); });
    })`);
    expect(changed[0]).toBeGreaterThan(100);
    expect(changed[1]).toBe(0);
  });

  it('offers other views only of what leaves its plane', async () => {
    const names = () => view.value<string[]>(`all('.tools [aria-label="View"] button').map((button) => button.textContent)`);
    expect(await names()).toEqual([]);
    await show(banks);
    expect(await names()).toEqual(['Front', 'Top', 'Side']);
    const front = await view.value<string>(`one('[data-name="bellcrank.front"]').getAttribute('cy')`);
    await view.value<undefined>(`void all('.tools button')[1].click()`);
    await view.drawn();
    expect(await view.value<string>(`one('[data-name="bellcrank.front"]').getAttribute('cy')`)).not.toBe(front);
    expect(await view.value<string>(`one('.paper').getAttribute('aria-label')`)).toMatch(/^Top view to scale: 5 levers/);
  });

  it('dashes what has no position and says where it stands', async () => {
    await show(broken);
    await view.set('travel', 0.9);
    expect(await view.value<boolean>(`one('[data-name="shaft.arm"]').classList.contains('stands')`)).toBe(true);
    expect(await view.value<boolean>(`one('[data-name="bellcrank.out"]').classList.contains('stands')`)).toBe(false);
    expect(await textOf('.overlay .stopped')).toMatch(/^shaft stands as at 5\d(\.\d)? %: no position here$/);
    await view.set('travel', 0.3);
    expect(await view.value<number>(`all('.overlay .stopped, .paper .stands').length`)).toBe(0);
  });

  it('has the state that it is compared with behind it, at the same travel', async () => {
    await view.set('compared', { label: 'HEAD', other: banks, changes: [], effects: [] });
    const before = await view.value<string>(`one('.other path').getAttribute('d')`);
    await view.set('travel', 0.5);
    expect(await view.value<string>(`one('.other path').getAttribute('d')`)).not.toBe(before);
    await view.set('compared', undefined);
    expect(await view.value<number>(`all('.other path').length`)).toBe(0);
  });

  it('is an empty sheet where there is nothing to draw', async () => {
    const none = {
      levers: [],
      rods: [],
      cables: [],
      slots: [],
      couplings: [],
      plates: [],
      sensors: [],
      springs: [],
      keepOuts: [],
      handles: [],
    };
    await show({ ...four, picture: { ...four.picture, ...none } });
    expect(await view.value<string>(`one('.paper').getAttribute('aria-label')`)).toBe('Front view to scale: nothing to draw yet.');
    expect(await view.value<number>(`all('.grip, .handle').length`)).toBe(0);
  });
});

describe('what it tells', () => {
  it('lights a part up and tells its dimensions under the pointer', async () => {
    const { x, y } = await view.middleOf('.grip[data-key="rod:link"]');
    await view.page.mouse.move(x, y);
    await view.drawn();
    expect(await textOf('.tip strong')).toBe('rod link');
    expect(await view.value<boolean>(`one('[data-name="link"]').classList.contains('lit')`)).toBe(true);
    await view.page.mouse.click(x, y);
    expect((await view.calls()).at(-1)).toEqual({ kind: 'reveal', what: { kind: 'rod', name: 'link' } });
    await view.page.mouse.move(300, 500);
    await view.drawn();
    expect(await textOf('.tip')).toBeUndefined();
    // Chosen, it stays lit.
    expect(await view.value<boolean>(`one('[data-name="link"]').classList.contains('lit')`)).toBe(true);
  });

  it('is read by keys alone: Tab to the parts, arrows from one to the next in load-path order, Enter to its text', async () => {
    await focus('.sheet');
    await press('Tab');
    const order = [await view.value<string>('document.activeElement.dataset.key')];
    const count = await view.value<number>(`all('.grip').length`);
    for (let i = 1; i < count; i++) {
      await press('ArrowRight');
      order.push(await view.value<string>('document.activeElement.dataset.key'));
    }
    const { parts } = four.report;
    expect(order).toEqual(parts.map(({ kind, name }) => (kind === 'pedal' ? 'lever:pedal' : `${kind}:${name}`)));
    const last = parts.at(-1)!;
    expect(await textOf('.tip strong')).toBe(`${last.kind} ${last.name}`);
    for (const dimension of last.dimensions) expect(await textOf('.tip')).toContain(dimension);
    expect(await view.value<string>(`document.activeElement.getAttribute('aria-label')`)).toContain(last.dimensions[0] ?? last.name);
    await press('Enter');
    expect((await view.calls()).at(-1)).toEqual({ kind: 'reveal', what: { kind: last.kind, name: last.name } });
    await press('Escape');
    expect(await view.value<boolean>(`document.activeElement === one('.sheet')`)).toBe(true);
  });

  it('has three stops of the Tab key however much is drawn: itself, its parts, its handles', async () => {
    await show(long);
    expect(long.picture.handles.length).toBeGreaterThan(100);
    await focus('.sheet');
    const stops: string[] = [];
    for (let i = 0; i < 3; i++) {
      await press('Tab');
      stops.push(await view.value<string>(`document.activeElement.getAttribute('class') || document.activeElement.textContent`));
    }
    expect(stops).toEqual(['grip', 'handle', 'Names']);
  });

  it('begins at the handles of the part that is chosen', async () => {
    await view.set('selected', { kind: 'lever', name: 'shaft' });
    await focus('.sheet');
    await press('Tab', 'Tab');
    expect(await view.value<string>('document.activeElement.dataset.path')).toMatch(/^levers\.shaft\.|^points\.shaft_centre$/);
  });

  it('names everything on a key', async () => {
    await focus('.sheet');
    expect(await view.value<number>(`all('.overlay .name').length`)).toBe(0);
    await press('n');
    const names = await view.value<string[]>(`all('.overlay .name').map((text) => text.textContent)`);
    expect(names).toEqual(expect.arrayContaining(['pedal', 'bellcrank', 'shaft', 'main', 'link', 'bank, 4 ×', 'position', 'return_front']));
    await press('n');
    expect(await view.value<number>(`all('.overlay .name').length`)).toBe(0);
  });

  it('says at rest how all stands', async () => {
    await view.set('travel', 1);
    await view.until(`one('.drawing [role=status]').textContent.startsWith('At 100 %')`);
    expect(await textOf('.drawing [role=status]')).toContain('pedal opened 27°');
  });
});

describe('who it can be read by', () => {
  it.each(['four-barrel', 'two-banks', 'binding-broken'])(
    'breaks no rule of accessibility that a machine can check, with %s',
    async (name) => {
      await show({ 'four-barrel': four, 'two-banks': banks, 'binding-broken': broken }[name]!);
      await view.set('areNamesShown', true);
      await view.set('travel', 0.9);
      await view.value<number>(`${AXE};0`);
      expect(
        await view.value<string[]>(`axe.run('#place').then(({ violations }) => violations.map(({ id, help }) => id + ': ' + help))`),
      ).toEqual([]);
    },
  );
});

describe('what it moves', () => {
  const PIVOT = '[data-path="points.crank_pivot"]';
  const PIN = '[data-path="levers.bellcrank.arms.out"]';

  const drag = async (selector: string, dx: number, dy: number) => {
    const { x, y } = await view.middleOf(selector);
    await view.page.mouse.move(x, y);
    await view.page.mouse.down();
    await view.page.mouse.move(x + dx, y + dy, { steps: 3 });
  };

  it('tries a pivot live and writes it once, to a tenth of a millimetre', async () => {
    const { scale } = await viewport();
    await drag(PIVOT, 20, 10);
    await view.page.mouse.up();
    const calls = await view.calls();
    expect(calls.map(({ kind }) => kind).filter((kind) => kind === 'write')).toHaveLength(1);
    const write = calls.find(({ kind }) => kind === 'write')!.what as { to: number[]; path: string; fine: boolean; through: unknown }[];
    const [{ to, ...rest }] = write as [(typeof write)[0]];
    expect(rest).toMatchObject({ kind: 'place', path: 'points.crank_pivot', fine: false });
    // From the file: [512, 148].
    const tenths = (figure: number) => Math.round(figure * 10_000) / 10_000;
    expect(to).toEqual([tenths(0.512 + 0.02 / scale), tenths(0.148 - 0.01 / scale), 0]);
    expect(calls.filter(({ kind }) => kind === 'try').length).toBeGreaterThan(1);
    expect(calls.at(-1)).toEqual({ kind: 'try', what: [] });
  });

  it('drops it on Escape', async () => {
    await drag(PIVOT, 20, 10);
    await press('Escape');
    await view.page.mouse.up();
    expect((await view.calls()).at(-1)).toEqual({ kind: 'try', what: [] });
    expect(await kinds()).not.toContain('write');
  });

  it('asks which let is to give way, and writes nothing before', async () => {
    await drag(PIN, -12, 0);
    await view.page.mouse.up();
    await view.drawn();
    expect(await kinds()).not.toContain('write');
    expect(await view.value<string[]>(`all('.choice button').map((button) => button.textContent)`)).toEqual([
      'Change crank_reach',
      'Leave as it was',
    ]);
    await press('Enter');
    const write = (await view.calls()).find(({ kind }) => kind === 'write');
    expect(write?.what).toMatchObject([{ path: 'levers.bellcrank.arms.out', through: 'crank_reach' }]);
    expect(await view.value<number>(`all('.choice').length`)).toBe(0);
    expect(await view.value<string>('document.activeElement.dataset.path')).toBe('levers.bellcrank.arms.out');
  });

  it('leaves a place as it was where no let is chosen', async () => {
    await drag(PIN, -12, 0);
    await view.page.mouse.up();
    await view.drawn();
    await press('Escape');
    expect(await kinds()).not.toContain('write');
    expect((await view.calls()).at(-1)).toEqual({ kind: 'try', what: [] });
  });

  it('takes a handle on Enter, moves it by arrows, and writes it once on Enter', async () => {
    await focus(PIVOT);
    await press('Enter');
    expect(await view.value<string>(`one('${PIVOT}').getAttribute('aria-pressed')`)).toBe('true');
    expect(await textOf('.drawing [role=status]')).toMatch(/^Holding crank_pivot: pivot of bellcrank: arrows move it/);
    await press('ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowUp');
    expect(await textOf('.drawing [role=status]')).toBe('crank_pivot: pivot of bellcrank at [512.3, 148.1] mm');
    expect(await kinds()).not.toContain('write');
    await press('Enter');
    const writes = (await view.calls()).filter(({ kind }) => kind === 'write');
    expect(writes).toHaveLength(1);
    expect(writes[0]!.what).toMatchObject([{ path: 'points.crank_pivot', to: [0.5123, 0.1481, 0] }]);
    expect(await view.value<string>(`one('${PIVOT}').getAttribute('aria-pressed')`)).toBe('false');
  });

  it('goes by arrows from one handle to the next while none is held, round and round', async () => {
    const paths = four.picture.handles.map(({ path }) => path);
    const at = paths.indexOf('points.crank_pivot');
    const focused = () => view.value<string>('document.activeElement.dataset.path');
    await focus(PIVOT);
    await press('ArrowRight');
    expect(await focused()).toBe(paths[(at + 1) % paths.length]);
    await press('ArrowUp', 'ArrowLeft');
    expect(await focused()).toBe(paths[(at - 1 + paths.length) % paths.length]);
    expect(await view.value<number>(`all('.handle[tabindex="0"]').length`)).toBe(1);
    for (const _ of paths) await press('ArrowDown');
    expect(await focused()).toBe(paths[(at - 1 + paths.length) % paths.length]);
    expect(await view.calls()).toEqual([]);
  });

  it('lets go on Escape, with nothing written', async () => {
    await focus(PIVOT);
    await press('Enter', 'ArrowRight', 'Escape');
    expect(await kinds()).not.toContain('write');
    expect((await view.calls()).at(-1)).toEqual({ kind: 'try', what: [] });
    await press('ArrowRight');
    expect(await view.value<string>('document.activeElement.dataset.path')).not.toBe('points.crank_pivot');
  });

  it('keeps the focus of a handle, and its hold, while pictures come', async () => {
    await focus(PIVOT);
    await press('Enter', 'ArrowRight');
    await show(four);
    expect(await view.value<string>('document.activeElement.dataset.path')).toBe('points.crank_pivot');
    await press('ArrowRight');
    expect((await view.calls()).at(-1)!.what).toMatchObject([{ to: [0.5122, 0.148, 0] }]);
    await press('Escape');
  });

  it('has the ring where the picture of what is tried has the pin', async () => {
    await view.set('travel', 0.5);
    const DRIVEN = '[data-path="levers.shaft.arms.arm"]';
    await view.until(
      `Math.abs(Number(one('${DRIVEN}').getAttribute('cx')) - Number(one('[data-name="shaft.arm"]').getAttribute('cx'))) < 0.01`,
    );
    await drag(DRIVEN, 12, 9);
    const [tried] = (await view.calls()).at(-1)!.what as { to: [number, number, number] }[];
    // The editor's answer: the same linkage with the arm's pin at the place that was tried, from the text.
    const at = tried!.to.slice(0, 2).map((figure) => Number((1000 * figure).toFixed(2)));
    const answer = shownOf(TEXT.replace(/^( {6}arm: ).*$/m, `$1{at: [${at.join(', ')}]}`));
    await view.value<undefined>(`void (state.shownTrial.value = state.trial.value)`);
    await show(answer);
    const apart = await view.value<number>(`(() => {
      const at = (selector, name) => Number(one(selector).getAttribute(name));
      return Math.hypot(...['cx', 'cy'].map((name) => at('${DRIVEN}', name) - at('[data-name="shaft.arm"]', name)));
    })()`);
    expect(apart).toBeLessThan(0.01);
    await press('Escape');
    await view.page.mouse.up();
  });

  it('turns a pin that is moved at full pedal back to where it is drawn', async () => {
    await view.set('travel', 1);
    await view.until(
      `Math.abs(Number(one('${PIN}').getAttribute('cx')) - Number(one('[data-name="bellcrank.out"]').getAttribute('cx'))) < 0.01`,
    );
    const { scale } = await viewport();
    const opened = solve(TEXT).table([1], ['bellcrank.rotation']).columns[0]!.values[0]!;
    await drag(PIN, 15, 0);
    const tried = (await view.calls()).at(-1)!.what as { to: number[] }[];
    await press('Escape');
    await view.page.mouse.up();
    // From the file: pivot [512, 148], radius 38 mm, 166°. What moves right on the screen moves by minus the rotation as drawn.
    const drawn = (166 * Math.PI) / 180;
    const back = (-opened * Math.PI) / 180;
    const step = 15 / scale;
    expect(1000 * tried[0]!.to[0]!).toBeCloseTo(512 + 38 * Math.cos(drawn) + step * Math.cos(back), 0);
    expect(1000 * tried[0]!.to[1]!).toBeCloseTo(148 + 38 * Math.sin(drawn) + step * Math.sin(back), 0);
  });
});

describe('the drawing as a file', () => {
  it('stands alone: millimetres, colours written out, no script, nothing from elsewhere', async () => {
    await show({ ...four, report: { ...four.report, title: 'Rev <b> & "C"' } });
    const text = await view.value<string>('drawingSvg()');
    const facts = await view.value<Record<string, unknown>>(`(() => {
      const file = new DOMParser().parseFromString(drawingSvg(), 'image/svg+xml');
      const svg = file.documentElement;
      return {
        root: svg.tagName, title: svg.querySelector('title').textContent, width: svg.getAttribute('width'),
        view: svg.getAttribute('viewBox'), foreign: svg.querySelectorAll('script, image, foreignObject, style, [class], [href], [onload]').length,
        unstroked: [...svg.querySelectorAll('g path, g circle')].filter((mark) => !mark.hasAttribute('stroke')).length,
        marks: svg.querySelectorAll('path, circle').length,
        pin: Number([...svg.querySelectorAll('circle')].at(-1).getAttribute('stroke-width')),
      };
    })()`);
    expect(facts).toMatchObject({ root: 'svg', title: 'Rev <b> & "C"', foreign: 0, unstroked: 0 });
    expect(facts.marks).toBeGreaterThan(20);
    expect(text).not.toMatch(/var\(|color\(|https?:\/\/(?!www\.w3\.org\/2000\/svg)/);
    // As many millimetres of paper as of the file: 900 px at so many to the millimetre.
    const { scale } = await viewport();
    expect(parseFloat(String(facts.width))).toBeCloseTo(900 / scale, 1);
    expect(facts.view).toBe('0 0 900 600');
    // 1.75 px on the screen, whatever the zoom.
    expect(facts.pin).toBeCloseTo(1.75 / scale, 3);
  });
});
