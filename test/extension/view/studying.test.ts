/** Studies in the editor where it starts no thread, as in this stand-in: a few milliseconds at a time. Threads are tested in real editors. */
import { describe, expect, test, vi } from 'vitest';
import type { ToView } from '../../../src/protocol/messages.ts';
import { solve as solveText } from '../../../src/solve.ts';
import { forEditor, openView, run, serveViews, touching, turns } from '../../support/viewInEditor.ts';
import { changeDocument, choice, disk, offered, told, typed, undoSteps } from '../../support/vscode.ts';

/** Of `bench.csv`. */
let readings = '';
serveViews(() => Promise.resolve([['bench.csv', { kind: 'text', text: readings }]]));

const FILE = `format: 1
let:
  reach: 40 mm ± 0.1 mm # of the crank
levers:
  pedal: {pivot: [0, 0], arms: {pin: {radius: 40 mm, angle: 60 deg}}}
  shaft: {pivot: [120 mm, 0], arms: {pin: {radius: reach, angle: 100 deg}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 30 deg}
rods:
  link: {from: pedal.pin, to: shaft.pin}
plates:
  bank: {lever: shaft, bore: 40 mm, shaft: 8 mm, seat: 5 deg}
require:
  wide: at(100%, shaft.opening) >= 30 deg
`;

type Told = Extract<ToView, { readonly type: 'study' }>;
type Page = Awaited<ReturnType<typeof openView>>['page'];

const studiesTold = (page: Page): readonly Told[] => page.told.filter((notice): notice is Told => notice.type === 'study');
const stages = (page: Page): readonly string[] => studiesTold(page).map(({ kind, now }) => `${kind} ${now.stage}`);
const foundBy = (page: Page) => {
  const now = studiesTold(page).at(-1)?.now;
  if (now?.stage !== 'found') throw new Error(`it is ${JSON.stringify(now)}`);
  return now.found;
};
const settled = async (asked: Promise<unknown>): Promise<unknown> => {
  const coming = asked.catch((error: unknown) => (error as Error).message);
  await turns();
  return coming;
};
/** Solves for the reach at which the requirement is just met. */
const solve = (uri: string): Promise<void> => run('solveFigure', { uri, change: 'reach', demand: 'wide' });

/** By a clock of which each look takes a millisecond: turns come after a number of looks, not of seconds. */
function withClock(): () => void {
  let clock = Date.now();
  const looks = vi.spyOn(Date, 'now').mockImplementation(() => clock++);
  return () => looks.mockRestore();
}

describe('a study', () => {
  test('that a command begins is told as it runs and when it has come, with the text that it is of', async () => {
    const { document, page } = await openView(FILE);
    await solve(document.uri.toString());
    expect(stages(page)[0]).toBe('solve running');
    expect(stages(page).at(-1)).toBe('solve found');
    expect(studiesTold(page).map(({ source }) => source)).toEqual(studiesTold(page).map(() => page.last('show').source));
    expect(studiesTold(page).map(({ show }) => show)).toEqual([
      true,
      ...studiesTold(page)
        .slice(1)
        .map(() => false),
    ]);
    expect(foundBy(page).verdict).toMatch(/reach found$/);
  });

  test('for one figure asks between which bounds, and looks there', async () => {
    const { document, page } = await openView(FILE);
    const lines = () => foundBy(page).blocks.flatMap((block) => (block.kind === 'lines' ? block.lines.map(({ text }) => text) : []));
    const uri = document.uri.toString();
    told.length = 0;
    await solve(uri);
    expect(told).toContain('typed: 20 mm to 60 mm');
    const usual = lines().join();
    for (const [line, heard] of [
      ['60 mm to 20 mm', 'refused: The bounds are reversed: from 60 mm to 20 mm. Give the lesser one first'],
      ['wide', 'refused: Two figures are wanted, the lesser one first, such as `20 mm to 60 mm`'],
    ] as const) {
      typed.line = line;
      const before = studiesTold(page).length;
      await solve(uri);
      expect(told).toContain(heard);
      expect(studiesTold(page)).toHaveLength(before);
    }
    typed.line = '25 to 55 mm';
    await solve(uri);
    typed.line = undefined;
    expect(lines().join()).toMatch(/25 mm to 55 mm/);
    expect(usual).not.toMatch(/25 mm to 55 mm/);
  });

  test('that cannot be says why', async () => {
    const { page } = await openView(FILE);
    page.say({ type: 'run-study', kind: 'tune' });
    await turns();
    expect(studiesTold(page).at(-1)?.now).toEqual({ stage: 'refused', why: 'The file has no `tune` block' });
  });

  test('is cancelled by the page, and ends then', async () => {
    const restore = withClock();
    const { page } = await openView(FILE);
    page.say({ type: 'run-study', kind: 'tolerance' });
    page.say({ type: 'cancel-study', kind: 'tolerance' });
    await turns();
    restore();
    expect(stages(page)).toEqual(['tolerance running', 'tolerance cancelled']);
  });

  test('gives way to a newer one of the same view', async () => {
    const restore = withClock();
    const { page } = await openView(FILE);
    page.say({ type: 'run-study', kind: 'tolerance' });
    page.say({ type: 'run-study', kind: 'tune' });
    await turns();
    restore();
    expect(stages(page)).toEqual(['tolerance running', 'tolerance cancelled', 'tune running', 'tune refused']);
  });

  test('stands on a page that comes anew', async () => {
    const { document, page } = await openView(FILE);
    await solve(document.uri.toString());
    const before = studiesTold(page).length;
    page.say({ type: 'ready' });
    await turns();
    expect(stages(page).slice(before)).toEqual(['solve found']);
  });
});

