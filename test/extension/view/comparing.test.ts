import { describe, expect, test, vi } from 'vitest';
import type * as Effects from '../../../src/compared/effects.ts';
import { failuresGoTo } from '../../../extension/logFailure.ts';
import { EMPTY_START } from '../../../extension/startingFile.ts';
import { FOUR_BARREL } from '../../support/editorRequests.ts';
import { loadPage } from '../../support/fakePage.ts';
import { bringBack, command, hide, openView, run, serveViews, turns } from '../../support/viewInEditor.ts';
import {
  changeDocument,
  choice,
  chosenFile,
  commit,
  contexts,
  dialogs,
  extensionsHaveChanged,
  focusDocument,
  git,
  listening,
  offered,
  openDocument,
  panels,
  repositoryChanged,
  Uri,
  window,
  workspace,
  writeFile,
} from '../../support/vscode.ts';

serveViews();

/** How many changes were taken alone, and what happens meanwhile. */
const alone = { count: 0, meanwhile: (): void => undefined };

vi.mock('../../../src/compared/effects.ts', async (original) => {
  const effects = await original<typeof Effects>();
  return {
    ...effects,
    effectsAlone: (...given: Parameters<typeof effects.effectsAlone>) => {
      alone.count++;
      alone.meanwhile();
      return effects.effectsAlone(...given);
    },
  };
});

const PATH = '/folder/a.throttle.yaml';
const OLD = FOUR_BARREL.replace('crank_reach: 38 mm', 'crank_reach: 36 mm').replace('open: 82 deg', 'open: 80 deg');

const committed = (text: string, hash = '3f2a91c0d1'): void =>
  commit({ hash, message: `Rev ${hash.slice(0, 1)}\n\nmore`, files: { [PATH]: text } });

