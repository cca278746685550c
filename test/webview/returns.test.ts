/** Single failures and the snap-back in the page, in Chromium. */
import { describe, expect, test } from 'vitest';
import { handMadeReturns, handMadeTrace } from '../support/handMadeReturns.ts';
import { handMadeShow } from '../support/handMadeShown.ts';
import { EXAMPLE, showOf, viewForAll } from '../support/viewForAll.ts';

const { view, open, openReturns, playReturn, lastAsked, travel, toldOf } = viewForAll();

const WORK_OUT = '.work-out button';
const askedOf = (name: string) =>
  view()
    .asked()
    .filter((asked) => asked.name === name);
const isThere = (selector: string) => view().page.evaluate<boolean>(`document.querySelector(${JSON.stringify(selector)}) !== null`);
/** Hand-made failures of the hand-made picture, worked out. */
const openHandMade = async (options?: Parameters<typeof open>[1]) => {
  await open(handMadeShow(), options);
  await view().click('Work out');
  await view().answer(lastAsked('returns'), handMadeReturns());
};
const playRow = async (row: number) => {
  await view().page.evaluate(`document.querySelectorAll('.play-return')[${row}].click()`);
  await view().drawn();
};
/** Its hand-made snap-back, paused at a time. */
const playTo = async (time: string) => {
  await playRow(1);
  await view().answer(lastAsked('trace'), handMadeTrace());
  await view().enter('Time since', time);
};
/** Where a mark of the drawing is: its path. */
const pathOf = (selector: string) => view().page.evaluate<string>(`document.querySelector(${JSON.stringify(selector)}).getAttribute('d')`);
const SHAFT = '.paper [data-name="shaft.arm"]';
const circleOf = (selector: string) =>
  view().page.evaluate<[number, number]>(
    `(({ cx, cy }) => [cx.baseVal.value, cy.baseVal.value])(document.querySelector(${JSON.stringify(selector)}))`,
  );

