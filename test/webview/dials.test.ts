/** Values tried and files saved from the page, in Chromium. */
import { describe, expect, test } from 'vitest';
import type { ToView } from '../../src/protocol/messages.ts';
import { handMadeShow } from '../support/handMadeShown.ts';
import { EXAMPLE, showOf, source, viewForAll } from '../support/viewForAll.ts';

const { view, open, toldOf } = viewForAll();

describe('dials', () => {
  test('try one figure at a time, show the curves from before, and write when told', async () => {
    await open(showOf(EXAMPLE));
    await view().enter('crank_reach, slider', '40');
    await view().enter('crank_reach, number', '41.5');
    const first = toldOf('try');
    expect(first.map(({ trial }) => trial)).toEqual([[{ kind: 'value', path: 'let.crank_reach', value: 40 }]]);
    await view().tell({ ...showOf(EXAMPLE.replace('38 mm', '40 mm')), trial: first[0]!.trial });
    expect(toldOf('try').at(-1)!.trial).toEqual([{ kind: 'value', path: 'let.crank_reach', value: 41.5 }]);
    expect(await view().page.evaluate('document.querySelectorAll("path.ghost.before").length')).toBeGreaterThan(5);
    expect(await view().text('.verdict .hint')).toContain('none of it is written');
    expect(await view().text('.dial-was')).toMatch(/^was 38\.0.mm$/);
    await view().until('document.querySelectorAll(".figures .figure-was").length > 3');
    // The figures tried end otherwise at the stop, which the verdict alone does not say.
    await view().tell({ ...showOf(EXAMPLE.replace('38 mm', '41.5 mm')), trial: toldOf('try').at(-1)!.trial });
    expect(await view().text('.trial')).toMatch(/Now: .*meets its open stop/);
    await view().click('Write this value');
    const [asked] = view().asked();
    expect(asked).toMatchObject({ name: 'write', asks: { source, trial: [{ value: 41.5 }] } });
    await view().answer(asked!, { version: 2 });
    await view().tell(showOf(EXAMPLE.replace('38 mm', '41.5 mm'), 2));
    expect(await view().text('.trial')).toBe('The value stands in the text.Undo');
    await view().click('Undo');
    expect(toldOf('undo')).toEqual([{ type: 'undo' }]);
    // In a box a key is the box's; anywhere else the text is meant.
    await view().page.evaluate(`named('input', 'crank_reach, number').focus()`);
    await view().page.keyboard.press('Control+z');
    await view().page.evaluate('document.activeElement.blur()');
    await view().page.keyboard.press('Control+z');
    await view().page.keyboard.press('Control+Shift+z');
    await view().drawn();
    expect([toldOf('undo').length, toldOf('redo').length]).toEqual([2, 1]);
    await view().tell(showOf(EXAMPLE, 3));
    expect(await view().text('.trial')).toBe('nothing there');
    expect(await view().text('.verdict .hint')).toBe('nothing there');
    expect(await view().page.evaluate('document.querySelectorAll("path.ghost.before").length')).toBe(0);
  });

  test('are dropped by Escape', async () => {
    await open(showOf(EXAMPLE));
    await view().enter('crank_reach, number', '41');
    await view().tell({ ...showOf(EXAMPLE.replace('38 mm', '41 mm')), trial: toldOf('try')[0]!.trial });
    await view().page.keyboard.press('Escape');
    await view().drawn();
    expect(toldOf('try').at(-1)!.trial).toEqual([]);
  });

  test('say what they do not take for a number, and try nothing then', async () => {
    await open(showOf(EXAMPLE));
    const typed = async (text: string) => {
      await view().enter('crank_reach, number', text);
      return [
        await view().text('.number-wrong:not(#pedal-wrong)'),
        await view().page.evaluate(`named('input', 'crank_reach, number').ariaInvalid`),
      ];
    };
    expect(await typed('38,5')).toEqual(['Not taken: write 38.5, with a point.', 'true']);
    for (const text of ['1.5 inch', 'abc', '1e999', 'NaN', '--5']) {
      expect(await typed(text)).toEqual(['Not taken: write a number in mm.', 'true']);
    }
    expect(await typed('')).toEqual(['', null]);
    expect(toldOf('try').flatMap(({ trial }) => trial)).toEqual([]);
    expect(await typed('41 mm')).toEqual(['', null]);
    expect(toldOf('try').at(-1)!.trial).toEqual([{ kind: 'value', path: 'let.crank_reach', value: 41 }]);
    await view().tell({ ...showOf(EXAMPLE.replace('38 mm', '41 mm')), trial: toldOf('try').at(-1)!.trial });
    // Half of what was typed is not tried either.
    await typed('41,5');
    expect(toldOf('try').at(-1)!.trial).toEqual([]);
    await view().page.evaluate('document.activeElement.blur()');
    await view().drawn();
    expect(await view().page.evaluate(`named('input', 'crank_reach, number').value`)).toBe('38');
    expect(await view().text('.number-wrong:not(#pedal-wrong)')).toBe('');
  });

  test('are stepped by the arrow keys in the number, too', async () => {
    await open(showOf(EXAMPLE));
    await view().page.evaluate(`named('input', 'crank_reach, number').focus()`);
    await view().page.keyboard.press('ArrowDown');
    await view().drawn();
    const value = Number(await view().page.evaluate(`named('input', 'crank_reach, number').value`));
    expect(value).toBeLessThan(38);
    expect(toldOf('try').at(-1)!.trial).toEqual([{ kind: 'value', path: 'let.crank_reach', value }]);
  });

  test('give no verdict where the file cannot be solved', async () => {
    const show = showOf(EXAMPLE);
    const broken: ToView = {
      type: 'broken',
      source,
      fileName: show.fileName,
      missing: [{ message: 'A throttle file is a block of keys', place: { start: 0, end: 1 } }],
    };
    await open(show);
    await view().tell(broken);
    await view().enter('crank_reach, number', '-5');
    await view().tell(broken);
    const said = await view().text('.trial p');
    expect(said).toMatch(/^Not checked/);
    expect(said).not.toContain(show.report.verdict);
  });

  test('give no verdict of what is drawn and not judged yet, and give it once it is', async () => {
    await open(showOf(EXAMPLE));
    await view().enter('crank_reach, number', '41');
    const { trial } = toldOf('try').at(-1)!;
    const tried = showOf(EXAMPLE.replace('38 mm', '41 mm'));
    await view().tell({ ...tried, trial, coming: ['report'], report: undefined });
    expect(await view().text('.trial p')).toBe('Solving…');
    expect(await view().text('.trial')).not.toContain(tried.report.verdict);
    const { report } = tried;
    await view().tell({ type: 'follows', source, trial, charts: [], without: [], report, facts: undefined });
    expect(await view().text('.trial p')).toContain(report.verdict);
  });

  test('say why a figure was not written', async () => {
    await open(showOf(EXAMPLE));
    await view().enter('crank_reach, number', '41');
    await view().click('Write this value');
    await view().refuse(view().asked()[0]!, 'The file is read-only');
    expect(await view().text('.notice[role=alert]')).toContain('Not written: The file is read-only');
  });

  test('offer the number under the cursor', async () => {
    await open(handMadeShow());
    const dial = {
      path: 'rods.link.length',
      label: 'length',
      value: 93.1,
      unit: 'mm',
      step: 0.1,
      least: 46,
      greatest: 140,
      place: { start: 3, end: 9 },
    };
    await view().tell({ type: 'select', source: handMadeShow().source, part: undefined, step: false, dial });
    expect(await view().text('.dial')).toContain('at the cursor');
    await view().page.evaluate(`named('input', 'length, slider').focus()`);
    await view().page.keyboard.press('ArrowRight');
    await view().drawn();
    expect(toldOf('try')[0]!.trial).toEqual([{ kind: 'value', path: 'rods.link.length', value: 93.2 }]);
  });
});

