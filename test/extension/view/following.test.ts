/** What follows the drawing: of which text, in which order, and what becomes of it when the text, the trial or the page is another. */
import { describe, expect, test, vi } from 'vitest';
import { showAnswers } from '../../../src/picture/showAnswers.ts';
import { CHART_IDS, type Chart } from '../../../src/protocol/charts.ts';
import type { Coming, Source, ToView, Trial } from '../../../src/protocol/messages.ts';
import { solve } from '../../../src/solve.ts';
import { FOUR_BARREL } from '../../support/editorRequests.ts';
import type { FakePage } from '../../support/fakePage.ts';
import { bringBack, hide, openView, serveViews, turns } from '../../support/viewInEditor.ts';
import { changeDocument } from '../../support/vscode.ts';

serveViews();

const reach = (value: number): Trial => [{ kind: 'value', path: 'let.crank_reach', value }];
const longer = (length: string): string => FOUR_BARREL.replace('38 mm', length);

type Follows = ToView & { readonly type: 'follows' };
const followsIn = (page: FakePage, from = 0): readonly Follows[] =>
  page.told.slice(from).filter((each): each is Follows => each.type === 'follows');
const inOrder = (charts: readonly Chart[]): readonly Chart[] =>
  charts.toSorted((one, other) => CHART_IDS.indexOf(one.id) - CHART_IDS.indexOf(other.id));

