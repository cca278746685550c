/** Studies in the page, in Chromium: what can be asked, how far it is, what came of it, and what is written. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { handMadeShow } from '../support/handMadeShown.ts';
import { found, handMadeSolve, handMadeTolerance, handMadeTune, tellStudy } from '../support/handMadeStudies.ts';
import { viewForAll } from '../support/viewForAll.ts';
import { THEME_KINDS } from '../support/viewThemes.ts';

const { view, open, lastAsked, toldOf } = viewForAll();

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const { source } = handMadeShow();
const isThere = (selector: string) => view().page.evaluate<boolean>(`document.querySelector(${JSON.stringify(selector)}) !== null`);
const texts = (selector: string) =>
  view().page.evaluate<string[]>(
    `[...document.querySelectorAll(${JSON.stringify(selector)})].map((each) => each.innerText.replace(/\\s+/g, ' ').trim())`,
  );
const status = () => view().text('dialog + [role=status]');

/** Everything that can be there at once. */
async function openAll(options?: Parameters<typeof open>[1]): Promise<void> {
  await open(handMadeShow(), options);
  await view().tell(tellStudy('tune', found(handMadeTune())));
  await view().tell(tellStudy('tolerance', found(handMadeTolerance())));
  await view().tell(tellStudy('solve', found(handMadeSolve())));
  await view().tell(tellStudy('fit', { stage: 'running', progress: { share: 0.4, note: 'the dimensions' }, left: 7.6 }));
}

describe('a study', () => {
  test('is asked for by its button, tells how far it is and how long it takes, and can be cancelled', async () => {
    await open(handMadeShow());
    expect(await texts('.ask-study button')).toEqual([
      'Find dimensions',
      'What tolerances do',
      'Solve for a figure…',
      'Fit to the measurements',
    ]);
    await view().click('Find dimensions');
    expect(toldOf('run-study')).toEqual([{ type: 'run-study', kind: 'tune' }]);
    await view().tell(tellStudy('tune', { stage: 'running', progress: undefined, left: undefined }));
    expect(await texts('.study-progress')).toEqual(['Begins…']);
    expect(await status()).toBe('Dimensions for the curve: begun');
    await view().tell(tellStudy('tune', { stage: 'running', progress: { share: 0.419, note: 'searching' }, left: 3.2 }));
    expect(await texts('.study-progress')).toEqual(['Searching, 41 %, about 3 s left']);
    expect(await view().page.evaluate('document.querySelector("progress").value')).toBe(0.419);
    await view().click('Cancel');
    expect(toldOf('cancel-study')).toEqual([{ type: 'cancel-study', kind: 'tune' }]);
    await view().tell(tellStudy('tune', { stage: 'cancelled' }));
    expect(await isThere('.study-progress')).toBe(false);
    expect(await texts('.study .hint')).toEqual(['Cancelled; nothing was found out.']);
    await view().click('Put away');
    expect(await isThere('.study')).toBe(false);
    expect(view().errors()).toEqual([]);
  });

  test('that cannot be says why', async () => {
    await open(handMadeShow());
    await view().tell(tellStudy('fit', { stage: 'refused', why: 'The file has no `measured` block' }));
    expect(await texts('.study .notice')).toEqual(['Not worked out: The file has no `measured` block.']);
    expect(await status()).toBe('The car as built: The file has no `measured` block');
  });

  test('shows its answers with what each gives up and the lines that it changes, and the caution', async () => {
    await open(handMadeShow());
    await view().tell(tellStudy('tune', found(handMadeTune())));
    expect(await texts('.study-verdict')).toEqual(['One answer keeps everything and lies on the curve within 0.1°']);
    expect(await texts('.study-answer h4')).toEqual(['Answer 1 , Passed', 'Answer 2 , Failed']);
    expect(await texts('.study-answer .study-line')).toContain('gives up drive: 34° where 40° are wanted');
    expect(await texts('.study-answer .diff')).toHaveLength(2);
    expect(await texts('.diff .was del')).toEqual(['crank_reach: 38 mm ± 0.1 mm', 'shaft_reach: 32 mm', 'crank_reach: 38 mm ± 0.1 mm']);
    expect(await texts('.diff .is ins')).toEqual(['crank_reach: 40 mm ± 0.1 mm', 'shaft_reach: 32.8 mm', 'crank_reach: 43.5 mm ± 0.1 mm']);
    expect(await texts('.study .caution')).toEqual([handMadeTune().caution]);
    expect(await texts('.study .chart h3')).toEqual(['shaft.opening, wanted and found, deg']);
  });

  test('writes the answer that is chosen, says so, and is not called old for that', async () => {
    await open(handMadeShow());
    await view().tell(tellStudy('tune', found(handMadeTune())));
    await view().click('Write this: Answer 2');
    expect(lastAsked('answer').asks).toEqual({ kind: 'tune', source, block: 2 });
    await view().answer(lastAsked('answer'), { version: source.version + 1 });
    await view().tell({ ...handMadeShow(), source: { ...source, version: source.version + 1 } });
    expect(await texts('.study-answer:has(.hint)')).toHaveLength(1);
    expect(await texts('.study-answer .hint')).toEqual(['Written: one undo takes it back.']);
    expect(await isThere('.study-old')).toBe(false);
    await view().tell({ ...handMadeShow(), source: { ...source, version: source.version + 2 } });
    expect(await isThere('.study-old')).toBe(true);
  });

  test('that was not written says why', async () => {
    await open(handMadeShow());
    await view().tell(tellStudy('tune', found(handMadeTune())));
    await view().click('Write this: Answer 1');
    await view().refuse(lastAsked('answer'), 'The text has changed since.');
    expect(await texts('.notice')).toContainEqual(expect.stringContaining('Not written: The text has changed since'));
  });

  test('of a text before the last change says so, and is run again', async () => {
    await open(handMadeShow());
    await view().tell(tellStudy('solve', found(handMadeSolve())));
    expect(await isThere('.study-old')).toBe(false);
    await view().tell({ ...handMadeShow(), source: { ...source, version: source.version + 1 } });
    expect(await texts('.study-old')).toEqual([expect.stringContaining('Of the text before the last change')]);
    await view().click('Run again');
    expect(toldOf('run-study')).toEqual([{ type: 'run-study', kind: 'solve' }]);
  });

  test('that was asked for in the text is scrolled to', async () => {
    await open(handMadeShow(), { width: 1000, height: 500 });
    await view().tell(tellStudy('tolerance', found(handMadeTolerance()), { show: true }));
    await view().drawn();
    const [top, height] = await view().page.evaluate<[number, number]>(
      '[document.getElementById("study-tolerance").getBoundingClientRect().top, window.innerHeight]',
    );
    expect(top).toBeGreaterThan(0);
    expect(top).toBeLessThan(height);
  });
});