describe('an answer', () => {
  const opened = async () => {
    const { document, page } = await openView(FILE);
    await solve(document.uri.toString());
    const { blocks } = foundBy(page);
    const block = blocks.findIndex(({ kind }) => kind === 'answer');
    expect(block).toBeGreaterThan(0);
    const source = studiesTold(page).at(-1)!.source;
    return {
      document,
      page,
      write: (at = block) => settled(page.request('answer', { kind: 'solve', source, block: at }, undefined)),
      blocks,
    };
  };

  test('is written as one undo step, into its figure alone', async () => {
    const { document, write } = await opened();
    expect(await write()).toEqual({ version: 2 });
    expect(undoSteps).toHaveLength(1);
    const figure = /reach: [\d.]+ mm ±/;
    expect(document.getText()).not.toBe(FILE);
    expect(document.getText().replace(figure, '')).toBe(FILE.replace(figure, ''));
  });

  test('is written again over what another one wrote, and not into a text that has changed otherwise', async () => {
    const { document, write } = await opened();
    changeDocument(document, FILE.replace('40 mm ±', '37 mm ±'));
    expect(await write()).toEqual({ version: 3 });
    changeDocument(document, FILE.replace('radius: 40 mm', 'radius: 41 mm'));
    expect(await write()).toBe('The text has changed since: run the study again.');
    expect(document.getText()).toBe(FILE.replace('radius: 40 mm', 'radius: 41 mm'));
  });

  test('that is none is refused', async () => {
    const { write } = await opened();
    expect(await write(0)).toBe('This study is not there any more: run it again.');
    expect(await write(99)).toBe('This study is not there any more: run it again.');
  });
});

test('the answer of a fit is not written once its readings are others', async () => {
  const text = `${FILE}measured:\n  fit: [link.length]\n  runs:\n    bench: {file: bench.csv}\n`;
  const { columns } = solveText(FILE).table([0.2, 0.4, 0.6, 0.8, 1], ['shaft.opening']);
  const rows = (columns[0]!.values as number[]).map((value, i) => `${20 * (i + 1)},${value + 0.3 + 0.01 * (-1) ** i}`);
  readings = ['pedal.travel [%],shaft.opening [deg]', ...rows, ''].join('\n');
  const { document, page } = await openView(text);
  page.say({ type: 'run-study', kind: 'fit' });
  await turns();
  const block = foundBy(page).blocks.findIndex(({ kind }) => kind === 'answer');
  expect(block).toBeGreaterThan(0);
  const { source } = studiesTold(page).at(-1)!;
  const write = (): Promise<unknown> => settled(page.request('answer', { kind: 'fit', source, block }, undefined));
  const studied = readings;
  readings = readings.replace(rows[2]!, '60,12');
  expect(await write()).toBe('A file of readings has changed since: run the study again.');
  expect(document.getText()).toBe(text);
  readings = studied;
  expect(await write()).toEqual({ version: 2 });
  expect(document.getText()).not.toBe(text);
});

test('the page of a fit is old once its readings are others, and is not once they are back', async () => {
  const text = `${FILE}measured:\n  fit: [link.length]\n  runs:\n    bench: {file: bench.csv}\n`;
  readings = 'pedal.travel [%],shaft.opening [deg]\n20,7\n60,21\n100,33\n';
  const { document, page } = await openView(text);
  page.say({ type: 'run-study', kind: 'fit' });
  await turns();
  const touch = async (as: string): Promise<void> => {
    readings = as;
    touching.fire(forEditor(document));
    await turns();
  };
  const told = studiesTold(page).length;
  expect(studiesTold(page).at(-1)).toMatchObject({ kind: 'fit', isOutrun: false });
  const studied = readings;
  await touch(studied);
  expect(studiesTold(page)).toHaveLength(told);
  await touch(readings.replace('60,21', '60,22'));
  expect(studiesTold(page).slice(told)).toMatchObject([{ kind: 'fit', isOutrun: true }]);
  await touch(studied);
  expect(studiesTold(page).at(-1)).toMatchObject({ isOutrun: false });
  await touch('');
  page.say({ type: 'run-study', kind: 'fit' });
  await turns();
  expect(studiesTold(page).at(-1)).toMatchObject({ now: { stage: 'refused' }, isOutrun: false });
});

test('what is asked for under no cursor is picked: a figure, then what is to be met', async () => {
  const { page } = await openView(FILE);
  offered.length = 0;
  choice.label = 'reach';
  page.say({ type: 'run-study', kind: 'solve' });
  await turns();
  choice.label = undefined;
  expect(offered.map(({ label }) => label)).toEqual(expect.arrayContaining(['reach', 'wide', 'Another condition…']));
  expect(stages(page)).toEqual([]);
  offered.length = 0;
});

test('work of more than half a second is told by the editor too', async () => {
  const { document, page } = await openView(FILE);
  // The bundle that a thread would run is looked for first.
  disk.milliseconds = 600;
  await run('showTolerances', { uri: document.uri.toString() });
  expect(stages(page).at(-1)).toBe('tolerance found');
  expect(told.filter((each) => each.endsWith('Looking at what tolerances do'))).toEqual([
    'progress: Looking at what tolerances do',
    'done: Looking at what tolerances do',
  ]);
});
