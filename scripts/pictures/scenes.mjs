/** What the pictures of `npm run screenshots` show, and in which themes. */

/** `id`: as the setting `workbench.colorTheme` has it; `kind`: as the editor numbers them. */
export const THEMES = {
  dark: { id: 'Default Dark Modern', kind: 2 },
  light: { id: 'Default Light Modern', kind: 1 },
  contrastDark: { id: 'Default High Contrast', kind: 3 },
  contrastLight: { id: 'Default High Contrast Light', kind: 4 },
};

/**
 * @typedef {object} Scene `file`, `edit`, `at` and `commands` as in `test/editor/scene.ts`
 * @property {string} file
 * @property {readonly [string, string]} [edit]
 * @property {string} [at]
 * @property {readonly (string | readonly [string, ...unknown[]])[]} commands
 * @property {Readonly<Record<string, unknown>>} [settings] beside those of every scene
 * @property {string} [shows] selector, as Playwright reads it, of what must be in the window before the picture is taken
 * @property {string} [again] key that asks for it anew while it is not there
 * @property {string} [view] the same in the page of the mechanism; undefined where there is none
 * @property {(page: import('playwright-core').Page, view: import('playwright-core').Frame) => Promise<void>} [act] done by hand once `view` is there
 * @property {string} [then] what must be in the page of the mechanism after that
 */

/** What shows no more than the editor and the panel. */
const NARROW = ['workbench.action.closeAuxiliaryBar', 'workbench.action.closeSidebar'];

/** Text and view side by side. */
const BESIDE = [...NARROW, 'workbench.action.closePanel', 'pedalToPlate.openView'];

/** What stands in a view that has its linkage. */
const DRAWN = '.load-path .part-row';

/** Sets the pedal as the slider does, without the focus going there. */
export function setPedal(view, percent) {
  return view.locator('input.pedal-slider').evaluate((slider, value) => {
    slider.value = value;
    slider.dispatchEvent(new globalThis.Event('input', { bubbles: true }));
  }, String(percent));
}

/**
 * A study of the view, once it has come.
 *
 * @param {string} button that asks for it
 * @param {string} at what is scrolled to
 * @param {string} then what it brings
 * @returns {Scene}
 */
function studied(button, at, then) {
  return {
    file: 'tune-a-bellcrank.throttle.yaml',
    at: 'tune:',
    commands: BESIDE,
    view: DRAWN,
    act: async (_page, view) => {
      await view.locator('.ask-study button', { hasText: button }).click();
      await view.locator(then).first().waitFor();
      await view.locator(at).evaluate((title) => title.scrollIntoView());
    },
    then,
  };
}

