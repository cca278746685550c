/** The page in Chromium in another language: with a stand-in for a translation, every word of its own can be told from those of the core. */
import { describe, expect, test } from 'vitest';
import { handMadeReturns, handMadeTrace } from '../support/handMadeReturns.ts';
import { handMadeShow } from '../support/handMadeShown.ts';
import { found, handMadeSolve, handMadeTolerance, handMadeTune, tellStudy } from '../support/handMadeStudies.ts';
import { OUTSIDE } from '../support/outside.ts';
import { bracketed, lengthened, marked, told, UNBRACKETED, wordsOf } from '../support/pseudoWords.ts';
import { viewForAll } from '../support/viewForAll.ts';
import type { ViewOptions } from '../support/viewPage.ts';

const { view, lastAsked, toldOf } = viewForAll();

const { source, dials } = handMadeShow();
const missing = [{ message: told('`pedal` has no `opens`'), place: { start: 0, end: 5 } }];

type Look = (state: string) => Promise<void>;

/** @param said what the page calls something, from its English */
async function walk(translate: (text: string) => string, options: ViewOptions, look: Look): Promise<void> {
  const { load, tell, click, enter, answer, refuse, page, drawn } = view();
  await load(options);
  await tell(wordsOf(translate));
  await look('waiting');
  await tell({ type: 'broken', source, fileName: 'a', missing });
  await look('an empty file');
  await tell(marked(handMadeShow()));
  await look('a file');

  await tell({
    type: 'compare',
    source,
    label: told('HEAD'),
    other: marked(handMadeShow()),
    changes: [
      { path: '«rods».«link».«length»', was: told('80'), is: told('82'), effects: [told('opens further')], place: { start: 1, end: 3 } },
      { path: '«rods».«link».«ends»', was: undefined, is: told('ball'), effects: [], place: undefined },
      { path: '«rods».«link».«adjust»', was: told('80'), is: undefined, effects: [], place: undefined },
    ],
    effects: [told('opens fully: passes')],
  });
  await tell({ type: 'select', source, part: { kind: 'rod', name: told('link') }, step: true, dial: marked(dials[0]) });
  await click(translate('{title} as a table').replace('{title}', told('Progression')));
  const number = translate('{label}, number in {unit}').replace('{label}', told('reach')).replace('{unit}', 'mm');
  await enter(number, '3,5');
  await look('a number that is none');
  await enter(number, '40');
  await look('what is tried');
  await tell({ ...marked(handMadeShow()), trial: toldOf('try').at(-1)!.trial });
  await click(translate('Work out'));
  await look('failures on their way');
  await answer(lastAsked('returns'), marked(handMadeReturns()));
  await look('all of a file');

  await page.evaluate('document.querySelector(".play-return").click()');
  await drawn();
  await answer(lastAsked('trace'), marked(handMadeTrace()));
  await enter(translate('Time since the foot came off'), '0.1');
  await look('a snap-back');
  await click(translate('Back to the pedal'));

  await tell(marked(tellStudy('tune', found(handMadeTune()))));
  await tell(marked(tellStudy('tolerance', found(handMadeTolerance()))));
  await tell(marked(tellStudy('solve', { stage: 'refused', why: 'there is none' })));
  await tell(marked(tellStudy('fit', { stage: 'running', progress: { share: 0.4, note: 'the dimensions' }, left: 7.6 })));
  await look('studies');
  await page.evaluate('document.querySelector(".study-answer button:not(.link)").click()');
  await drawn();
  await refuse(lastAsked('answer'), told('it is read-only'));
  await tell(marked(tellStudy('solve', found(handMadeSolve()), { isOutrun: true })));
  await tell(marked(tellStudy('fit', { stage: 'cancelled' })));
  await look('a complaint');

  await page.evaluate('document.querySelector(".drawing .sheet").focus()');
  await page.keyboard.press('n');
  await page.evaluate('document.querySelector(".handles .handle").focus()');
  await page.keyboard.press('Enter');
  await drawn();
  await look('a handle that is held');
  await page.keyboard.press('Escape');
  await page.keyboard.press('?');
  await drawn();
  await look('the keys');
  await page.keyboard.press('Escape');
  await tell({ type: 'broken', source, fileName: 'a', missing: [...missing, ...missing] });
  await look('a broken file');
  await tell({ type: 'gone', reason: told('The file was deleted') });
  await look('a file that is gone');
  expect(view().errors()).toEqual([]);
}

describe('a page in another language', () => {
  test('has no word of its own left in English', async () => {
    const left: Record<string, unknown> = {};
    await walk(bracketed, { width: 1200 }, async (state) => {
      const words = await view().page.evaluate<string[]>(UNBRACKETED);
      if (words.length > 0) left[state] = words;
    });
    expect(left).toEqual({});
  });

  test.each([300, 700, 1600])('cuts nothing at %i px where each word is longer by two fifths', async (width) => {
    const outside: Record<string, unknown> = {};
    await walk(lengthened, { width, height: 800 }, async (state) => {
      const found = await view().page.evaluate<unknown[]>(OUTSIDE);
      if (found.length > 1 || found[0] !== 0) outside[state] = found;
    });
    expect(outside).toEqual({});
  });

  test('says which language it is in', async () => {
    await view().load();
    expect(await view().page.evaluate('document.documentElement.lang')).toBe('en');
    await view().tell({ type: 'words', language: 'fr', texts: { 'Waiting for the throttle file…': 'En attente du fichier…' } });
    expect(await view().page.evaluate('document.documentElement.lang')).toBe('fr');
    expect(await view().text('main')).toContain('En attente du fichier…');
  });

  test('stays English where what is handed over is no table, and shows markup as text', async () => {
    const english = 'Waiting for the throttle file…';
    await view().load();
    for (const texts of [undefined, 'all', [english], { [english]: 7 }])
      await view().tell({ type: 'words', language: 'fr', texts } as unknown as Parameters<ReturnType<typeof view>['tell']>[0]);
    expect(await view().text('main')).toContain(english);
    await view().tell({ type: 'words', language: 'fr', texts: { [english]: '<b>En attente</b>' } });
    expect(await view().text('main h1')).toBe('<b>En attente</b>');
    expect(view().errors()).toEqual([]);
  });
});
