/** The page held against the rules of axe-core, in each kind of theme and in each of its states. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { handMadeReturns, handMadeTrace } from '../support/handMadeReturns.ts';
import { handMadeShow } from '../support/handMadeShown.ts';
import { openViewPage } from '../support/viewPage.ts';
import type { ViewPage } from '../support/viewPage.ts';
import { THEME_KINDS } from '../support/viewThemes.ts';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let view: ViewPage;

beforeAll(async () => {
  view = await openViewPage();
});
afterAll(() => view.close());

/** What axe finds, as rule and element; what it cannot decide is not among it. */
async function found(): Promise<string[]> {
  await view.page.evaluate(`${AXE}; undefined`);
  return view.page.evaluate(`axe.run(document, { resultTypes: ['violations'] }).then(({ violations }) =>
    violations.flatMap(({ id, nodes }) => nodes.map((node) => id + ': ' + node.html.slice(0, 160) + ' ' + (node.failureSummary ?? ''))))`);
}

const asked = (name: string) => view.asked().findLast((each) => each.name === name)!;

async function openAll() {
  const show = handMadeShow();
  await view.tell(show);
  await view.click('Work out');
  await view.answer(asked('returns'), handMadeReturns());
  const { source } = show;
  await view.tell({ type: 'compare', source, label: 'HEAD', other: show, changes: [], effects: ['opens fully: passes'] });
  await view.tell({ type: 'select', source, part: { kind: 'rod', name: 'link' }, step: true, dial: undefined });
  await view.click('Progression as a table');
  await view.enter('reach, number', '40');
}

describe('axe-core', () => {
  test.each(THEME_KINDS)('finds nothing in a %s theme with all that can be on the page', async (theme) => {
    await view.load({ theme, width: 1200 });
    await openAll();
    expect(await found()).toEqual([]);
  });

  test.each(THEME_KINDS)(
    'finds nothing in a %s theme while a snap-back is shown, with little room, and where it is stepped through',
    async (theme) => {
      for (const options of [{ width: 1200 }, { width: 300 }, { width: 1200, lessMotion: 'class' as const }]) {
        await view.load({ theme, ...options });
        await openAll();
        await view.tell({ ...handMadeShow(), trial: [] });
        await view.click('Drop');
        expect(await view.page.evaluate('document.querySelector(".play-return").disabled')).toBe(false);
        await view.page.evaluate('document.querySelector(".play-return").click()');
        await view.drawn();
        await view.answer(asked('trace'), handMadeTrace());
        await view.enter('Time since', '0.02');
        expect(await found()).toEqual([]);
      }
    },
  );

  test('finds nothing while waiting, in an empty file, a broken one, a gone one, and in the list of keys', async () => {
    await view.load({ theme: 'light' });
    expect(await found()).toEqual([]);
    const { source } = handMadeShow();
    const missing = [{ message: 'the file is empty', place: { start: 0, end: 0 } }];
    await view.tell({ type: 'broken', source, fileName: 'a', missing });
    expect(await found()).toEqual([]);
    await view.tell(handMadeShow());
    await view.tell({ type: 'broken', source, fileName: 'a', missing });
    expect(await found()).toEqual([]);
    await view.page.keyboard.press('?');
    expect(await found()).toEqual([]);
    await view.page.keyboard.press('Escape');
    await view.tell({ type: 'gone', reason: 'The file was deleted' });
    expect(await found()).toEqual([]);
  });
});
