/**
 * Answers what tests inside an editor ask about its window: how tests came out, what the status bar says and the like, which no extension
 * can read. A question is a line that is logged inside; the answer is typed into the input box that the question has opened there. The
 * other end is `test/editor/support/page.ts`.
 */
import { clearTimeout, setTimeout as startTimer } from 'node:timers';
import { setTimeout } from 'node:timers/promises';
import { leastContrast } from './leastContrast.mjs';
import { again, loadsOf, outcomesOn, startActs } from './pageActs.mjs';
import { viewFrames } from './viewFrames.mjs';

/**
 * What can be looked at: each gives lines of text, in the order of the screen.
 *
 * @type {Readonly<Record<string, (page: import('playwright-core').Page) => Promise<readonly string[]>>>}
 */
const LOOKS = {
  /** The rows of the test view: name, and in brackets the outcome, as a screen reader tells it. */
  tests: (page) =>
    page.locator('.test-explorer .monaco-list-row').evaluateAll((rows) =>
      rows.map((row) => {
        const texts = [...row.querySelectorAll('*')].flatMap(({ childNodes }) => [...childNodes]).filter(({ nodeType }) => nodeType === 3);
        const name = texts.map(({ nodeValue }) => nodeValue.trim()).find((text) => text !== '');
        return `${name} ${/\([^()]*\)(?=(?:, in .*)?$)/.exec(row.ariaLabel ?? '')?.[0] ?? ''}`;
      }),
    ),
  /** The results of the last run of tests, with what a failed one has to say. */
  results: (page) => page.locator('.test-output-peek, .test-output-peek-message-container, .test-output-peek-tree').evaluateAll(innerLines),
  status: (page) => texts(page, '.statusbar-item'),
  problems: (page) => labels(page, '.markers-panel .monaco-list-row'),
  /** All lines of every view of a mechanism, one view after the other. */
  views: async (page) => (await Promise.all((await viewFrames(page)).map(linesOfFrame))).flat(),
  /** What was left aside or went wrong in the views: messages that no guard let through, and what the policy kept out. */
  viewTroubles: async (page) =>
    (
      await Promise.all(
        (await viewFrames(page)).map((frame) =>
          frame
            .locator('body > div')
            .evaluateAll((all) => all.flatMap(({ dataset }) => Object.entries(dataset).map(([name, count]) => `${name} ${count}`))),
        ),
      )
    ).flat(),
  /** Drags the bellcrank's pivot in the first view by some pixels, with the mouse. */
  dragPivot: async (page) => {
    const [frame] = await viewFrames(page);
    const box = await restingBox(frame.locator('.handles [data-path="points.crank_pivot"]'));
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    for (const step of [2, 5, 9, 14]) await page.mouse.move(box.x + box.width / 2 + step, box.y + box.height / 2 + step / 2);
    await page.mouse.up();
    return [];
  },
  /** Goes on to the next part by the button of the card in the first view. */
  stepInView: async (page) => {
    const [frame] = await viewFrames(page);
    await frame.locator('.step-card button', { hasText: 'Next' }).click();
    return [];
  },
  /** The names of all buttons in the first view, as a screen reader tells them. */
  viewButtons: async (page) => namesOf((await viewFrames(page))[0], 'button'),
  /** What is chosen in the first view: where the pedal stands, in percent, and the names of the buttons that are pressed. */
  viewChoices: async (page) => {
    const [frame] = await viewFrames(page);
    if (frame === undefined) return [];
    const sliders = frame.locator('input.pedal-slider');
    const pedal = await sliders.evaluateAll((all) => all.map(({ value }) => `pedal ${value}`)).catch(() => []);
    return [...pedal, ...(await namesOf(frame, 'button[aria-pressed="true"]'))];
  },
  /** The kind of theme that the first view has, and the least contrast of its texts to what is behind them. */
  viewContrast: async (page) => {
    const [frame] = await viewFrames(page);
    return frame === undefined ? [] : leastContrast(frame).catch(() => []);
  },
  steps: (page) => texts(page, '.getting-started-step .step-title'),
  /** What came of the last acts. */
  outcomes: outcomesOn,
  /** How often the window was loaded. */
  loads: (page) => Promise.resolve([String(loadsOf(page))]),
  /** Clicks on what the extension has in the status bar. */
  clickStatus: async (page) => {
    await page.locator('.statusbar-item', { hasText: STATUS }).click();
    return [];
  },
};

/** What stands on the extension's item. */
const STATUS = /requirement|error|warning/;

/**
 * @param {string} line that was logged inside; any but a question or an act is left alone
 * @param {import('playwright-core').Page} page
 */
export function answerLook(line, page) {
  startActs(line, page);
  const [, asked] = /^# look (\{.*\})$/.exec(line) ?? [];
  if (asked === undefined) return;
  // A page that is closed meanwhile answers nothing any more; the test inside has ended with it.
  answer(page, JSON.parse(asked)).catch((error) => console.log(`  the window could not be read: ${error.message}`));
}

/** Looks until it is as expected, or long enough; what is seen then is the answer, whatever it is. */
async function answer(page, { at, expected, title }) {
  let seen = [];
  let isLate = false;
  const timer = startTimer(() => (isLate = true), LOOK_MS);
  do {
    seen = await LOOKS[at](page);
    if (expected.every((line) => seen.includes(line))) break;
    await setTimeout(BETWEEN_LOOKS_MS);
  } while (!isLate);
  clearTimeout(timer);
  const input = page.locator('.quick-input-widget', { hasText: title }).locator('.quick-input-box input');
  await input.waitFor({ state: 'visible' });
  // A key that was pressed before may come late: to undo takes back what stands here, and with the focus in a view nothing is heard here.
  await again(`“${title}” to be answered`, input, async () => {
    await input.fill(JSON.stringify(seen), { timeout: AGAIN_MS });
    await input.press('Enter', { timeout: AGAIN_MS });
  });
}

/** Where something stands once it stays there: what comes into a page late moves what is there already, from under the mouse too. */
async function restingBox(locator) {
  for (let before; ;) {
    const box = await locator.boundingBox();
    if (box !== null && before?.x === box.x && before.y === box.y) return box;
    before = box;
    await setTimeout(BETWEEN_LOOKS_MS);
  }
}

/** A page that is loaded anew meanwhile says nothing yet, here and below. */
async function namesOf(frame, selector) {
  const named = (all) => all.map((each) => each.getAttribute('aria-label') ?? each.textContent ?? '');
  const names = await frame
    ?.locator(selector)
    .evaluateAll(named)
    .catch(() => []);
  return names ?? [];
}

function linesOfFrame(frame) {
  return frame
    .locator('body')
    .evaluateAll(innerLines)
    .catch(() => []);
}

/** As long as tests inside wait. */
const LOOK_MS = 60_000;
const BETWEEN_LOOKS_MS = 50;
/** Long enough for the box to close. */
const AGAIN_MS = 5000;

const innerLines = (all) => all.flatMap((each) => each.innerText.split('\n').map((line) => line.trim()));
const labels = (page, selector) => page.locator(selector).evaluateAll((rows) => rows.map((row) => row.getAttribute('aria-label') ?? ''));
const texts = (page, selector) =>
  page.locator(selector).evaluateAll((all) => all.map((each) => (each.textContent ?? '').replaceAll('\u00a0', ' ').trim()));