describe('what follows the drawing', () => {
  test('is with it all that there is to show of the text, what can be seen first', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    page.say({ type: 'in-sight', charts: ['angles', 'torques'] });
    const from = page.told.length;
    changeDocument(document, longer('39 mm'));
    await turns();
    const show = page.last('show');
    expect(show.charts).toEqual([]);
    expect(show.report).toBeUndefined();
    const all = showAnswers(solve(longer('39 mm')))!;
    const follows = followsIn(page, from);
    expect(follows.every(({ source, trial }) => source.version === 2 && trial.length === 0)).toBe(true);
    expect(inOrder(follows.flatMap(({ charts }) => charts))).toEqual(all.charts);
    expect(follows.flatMap(({ report }) => report ?? [])).toEqual([{ ...all.report, facts: [] }]);
    expect(follows.flatMap(({ facts }) => facts ?? [])).toEqual(all.report.facts);
    const told = follows.flatMap(({ charts, without, report, facts }): Coming[] => [
      ...charts.map(({ id }) => id),
      ...(report === undefined ? [] : (['report'] as const)),
      ...without,
      ...(facts === undefined ? [] : (['facts'] as const)),
    ]);
    expect(told.slice(0, 3)).toEqual(['angles', 'torques', 'report']);
    expect(told.sort()).toEqual([...show.coming].sort());
  });

  test('is dropped as soon as the text is another, and never of a text older than the drawing', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const from = page.told.length;
    // One turn each: the drawing comes in the first.
    for (const length of ['39 mm', '40 mm', '41 mm']) {
      changeDocument(document, longer(length));
      vi.advanceTimersToNextTimer();
      expect(page.last('show').source.version).toBe(document.version);
    }
    await turns();
    let shown = 0;
    for (const each of page.told.slice(from)) {
      if (each.type === 'show') shown = each.source.version;
      if (each.type === 'follows') expect(each.source.version).toBe(shown);
    }
    expect(followsIn(page, from).every(({ source }) => source.version === 4)).toBe(true);
    expect(followsIn(page, from).flatMap(({ facts }) => facts ?? [])).toEqual(showAnswers(solve(longer('41 mm')))!.report.facts);
  });

  test('of figures that are tried names them, and that of the written text comes besides', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    changeDocument(document, longer('39 mm'));
    vi.advanceTimersToNextTimer();
    const from = page.told.length;
    page.try(reach(41));
    await turns();
    const follows = followsIn(page, from);
    const factsOf = (trial: Trial) => follows.filter((each) => each.trial.length === trial.length).flatMap(({ facts }) => facts ?? []);
    expect(factsOf(reach(41))).toEqual(showAnswers(solve(longer('41 mm')))!.report.facts);
    expect(factsOf([])).toEqual(showAnswers(solve(longer('39 mm')))!.report.facts);
  });

  test('comes again where the page lacks it, and is left aside where it asks for what is past or was never shown', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    changeDocument(document, longer('39 mm'));
    await turns();
    const { source } = page.last('show');
    const ask = async (of: Source, trial: Trial, coming: readonly Coming[]): Promise<readonly Follows[]> => {
      const from = page.told.length;
      page.say({ type: 'follow', source: of, trial, coming });
      await turns();
      return followsIn(page, from);
    };
    const again = await ask(source, [], ['facts', 'effort']);
    expect(again.flatMap(({ charts }) => charts.map(({ id }) => id))).toEqual(['effort']);
    expect(again.flatMap(({ facts }) => facts ?? [])).toEqual(showAnswers(solve(longer('39 mm')))!.report.facts);
    expect(await ask({ ...source, version: 1 }, [], ['facts'])).toEqual([]);
    expect(await ask(source, reach(40), ['facts'])).toEqual([]);
    expect(await ask(source, [], [])).toEqual([]);
    const told = await ask(source, [], ['report']);
    expect(told.map(({ report }) => report?.verdict)).toEqual([showAnswers(solve(longer('39 mm')))!.report.verdict]);
  });

  test('has its places in the text as it is written where figures are tried', async () => {
    const { page } = await openView(FOUR_BARREL);
    page.try(reach(38.123456));
    await turns();
    const follows = followsIn(page).filter(({ trial }) => trial.length > 0);
    const [report] = follows.flatMap((each) => each.report ?? []);
    const names = report!.parts.map(({ place }) => FOUR_BARREL.slice(place.start, place.end));
    expect(names).toEqual(expect.arrayContaining(['bellcrank', 'link', 'position']));
  });

  test('has the report with the drawing where the page has none of this file yet, and only then', async () => {
    const view = await openView(FOUR_BARREL);
    expect(view.page.last('show').report?.verdict).toBe(showAnswers(solve(FOUR_BARREL))!.report.verdict);
    changeDocument(view.document, longer('39 mm'));
    await turns();
    expect(view.page.last('show').report).toBeUndefined();
    hide(view);
    await bringBack(view);
    expect(view.page.last('show').report?.verdict).toBe(showAnswers(solve(longer('39 mm')))!.report.verdict);
  });

  test('waits for a rest where it took long, and the drawing does not', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    let now = 0;
    // Each look at the clock is 10 ms after the last: a turn takes little, all that follows takes long.
    const clock = vi.spyOn(Date, 'now').mockImplementation(() => (now += 10));
    changeDocument(document, longer('39 mm'));
    await turns();
    const from = page.told.length;
    changeDocument(document, longer('40 mm'));
    await vi.advanceTimersByTimeAsync(200);
    expect(page.last('show').source.version).toBe(3);
    expect(followsIn(page, from)).toEqual([]);
    await turns();
    expect(followsIn(page, from).flatMap(({ facts }) => facts ?? []).length).toBeGreaterThan(0);
    clock.mockRestore();
  });

  test('is tried again at once before long, though it took long: a hand that drags does not rest', async () => {
    const { page } = await openView(FOUR_BARREL);
    page.say({ type: 'in-sight', charts: ['effort'] });
    let now = 0;
    const clock = vi.spyOn(Date, 'now').mockImplementation(() => (now += 10));
    page.try(reach(39));
    await turns();
    clock.mockRestore();
    const from = page.told.length;
    for (let i = 0; i < 20; i++) {
      page.try(reach(40 + i / 10));
      await vi.advanceTimersByTimeAsync(50);
    }
    expect(page.told.slice(from).filter(({ type }) => type === 'show')).toHaveLength(20);
    // The first few of them wait, for a rest that does not come.
    expect(followsIn(page, from).filter(({ charts }) => charts.some(({ id }) => id === 'effort')).length).toBeGreaterThan(10);
  });

  test('stops with a page that is hidden, and comes whole to the one after it, to which nothing is in sight yet', async () => {
    const view = await openView(FOUR_BARREL);
    view.page.say({ type: 'in-sight', charts: ['angles'] });
    changeDocument(view.document, longer('39 mm'));
    vi.advanceTimersToNextTimer();
    const { page } = view;
    const from = page.told.length;
    hide(view);
    await turns();
    expect(followsIn(page, from)).toEqual([]);
    await bringBack(view);
    const show = view.page.last('show');
    expect(show.charts).toEqual([]);
    expect(inOrder(followsIn(view.page).flatMap(({ charts }) => charts))).toEqual(showAnswers(solve(longer('39 mm')))!.charts);
  });

  test('is not there of a text that cannot be solved', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const from = page.told.length;
    changeDocument(document, FOUR_BARREL.replace(/\npedal: [^\n]*/, '\npedal: {lever: pedal, opens: sideways}'));
    await turns();
    expect(page.last('broken').source.version).toBe(2);
    expect(followsIn(page, from)).toEqual([]);
  });
});