describe('comparing with the last commit', () => {
  test('shows the old mechanism, what changed, and what each change does alone', async () => {
    committed(OLD);
    const { page } = await openView(FOUR_BARREL);
    await run('compareWithHead');
    const { label, other, changes, effects, source } = page.last('compare');
    expect([label, source.version, contexts.get('pedalToPlate.comparing')]).toEqual(['HEAD', 1, true]);
    const reach = (picture: NonNullable<typeof other>['picture']): number =>
      Math.hypot(...picture.levers.find(({ name }) => name === 'bellcrank')!.arms[0]!.at.slice(3, 6)) * 1000;
    expect(reach(other!.picture)).toBeCloseTo(36, 9);
    expect(changes.map(({ path, was, is }) => [path, was, is])).toEqual([
      ['let.crank_reach', '36 mm ± 0.1 mm', '38 mm ± 0.1 mm'],
      ['levers.shaft.stops.open', '80 deg', '82 deg'],
    ]);
    for (const { place, is } of changes) expect(FOUR_BARREL.slice(place?.start, place?.end)).toBe(is);
    // The stop alone lets the shaft open by 2° more; the crank's arm alone cannot.
    const [byReach, byStop] = changes;
    expect(byStop?.effects.join('\n')).toMatch(/opening-missed/);
    expect(byReach?.effects.join('\n')).not.toMatch(/shaft: full opening 80/);
    expect(byReach?.effects).not.toEqual(byStop?.effects);
    expect(effects[0]).toMatch(/worse|no difference/);
  });

  test('does not list the effects of the only change again at the change', async () => {
    committed(FOUR_BARREL.replace('crank_reach: 38 mm', 'crank_reach: 36 mm'));
    const { page } = await openView(FOUR_BARREL);
    await run('compareWithHead');
    const { changes, effects } = page.last('compare');
    expect(changes.map((change) => change.effects)).toEqual([['The only change: all that the comparison lists comes of it.']]);
    expect(effects.length).toBeGreaterThan(1);
  });

  test('says first that the effects are being worked out, and nothing twice', async () => {
    committed(OLD);
    const { page } = await openView(FOUR_BARREL);
    await run('compareWithHead');
    const told = page.told.flatMap((each) => (each.type === 'compare' ? [each.changes.map(({ effects }) => effects[0])] : []));
    expect(told).toHaveLength(2);
    expect(told[0]).toEqual(['Being worked out …', 'Being worked out …']);
    expect(told[1]).not.toContain('Being worked out …');
  });

  test('goes on with the text, and with the repository', async () => {
    committed(OLD);
    const { document, page } = await openView(FOUR_BARREL);
    await run('compareWithHead');
    changeDocument(document, FOUR_BARREL.replace('open: 82 deg', 'open: 80 deg'));
    await turns();
    expect(page.last('compare').changes.map(({ path }) => path)).toEqual(['let.crank_reach']);
    expect(page.last('compare').source.version).toBe(2);
    committed(document.getText(), '77aa');
    await turns();
    expect(page.last('compare').changes).toEqual([]);
    expect(page.last('compare').effects).toEqual(['no difference']);
  });

  test('is told anew to a page that comes anew, and ends when asked', async () => {
    committed(OLD);
    const view = await openView(FOUR_BARREL);
    await run('compareWithHead');
    hide(view);
    changeDocument(view.document, OLD);
    await turns();
    await bringBack(view);
    expect(view.page.last('compare').changes).toEqual([]);
    await run('stopComparing');
    expect(view.page.last('compare-ended').reason).toBeUndefined();
    expect(contexts.get('pedalToPlate.comparing')).toBe(false);
    const count = view.page.told.length;
    committed(FOUR_BARREL, '99');
    await turns();
    expect(view.page.told).toHaveLength(count);
  });

  test('says why it cannot: no git, no repository, git switched off, no such file there', async () => {
    const reasonOf = async (page: Awaited<ReturnType<typeof openView>>['page']): Promise<string | undefined> => {
      page.say({ type: 'compare-with', other: 'head' });
      await turns();
      return page.last('compare-ended').reason;
    };
    const { page } = await openView(FOUR_BARREL);
    expect(await reasonOf(page)).toBe('a.throttle.yaml is in no git repository that the editor knows.');
    workspace.isTrusted = false;
    expect(await reasonOf(page)).toBe('The editor uses no git in a folder that you do not trust.');
    workspace.isTrusted = true;
    git.commits = [];
    expect(await reasonOf(page)).toBe('Nothing has been committed yet.');
    commit({ hash: '12', message: 'Rev 1', files: {} });
    expect(await reasonOf(page)).toBe('The last commit has no a.throttle.yaml.');
    git.isEnabled = false;
    expect(await reasonOf(page)).toBe('a.throttle.yaml is in no git repository that the editor knows.');
    git.isEnabled = true;
    const other = await openView(FOUR_BARREL, 'file:///elsewhere/b.throttle.yaml');
    expect(await reasonOf(other.page)).toBe('b.throttle.yaml is in no git repository that the editor knows.');
    const untitled = await openView(FOUR_BARREL, 'untitled:Untitled-1');
    expect(await reasonOf(untitled.page)).toBe('Untitled-1 is in no git repository that the editor knows.');
  });

  test('is offered from when the editor has git, as where a person begins to trust a folder', async () => {
    git.commits = undefined;
    await openView(FOUR_BARREL);
    expect(contexts.get('pedalToPlate.hasGit')).toBe(false);
    git.commits = [];
    extensionsHaveChanged();
    expect(contexts.get('pedalToPlate.hasGit')).toBe(true);
  });

  test('begins though the page comes, or the text is solved, while the old text is being read', async () => {
    committed(OLD);
    const document = openDocument('file:///folder/a.throttle.yaml', 'throttle-linkage', FOUR_BARREL);
    focusDocument(document);
    const asked: (() => void)[] = [];
    const read = vi.spyOn(git, 'read').mockImplementation(() => new Promise((resolve) => asked.push(() => resolve(OLD))));
    const done = command('compareWithHead');
    await turns();
    asked.shift()!();
    await turns();
    const page = loadPage(panels[0]!);
    changeDocument(document, FOUR_BARREL.replace('open: 82 deg', 'open: 81 deg'));
    await turns();
    expect(page.types()).not.toContain('compare');
    asked.shift()!();
    await turns();
    await done;
    expect(page.last('compare')).toMatchObject({ label: 'HEAD', source: { version: 2 } });
    read.mockRestore();
  });

  test('reads the last commit anew only where that is another one', async () => {
    committed(OLD);
    const { page } = await openView(FOUR_BARREL);
    await run('compareWithHead');
    const count = page.told.length;
    const read = vi.spyOn(git, 'read');
    repositoryChanged();
    await turns();
    expect(read).not.toHaveBeenCalled();
    expect(page.told).toHaveLength(count);
    // Another commit with the same text changes nothing that is to be told.
    committed(OLD, '88');
    await turns();
    expect(read).toHaveBeenCalledTimes(1);
    expect(page.told).toHaveLength(count);
    read.mockRestore();
  });

  test('says why it cannot to a page that comes only then', async () => {
    const document = openDocument('file:///folder/a.throttle.yaml', 'throttle-linkage', FOUR_BARREL);
    focusDocument(document);
    await run('compareWithHead');
    const page = loadPage(panels[0]!);
    await turns();
    expect(page.last('compare-ended').reason).toBe('a.throttle.yaml is in no git repository that the editor knows.');
    const view = { document, panel: panels[0]!, page };
    hide(view);
    await bringBack(view);
    expect(view.page.types()).not.toContain('compare-ended');
  });

  test('is not begun in a view that was closed while the person was asked', async () => {
    committed(OLD);
    const { panel } = await openView(FOUR_BARREL);
    const listeners = listening.count;
    let answer = (): void => undefined;
    const read = vi.spyOn(git, 'read').mockImplementation(() => new Promise((resolve) => (answer = () => resolve(OLD))));
    const done = command('compareWithHead');
    await turns();
    panel.dispose();
    const left = listening.count;
    answer();
    await turns();
    await done;
    expect(left).toBeLessThan(listeners);
    expect(listening.count).toBe(left);
    expect(read).toHaveBeenCalledTimes(1);
    read.mockRestore();
  });

  test('ends in the view that compares, though another text has the focus, and opens none', async () => {
    committed(OLD);
    const { page } = await openView(FOUR_BARREL);
    await run('compareWithHead');
    focusDocument(openDocument('file:///folder/b.throttle.yaml', 'throttle-linkage', FOUR_BARREL));
    await run('stopComparing');
    expect(page.last('compare-ended').reason).toBeUndefined();
    expect(panels).toHaveLength(1);
  });

  test('draws nothing of an old state that cannot be drawn, and says so', async () => {
    committed('nonsense');
    const { page } = await openView(FOUR_BARREL);
    await run('compareWithHead');
    const { other, changes, effects } = page.last('compare');
    expect([other, changes]).toEqual([undefined, []]);
    expect(effects[0]).toMatch(/not compared/);
  });
});

