/** The drawing in a browser: what part of it is seen, and how it is written over in a narrow column. */
import { describe, expect, it } from 'vitest';
import { banks, drawingForAll, four } from '../../support/drawingForAll.ts';

const { view, show, showOther, viewport, press, focus } = drawingForAll();

describe('what is seen of it', () => {
  it('shows all at first, and stays where it was put when the text changes', async () => {
    const first = await viewport();
    await focus('.sheet');
    await press('+', 'ArrowLeft');
    const near = await viewport();
    expect(near.scale).toBeCloseTo(first.scale * 1.25, 6);
    await show({ ...four, picture: { ...four.picture, levers: four.picture.levers.slice() } });
    expect(await viewport()).toEqual(near);
    await press('0');
    expect((await viewport()).scale).toBeCloseTo(first.scale, 9);
    await showOther(banks);
    expect((await viewport()).scale).not.toBeCloseTo(first.scale, 6);
  });

  it('zooms at the pointer', async () => {
    await view.page.mouse.move(300, 200);
    const before = await viewport();
    await view.page.mouse.wheel(0, -200);
    await view.until(`one('.paper').transform.baseVal.consolidate().matrix.a > ${before.scale * 1.1}`);
    const after = await viewport();
    expect((300 - after.x) / after.scale).toBeCloseTo((300 - before.x) / before.scale, 4);
    expect((200 - after.y) / after.scale).toBeCloseTo((200 - before.y) / before.scale, 4);
  });

  it('moves with the ground, and a press that did not move is a click', async () => {
    await view.set('selected', { kind: 'rod', name: 'link' });
    const before = await viewport();
    await view.page.mouse.move(400, 420);
    await view.page.mouse.down();
    await view.page.mouse.move(450, 400, { steps: 4 });
    await view.page.mouse.up();
    const after = await viewport();
    expect(after.x - before.x).toBeCloseTo(50, 3);
    expect(after.y - before.y).toBeCloseTo(-20, 3);
    expect(await view.value<unknown>('state.selected.value?.name')).toBe('link');
    await view.page.mouse.click(450, 400);
    expect(await view.value<unknown>('state.selected.value')).toBeUndefined();
  });

  it('fits again in another window, until it was looked at more closely', async () => {
    const before = await viewport();
    await view.page.setViewportSize({ width: 450, height: 600 });
    await view.until(`one('.paper').transform.baseVal.consolidate().matrix.a < ${before.scale * 0.8}`);
    await focus('.sheet');
    await press('+');
    const near = await viewport();
    await view.page.setViewportSize({ width: 900, height: 600 });
    await view.until(`one('.paper').transform.baseVal.consolidate().matrix.e !== ${near.x}`);
    const wide = await viewport();
    expect(wide.scale).toBe(near.scale);
    expect(wide.x - near.x).toBeCloseTo(225, 3);
  });
});

