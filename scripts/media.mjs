/**
 * `npm run media [-- view|stroke]`: the pictures of README, of a bundled example in a real editor, into `docs/media/`: text and view side by
 * side as `view.png`, and one stroke of the pedal as `stroke.gif`, all of it and then its engine's side. They are kept in the repository; run
 * it again when the view looks otherwise.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import process from 'node:process';
import { HostError, orStop } from './editorHosts/cache.mjs';
import { encodeAnimation, readPngs } from './pictures/animation.mjs';
import { buildForScenes, openScene, settled } from './pictures/openScene.mjs';
import { SCENES, THEMES, setPedal } from './pictures/scenes.mjs';
import { root } from './setUp.mjs';

const FOLDER = `${root}docs/media/`;
const HOST = 'node';

/** Nothing on them but the file and its view: no bar is of any use on a picture. */
const BARE = {
  'breadcrumbs.enabled': false,
  'editor.lineNumbers': 'off',
  'editor.folding': false,
  'window.commandCenter': false,
  'window.menuBarVisibility': 'hidden',
  'workbench.activityBar.location': 'hidden',
  'workbench.navigationControl.enabled': false,
  'workbench.statusBar.visible': false,
};

/** The text takes a third. */
const LAYOUT = ['vscode.setEditorLayout', { orientation: 0, groups: [{ size: 0.36 }, { size: 0.64 }] }];

const MEDIA = {
  view: {
    file: 'view.png',
    largest: 200_000,
    size: { width: 1360, height: 780 },
    scene: { ...SCENES.view, settings: BARE, commands: [LAYOUT, ...SCENES.view.commands], act: atHalfPedal },
    take: (page) => page.screenshot(),
  },
  stroke: {
    file: 'stroke.gif',
    largest: 1_500_000,
    // Three charts stand on it whole.
    size: { width: 1100, height: 800 },
    scene: {
      ...SCENES.view,
      at: 'format: 1',
      settings: BARE,
      commands: [...SCENES.view.commands, 'workbench.action.focusSecondEditorGroup', 'workbench.action.toggleMaximizeEditorGroup'],
      act: (_page, view) => view.locator('.charts').evaluate((charts) => charts.scrollIntoView({ block: 'start' })),
    },
    take: takeStroke,
  },
};

/** Of a stroke out and back, which takes four seconds as in the view itself. */
const FRAMES = 40;
const FRAME_MS = 100;
/** The buttons that show all of it, and its engine's side. */
const LOOKS = ['Fit', 'Engine'];
/** How long it rests before each. */
const REST_MS = 1600;

/** Of the editor's own that lie over the upper edge of a view, in pixels. */
const UNDER_TABS = 6;

/** As the view plays it, softly at both ends. */
const travelAt = (phase) => (1 - Math.cos(2 * Math.PI * phase)) / 2;

/** Once the lenses say what they have to. */
async function atHalfPedal(page, view) {
  await page.locator(SCENES.lenses.shows).first().waitFor();
  await setPedal(view, 50);
}

/** The way back shows what the way out has shown. */
async function takeStroke(page, view) {
  const holder = await (await view.parentFrame()).frameElement();
  const { x, y, width, height } = await holder.boundingBox();
  const clip = { x, y: y + UNDER_TABS, width, height: height - UNDER_TABS };
  const frames = [];
  for (const look of LOOKS) {
    await view.locator('.drawing button', { hasText: new RegExp(`^${look}$`) }).click();
    // The pointer would leave its mark on the button.
    await page.mouse.move(x + 1, y + height - 1);
    const files = [];
    for (let frame = 0; frame <= FRAMES / 2; frame++) {
      await setPedal(view, 100 * travelAt(frame / FRAMES));
      await settled(page);
      files.push(await page.screenshot({ clip }));
    }
    const out = await readPngs(page, files);
    frames.push(...out, ...out.slice(1, -1).reverse());
  }
  return encodeAnimation(frames, (index) => (index % FRAMES === 0 ? REST_MS : FRAME_MS));
}

await orStop(async () => {
  const words = process.argv.slice(2);
  const wrong = words.find((word) => !(word in MEDIA));
  if (wrong !== undefined) throw new HostError(`There is no “${wrong}”: ${Object.keys(MEDIA).join(', ')}`);
  await buildForScenes();
  mkdirSync(FOLDER, { recursive: true });
  for (const name of words.length === 0 ? Object.keys(MEDIA) : words) {
    const { file, largest, size, scene, take } = MEDIA[name];
    const bytes = await openScene({ host: HOST, scene, theme: THEMES.light, size }, take);
    writeFileSync(FOLDER + file, bytes);
    console.log(`docs/media/${file}  ${(bytes.length / 1000).toFixed(1)} kB, ${(bytes.length / largest).toFixed(2)} × what it may have`);
    if (bytes.length > largest) throw new HostError(`docs/media/${file} is larger than ${largest / 1000} kB`);
  }
});
