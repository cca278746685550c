import { describe, expect, test, vi } from 'vitest';
import type { Change, Trial } from '../../../src/protocol/messages.ts';
import { FOUR_BARREL } from '../../support/editorRequests.ts';
import { loadPage, type FakePage } from '../../support/fakePage.ts';
import { bringBack, hide, openView, run, serveViews, turns } from '../../support/viewInEditor.ts';
import {
  changeDocument,
  closeDocument,
  disk,
  emptyDisk,
  focusDocument,
  openDocument,
  panels,
  refusals,
  told,
  touchDocument,
  undoSteps,
  writeFile,
} from '../../support/vscode.ts';

serveViews();

const reach = (value: number): Trial => [{ kind: 'value', path: 'let.crank_reach', value }];

/** As the file's own rod opens its shaft, from the report's words. */
const verdictOf = (page: FakePage): string => page.report().verdict;

describe('the picture', () => {
  test('follows each key press in the next turn, the last of several at once', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const before = page.types().filter((type) => type === 'show').length;
    changeDocument(document, FOUR_BARREL.replace('38 mm', '3 mm'));
    changeDocument(document, FOUR_BARREL.replace('38 mm', '39 mm'));
    await vi.advanceTimersByTimeAsync(1);
    expect(page.types().filter((type) => type === 'show')).toHaveLength(before + 1);
    expect(page.last('show').source.version).toBe(3);
    // The pause in typing brings nothing that is not known.
    await turns();
    expect(page.types().filter((type) => type === 'show')).toHaveLength(before + 1);
  });

  test('waits for the pause in typing where it takes long', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    let now = 0;
    const clock = vi.spyOn(Date, 'now').mockImplementation(() => (now += 100));
    changeDocument(document, FOUR_BARREL.replace('38 mm', '39 mm'));
    await vi.advanceTimersByTimeAsync(1);
    changeDocument(document, FOUR_BARREL.replace('38 mm', '40 mm'));
    await vi.advanceTimersByTimeAsync(1);
    expect(page.last('show').source.version).toBe(2);
    await vi.advanceTimersByTimeAsync(200);
    expect(page.last('show').source.version).toBe(3);
    clock.mockRestore();
  });

  test('is not sent again where nothing of the text has changed', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const count = page.told.length;
    touchDocument(document);
    await turns();
    expect(page.told).toHaveLength(count);
  });

  test('stays behind a text that cannot be solved, of which it is said what is missing', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const broken = FOUR_BARREL.replace(/\npedal: [^\n]*/, '\npedal: {lever: pedal, opens: sideways}');
    changeDocument(document, broken);
    await turns();
    const { missing, source } = page.last('broken');
    expect(source.version).toBe(2);
    const told = missing.map(({ message, place }) => [message, broken.slice(place.start, place.end)]);
    expect(told.some(([message, words]) => message?.includes('sideways') && words === 'sideways')).toBe(true);
    changeDocument(document, FOUR_BARREL);
    await turns();
    expect(page.types().lastIndexOf('show')).toBeGreaterThan(page.types().lastIndexOf('broken'));
  });

  test('of a text that never was solved is what can be drawn of it, and of an empty one nothing', async () => {
    const { page } = await openView('format: 1\nlevers:\n  a:\n    pivot: [0, 0]\n    arms: {out: {at: [10, 0]}}\n');
    expect(page.last('show').picture.levers.map(({ name }) => name)).toEqual(['a']);
    const empty = await openView('', 'file:///folder/empty.throttle.yaml');
    expect(empty.page.last('broken').fileName).toBe('empty.throttle.yaml');
  });

  test('of two files do not mix', async () => {
    const a = await openView(FOUR_BARREL);
    const b = await openView(FOUR_BARREL, 'file:///folder/b.throttle.yaml');
    const count = a.page.told.length;
    changeDocument(b.document, FOUR_BARREL.replace('38 mm', '39 mm'));
    await turns();
    expect(a.page.told).toHaveLength(count);
    expect(b.page.last('show').source.version).toBe(2);
  });
});

