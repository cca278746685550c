/**
 * Does what tests inside an editor ask for and no extension can do: presses buttons of a view, answers the editor's dialogs, loads the window
 * anew. Acts are a line that is logged inside; that they are done is told by a click on what the tests have put into the status bar, and what
 * came of them is asked for as a look. The other end is `test/editor/support/acts.ts`.
 */
import { clearTimeout, setTimeout as startTimer } from 'node:timers';
import { setTimeout } from 'node:timers/promises';
import { viewFrames } from './viewFrames.mjs';

/**
 * What can be done: each may give a line for `outcomesOn`.
 *
 * @type {Readonly<Record<string, (page: import('playwright-core').Page, words: readonly string[]) => Promise<string | undefined>>>}
 */
const ACTS = {
  /** Presses a button of the first view, by its name as a screen reader tells it. */
  press: async (page, [name]) => {
    const frame = await soon(`a view with a button “${name}”`, async () => {
      for (const each of await viewFrames(page)) if ((await buttonOf(each, name).count()) === 1) return each;
      return undefined;
    });
    await buttonOf(frame, name).click({ timeout: SOON_MS });
  },
  /** Presses keys, such as `Control+z`, in the first view. */
  key: async (page, [keys]) => {
    const frame = await soon('a view', async () => (await viewFrames(page))[0]);
    await frame.locator('input.pedal-slider').press(keys, { timeout: SOON_MS });
  },
  /** Sets the pedal of the first view, in percent. */
  setPedal: async (page, [percent]) => {
    const frame = await soon('a view', async () => (await viewFrames(page))[0]);
    await frame.locator('input.pedal-slider').evaluate((slider, value) => {
      slider.value = value;
      slider.dispatchEvent(new globalThis.Event('input', { bubbles: true }));
    }, percent);
  },
  /** Answers the dialog that asks for a file with a path; gives the path that was offered, which must match a pattern. */
  chooseFile: async (page, [offer, path]) => {
    const { input, offered } = await fileDialog(page, offer);
    // A dialog that is still looking at the folder puts its own text back, or does not hear the key.
    await again('the dialog to close', input, async () => {
      await input.fill(path, { timeout: AGAIN_MS });
      await input.press('Enter', { timeout: AGAIN_MS });
    });
    return `offered ${offered}`;
  },
  /** Thinks better of it. */
  chooseNoFile: async (page, [offer]) => {
    const { input } = await fileDialog(page, offer);
    await again('the dialog to close', input, () => input.press('Escape', { timeout: AGAIN_MS }));
  },
  /** Takes the row of a list to pick from in which a text stands; gives all rows. */
  pickRow: async (page, [text]) => {
    const rows = page.locator(`${QUICK_INPUT} .quick-input-list .monaco-list-row`);
    const row = rows.filter({ hasText: text });
    await soon(`one row with “${text}” to pick`, async () => ((await row.count()) === 1 ? true : undefined));
    const labels = await rows.evaluateAll((all) => all.map((each) => each.getAttribute('aria-label') ?? ''));
    await row.click({ timeout: SOON_MS });
    return `rows ${labels.join(' | ')}`;
  },
  /** Comes to its end once the window has written down all the texts, with which it will come back. */
  untilStored: async (page, texts) => {
    let stored = '';
    const areAll = async () => {
      stored = await page.evaluate(readStored);
      return texts.every((text) => stored.includes(text)) ? true : undefined;
    };
    await soon(`the window to keep ${texts.join(' and ')}`, areAll);
  },
  reload: async (page) => {
    stateOf(page).loads += 1;
    await page.reload({ timeout: LOAD_MS });
  },
};

/**
 * @param {string} line that was logged inside; any but acts is left alone
 * @param {import('playwright-core').Page} page
 */
export function startActs(line, page) {
  const [, asked] = /^# acts (\[.*\])$/.exec(line) ?? [];
  if (asked === undefined) return;
  // A page that is closed meanwhile does nothing any more; the test inside has ended with it.
  doAll(page, JSON.parse(asked)).catch((error) => console.log(`  the window could not be worked: ${error.message}`));
}

async function doAll(page, acts) {
  const state = stateOf(page);
  state.outcomes = [];
  for (const [act, ...words] of acts) {
    try {
      const outcome = await ACTS[act](page, words);
      if (outcome !== undefined) state.outcomes.push(outcome);
    } catch (error) {
      state.outcomes.push(`failed: ${act} ${words.join(', ')}: ${error.message}`);
      break;
    }
  }
  // Whoever asked for the window to be loaded anew has ended with the old one.
  if (acts.some(([act]) => act === 'reload')) return;
  await page.locator('.statusbar-item', { hasText: DONE }).click({ timeout: SOON_MS });
}

/** What the tests' item in the status bar says. */
const DONE = 'acts done';

/** What came of the last acts. */
export const outcomesOn = (page) => Promise.resolve(stateOf(page).outcomes);

/** How often the window was loaded, the first time too. */
export const loadsOf = (page) => stateOf(page).loads;

const states = new WeakMap();

function stateOf(page) {
  if (!states.has(page)) states.set(page, { outcomes: [], loads: 1 });
  return states.get(page);
}

/** What the window keeps for the next time it is loaded, without the signs that quoting it in itself has put in. */
async function readStored() {
  const { indexedDB } = globalThis;
  const done = (request) =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });
  const texts = [];
  for (const { name } of await indexedDB.databases()) {
    if (!name.startsWith('vscode-web-state-db-')) continue;
    const database = await done(indexedDB.open(name));
    for (const store of database.objectStoreNames) {
      texts.push(...(await done(database.transaction(store).objectStore(store).getAll())).map(String));
    }
    database.close();
  }
  return texts.join('\n').replaceAll('\\', '');
}

/** What `look` gives as soon as it gives something. */
async function soon(what, look) {
  let isLate = false;
  const timer = startTimer(() => (isLate = true), SOON_MS);
  for (;;) {
    const found = await look();
    if (found !== undefined) {
      clearTimeout(timer);
      return found;
    }
    if (isLate) throw new Error(`waited ${SOON_MS / 1000} s for ${what}`);
    await setTimeout(BETWEEN_LOOKS_MS);
  }
}

/** The editor's own dialog, which it has where there is no system's. It shows a folder before it has the name of a file. */
async function fileDialog(page, offer) {
  const input = page.locator(`${QUICK_INPUT} .quick-input-box input`);
  let value = '';
  const offered = await soon(`a dialog that offers ${offer}`, async () => {
    value = (await input.isVisible()) ? await input.inputValue() : 'nothing';
    return new RegExp(`^${offer}$`).test(value) ? value : undefined;
  }).catch((error) => {
    throw new Error(`${error.message}; there is ${value}`);
  });
  return { input, offered };
}

/** Tries until something is not to be seen any more. */
export async function again(what, shown, attempt) {
  for (let left = SOON_MS / AGAIN_MS; left > 0; left--) {
    // It may go while it is worked.
    await attempt().catch(() => undefined);
    const isGone = await shown.waitFor({ state: 'hidden', timeout: AGAIN_MS }).then(
      () => true,
      () => false,
    );
    if (isGone) return;
  }
  throw new Error(`waited for ${what}`);
}

const buttonOf = (frame, name) => frame.getByRole('button', { name, exact: true });

const QUICK_INPUT = '.quick-input-widget';
/** A busy machine takes its time; the window writes down every five seconds what it keeps. */
const SOON_MS = 60_000;
const LOAD_MS = 120_000;
/** Long enough for the editor to have done what it was asked for. */
const AGAIN_MS = 5000;
const BETWEEN_LOOKS_MS = 50;