describe('what it is fitted to', () => {
  const inWindow = (selector: string) =>
    view.value<boolean>(`(() => { const { left, top, right, bottom } = one(${JSON.stringify(selector)}).getBoundingClientRect();
      return left >= 0 && top >= 0 && right <= innerWidth && bottom <= innerHeight; })()`);
  const click = async (name: string) => {
    await view.value<undefined>(`void all('.tools button').find((button) => button.textContent === '${name}').click()`);
    await view.drawn();
  };

  it('shows the engine side on a button and on a key, without the pedal', async () => {
    const all = await viewport();
    await click('Engine');
    const near = await viewport();
    expect(near.scale).toBeGreaterThan(1.5 * all.scale);
    for (const name of ['shaft.arm', 'bellcrank.out', 'bank']) expect(await inWindow(`[data-name="${name}"]`)).toBe(true);
    expect(await inWindow('[data-name="pedal.pad"]')).toBe(false);
    await focus('.sheet');
    await press('0');
    expect((await viewport()).scale).toBeCloseTo(all.scale, 9);
    await press('e');
    expect(await viewport()).toEqual(near);
  });

  it('stays fitted to the engine side in another window', async () => {
    await click('Engine');
    const { scale } = await viewport();
    await view.page.setViewportSize({ width: 450, height: 600 });
    await view.until(`one('.paper').transform.baseVal.consolidate().matrix.a < ${scale}`);
    for (const name of ['shaft.arm', 'bellcrank.out']) expect(await inWindow(`[data-name="${name}"]`)).toBe(true);
    await view.page.setViewportSize({ width: 900, height: 600 });
    await view.until(`one('.paper').transform.baseVal.consolidate().matrix.a === ${scale}`);
  });

  it('shows the chosen part on a key, and any part that is clicked twice', async () => {
    await view.set('selected', { kind: 'rod', name: 'link' });
    await focus('.sheet');
    const { scale } = await viewport();
    await press('f');
    const near = await viewport();
    expect(near.scale).toBeGreaterThan(2 * scale);
    expect(await inWindow('[data-name="link"]')).toBe(true);
    await press('0');
    const { x, y } = await view.middleOf('.grip[data-key="rod:link"]');
    await view.page.mouse.click(x, y);
    await view.page.mouse.click(x, y);
    await view.value<undefined>(
      `void document.elementFromPoint(${x}, ${y}).dispatchEvent(new MouseEvent('dblclick', { bubbles: true, cancelable: true }))`,
    );
    await view.drawn();
    expect(await viewport()).toEqual(near);
  });

  it('offers no engine side where that is all', async () => {
    const isOffered = () => view.value<boolean>(`all('.tools button').some((button) => button.textContent === 'Engine')`);
    expect(await isOffered()).toBe(true);
    await show({ ...four, picture: { ...four.picture, plates: [] } });
    expect(await isOffered()).toBe(false);
  });

  it('is found again in a page that is loaded anew, by place and by fit', async () => {
    await focus('.sheet');
    await press('+', '+', 'ArrowLeft');
    const near = await viewport();
    const again = async () => {
      await view.value<undefined>(
        `void (kept = JSON.parse(JSON.stringify(looks.value)), unmount(), looks.value = areLooks(kept) ? kept : [], mount())`,
      );
      await view.drawn();
    };
    await view.value<undefined>('void (globalThis.kept = undefined)');
    await again();
    const found = await viewport();
    for (const figure of ['scale', 'x', 'y'] as const) expect(found[figure]).toBeCloseTo(near[figure], 3);
    await click('Engine');
    const engine = await viewport();
    await again();
    expect(await viewport()).toEqual(engine);
  });
});

describe('in a narrow column', () => {
  it.each(['four-barrel', 'two-banks'])('has no two texts and no button on each other, with %s', async (name) => {
    await view.page.setViewportSize({ width: 300, height: 320 });
    await view.set('areNamesShown', true);
    await show(name === 'two-banks' ? banks : four);
    await view.until(`all('.overlay .name').length > 5`);
    const meeting = `(() => {
      const boxes = [...all('.overlay text'), one('.overlay path.scale'), ...all('.tools button')].map((element) => [element.textContent, element.getBoundingClientRect()]);
      const meet = (a, b) => a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 2 && b.top < a.bottom - 2;
      const pairs = boxes.flatMap(([a, one], i) => boxes.slice(i + 1).filter(([b, other]) => a !== '' && b !== '' && meet(one, other)).map(([b]) => a + ' on ' + b));
      const cut = boxes.filter(([, { left, right, top, bottom }]) => left < 0 || top < -1 || right > innerWidth || bottom > innerHeight).map(([text]) => text + ' is cut');
      return [...pairs, ...cut];
    })()`;
    expect(await view.value<string[]>(meeting)).toEqual([]);
    // The bar of the scale stands clear of the buttons too.
    expect(
      await view.value<boolean>(`(() => {
        const bar = one('.overlay path.scale').getBoundingClientRect();
        return all('.tools button').every((button) => {
          const box = button.getBoundingClientRect();
          return box.left > bar.right || box.top > bar.bottom;
        });
      })()`),
    ).toBe(true);
    for (const travel of [0.3, 0.6, 1]) {
      await view.set('travel', travel);
      expect(await view.value<string[]>(meeting)).toEqual([]);
    }
  });

  it('draws secondary things with fewer lines', async () => {
    const lengthOf = (key: string) => view.value<number>(`one('[data-name="${key}"]').getAttribute('d').length`);
    const large = await lengthOf('return_front');
    await view.page.setViewportSize({ width: 300, height: 320 });
    await view.until(`one('.sheet').classList.contains('small')`);
    expect(await lengthOf('return_front')).toBeLessThan(large / 2);
  });
});
