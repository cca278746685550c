/** What the page makes of what follows a drawing: in order, late, lost, repeated, and what does not fit. */
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PROTOCOL, type Coming, type Followed, type ToEditor, type ToView, type Trial } from '../../../src/protocol/messages.ts';
import { followFollowing, heldCharts, heldFacts, isReportLate } from '../../../webview/page/follows.ts';
import { receive } from '../../../webview/receive.ts';
import { connect, reveal, tryFigures } from '../../../webview/send.ts';
import { announcement, shown, written } from '../../../webview/state.ts';
import { handMadeShow } from '../../support/handMadeShown.ts';

let posted: { readonly notice?: ToEditor }[] = [];
let hear: (message: unknown) => void;
let ignored: string[] = [];
const tell = (notice: ToView) => hear({ protocol: PROTOCOL, kind: 'notice', notice: structuredClone(notice) });

const { charts: CHARTS, report } = handMadeShow();
const [progression, angles] = CHARTS as [(typeof CHARTS)[number], (typeof CHARTS)[number]];
const figure = (value: number): Trial => [{ kind: 'value', path: 'let.reach', value }];

/** Without its charts and facts, which are to follow. */
const first = (version: number, coming: readonly Coming[] = ['progression', 'angles', 'margins', 'facts'], trial: Trial = []) =>
  tell({
    ...handMadeShow(version),
    trial,
    coming,
    charts: CHARTS.filter(({ id }) => !coming.includes(id)),
    report: { ...report, facts: [] },
  });
const follows = (version: number, what: Partial<Followed>) =>
  tell({
    type: 'follows',
    source: handMadeShow(version).source,
    trial: [],
    charts: [],
    without: [],
    report: undefined,
    facts: undefined,
    ...what,
  });
const facts = (text: string) => [{ label: 'pedal for half opening', text, travel: 0.5 }];
const late = () => heldCharts(shown.value!).map(({ chart: { id }, isLate }) => `${id}${isLate ? ' late' : ''}`);

vi.useFakeTimers();
followFollowing();

beforeEach(() => {
  posted = [];
  ignored = [];
  receive({ type: 'gone', reason: 'another test' });
  connect(
    {
      post: (message: unknown) => void posted.push(structuredClone(message) as { readonly notice?: ToEditor }),
      listen: (heard) => {
        hear = heard;
        return () => undefined;
      },
    },
    receive,
    (why) => ignored.push(why),
  );
  tell({ ...handMadeShow(1), source: { uri: 'file:///before.throttle.yaml', version: 1 } });
  tell(handMadeShow(1));
});

afterEach(() => {
  tryFigures([]);
  tell(handMadeShow(90));
  vi.clearAllTimers();
});

afterAll(() => void vi.useRealTimers());

