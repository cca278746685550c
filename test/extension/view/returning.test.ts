import { describe, expect, test, vi } from 'vitest';
import type { Requests } from '../../../src/protocol/messages.ts';
import { FOUR_BARREL } from '../../support/editorRequests.ts';
import { openView, serveViews, turns } from '../../support/viewInEditor.ts';
import { changeDocument } from '../../support/vscode.ts';

serveViews();

/** What came of a request, in words where it was refused. */
const outcome = (asked: Promise<unknown>): Promise<unknown> => asked.catch((error: unknown) => (error as Error).message);

const settled = async (asked: Promise<unknown>): Promise<unknown> => {
  const coming = outcome(asked);
  await turns();
  return coming;
};

describe('single failures', () => {
  test('are told of the text as it stands, and of the figures that are tried in it', async () => {
    const { page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    const returnsWith = async (trial: Requests['returns']['asks']['trial']): Promise<Requests['returns']['answers']> =>
      (await settled(page.request('returns', { source, trial }, undefined))) as Requests['returns']['answers'];
    const { rows, verdict } = await returnsWith([]);
    expect(rows.map(({ name }) => name)).toEqual([
      '',
      'spring return_front',
      'spring return_rear',
      'cable main',
      'rod link',
      'cable main seized',
    ]);
    expect(verdict).toMatch(/4 parts lost in turn/);
    const tried = await returnsWith([{ kind: 'value', path: 'let.crank_reach', value: 34 }]);
    expect(tried.rows.map(({ name }) => name)).toEqual(rows.map(({ name }) => name));
    expect(tried.rows[0]).not.toEqual(rows[0]);
  });

  test('are not worked out of a text that has changed, before or after they are begun', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    const coming = outcome(page.request('returns', { source, trial: [] }, undefined));
    changeDocument(document, FOUR_BARREL.replace('38 mm', '37 mm'));
    await turns();
    const changed = 'The text has changed meanwhile: try again.';
    expect(await coming).toBe(changed);
    expect(await settled(page.request('returns', { source, trial: [] }, undefined))).toBe(changed);
    const now = page.last('show').source;
    expect(now.version).toBe(2);
    const begun = outcome(page.request('returns', { source: now, trial: [] }, undefined));
    // Comes between its first turn and its second.
    setTimeout(() => changeDocument(document, FOUR_BARREL), 0);
    await turns();
    expect(await begun).toBe(changed);
    const newest = page.last('show').source;
    expect(newest.version).toBe(3);
    expect(await settled(page.request('returns', { source: newest, trial: [] }, undefined))).toHaveProperty('rows');
  });

  test('tell how far they are while they are worked out, always further, and not after they have come', async () => {
    const { page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    // By a clock of which each look takes a millisecond: turns come after a number of looks, not of seconds.
    let clock = Date.now();
    const looks = vi.spyOn(Date, 'now').mockImplementation(() => clock++);
    const coming = outcome(page.request('returns', { source, trial: [] }, undefined));
    await turns();
    looks.mockRestore();
    const { rows } = (await coming) as Requests['returns']['answers'];
    const working = page.told.filter((notice) => notice.type === 'working');
    expect(working.length).toBeGreaterThan(2);
    expect(working.map(({ source: of, trial, all }) => ({ source: of, trial, all }))).toEqual(
      working.map(() => ({ source, trial: [], all: 2 * rows.length })),
    );
    const done = working.map((notice) => notice.done);
    expect(done).toEqual([...new Set(done)].sort((a, b) => a - b));
    const told = page.told.length;
    await settled(page.request('returns', { source, trial: [] }, undefined));
    expect(page.told.slice(told).filter(({ type }) => type === 'working')).toEqual([]);
  });

  test('are worked out of the newest that was asked for alone', async () => {
    const { page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    const first = outcome(page.request('returns', { source, trial: [] }, undefined));
    const second = outcome(page.request('returns', { source, trial: [{ kind: 'value', path: 'let.crank_reach', value: 34 }] }, undefined));
    await turns();
    expect(await first).toBe('Something newer was asked for.');
    expect(await second).toHaveProperty('rows');
  });

  test('are refused in words where nothing is solved, and where a figure cannot be tried', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    const trial = [{ kind: 'value', path: 'let.nothing', value: 1 }] as const;
    expect(await settled(page.request('returns', { source, trial }, undefined))).toMatch(/\S/);
    changeDocument(document, 'format: 1\n');
    await turns();
    const now = { ...source, version: 2 };
    expect(await settled(page.request('returns', { source: now, trial: [] }, undefined))).toMatch(/^The linkage is not solved/);
  });
});

describe('a snap-back', () => {
  test('has the levers of the picture, after a failure or with none', async () => {
    const { page } = await openView(FOUR_BARREL);
    const { source, picture } = page.last('show');
    const traceOf = async (failure: Requests['trace']['asks']['failure']): Promise<Requests['trace']['answers']> =>
      (await settled(page.request('trace', { source, trial: [], failure }, undefined))) as Requests['trace']['answers'];
    const whole = await traceOf(undefined);
    expect(whole.rotations).toHaveLength(picture.levers.length);
    const without = await traceOf({ kind: 'rod-lost', part: 'link' });
    expect(without.rotations).toHaveLength(picture.levers.length);
    expect(without.closed!).toBeLessThan(whole.closed!);
  });

  test('is refused where nothing moves, where the text has changed, and where another was asked for', async () => {
    const { document, page } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    const seized = { kind: 'cable-seized', part: 'main' } as const;
    expect(await settled(page.request('trace', { source, trial: [], failure: seized }, undefined))).toMatch(/^Nothing moves/);
    const first = outcome(page.request('trace', { source, trial: [], failure: undefined }, undefined));
    const second = outcome(page.request('trace', { source, trial: [], failure: { kind: 'rod-lost', part: 'link' } }, undefined));
    await turns();
    expect([await first, await second]).toEqual([
      'Something newer was asked for.',
      expect.objectContaining({ outcome: expect.stringMatching(/^closed/) as string }),
    ]);
    changeDocument(document, FOUR_BARREL.replace('38 mm', '37 mm'));
    await turns();
    expect(await settled(page.request('trace', { source, trial: [], failure: undefined }, undefined))).toBe(
      'The text has changed meanwhile: try again.',
    );
  });

  test('is not begun for a view that was closed', async () => {
    const { page, panel } = await openView(FOUR_BARREL);
    const { source } = page.last('show');
    const coming = outcome(page.request('trace', { source, trial: [], failure: undefined }, 1000));
    panel.dispose();
    await turns();
    expect(await coming).toMatch(/No answer|closed/);
  });
});
