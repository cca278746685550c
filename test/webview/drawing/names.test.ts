/** Names of all parts at once, in a browser: none on another, none cut, and those without room counted. */
import { describe, expect, it } from 'vitest';
import type { Shown } from '../../../src/protocol/messages.ts';
import { banks, drawingForAll, four } from '../../support/drawingForAll.ts';
import { shownOf } from '../../support/drawingPage.ts';
import { longChain } from '../../support/longChain.ts';

const long = shownOf(longChain(64));

const { view } = drawingForAll();

/** As a file of its own, which is fitted: another text of one that was seen stays where it was put. */
let files = 0;
const show = (shown: Shown) => view.show(shown, `file:///names${(files += 1)}.throttle.yaml`);

interface Written {
  readonly names: readonly string[];
  readonly note: string;
  /** Texts that lie on each other by more than a hair, or stick out of the drawing. */
  readonly wrong: readonly string[];
}

const written = () =>
  view.value<Written>(`(() => {
    const room = one('.sheet').getBoundingClientRect();
    const texts = all('.overlay text').map((text) => ({ text: text.textContent, look: text.getAttribute('class'), box: text.getBoundingClientRect() }));
    const lie = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4;
    const wrong = texts.flatMap((one, i) => [
      ...texts.slice(i + 1).filter((other) => lie(one.box, other.box)).map((other) => one.text + ' on ' + other.text),
      ...(one.box.left < room.left - 1 || one.box.right > room.right + 1 || one.box.top < room.top - 1 || one.box.bottom > room.bottom + 1 ? [one.text + ' sticks out'] : []),
    ]);
    const names = texts.filter(({ look }) => look === 'name').map(({ text }) => text);
    return { names, note: texts.filter(({ look }) => look === 'unnamed').map(({ text }) => text).join(' '), wrong };
  })()`);

const resize = async (width: number, height: number) => {
  await view.page.setViewportSize({ width, height });
  await view.until(`one('.sheet').getBoundingClientRect().width === ${width}`);
  await view.drawn();
};

const FILES: readonly (readonly [string, Shown])[] = [
  ['four barrels', four],
  ['the largest example', banks],
  ['64 loops', long],
];

describe('all names', () => {
  it.each(FILES.flatMap(([what, shown]) => [300, 1600].map((width) => [what, width, shown] as const)))(
    'of %s at %i px lie on nothing, and what has no room is counted',
    async (_, width, shown) => {
      await resize(width, width === 300 ? 240 : 900);
      await show(shown);
      await view.set('areNamesShown', true);
      for (const travel of [0, 0.6]) {
        await view.set('travel', travel);
        const { names, note, wrong } = await written();
        expect(wrong).toEqual([]);
        expect(names.length).toBeGreaterThan(0);
        const left = Number(/^\d+/.exec(note)?.[0] ?? 0);
        // Fitted, the places of all parts are on the screen: each has its name or is counted.
        expect(names.length + left).toBe(shown.report.parts.length);
      }
    },
  );

  it('of four barrels all have room on a wide screen, and of 64 loops on a narrow one most have none', async () => {
    await resize(1600, 900);
    await show(four);
    await view.set('areNamesShown', true);
    expect((await written()).note).toBe('');
    await resize(300, 240);
    await show(long);
    const { names, note } = await written();
    expect(note).toMatch(/^\d+ names have no room: enlarge, or point at the part$/);
    expect(Number.parseInt(note)).toBeGreaterThan(names.length);
  });

  it('that had no room are looked for again where the drawing is enlarged', async () => {
    await resize(300, 240);
    await show(long);
    await view.set('areNamesShown', true);
    const before = Number(/^\d+/.exec((await written()).note)?.[0]);
    for (let i = 0; i < 6; i++) await view.value<undefined>(`void all('.tools button').at(-1).click()`);
    await view.drawn();
    const { names, note, wrong } = await written();
    expect(wrong).toEqual([]);
    expect(Number(/^\d+/.exec(note)?.[0] ?? 0)).toBeLessThan(before);
    expect(names.length).toBeGreaterThan(0);
  });
});