describe('figures that are tried', () => {
  test('are shown and not written, and dropped by an empty list', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const written = page.last('show');
    page.try(reach(41.25));
    await turns();
    const tried = page.last('show');
    expect(tried.trial).toEqual(reach(41.25));
    expect(tried.source).toEqual(written.source);
    const pin = (show: typeof written): readonly number[] =>
      show.picture.levers
        .find(({ name }) => name === 'bellcrank')!
        .arms.find(({ name }) => name === 'out')!
        .at.slice(3, 6);
    // The drawn vector of the pin from its axis is as long as its radius.
    expect(Math.hypot(...pin(written)) * 1000).toBeCloseTo(38, 9);
    expect(Math.hypot(...pin(tried)) * 1000).toBeCloseTo(41.25, 9);
    expect(tried.dials).toEqual(written.dials);
    expect(document.getText()).toBe(FOUR_BARREL);
    page.try([]);
    await turns();
    expect(page.last('show').trial).toEqual([]);
    expect(Math.hypot(...pin(page.last('show'))) * 1000).toBeCloseTo(38, 9);
  });

  test('stay where the pause in typing before them comes to its end', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    changeDocument(document, `${FOUR_BARREL}# more\n`);
    await vi.advanceTimersByTimeAsync(1);
    page.try(reach(41.25));
    await vi.advanceTimersByTimeAsync(1);
    const count = page.types().filter((type) => type === 'show').length;
    expect(page.last('show')).toMatchObject({ source: { version: 2 }, trial: reach(41.25) });
    await turns();
    expect(page.types().filter((type) => type === 'show')).toHaveLength(count);
    page.try([]);
    await turns();
    expect(page.last('show').trial).toEqual([]);
  });

  test('have the places of the text as it stands', async () => {
    const { page } = await openView(FOUR_BARREL);
    page.try(reach(38.123456));
    await turns();
    const report = page.report();
    expect(report.parts.map(({ place }) => FOUR_BARREL.slice(place.start, place.end))).toEqual(
      expect.arrayContaining(['bellcrank', 'link', 'position']),
    );
    expect(report.requirements.map(({ place }) => FOUR_BARREL.slice(place.start, place.end))[0]).toContain('opens fully');
  });

  test('are solved one at a time, the newest only', async () => {
    const { page } = await openView(FOUR_BARREL);
    const count = page.told.length;
    for (const value of [38.1, 38.2, 38.3]) page.try(reach(value));
    await turns();
    expect(page.told.slice(count).flatMap((each) => (each.type === 'show' ? [each.trial] : []))).toEqual([reach(38.3)]);
  });

  test('are dropped when the text changes', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    page.try(reach(40));
    changeDocument(document, `${FOUR_BARREL}# typed\n`);
    await turns();
    expect(page.told.every((each) => each.type !== 'show' || each.trial.length === 0)).toBe(true);
    expect(page.last('show').source.version).toBe(2);
    // Of a text that is past.
    page.say({ type: 'try', source: { uri: document.uri.toString(), version: 1 }, trial: reach(40) });
    await turns();
    expect(page.last('show')).toMatchObject({ source: { version: 2 }, trial: [] });
  });

  test('are refused in words where they cannot be', async () => {
    const { page } = await openView(FOUR_BARREL);
    const place: Change = { kind: 'place', path: 'levers.bellcrank.arms.out', to: [0.47, 0.15, 0], fine: false, through: undefined };
    page.try([place]);
    await turns();
    expect(page.last('refused')).toMatchObject({ trial: [place], reason: expect.stringContaining('`crank_reach`') as string });
    page.try([{ ...place, through: 'crank_reach' }]);
    await turns();
    expect(page.last('show').trial).toHaveLength(1);
  });

  test('are refused with the first mistake where the linkage breaks by them, and name no place of a text that is not there', async () => {
    const { page } = await openView(FOUR_BARREL);
    const count = page.told.length;
    const none: Trial = [{ kind: 'value', path: 'pedal.travel', value: 0 }];
    page.try(none);
    await turns();
    const reason = '`travel` must be greater than 0, not 0 deg';
    expect(page.told.slice(count)).toEqual([expect.objectContaining({ type: 'refused', trial: none, reason })]);
    page.try(reach(40));
    await turns();
    expect(page.last('show').trial).toEqual(reach(40));
  });

  test('that are refused leave those shown before them when the pause in typing comes to its end', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    changeDocument(document, `${FOUR_BARREL}# more\n`);
    await vi.advanceTimersByTimeAsync(1);
    page.try(reach(41.25));
    await vi.advanceTimersByTimeAsync(1);
    page.try([{ kind: 'value', path: 'pedal.travel', value: 0 }]);
    await vi.advanceTimersByTimeAsync(1);
    expect(page.last('refused')).toMatchObject({ source: { version: 2 } });
    const count = page.types().filter((type) => type === 'show').length;
    await turns();
    expect(page.types().filter((type) => type === 'show')).toHaveLength(count);
    expect(page.last('show').trial).toEqual(reach(41.25));
  });

  test('are gone with a page that comes anew', async () => {
    const view = await openView(FOUR_BARREL);
    view.page.try(reach(40));
    hide(view);
    await turns();
    await bringBack(view);
    expect(view.page.last('show').trial).toEqual([]);
  });
});