describe('comparing with another state', () => {
  test('that the person picks of the commits', async () => {
    committed(OLD, '1111111aa');
    committed(FOUR_BARREL, '2222222bb');
    const { page } = await openView(FOUR_BARREL);
    offered.length = 0;
    choice.label = undefined;
    await run('compareWithRevision');
    expect(page.types()).not.toContain('compare');
    expect(offered).toEqual([
      expect.objectContaining({ label: 'Rev 2', description: '2222222' }),
      expect.objectContaining({ label: 'Rev 1', description: '1111111' }),
    ]);
    choice.label = 'Rev 1';
    await run('compareWithRevision');
    expect(page.last('compare').label).toBe('1111111');
    expect(page.last('compare').changes).toHaveLength(2);
    choice.label = undefined;
  });

  test('that is another file', async () => {
    const { page } = await openView(FOUR_BARREL);
    await run('compareWithFile');
    expect(page.types()).not.toContain('compare');
    expect(dialogs[0]?.defaultUri?.toString()).toBe('file:///folder');
    writeFile('file:///folder/rev_a.throttle.yaml', OLD);
    chosenFile.uri = Uri.parse('file:///folder/rev_a.throttle.yaml');
    await run('compareWithFile');
    expect([page.last('compare').label, page.last('compare').changes.length]).toEqual(['rev_a.throttle.yaml', 2]);
    chosenFile.uri = Uri.parse('file:///folder/none.throttle.yaml');
    page.say({ type: 'compare-with', other: 'file' });
    await turns();
    expect(page.last('compare-ended').reason).toBe('none.throttle.yaml cannot be read.');
  });

  test('that is another file, as it stands in the editor where it is open', async () => {
    const { page } = await openView(FOUR_BARREL);
    writeFile('file:///folder/rev_a.throttle.yaml', FOUR_BARREL);
    openDocument('file:///folder/rev_a.throttle.yaml', 'throttle-linkage', OLD);
    chosenFile.uri = Uri.parse('file:///folder/rev_a.throttle.yaml');
    await run('compareWithFile');
    expect(page.last('compare').changes).toHaveLength(2);
  });

  test('that cannot be asked for puts why into the log, once', async () => {
    committed(OLD);
    const { page } = await openView(FOUR_BARREL);
    const why = new Error('no dialog can be shown');
    const asking = vi.spyOn(window, 'showOpenDialog').mockRejectedValue(why);
    const failures: unknown[] = [];
    const logging = failuresGoTo({ failed: (error) => failures.push(error) });
    page.say({ type: 'compare-with', other: 'file' });
    await turns();
    expect(failures).toEqual([why]);
    logging.dispose();
    asking.mockRestore();
    page.say({ type: 'compare-with', other: 'head' });
    await turns();
    expect(page.last('compare').label).toBe('HEAD');
  });

  test('takes no more than the first changes one at a time, and says so', async () => {
    const lets = (value: number): string => Array.from({ length: 45 }, (_, i) => `  v${i}: ${value + i} mm\n`).join('');
    const text = (value: number): string => EMPTY_START.text.replace('levers:\n', `let:\n${lets(value)}levers:\n`);
    committed(text(1));
    const { page } = await openView(text(2));
    await run('compareWithHead');
    const { changes } = page.last('compare');
    expect(changes).toHaveLength(45);
    expect(changes.slice(0, 40).every(({ effects }) => effects[0] === 'Alone it changes nothing that was found')).toBe(true);
    expect(changes.slice(40).every(({ effects }) => effects[0]?.startsWith('Not worked out') === true)).toBe(true);
  });

  test('begins again where the text changes while the effects are being worked out', async () => {
    const lets = (value: number): string => Array.from({ length: 8 }, (_, i) => `  v${i}: ${value + i} mm\n`).join('');
    const text = (value: number): string => EMPTY_START.text.replace('levers:\n', `let:\n${lets(value)}levers:\n`);
    committed(text(1));
    const { document, page } = await openView(text(2));
    alone.count = 0;
    alone.meanwhile = () => {
      if (alone.count === 3) changeDocument(document, text(3));
    };
    await run('compareWithHead');
    alone.meanwhile = () => undefined;
    expect(alone.count).toBe(3 + 8);
    expect(page.last('compare')).toMatchObject({ source: { version: 2 } });
    expect(page.last('compare').changes[0]?.is).toBe('3 mm');
  });
});
