/** What the tests of the page share: files as the editor would show them, and a page that shows one. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll } from 'vitest';
import type { ToEditor, ToView } from '../../src/protocol/messages.ts';
import type { FailureKey } from '../../src/protocol/returns.ts';
import { showReturns } from '../../src/picture/returns.ts';
import { traceReturn } from '../../src/picture/returnTraces.ts';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import { solve } from '../../src/solve.ts';
import type { Report } from '../../src/protocol/report.ts';
import { openViewPage } from './viewPage.ts';
import type { Asked, ViewOptions, ViewPage } from './viewPage.ts';

export const EXAMPLE = readFileSync(new URL('../../examples/four-barrel.throttle.yaml', import.meta.url), 'utf8');
/** It cannot be assembled beyond 54.6 % of the pedal's travel. */
export const BINDING = readFileSync(new URL('../../examples/binding-broken.throttle.yaml', import.meta.url), 'utf8');

export const source = { uri: 'file:///linkage.throttle.yaml', version: 1 };

/** The message that shows a file. */
export function showOf(text: string, version = 1): ToView & { type: 'show'; report: Report } {
  const shown = showAnswers(solve(text));
  if (shown === undefined) throw new Error('Nothing of this can be drawn');
  return { type: 'show', source: { ...source, version }, fileName: 'linkage.throttle.yaml', trial: [], coming: [], ...shown };
}

/** One browser for all tests of a file. */
export function viewForAll() {
  let opened: ViewPage | undefined;
  beforeAll(async () => {
    opened = await openViewPage();
  });
  afterAll(() => opened?.close());
  const view = (): ViewPage => {
    if (opened === undefined) throw new Error('The browser is not open yet');
    return opened;
  };

  const open = async (show: ToView, options?: ViewOptions) => {
    await view().load(options);
    await view().tell(show);
  };

  const toldOf = <Type extends ToEditor['type']>(type: Type) =>
    view()
      .told()
      .filter((message): message is Extract<ToEditor, { readonly type: Type }> => message.type === type);

  const lastAsked = (name: Asked['name']): Asked => {
    const asked = view()
      .asked()
      .findLast((each) => each.name === name);
    if (asked === undefined) throw new Error(`The page asked no “${name}”`);
    return asked;
  };

  /** Has the single failures of a file worked out and answers as the editor does. */
  const openReturns = async (text: string) => {
    await view().click('Work out');
    await view().answer(lastAsked('returns'), showReturns(solve(text)));
  };

  /** Has the snap-back of a row played, the first whose name begins so, and answers as the editor does. */
  const playReturn = async (text: string, row: string) => {
    const isRow = `button.closest('tbody').querySelector('.part-name').textContent.startsWith(${JSON.stringify(row)})`;
    await view().page.evaluate(`[...document.querySelectorAll('.play-return')].find((button) => ${isRow}).click()`);
    await view().drawn();
    const asked = lastAsked('trace');
    const trace = traceReturn(solve(text), asked.asks.failure as FailureKey | undefined);
    await ('why' in trace ? view().refuse(asked, trace.why) : view().answer(asked, trace));
  };

  return {
    view,
    open,
    /** What the page has asked last by a name. */
    lastAsked,
    openReturns,
    playReturn,
    /** What the page has told of one type. */
    toldOf,
    /** Where the slider stands, %. */
    travel: () => view().page.evaluate<number>('Number(document.querySelector(".pedal-slider").value)'),
    /** All that can be on the page at once: stepping, a table, a trial, a state to compare with, single failures, a snap-back. */
    openFull: async (options?: ViewOptions) => {
      await open(showOf(EXAMPLE), options);
      const other = showOf(EXAMPLE.replace('38 mm', '34 mm'));
      const effects = ['shaft opens 2° further'];
      await view().tell({
        type: 'compare',
        source,
        label: 'HEAD',
        other,
        changes: [{ path: 'rods.link.length', was: '80 mm', is: '82 mm', effects, place: { start: 1, end: 3 } }],
        effects: ['opens fully: passes'],
      });
      await view().tell({ type: 'select', source, part: { kind: 'rod', name: 'link' }, step: true, dial: undefined });
      await view().click('Opening and open area as a table');
      await view().enter('crank_reach, number', '40');
      const tried = EXAMPLE.replace('38 mm', '40 mm');
      await view().tell({ ...showOf(tried), trial: toldOf('try').at(-1)!.trial });
      await openReturns(tried);
      await playReturn(tried, 'rod link');
      await view().click('Pause snap-back');
    },
  };
}
