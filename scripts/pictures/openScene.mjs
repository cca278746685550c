/** Puts a scene before the camera: a real editor with a throttle file, and what is about it. The other end is `test/editor/scene.ts`. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { buildEditorTests, buildExtension, buildView } from '../build.mjs';
import { HOSTS, modulesFor, openEditor, withWorkspace } from '../editorHosts.mjs';
import { HostError } from '../editorHosts/cache.mjs';
import { viewFrames } from '../editorHosts/viewFrames.mjs';
import { root } from '../setUp.mjs';

/** What a scene is made of; once before the first. */
export async function buildForScenes() {
  await buildExtension();
  await buildView();
  await buildEditorTests();
}

/**
 * Gives `work` the window as a scene wants it, and closes it afterwards.
 *
 * @template T
 * @param {object} wanted
 * @param {'web' | 'node'} wanted.host
 * @param {import('./scenes.mjs').Scene} wanted.scene
 * @param {{id: string, kind: number}} wanted.theme
 * @param {{width: number, height: number}} wanted.size of the window, in CSS pixels
 * @param {(page: import('playwright-core').Page, view: import('playwright-core').Frame | undefined, switchTo: (theme: {id: string, kind: number}) => Promise<void>) => Promise<T>} work gets the frame of the mechanism, where the scene has one; what it may call to have another theme works in hosts whose files are on the disk
 * @returns {Promise<T>}
 */
export function openScene({ host, scene, theme, size }, work) {
  return withWorkspace(async (folder) => {
    const write = (themeNow) => {
      const settings = { ...PLAIN, ...HOSTS[host].PLAIN, ...scene.settings, 'workbench.colorTheme': themeNow.id };
      writeFileSync(join(folder, 'scene.json'), JSON.stringify({ ...scene, settings, themeKind: themeNow.kind }));
    };
    write(theme);
    let ready = () => undefined;
    const isReady = new Promise((resolve) => (ready = resolve));
    const hear = (line) => {
      if (line === '# scene ready') ready();
    };
    const editor = await openEditor(host, { folder, tests: modulesFor('scene')[host], size, hear });
    try {
      const ended = editor.exited.then((code) => {
        throw new HostError(`The scene of ${scene.file} ended with exit code ${code}: see build/editorTests/${host}.log`);
      });
      await Promise.race([isReady, ended]);
      const view = await Promise.race([played(editor.page, scene), ended]).catch(async (error) => {
        await editor.page.screenshot({ path: MISSED });
        throw new HostError(`${error.message}\nHow it stood: ${MISSED}`);
      });
      await settled(editor.page);
      const switchTo = async (themeNow) => {
        write(themeNow);
        await shown(editor.page, `.monaco-workbench.${WORKBENCH_CLASSES[themeNow.kind]}`);
        await settled(editor.page);
      };
      return await work(editor.page, view, switchTo);
    } finally {
      await editor.close();
    }
  });
}

/** The window when something did not come. */
const MISSED = `${root}build/editorTests/missed.png`;

/** By the kind of theme. */
const WORKBENCH_CLASSES = { 1: 'vs', 2: 'vs-dark', 3: 'hc-black', 4: 'hc-light' };

/** Nothing on the picture but the file and what is about it. */
const PLAIN = {
  'editor.minimap.enabled': false,
  'files.exclude': { 'scene.json': true },
  'window.autoDetectHighContrast': false,
  'workbench.layoutControl.enabled': false,
  'workbench.reduceMotion': 'on',
};

async function played(page, { shows, again, view, act, then }) {
  for (let waited = AGAIN_MS; again !== undefined && waited < SHOWN_MS; waited += AGAIN_MS) {
    if (await isShown(page, shows)) break;
    // In a menu that is open with other titles the key would take one of them.
    await page.keyboard.press('Escape');
    await page.keyboard.press(again);
  }
  if (shows !== undefined) await shown(page, shows);
  if (view === undefined) return undefined;
  const frame = await firstView(page);
  await shown(frame, view);
  await act?.(page, frame);
  if (then !== undefined) await shown(frame, then);
  return frame;
}

function isShown(page, selector) {
  return page.waitForSelector(selector, { timeout: AGAIN_MS }).then(
    () => true,
    () => false,
  );
}

/** What a busy editor has shut again is asked for anew. */
const AGAIN_MS = 5000;

async function shown(page, selector) {
  await page.waitForSelector(selector, { timeout: SHOWN_MS }).catch((error) => {
    throw new HostError(`The editor shows nothing that matches ${selector}: ${error.message}`);
  });
}

/** A machine with two editors starting takes its time. */
const SHOWN_MS = 30_000;

async function firstView(page) {
  for (let waited = 0; waited < SHOWN_MS; waited += BETWEEN_LOOKS_MS) {
    const [frame] = await viewFrames(page);
    if (frame !== undefined) return frame;
    await setTimeout(BETWEEN_LOOKS_MS);
  }
  throw new HostError('The editor shows no view of the mechanism');
}

const BETWEEN_LOOKS_MS = 100;

/** Waits until two frames in a row look alike: fonts, icons and colours come late. */
export async function settled(page) {
  let before = await page.screenshot();
  for (let i = 0; i < MANY_FRAMES; i++) {
    const now = await page.screenshot();
    if (now.equals(before)) return;
    before = now;
  }
}

/** A blinking cursor may never hold still; a picture is good without that. */
const MANY_FRAMES = 20;
