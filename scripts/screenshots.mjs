/**
 * `npm run screenshots [-- SCENE…] [--host=web|node] [--size=1280x800]`: pictures of the extension in a real editor, each in the
 * four kinds of theme, into `build/screenshots/`, for a person to look at.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { buildEditorTests, buildExtension, buildView } from './build.mjs';
import { HOSTS, modulesFor, openEditor, withWorkspace } from './editorHosts.mjs';
import { HostError, orStop } from './editorHosts/cache.mjs';
import { root } from './setUp.mjs';

/** `id`: as the setting `workbench.colorTheme` has it; `kind`: as the editor numbers them. */
const THEMES = {
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
 * @property {readonly string[]} commands
 * @property {string} shows selector, as Playwright reads it, of what must be there before the picture is taken
 */

/** What shows no more than the editor and the panel. */
const NARROW = ['workbench.action.closeAuxiliaryBar', 'workbench.action.closeSidebar'];

/** @type {Readonly<Record<string, Scene>>} */
const SCENES = {
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
    commands: [
      'workbench.action.closeAuxiliaryBar',
      'workbench.view.testing.focus',
      'workbench.action.focusActiveEditorGroup',
      'testing.runCurrentFile',
      'workbench.panel.testResults.view.focus',
    ],
    shows: '.test-output-peek-tree >> text=/83/',
  },
  completion: {
    file: 'binding-broken.throttle.yaml',
    edit: ['    to: shaft.arm\n', '    to: \n'],
    at: '\nplates:',
    commands: [...NARROW, 'editor.action.triggerSuggest'],
    shows: '.suggest-widget.visible .monaco-list-row',
  },
};

/**
 * Takes one picture.
 *
 * @param {object} wanted
 * @param {'web' | 'node'} wanted.host
 * @param {Scene} wanted.scene
 * @param {{id: string, kind: number}} wanted.theme
 * @param {{width: number, height: number}} wanted.size of the window, in CSS pixels
 * @param {string} wanted.path of the PNG file to write
 */
export function takeScreenshot({ host, scene, theme, size, path }) {
  return withWorkspace(async (folder) => {
    const settings = { ...PLAIN, ...HOSTS[host].PLAIN, 'workbench.colorTheme': theme.id };
    writeFileSync(join(folder, 'scene.json'), JSON.stringify({ ...scene, settings, themeKind: theme.kind }));
    let ready = () => undefined;
    const isReady = new Promise((resolve) => (ready = resolve));
    const hear = (line) => {
      if (line === '# scene ready') ready();
    };
    const editor = await openEditor(host, { folder, tests: modulesFor('scene')[host], size, hear });
    try {
      const ended = editor.exited.then((code) => {
        throw new HostError(`The scene for ${path} ended with exit code ${code}: see build/editorTests/${host}.log`);
      });
      await Promise.race([isReady, ended]);
      await Promise.race([shown(editor.page, scene.shows), ended]);
      await settled(editor.page);
      await editor.page.screenshot({ path });
    } finally {
      await editor.close();
    }
  });
}

/** Nothing on the picture but the file and what is about it. */
const PLAIN = {
  'editor.minimap.enabled': false,
  'files.exclude': { 'scene.json': true },
  'window.autoDetectHighContrast': false,
  'workbench.layoutControl.enabled': false,
  'workbench.reduceMotion': 'on',
};

async function shown(page, selector) {
  await page.waitForSelector(selector, { timeout: SHOWN_MS }).catch((error) => {
    throw new HostError(`The editor shows nothing that matches ${selector}: ${error.message}`);
  });
}

const SHOWN_MS = 10_000;

/** Waits until two frames in a row look alike: fonts, icons and colours come late. */
async function settled(page) {
  let before = await page.screenshot();
  for (let i = 0; i < MANY_FRAMES; i++) {
    const now = await page.screenshot();
    if (now.equals(before)) return;
    before = now;
  }
}

/** A blinking cursor may never hold still; a picture is good without that. */
const MANY_FRAMES = 20;

async function main(words) {
  const { host = 'node', size = '1280x800' } = Object.fromEntries(optionsIn(words));
  const names = words.filter((word) => !word.startsWith('--'));
  const [width, height] = size.split('x').map(Number);
  const wrong = names.find((name) => !(name in SCENES));
  if (wrong !== undefined) throw new HostError(`There is no scene “${wrong}”: ${Object.keys(SCENES).join(', ')}`);
  if (!(host in HOSTS)) throw new HostError(`There is no host “${host}”: ${Object.keys(HOSTS).join(', ')}`);
  if (!(width > 0 && height > 0)) throw new HostError(`“${size}” is no size: write --size=1280x800`);
  await buildExtension();
  await buildView();
  await buildEditorTests();
  mkdirSync(`${root}build/screenshots`, { recursive: true });
  for (const name of names.length === 0 ? Object.keys(SCENES) : names) {
    for (const [kind, theme] of Object.entries(THEMES)) {
      const path = `${root}build/screenshots/${name}.${kind}.png`;
      await takeScreenshot({ host, scene: SCENES[name], theme, size: { width, height }, path });
      console.log(path);
    }
  }
}

const optionsIn = (words) => words.filter((word) => word.startsWith('--')).map((word) => word.slice('--'.length).split('='));

if (process.argv[1] === fileURLToPath(import.meta.url)) await orStop(() => main(process.argv.slice(2)));