describe('figures that are written', () => {
  test('are one step for undo, keep every comment, and come back as a picture', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const trial: Trial = [
      ...reach(40),
      { kind: 'place', path: 'points.crank_pivot', to: [0.51537, 0.148, 0], fine: false, through: undefined },
      { kind: 'place', path: 'levers.pedal.arms.pad', to: [0.08, -0.22, 0], fine: false, through: undefined },
    ];
    page.try(trial);
    await turns();
    const asked = page.request('write', { source: page.last('show').source, trial }, 1000);
    await turns();
    expect(await asked).toEqual({ version: 2 });
    expect(undoSteps).toEqual([FOUR_BARREL]);
    const differing = document
      .getText()
      .split('\n')
      .filter((line, index) => line !== FOUR_BARREL.split('\n')[index]);
    expect(differing[0]).toBe('  crank_reach: 40 mm ± 0.1 mm');
    expect(differing[1]).toBe('  crank_pivot: [515.4, 148]');
    expect(differing[2]).toMatch(/^ {6}pad: \{radius: 234\.09\d* mm, angle: -70\.0\d* deg\}$/);
    expect(differing).toHaveLength(3);
    expect(page.last('show')).toMatchObject({ source: { version: 2 }, trial: [] });
    expect(verdictOf(page)).not.toBe('');
  });

  const refusal = async (asked: Promise<unknown>): Promise<string> => {
    const outcome = asked.then(
      () => 'written',
      (error: unknown) => (error as Error).message,
    );
    await turns();
    return outcome;
  };

  test('are refused where the text has moved on, the editor will not, or nothing can be written', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    changeDocument(document, `${FOUR_BARREL}# typed\n`);
    expect(await refusal(page.request('write', { source, trial: reach(40) }, 1000))).toBe('The text has changed meanwhile.');
    const current = page.last('show').source;
    expect(await refusal(page.request('write', { source: current, trial: [{ kind: 'value', path: 'let.none', value: 1 }] }, 1000))).toMatch(
      /no figure/,
    );
    refusals.edits = true;
    expect(await refusal(page.request('write', { source: current, trial: reach(40) }, 1000))).toBe('The editor did not take the change.');
    expect(await refusal(page.request('write', { source: current, trial: reach(38) }, 1000))).toBe('written');
    expect(document.getText()).toBe(`${FOUR_BARREL}# typed\n`);
    expect(undoSteps).toEqual([]);
  });

  test('are refused of a version that only git has', async () => {
    const old = openDocument('git:/folder/a.throttle.yaml?{"ref":"HEAD"}', 'throttle-linkage', FOUR_BARREL);
    focusDocument(old);
    await run('openView');
    const page = loadPage(panels[0]!);
    await turns();
    expect(await refusal(page.request('write', { source: page.last('show').source, trial: reach(40) }, 1000))).toMatch(/cannot be changed/);
    expect(undoSteps).toEqual([]);
  });

  test.each([
    ['in a place that is', 'readonly:/folder/a.throttle.yaml'],
    ['by itself', 'file:///folder/a.throttle.yaml'],
  ])('are refused of a file that is read-only %s', async (_, uri) => {
    writeFile(uri, FOUR_BARREL);
    disk.readonly.add(uri);
    const { document, page } = await openView(FOUR_BARREL, uri);
    expect(await refusal(page.request('write', { source: page.last('show').source, trial: reach(40) }, 1000))).toBe(
      'a.throttle.yaml is read-only.',
    );
    expect([document.getText(), undoSteps]).toEqual([FOUR_BARREL, []]);
    emptyDisk();
  });

  test('are taken back of a file that the person holds read-only, which can never be saved', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    refusals.saving = true;
    expect(await refusal(page.request('write', { source: page.last('show').source, trial: reach(40) }, 1000))).toBe(
      'a.throttle.yaml is read-only.',
    );
    expect(document.getText()).toBe(FOUR_BARREL);
  });

  test('are refused once the file is gone', async () => {
    const { document, page } = await openView(FOUR_BARREL, 'untitled:Untitled-3');
    const { source } = page.last('show');
    closeDocument(document);
    await turns();
    expect(await refusal(page.request('write', { source, trial: reach(40) }, 1000))).toMatch(/closed without being saved/);
    expect(told).toEqual([]);
  });
});