describe('what is saved', () => {
  test('is a chart as an SVG file that needs nothing beside it', async () => {
    await open(showOf(EXAMPLE));
    await view().click('Save Opening and open area as SVG');
    const { name, asks } = view().asked()[0]!;
    expect([name, asks.name, asks.kind]).toEqual(['save', 'linkage-progression.svg', 'svg']);
    const svg = String(asks.content);
    expect(svg).toMatch(/^<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(svg).not.toMatch(/var\(|class=|data-|cursor/);
    // The dots of no length are the least and the greatest of both curves, and none is the slider's.
    expect(svg.match(/h0(?=[M"])/g)).toHaveLength(4);
    expect(svg).toContain('rgb(55, 148, 255)');
    expect(svg.match(/<path/g)!.length).toBeGreaterThan(8);
  });

  test('is a chart as PNG with twice the pixels, and the drawing', async () => {
    await open(showOf(EXAMPLE));
    const width = await view().page.evaluate<number>('document.querySelector(".chart-drawing").width.baseVal.value');
    await view().click('Save Opening and open area as PNG');
    await view().until('window.postedRequests === 1');
    const png = view().asked()[0]!.asks.content as Uint8Array;
    expect([...png.slice(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    expect(new DataView(png.buffer).getUint32(16)).toBe(2 * width);
    await view().click('Drawing as SVG');
    await view().click('Drawing as PNG');
    await view().until('window.postedRequests === 3');
    const [, svg, drawn] = view().asked();
    expect(svg!.asks).toMatchObject({ name: 'linkage-drawing.svg', kind: 'svg' });
    expect((drawn!.asks.content as Uint8Array).length).toBeGreaterThan(2000);
    expect(view().errors()).toEqual([]);
  });

  test('is a table as CSV: of a chart at every station, and of everything from the editor', async () => {
    const show = showOf(EXAMPLE);
    await open(show);
    await view().click('Opening and open area as a table');
    await view().click('Save Opening and open area as CSV');
    const lines = String(view().asked()[0]!.asks.content).trimEnd().split('\r\n');
    expect(lines[0]).toBe('pedal.travel [%],shaft.opening [%],bank.fraction [%]');
    expect(lines).toHaveLength(show.picture.stations.length + 1);
    await view().click('All columns as CSV');
    const asked = view().asked()[1]!;
    expect(asked).toMatchObject({ name: 'table', asks: { source, trial: [] } });
    await view().answer(asked, { csv: 'a,b\r\n' });
    await view().drawn();
    expect(view().asked()[2]).toMatchObject({ name: 'save', asks: { name: 'linkage-table.csv', content: 'a,b\r\n' } });
  });
});
