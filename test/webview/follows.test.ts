/** What follows a drawing, in the page itself: what can be seen is told, and what is of the text before is marked until its own has come. */
import { describe, expect, test } from 'vitest';
import { CHART_IDS, type ChartId } from '../../src/protocol/charts.ts';
import type { ToView } from '../../src/protocol/messages.ts';
import { EXAMPLE, showOf, source, viewForAll } from '../support/viewForAll.ts';

const { view, open, toldOf } = viewForAll();

const scrollTo = async (id: ChartId) => {
  await view().page.evaluate(`document.querySelector('[data-chart="${id}"]').scrollIntoView({ block: 'center' })`);
  await view().drawn();
  await view().drawn();
};
const inSight = () => toldOf('in-sight').at(-1)?.charts ?? [];
const late = () => view().page.evaluate<string[]>(`[...document.querySelectorAll('[data-chart].late')].map((each) => each.dataset.chart)`);

const later = showOf(EXAMPLE.replace('38 mm', '36 mm'), 2);
/** Without some of its charts, and without its report and facts. */
const first = (...coming: readonly ChartId[]): ToView => ({
  ...later,
  coming: [...coming, 'report', 'facts'],
  charts: later.charts.filter(({ id }) => !coming.includes(id)),
  report: undefined,
});
const rest = (...ids: readonly ChartId[]): ToView => ({
  type: 'follows',
  source: { ...source, version: 2 },
  trial: [],
  charts: later.charts.filter(({ id }) => ids.includes(id)),
  without: [],
  report: { ...later.report, facts: [] },
  facts: later.report.facts,
});

describe('the page', () => {
  test('tells which charts can be seen, anew whenever they are others, and never the same twice', async () => {
    await open(showOf(EXAMPLE));
    await scrollTo('effort');
    const atEnd = inSight();
    expect(atEnd).toContain('effort');
    expect(atEnd).not.toContain('progression');
    await scrollTo('progression');
    expect(inSight()).toContain('progression');
    expect(inSight()).not.toContain('effort');
    const all = toldOf('in-sight').map(({ charts }) => charts.join());
    expect(all.filter((each, i) => each === all[i - 1])).toEqual([]);
    // Boxes that meet the window, as the browser itself has them.
    const seen = await view().page.evaluate<string[]>(
      `[...document.querySelectorAll('[data-chart]')].filter((each) => {
        const { top, bottom } = each.getBoundingClientRect();
        return bottom > 0 && top < innerHeight;
      }).map((each) => each.dataset.chart).sort()`,
    );
    expect([...inSight()].sort()).toEqual(seen);
  });

  test('marks the charts and figures of the text before, draws in their place, and marks nothing once all has come', async () => {
    const before = showOf(EXAMPLE);
    await open(before);
    await view().tell(first('torques', 'angles'));
    expect(await late()).toEqual(['angles', 'torques']);
    const order = () => view().page.evaluate('[...document.querySelectorAll("[data-chart]")].map((each) => each.dataset.chart)');
    expect(await order()).toEqual(CHART_IDS.filter((id) => before.charts.some((chart) => chart.id === id)));
    const busy = () =>
      view().page.evaluate(
        `[...document.querySelectorAll('[aria-busy=true]')].map((each) => each.getAttribute('aria-labelledby') ?? each.className)`,
      );
    const told = ['verdict late', 'load-path-title', 'findings-title', 'requirements-title', 'facts-title'];
    expect(await busy()).toEqual(expect.arrayContaining(told));
    // The mark comes on slowly, and is there in full soon.
    await view().page.evaluate('new Promise((done) => setTimeout(done, 400))');
    const opacity = (id: ChartId) =>
      view().page.evaluate<number>(`Number(getComputedStyle(document.querySelector('[data-chart="${id}"] svg')).opacity)`);
    expect([await opacity('angles'), await opacity('progression')]).toEqual([0.45, 1]);
    const lineOf = (id: ChartId) => view().page.evaluate<string>(`document.querySelector('[data-chart="${id}"] .line').getAttribute('d')`);
    const old = await lineOf('angles');
    await view().tell(rest('torques', 'angles'));
    expect(await late()).toEqual([]);
    expect(await lineOf('angles')).not.toBe(old);
    expect(await opacity('angles')).toBeGreaterThan(0.45);
    expect(await view().page.evaluate('document.querySelectorAll("[aria-busy=true]").length')).toBe(0);
    expect(await order()).toEqual(later.charts.map(({ id }) => id));
    expect(view().errors()).toEqual([]);
  });

  test('has the charts as wide as their place, though the first drawing came without any', async () => {
    const show = showOf(EXAMPLE, 2);
    await open({ ...show, coming: [...CHART_IDS, 'facts'], charts: [], report: { ...show.report, facts: [] } });
    expect(await view().page.evaluate('document.querySelectorAll("[data-chart]").length')).toBe(0);
    await view().tell({
      type: 'follows',
      source: show.source,
      trial: [],
      charts: show.charts,
      without: [],
      report: undefined,
      facts: show.report.facts,
    });
    const [width, room] = await view().page.evaluate<[number, number]>(`[
      Number(document.querySelector('[data-chart] svg').getAttribute('width')),
      document.querySelector('[data-chart]').clientWidth,
    ]`);
    expect(width).toBe(room);
    await scrollTo('effort');
    expect(inSight()).toContain('effort');
  });

  test('draws what it would have drawn had all come at once', async () => {
    const drawn = () => view().page.evaluate<string>('document.querySelector(".side").innerHTML');
    await open(showOf(EXAMPLE));
    await view().tell(later);
    const atOnce = await drawn();
    await open(showOf(EXAMPLE));
    await view().tell(first('progression', 'signal', 'effort'));
    await view().tell(rest('effort'));
    await view().tell(rest('progression', 'signal'));
    expect(await drawn()).toBe(atOnce);
  });
});
