/** What the tests of the drawing in a browser share: pictures, and one page for all tests of a file. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, beforeEach, expect } from 'vitest';
import type { Shown } from '../../src/protocol/messages.ts';
import { openDrawingPage, shownOf, type DrawingPage } from './drawingPage.ts';

export const textOfExample = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');

export const FOUR_BARREL = textOfExample('four-barrel');
export const four = shownOf(FOUR_BARREL);
export const banks = shownOf(textOfExample('two-banks'));

/** Opens a page before all tests, and shows the four-barrel before each, as a file that was never seen before. */
export function drawingForAll() {
  let opened: DrawingPage | undefined;
  /** How many files there were. */
  let files = 0;
  const page = (): DrawingPage => {
    if (opened === undefined) throw new Error('The browser is not open yet');
    return opened;
  };
  const view: DrawingPage = {
    get page() {
      return page().page;
    },
    show: (...given) => page().show(...given),
    set: (...given) => page().set(...given),
    value: (expression) => page().value(expression),
    calls: () => page().calls(),
    middleOf: (selector) => page().middleOf(selector),
    until: (holds) => page().until(holds),
    drawn: () => page().drawn(),
    errors: () => page().errors(),
    close: () => page().close(),
  };
  const show = (shown: Shown) => view.show(shown, `file:///${files}.throttle.yaml`);

  beforeAll(async () => {
    opened = await openDrawingPage({ width: 900, height: 600 });
  });
  afterAll(async () => {
    expect(opened?.errors() ?? []).toEqual([]);
    await opened?.close();
  });
  beforeEach(async () => {
    files += 1;
    await view.value<undefined>(
      `void (calls.length = 0, document.activeElement?.blur(), state.hovered.value = state.selected.value = state.compared.value = undefined,
      state.travel.value = 0, state.trial.value = [], state.direction.value = 'front', state.areNamesShown.value = false)`,
    );
    await view.page.mouse.move(1, 1);
    await view.page.setViewportSize({ width: 900, height: 600 });
    await view.until(`one('.sheet').getBoundingClientRect().width === 900`);
    await show(four);
  });

  return {
    view,
    show,
    /** The same as another file. */
    showOther: (shown: Shown) => {
      files += 1;
      return show(shown);
    },
    viewport: () =>
      view.value<{ scale: number; x: number; y: number }>(
        `(() => { const m = one('.paper').transform.baseVal.consolidate().matrix; return { scale: m.a, x: m.e, y: m.f }; })()`,
      ),
    press: async (...keys: readonly string[]) => {
      for (const key of keys) await view.page.keyboard.press(key);
      await view.drawn();
    },
    focus: (selector: string) => view.value<undefined>(`void one(${JSON.stringify(selector)}).focus()`),
    textOf: (selector: string) => view.value<string | undefined>(`one(${JSON.stringify(selector)})?.textContent`),
  };
}
