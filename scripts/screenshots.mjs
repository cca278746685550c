/**
 * `npm run screenshots [-- SCENE…] [--host=web|node] [--size=1280x800]`: pictures of the extension in a real editor, each in the
 * four kinds of theme, into `build/screenshots/`, for a person to look at.
 */
import { mkdirSync } from 'node:fs';
import process from 'node:process';
import { HOSTS } from './editorHosts.mjs';
import { HostError, orStop } from './editorHosts/cache.mjs';
import { buildForScenes, openScene } from './pictures/openScene.mjs';
import { SCENES, THEMES } from './pictures/scenes.mjs';
import { root } from './setUp.mjs';

const USUAL_SIZE = '1280x800';

await orStop(async () => {
  const words = process.argv.slice(2);
  const { host = 'node', size = USUAL_SIZE } = Object.fromEntries(optionsIn(words));
  const names = words.filter((word) => !word.startsWith('--'));
  const [width, height] = size.split('x').map(Number);
  const wrong = names.find((name) => !(name in SCENES));
  if (wrong !== undefined) throw new HostError(`There is no scene “${wrong}”: ${Object.keys(SCENES).join(', ')}`);
  if (!(host in HOSTS)) throw new HostError(`There is no host “${host}”: ${Object.keys(HOSTS).join(', ')}`);
  if (!(width > 0 && height > 0)) throw new HostError(`“${size}” is no size: write --size=${USUAL_SIZE}`);
  await buildForScenes();
  mkdirSync(`${root}build/screenshots`, { recursive: true });
  const themes = Object.entries(THEMES);
  // One editor for all themes of a scene, where it can be told to change.
  const groups = host === 'node' ? [themes] : themes.map((each) => [each]);
  for (const name of names.length === 0 ? Object.keys(SCENES) : names) {
    for (const group of groups) {
      const [[, first]] = group;
      await openScene({ host, scene: SCENES[name], theme: first, size: { width, height } }, async (page, _view, switchTo) => {
        for (const [kind, theme] of group) {
          if (theme !== first) await switchTo(theme);
          const path = `${root}build/screenshots/${name}.${kind}${size === USUAL_SIZE ? '' : `.${size}`}.png`;
          await page.screenshot({ path });
          console.log(path);
        }
      });
    }
  }
});

function optionsIn(words) {
  return words.filter((word) => word.startsWith('--')).map((word) => word.slice('--'.length).split('='));
}