describe('single failures', () => {
  test('are asked for once, when a person wants them, of what is shown', async () => {
    const show = handMadeShow();
    await open(show);
    expect(askedOf('returns')).toEqual([]);
    expect(await view().text(WORK_OUT)).toBe('Work out');
    await view().click('Work out');
    await view().click('Being worked out');
    expect(askedOf('returns').map(({ asks }) => asks)).toEqual([{ source: show.source, trial: [] }]);
    await view().until('document.querySelector("dialog + [role=status]").textContent.startsWith("Being worked out")');
    expect(await isThere('.work-done')).toBe(false);
    await view().tell({ type: 'working', source: show.source, trial: [], done: 7, all: 24 });
    expect(await view().text('.work-done')).toBe('7 of 24');
    await view().answer(lastAsked('returns'), handMadeReturns());
    expect([await isThere(WORK_OUT), await isThere('.work-done')]).toEqual([false, false]);
    expect(await view().text('dialog + [role=status]')).toBe(`Single failures: ${handMadeReturns().verdict}`);
    expect(view().errors()).toEqual([]);
  });

  test('stand in a table: what fails, the plates in words and by a sign, what is left, and the time', async () => {
    await openHandMade({ width: 1600 });
    const rows = await view().page.evaluate<string[][]>(
      `[...document.querySelectorAll('.failures tbody tr')].map((row) => [...row.children].map((cell) => cell.innerText.replace(/\\s+/g, ' ').trim()))`,
    );
    expect(rows).toEqual([
      [
        'nothing Play the snap-back , nothing',
        'shaft',
        'closes',
        '2.4 × friction at 0° of opening: 480 N·mm against 200 N·mm at 25.0 % , nothing: Set the pedal',
        '0.09 s onto the stop at 1240 deg/s, 2 bounces inertia estimated',
      ],
      ['closed in 0.09 s, but for friction of shaft'],
      [
        'rod link , Show in text Play the snap-back , rod link',
        'shaft',
        'closes',
        '2.4 × friction at 0° of opening: 480 N·mm against 200 N·mm at 25.0 % , rod link: Set the pedal',
        '0.09 s onto the stop at 1240 deg/s, 2 bounces inertia estimated',
      ],
      ['rear', 'stays open', 'closing torque 0 N·mm at 30° of opening', '–'],
      [
        'shaft: closed in 0.09 s, but for friction of shaft rear: nothing brings rear back rear: time not known: rear stands still before it is closed rear is let go, and no spring turns it',
      ],
      ['cable main seized , Show in text Play the snap-back , cable main seized', 'shaft', 'not checked', '–', '–'],
      ['its friction is not given'],
    ]);
    const signs = 'document.querySelectorAll(".failures .outcome-word .sign")';
    expect(await view().page.evaluate(`[...${signs}].map((sign) => sign.getAttribute('class'))`)).toEqual([
      'sign passed',
      'sign passed',
      'sign failed',
      'sign undecided',
    ]);
    expect(await view().page.evaluate(`new Set([...${signs}].map((sign) => sign.innerHTML)).size`)).toBe(3);
    const statements = await view().page.evaluate<string[]>(
      `[...document.querySelectorAll('.statements li')].map((item) => item.textContent)`,
    );
    expect(statements.map((text) => text.split(':')[0])).toEqual([
      'meets the figure of a rule (from memory)',
      'does not meet the figure of another rule (read)',
      'not checked',
    ]);
    expect(await view().text('.assumptions')).toContain('estimated');
  });

  test('lead to the part in the text and in the drawing, and to the place along the pedal', async () => {
    await openHandMade();
    await view().click('rod link');
    expect(toldOf('reveal-part').map(({ part }) => part)).toEqual([{ kind: 'rod', name: 'link' }]);
    expect(await view().text('.failures tbody.chosen .part-name')).toMatch(/^rod link/);
    expect(await isThere('.paper .rod.lit')).toBe(true);
    await view().page.evaluate(`document.querySelectorAll('.failures .notes')[2].click()`);
    await view().drawn();
    expect(await view().text('.failures tbody.chosen .part-name')).toMatch(/^cable main seized/);
    await view().click('at 25.0');
    expect(await travel()).toBe(25);
  });

  test('of an older text or of other figures stand as such, with a way to have them worked out again', async () => {
    await openHandMade();
    await view().tell(handMadeShow(2));
    expect(await view().text('.failures-old')).toContain('before the last change');
    expect(await isThere('.returns.of-old table')).toBe(true);
    expect(await view().page.evaluate(`[...document.querySelectorAll('.play-return')].every(({ disabled }) => disabled)`)).toBe(true);
    await view().click('Work out again');
    expect(lastAsked('returns').asks).toEqual({ source: handMadeShow(2).source, trial: [] });
    await view().answer(lastAsked('returns'), handMadeReturns());
    expect(await isThere('.of-old')).toBe(false);
    const trial = [{ kind: 'value', path: 'let.reach', value: 40 }] as const;
    await view().tell({ ...handMadeShow(2), trial });
    expect(await isThere('.of-old')).toBe(true);
    await view().click('Work out again');
    expect(lastAsked('returns').asks).toEqual({ source: handMadeShow(2).source, trial });
  });

  test('that come after the text has changed are not taken for those of the new one', async () => {
    await open(handMadeShow());
    await view().click('Work out');
    await view().tell(handMadeShow(2));
    await view().answer(lastAsked('returns'), handMadeReturns());
    expect(await isThere('.of-old')).toBe(true);
    expect(await view().text(WORK_OUT)).toBe('Work out again');
    // A second answer to the same is left aside.
    await view().answer(lastAsked('returns'), { ...handMadeReturns(), verdict: 'another' });
    expect(await view().text('.returns-verdict')).toBe(handMadeReturns().verdict);
    expect(await view().page.evaluate('document.querySelector("main").parentElement.dataset.ignoredlate')).toBe('1');
  });

  test('that are refused or cannot be read say so, and can be asked for again', async () => {
    await open(handMadeShow());
    await view().click('Work out');
    await view().refuse(lastAsked('returns'), 'The text has changed meanwhile: try again.');
    expect(await view().text('.failures-refused')).toContain('Not worked out: The text has changed meanwhile');
    await view().click('Work out');
    await view().answer(lastAsked('returns'), { ...handMadeReturns(), rows: 'none' });
    expect(await view().text('.failures-refused')).toContain('Not worked out');
    expect(await isThere('.failures')).toBe(false);
    await view().click('Work out');
    await view().answer(lastAsked('returns'), handMadeReturns());
    expect([await isThere('.failures-refused'), await isThere('.failures')]).toEqual([false, true]);
  });

  test('of a file with none to look at are one line', async () => {
    await open(handMadeShow());
    await view().click('Work out');
    const verdict = 'not checked: the file describes no plates';
    await view().answer(lastAsked('returns'), { verdict, rows: [], marks: [], statements: [], assumptions: [] });
    expect([await view().text('.returns'), await isThere('.failures')]).toEqual([verdict, false]);
  });

  test('cannot be asked for of a broken text', async () => {
    const show = handMadeShow();
    await open(show);
    await view().tell({ type: 'broken', source: { ...show.source, version: 2 }, fileName: 'a', missing: [] });
    expect(await view().page.evaluate(`document.querySelector('${WORK_OUT}').disabled`)).toBe(true);
  });
});