describe('what tolerances do', () => {
  test('stands in tables whose rows lead to the text and are weighed', async () => {
    await open(handMadeShow(), { width: 1600 });
    await view().tell(tellStudy('tolerance', found(handMadeTolerance())));
    const rows = await texts('.study-table tbody tr');
    expect(rows[0]).toMatch(/^opening of shaft at full pedal.*82°.*81\.2° to 82\.4°.*97\.3 %$/);
    await view().click('crank_reach, Show in text');
    expect(toldOf('reveal').at(-1)).toEqual({ type: 'reveal', source, place: { start: 3, end: 9 } });
    const widths = await view().page.evaluate<number[]>(
      '[...document.querySelectorAll(".share rect")].map((bar) => bar.width.baseVal.value)',
    );
    expect(widths).toEqual([60, 40]);
  });

  test('is shaded beside the curves of the charts, with words, while it is of the text that is shown', async () => {
    await open(handMadeShow());
    expect(await isThere('path.spread')).toBe(false);
    await view().tell(tellStudy('tolerance', found(handMadeTolerance())));
    const path = await view().page.evaluate<string>('document.querySelector(".charts path.spread").getAttribute("d")');
    expect(path).toMatch(/^M[\d.]+ [\d.]+(L[\d.]+ [\d.]+)+Z$/);
    expect(await texts('.spread-key')).toEqual(['Shaded beside a curve: 5 % of 1000 random builds lie below, as many above.']);
    expect((await texts('.values'))[0]).toMatch(/most builds .+ to /);
    await view().tell({ ...handMadeShow(), source: { ...source, version: source.version + 1 } });
    expect([await isThere('path.spread'), await isThere('.spread-key')]).toEqual([false, false]);
  });
});

describe('on any screen', () => {
  const OUTSIDE = `(() => {
    const right = document.documentElement.clientWidth;
    const found = [...document.querySelectorAll('.study, .study *, .ask-study *')].filter((element) => {
      if (element.closest('.unseen, .longest, .table-frame') !== null) return false;
      const box = element.getBoundingClientRect();
      return box.width > 0 && (box.right > right + 1 || box.left < -1);
    });
    return [document.documentElement.scrollWidth - right, ...found.map((element) => element.outerHTML.slice(0, 120))];
  })()`;

  test.each([300, 420, 1000, 1600])('nothing is cut at %i px', async (width) => {
    await openAll({ width, height: 700 });
    expect(await view().page.evaluate(OUTSIDE)).toEqual([0]);
    expect(view().errors()).toEqual([]);
  });

  test.each(THEME_KINDS)('axe-core finds nothing in a %s theme, wide and narrow', async (theme) => {
    for (const width of [1200, 300]) {
      await openAll({ theme, width });
      await view().page.evaluate(`${AXE}; undefined`);
      const violations = await view().page.evaluate(`axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) =>
        violations.flatMap(({ id, nodes }) => nodes.map((node) => id + ': ' + node.html.slice(0, 160) + ' ' + (node.failureSummary ?? ''))))`);
      expect(violations).toEqual([]);
    }
  });
});