/** @type {Readonly<Record<string, Scene>>} */
export const SCENES = {
  problems: {
    file: 'binding-broken.throttle.yaml',
    commands: [...NARROW, 'workbench.actions.view.problems'],
    shows: '.markers-panel .monaco-list-row',
  },
  hover: {
    file: 'binding-broken.throttle.yaml',
    at: 'link:',
    commands: [...NARROW, 'editor.action.showHover'],
    shows: '.monaco-hover:has-text("comes in line")',
  },
  fix: {
    file: 'binding-broken.throttle.yaml',
    at: 'link:',
    commands: [...NARROW, 'editor.action.quickFix'],
    shows: '.action-widget :text("Clock shaft.arm to")',
    again: 'Control+.',
  },
  lenses: {
    file: 'binding-broken.throttle.yaml',
    edit: ['angle: 66 deg', 'angle: 123.63 deg'],
    at: 'levers:',
    commands: ['workbench.action.closeAuxiliaryBar', 'outline.focus', 'workbench.action.focusActiveEditorGroup'],
    shows: '.codelens-decoration >> text=/opens/',
  },
  tests: {
    file: 'four-barrel.throttle.yaml',
    edit: ['opening) >= 81 deg', 'opening) >= 83 deg'],
    at: 'opens fully',
    settings: { 'testing.automaticallyOpenTestResults': 'neverOpen', 'testing.automaticallyOpenPeekView': 'failureInVisibleDocument' },
    commands: [
      'workbench.action.closeAuxiliaryBar',
      'workbench.view.testing.focus',
      'workbench.action.focusActiveEditorGroup',
      'testing.runCurrentFile',
    ],
    shows: '.test-output-peek .modified >> text=/82/',
  },
  completion: {
    file: 'binding-broken.throttle.yaml',
    edit: ['    to: shaft.arm\n', '    to: \n'],
    at: '\nplates:',
    commands: [...NARROW, 'editor.action.triggerSuggest'],
    shows: '.suggest-widget.visible .monaco-list-row',
    again: 'Control+Space',
  },
  view: {
    file: 'four-barrel.throttle.yaml',
    at: 'bellcrank:\n    pivot',
    commands: BESIDE,
    view: DRAWN,
  },
  pedal: {
    file: 'four-barrel.throttle.yaml',
    at: 'link:',
    commands: BESIDE,
    view: DRAWN,
    act: (_page, view) => setPedal(view, 60),
  },
  broken: {
    file: 'binding-broken.throttle.yaml',
    at: 'link:',
    commands: BESIDE,
    view: DRAWN,
    act: (_page, view) => view.locator('.pedal-tools button').nth(1).click(),
  },
  step: {
    file: 'four-barrel.throttle.yaml',
    commands: BESIDE,
    view: DRAWN,
    act: async (_page, view) => {
      for (const part of ['pedal', 'cable main', 'lever bellcrank', 'rod link']) {
        await view.locator('body').press('Shift+Alt+PageDown');
        await view.locator(`.step-card :text-matches("^${part}, ")`).waitFor();
      }
    },
    then: '.step-card',
  },
  failures: {
    file: 'firm-pedal.throttle.yaml',
    commands: BESIDE,
    view: DRAWN,
    act: async (_page, view) => {
      await view.locator('.work-out button').click();
      await view.locator('.failures').waitFor();
      await view.locator('#failures-title').evaluate((title) => title.scrollIntoView());
    },
    then: '.failures .play-return',
  },
  tune: studied('Find dimensions', '#study-tune', '.study-answer'),
  tolerances: studied('What tolerances do', '#study-tolerance', '.study-table'),
  bands: studied('What tolerances do', '#charts-title', 'path.spread'),
  fitted: studied('Fit to the measurements', '#study-fit', '.study-table'),
  solve: {
    file: 'tune-a-bellcrank.throttle.yaml',
    at: 'tune:',
    commands: BESIDE,
    view: DRAWN,
    act: async (page, view) => {
      await view.locator('.ask-study button', { hasText: 'Solve for a figure' }).click();
      const box = page.locator('.quick-input-widget');
      for (const [asked, picked] of [
        ['Which figure may change?', 'crank_reach'],
        ['What shall just be met?', 'opens fully'],
      ]) {
        await box.locator(`input[placeholder="${asked}"]`).fill(picked);
        await box.locator('.monaco-list-row.focused', { hasText: picked }).waitFor();
        await page.keyboard.press('Enter');
      }
      await box.locator('text=Between which values').waitFor();
      await page.keyboard.press('Enter');
      await view.locator('#study-solve').waitFor();
      await view.locator('.study-answer').first().waitFor();
      await view.locator('#study-solve').evaluate((title) => title.scrollIntoView());
    },
    then: '#study-solve',
  },
  compare: {
    file: 'four-barrel.throttle.yaml',
    edit: ['crank_reach: 38 mm', 'crank_reach: 41 mm'],
    commands: BESIDE,
    view: DRAWN,
    act: async (page, view) => {
      await view.locator('button', { hasText: 'With a file' }).click();
      const path = page.locator('.quick-input-widget input').first();
      // The dialog opens with the folder of the file, and is slow to say so.
      await page.waitForFunction((input) => input.value.endsWith('/examples/'), await path.elementHandle());
      await path.fill(`${await path.inputValue()}four-barrel.throttle.yaml`);
      await path.press('Enter');
    },
    then: '.changes li',
  },
};