describe('a snap-back', () => {
  test('moves the drawing in the place of the pedal, which is marked, and gives it back', async () => {
    await openHandMade();
    await view().enter('Pedal travel', '40');
    const atPedal = await circleOf(SHAFT);
    await playTo('0.05');
    expect(askedOf('trace').map(({ asks }) => asks.failure)).toEqual([{ kind: 'rod-lost', part: 'link' }]);
    expect(await view().text('.snap-bar .title-row p')).toBe('Snap-back from full pedal without rod link, 50 × slower');
    expect(await view().text('.snap-bar .readout')).toBe('0.050 s: shaft 0.0°; closed after 0.05 s');
    // Half of the time is over: the shaft is back where it was drawn, 34 mm from its pivot at 110°, x to the right and y down.
    const closed = [90 + 34 * Math.cos((110 * Math.PI) / 180), -(10 + 34 * Math.sin((110 * Math.PI) / 180))];
    (await circleOf(SHAFT)).forEach((figure, i) => expect(figure).toBeCloseTo(closed[i]!, 2));
    expect(await isThere('.pedal.idle')).toBe(true);
    expect(await view().text('.at-pedal')).toContain('does not drive the drawing now');
    expect(await travel()).toBe(40);
    await view().page.keyboard.press('Escape');
    await view().drawn();
    expect([await isThere('.snap-bar'), await isThere('.pedal.idle'), await travel()]).toEqual([false, false, 40]);
    expect(await circleOf(SHAFT)).toEqual(atPedal);
    expect(view().errors()).toEqual([]);
  });

  test('leaves out of the drawing what is gone, and only while it is shown', async () => {
    await openHandMade();
    const seen = (look: string) => view().page.evaluate(`getComputedStyle(document.querySelector('.paper .${look}')).opacity`);
    await playTo('0.01');
    expect([await seen('rod'), await seen('inner')]).toEqual(['0', '1']);
    await view().click('Back to the pedal');
    expect([await seen('rod'), await seen('inner')]).toEqual(['1', '1']);
    await playRow(2);
    await view().answer(lastAsked('trace'), handMadeTrace());
    expect([await seen('rod'), await seen('inner')]).toEqual(['1', '1']);
  });

  test('plays once, slowly, and stays at its end until it is asked for again', async () => {
    await openHandMade();
    const start = Date.now();
    await playRow(0);
    await view().answer(lastAsked('trace'), handMadeTrace());
    await view().until('document.querySelector(".snap-bar .play-button").textContent === "Play"');
    // A tenth of a second, fifty times slower; the page may miss some of it, and never makes it quicker.
    expect(Date.now() - start).toBeGreaterThanOrEqual(4900);
    expect(await view().text('.snap-bar .readout')).toBe('0.100 s: shaft 0.0°; closed after 0.05 s');
    expect(await view().text('dialog + [role=status]')).toBe('Snap-back: closed after 0.05 s');
    await view().click('Play snap-back');
    await view().until('document.querySelector(".snap-bar .readout").textContent.startsWith("0.00")');
    await view().click('Pause snap-back');
    const paused = await view().text('.snap-bar .readout');
    await view().drawn();
    expect(await view().text('.snap-bar .readout')).toBe(paused);
  });

  test('ends where the pedal is played or moved, where a place along it is gone to, and where the picture is another', async () => {
    await openHandMade();
    const ends: readonly (() => Promise<void>)[] = [
      () => view().enter('Pedal travel', '10'),
      () => view().page.evaluate(`document.querySelector('.pedal .play-button').click()`),
      () => view().click('at 25.0'),
      () => view().tell(handMadeShow(2)),
    ];
    for (const end of ends) {
      await playTo('0.02');
      expect(await isThere('.snap-bar')).toBe(true);
      await end();
      await view().drawn();
      expect(await isThere('.snap-bar')).toBe(false);
    }
    expect(view().errors()).toEqual([]);
  });

  test('is of the row that was asked for last, whichever comes first', async () => {
    await openHandMade();
    await playRow(0);
    const first = lastAsked('trace');
    await playRow(1);
    await view().answer(lastAsked('trace'), handMadeTrace());
    await view().answer(first, handMadeTrace());
    expect(await view().text('.snap-bar .title-row p')).toContain('without rod link');
  });

  test('that cannot be played says why at its row', async () => {
    await openHandMade();
    await playRow(2);
    await view().refuse(lastAsked('trace'), 'Nothing moves as the foot comes off: bank stands still before it is closed, at 82°');
    expect(await view().text('.failures tbody:last-of-type .notes')).toContain('No snap-back to play. Nothing moves as the foot comes off');
    expect(await isThere('.snap-bar')).toBe(false);
  });

  test('takes the focus and gives it back to its row', async () => {
    await openHandMade();
    await view().page.evaluate(`document.querySelectorAll('.play-return')[1].focus()`);
    await view().page.keyboard.press('Enter');
    await view().drawn();
    await view().answer(lastAsked('trace'), handMadeTrace());
    expect(await view().page.evaluate('document.activeElement.closest(".snap-bar") !== null')).toBe(true);
    await view().page.keyboard.press(' ');
    await view().drawn();
    expect(await view().text('.snap-bar .play-button')).toBe('Play');
    await view().page.keyboard.press('Escape');
    await view().drawn();
    expect(await view().page.evaluate('document.activeElement === document.querySelectorAll(".play-return")[1]')).toBe(true);
  });

  test('goes by steps where motion is unwelcome', async () => {
    await openHandMade({ lessMotion: 'system' });
    expect(await view().text('.play-return')).toMatch(/^Step through the snap-back/);
    await playRow(0);
    await view().answer(lastAsked('trace'), handMadeTrace());
    expect(await view().text('.snap-bar .readout')).toMatch(/^0\.000 s: shaft 80\.2°$/);
    for (let n = 0; n < 4; n++) await view().click('Later');
    expect(await view().text('.snap-bar .readout')).toMatch(/^0\.010 s/);
    await view().click('Earlier');
    await view().drawn();
    expect(await view().text('.snap-bar .readout')).toMatch(/^0\.007 s|^0\.008 s/);
  });

  test('of a file is drawn as far as the file has it', async () => {
    await open(showOf(EXAMPLE));
    await openReturns(EXAMPLE);
    await view().enter('Pedal travel', '100');
    const rod = await pathOf('.paper .rod');
    await playReturn(EXAMPLE, 'nothing');
    await view().enter('Time since', '0');
    expect(await pathOf('.paper .rod')).toBe(rod);
    await view().enter('Time since', '1');
    await view().click('Back to the pedal');
    await view().enter('Pedal travel', '0');
    expect(view().errors()).toEqual([]);
  });
});