describe('what follows a drawing', () => {
  test('stands in for by that of the text before, marked, until it comes', () => {
    first(2);
    expect(late()).toEqual(['progression late', 'angles late']);
    expect(heldFacts(shown.value!)).toEqual({ facts: report.facts, isLate: true });
    follows(2, { charts: [angles] });
    expect(late()).toEqual(['progression late', 'angles']);
    follows(2, { charts: [progression], without: ['margins'], facts: facts('50.0 %') });
    expect(late()).toEqual(['progression', 'angles']);
    expect(heldFacts(shown.value!)).toEqual({ facts: facts('50.0 %'), isLate: false });
    expect(shown.value!.coming).toEqual([]);
  });

  test('has the report of the text before in its place, with the places of that text, until its own comes', () => {
    const place = report.marks[0]!.place;
    tell({ ...handMadeShow(2), coming: ['report', 'facts'], report: undefined });
    expect([shown.value!.report, isReportLate(shown.value)]).toEqual([report, true]);
    reveal(place);
    expect(posted.at(-1)!.notice).toEqual({ type: 'reveal', source: handMadeShow(1).source, place });
    follows(2, { facts: facts('50.0 %') });
    expect([shown.value!.report, isReportLate(shown.value)]).toEqual([{ ...report, facts: facts('50.0 %') }, true]);
    follows(2, { report: { ...report, verdict: 'none', facts: [] } });
    // Its facts came before it.
    expect(shown.value!.report).toEqual({ ...report, verdict: 'none', facts: facts('50.0 %') });
    expect(isReportLate(shown.value)).toBe(false);
    reveal(place);
    expect(posted.at(-1)!.notice).toEqual({ type: 'reveal', source: handMadeShow(2).source, place });
    follows(2, { report });
    expect(shown.value!.report.verdict).toBe('none');
  });

  test('is announced by its verdict once that has come, and again where the text had none in between', () => {
    tell({ ...handMadeShow(2), coming: ['report'], report: undefined });
    announcement.value = '';
    follows(2, { report });
    expect(announcement.value).toBe('');
    tell({ type: 'broken', source: handMadeShow(3).source, fileName: 'hand-made.throttle.yaml', missing: [] });
    tell({ ...handMadeShow(4), coming: ['report'], report: undefined });
    expect(announcement.value).not.toBe(report.verdict);
    follows(4, { report });
    expect(announcement.value).toBe(report.verdict);
  });

  test('makes the page ask for everything where it has nothing that a report could stand in for', () => {
    const source = { uri: 'file:///other.throttle.yaml', version: 1 };
    const before = shown.value;
    tell({ ...handMadeShow(), source, coming: ['report'], report: undefined });
    expect(shown.value).toBe(before);
    expect(posted.at(-1)!.notice).toEqual({ type: 'ready' });
    tell({ ...handMadeShow(), source });
    expect(shown.value!.source).toEqual(source);
  });

  test('is in its place whatever came first, and a chart that has no curve any more is gone', () => {
    first(2);
    follows(2, { charts: [angles], without: ['progression'] });
    expect(late()).toEqual(['angles']);
  });

  test('is never read at the stations of another text', () => {
    const before = shown.value!.picture.stations;
    const show = handMadeShow(2);
    const { length } = show.picture.stations;
    const moved = show.picture.stations.map((at) => at ** 2);
    tell({ ...show, picture: { ...show.picture, stations: moved }, coming: ['angles'], charts: [progression] });
    const held = heldCharts(shown.value!);
    expect(held.map(({ picture }) => picture.stations)).toEqual([moved, before]);
    // One that has a figure too few for its stations is left aside, and still awaited.
    const short = { ...angles, curves: angles.curves.map((curve) => ({ ...curve, values: curve.values.slice(0, length - 1) })) };
    follows(2, { charts: [short] });
    expect(late()).toEqual(['progression', 'angles late']);
    follows(2, { charts: [angles] });
    expect(late()).toEqual(['progression', 'angles']);
  });

  test('is taken once: late, early, repeated or of other figures it changes nothing', () => {
    first(2);
    follows(1, { charts: CHARTS, facts: facts('of the text before') });
    follows(3, { charts: CHARTS, facts: facts('of a text to come') });
    follows(2, { trial: figure(40), charts: CHARTS, facts: facts('of a trial') });
    expect([late(), heldFacts(shown.value!).isLate]).toEqual([['progression late', 'angles late'], true]);
    follows(2, { facts: facts('50.0 %') });
    const now = shown.value;
    follows(2, { facts: facts('again') });
    expect(shown.value).toBe(now);
    follows(2, { charts: [angles] });
    follows(2, { charts: [{ ...angles, title: 'again' }] });
    expect(shown.value!.charts).toEqual([angles]);
  });

  test('that cannot be read is left aside by the line', () => {
    first(2);
    follows(2, { charts: [{ ...angles, curves: [] }] });
    follows(2, { without: ['constructor' as 'angles'] });
    tell({ type: 'follows' } as ToView);
    expect(ignored).toEqual(['malformed', 'malformed', 'malformed']);
    expect(late()).toEqual(['progression late', 'angles late']);
  });

  test('is asked for three times where it is lost, and stays marked then', () => {
    first(2);
    follows(2, { charts: CHARTS });
    const asked = () => posted.flatMap(({ notice }) => (notice?.type === 'follow' ? [notice] : []));
    vi.advanceTimersByTime(3000);
    expect(asked()).toEqual([]);
    vi.advanceTimersByTime(60_000);
    const { source } = handMadeShow(2);
    expect(asked()).toEqual(Array.from({ length: 3 }, () => ({ type: 'follow', source, trial: [], coming: ['margins', 'facts'] })));
    expect(heldFacts(shown.value!).isLate).toBe(true);
    follows(2, { without: ['margins'], facts: facts('50.0 %') });
    expect(heldFacts(shown.value!).isLate).toBe(false);
    vi.advanceTimersByTime(60_000);
    expect(asked()).toHaveLength(3);
  });

  test('is not asked for of a text behind one that cannot be solved', () => {
    first(2);
    tell({ type: 'broken', source: handMadeShow(3).source, fileName: 'a', missing: [] });
    vi.advanceTimersByTime(60_000);
    expect(posted.filter(({ notice }) => notice?.type === 'follow')).toEqual([]);
  });

  test('of the written text comes to it while figures are tried, and that of the figures to them', () => {
    first(2);
    tryFigures(figure(40));
    first(2, ['angles', 'facts'], figure(40));
    follows(2, { charts: CHARTS, without: ['margins'], facts: facts('as written') });
    expect(written.value!.coming).toEqual([]);
    expect(written.value!.report.facts).toEqual(facts('as written'));
    expect([late(), heldFacts(shown.value!).isLate]).toEqual([['progression', 'angles late'], true]);
    follows(2, { trial: figure(40), charts: [angles], facts: facts('as tried') });
    expect([late(), heldFacts(shown.value!)]).toEqual([['progression', 'angles'], { facts: facts('as tried'), isLate: false }]);
    expect(written.value!.report.facts).toEqual(facts('as written'));
  });

  test('of another file does not stand behind this one', () => {
    tell({
      ...handMadeShow(1),
      source: { uri: 'file:///other.throttle.yaml', version: 1 },
      coming: ['angles', 'progression', 'facts'],
      charts: [],
    });
    expect([late(), heldFacts(shown.value!)]).toEqual([[], { facts: [], isLate: true }]);
  });

  test('is drawn by the arrays of before where its figures are the same', () => {
    const [before] = shown.value!.charts.find(({ id }) => id === 'angles')!.curves;
    first(2, ['angles', 'facts']);
    follows(2, { charts: [angles] });
    expect(shown.value!.charts.find(({ id }) => id === 'angles')!.curves[0]!.values).toBe(before!.values);
    const other = { ...angles, curves: angles.curves.map((curve) => ({ ...curve, values: curve.values.map((value) => value + 1) })) };
    first(3, ['angles', 'facts']);
    follows(3, { charts: [other] });
    expect(shown.value!.charts.find(({ id }) => id === 'angles')!.curves).toEqual(other.curves);
  });
});
