/** Least gaps in the drawing: where their lines stand, when they are seen, and keep-outs as something to choose. */
import { describe, expect, it } from 'vitest';
import { sceneOf } from '../../../webview/drawing/scene.ts';
import { drawingForAll } from '../../support/drawingForAll.ts';
import { shownOf } from '../../support/drawingPage.ts';
import { markOf, noted } from '../../support/noted.ts';

const TEXT = `format: 1
levers:
  crank: {pivot: [0, 0], width: 12 mm, arms: {out: {radius: 40 mm, angle: 30 deg}, back: {radius: 30 mm, angle: 210 deg}}}
pedal: {lever: crank, opens: counterclockwise, travel: 120 deg}
keep_out:
  post: {circle: [0, 70], radius: 10 mm, clearance: 20 mm}
  floor: {polygon: [[-60, -34], [60, -34], [60, -60], [-60, -60]]}
`;
const shown = shownOf(TEXT);
const { picture } = shown;
const scene = sceneOf(picture, 'front', undefined);

describe('the line of a least gap', () => {
  it('runs between the nearest points, with a stroke at either end', () => {
    const { figures } = noted(markOf(scene, 'gap:pedal/keep-out:post'), picture, 0);
    expect(figures.slice(0, 4).map((figure) => Math.round(figure * 100) / 100 + 0)).toEqual([0, -46, 0, -60]);
    expect(figures).toHaveLength(12);
  });

  it('is drawn by itself where the pedal is at its place, and nowhere else', () => {
    const here = markOf(scene, 'gap:pedal/keep-out:post/here');
    expect(noted(here, picture, 0.5).figures).toHaveLength(12);
    expect(noted(here, picture, 0.49).d).toBe('');
  });

  it('says by its look how it is: overlapping, too small or enough', () => {
    expect(markOf(scene, 'gap:pedal/keep-out:post').look).toBe('gap short');
    expect(markOf(scene, 'gap:pedal/keep-out:floor').look).toBe('gap deep');
  });
});

describe('in the page', () => {
  const { view, show } = drawingForAll();
  const opacities = () =>
    view.value<readonly string[]>(
      `all('.paper .gap:not(.here)').map((gap) => gap.getAttribute('class') + ' ' + getComputedStyle(gap).opacity)`,
    );
  const figures = () => view.value<readonly string[]>(`all('.overlay text.gap-figure').map((text) => text.textContent)`);

  it('a keep-out that is chosen shows its least gap, with the figure and where', async () => {
    await show(shown);
    expect(await opacities()).toEqual(['gap deep 0', 'gap short 0']);
    expect(await figures()).toEqual([]);
    await view.set('selected', { kind: 'keep-out', name: 'post' });
    expect(await opacities()).toEqual(['gap deep 0', 'gap short lit 1']);
    expect(await figures()).toEqual(['14 mm at 50 %']);
    await view.set('travel', 0.5);
    expect(await figures()).toEqual(['2 mm deep', '14 mm']);
    await view.set('travel', 0);
    await view.set('selected', undefined);
    expect(await figures()).toEqual([]);
  });

  it('a click on a keep-out chooses it and shows its text; the keyboard finds it', async () => {
    await show(shown);
    const at = await view.value<{ readonly x: number; readonly y: number }>(`(() => {
      const grip = one('.grip[data-key="keep-out:post"]');
      const { x, y } = grip.getPointAtLength(0);
      const { a, d, e, f } = grip.getScreenCTM();
      return { x: a * x + e, y: d * y + f };
    })()`);
    await view.page.mouse.click(at.x, at.y);
    await view.drawn();
    expect(await view.value(`JSON.stringify(state.selected.value)`)).toBe('{"kind":"keep-out","name":"post"}');
    expect((await view.calls()).at(-1)).toEqual({ kind: 'reveal', what: { kind: 'keep-out', name: 'post' } });
    expect(await view.value(`one('.grip[data-key="keep-out:post"]').getAttribute('aria-label')`)).toBe(
      'keep-out post: circle [0, 70], radius 10 mm, clearance 20 mm',
    );
    await view.set('selected', undefined);
  });

  it('gaps differ in dash as well as in colour', async () => {
    await show(shown);
    await view.set('selected', { kind: 'lever', name: 'crank' });
    const strokes = await view.value<readonly (readonly string[])[]>(
      `all('.paper .gap.lit').map((gap) => { const { stroke, strokeDasharray } = getComputedStyle(gap); return [stroke, strokeDasharray]; })`,
    );
    expect(strokes).toHaveLength(2);
    expect(strokes[0]![0]).not.toBe(strokes[1]![0]);
    expect(strokes[0]![1]).not.toBe(strokes[1]![1]);
    await view.set('selected', undefined);
  });
});
