/**
 * What stands on a picture of the editor: changes the settings as `scene.json` of the open folder says, opens its file, puts the
 * cursor where it says, runs its commands, and then holds still. The other end is `scripts/pictures/openScene.mjs`.
 */
import { commands, ConfigurationTarget, languages, Selection, window, workspace } from 'vscode';
import { inWorkspace, openFile, rangeOf, replaceText } from './support/editor.ts';
import { ours } from './support/problems.ts';
import { until } from './support/wait.ts';

export interface Scene {
  /** A throttle file of the folder. */
  readonly file: string;
  /** Typed over before anything else, not saved; the first stands once in the file. */
  readonly edit?: readonly [before: string, after: string];
  /** Text that stands once in it: the cursor goes to its start. */
  readonly at?: string;
  /** Ids, where a command takes any with its arguments; run in this order. */
  readonly commands: readonly (string | readonly [id: string, ...args: unknown[]])[];
  /** Settings of the person, by id. */
  readonly settings: Readonly<Record<string, unknown>>;
  /** The kind of theme that these make: 1 light, 2 dark, 3 dark and 4 light with high contrast. */
  readonly themeKind: number;
}

export async function run(): Promise<void> {
  const scene = await readScene();
  await takeSettings(scene);
  const editor = await openFile(inWorkspace(scene.file));
  const { uri } = editor.document;
  if (scene.edit !== undefined) await replaceText(editor.document, ...scene.edit);
  // The extension wakes with its first file: what is asked for before that shows nothing.
  await until(`what is found in ${scene.file}`, languages.onDidChangeDiagnostics, () => (ours(uri).length > 0 ? true : undefined));
  if (scene.at !== undefined) {
    const { start } = rangeOf(editor.document, scene.at);
    editor.selection = new Selection(start, start);
    editor.revealRange(editor.selection);
  }
  for (const command of scene.commands) {
    const [id, ...args] = typeof command === 'string' ? [command] : command;
    await commands.executeCommand(id, ...args);
  }
  console.log('# scene ready');
  await held(scene);
}

async function readScene(): Promise<Scene> {
  const bytes = await workspace.fs.readFile(inWorkspace('scene.json'));
  return JSON.parse(String.fromCharCode(...bytes)) as Scene;
}

async function takeSettings({ settings, themeKind }: Scene): Promise<void> {
  for (const [id, value] of Object.entries(settings)) {
    await workspace.getConfiguration().update(id, value, ConfigurationTarget.Global);
  }
  const kind = (): number => window.activeColorTheme.kind;
  await until(
    `a theme of kind ${themeKind}`,
    window.onDidChangeActiveColorTheme,
    () => (kind() === themeKind ? true : undefined),
    () => `it is of kind ${kind()}`,
  );
}

/** For as long as pictures are taken, each in the theme that the scene then names; the page is closed from outside. */
async function held(taken: Scene): Promise<never> {
  for (let last = taken; ;) {
    await new Promise<void>((resolve) => setTimeout(resolve, BETWEEN_LOOKS_MS));
    const next = await readScene().catch(() => last);
    if (next.themeKind !== last.themeKind) await takeSettings(next);
    last = next;
  }
}

/** Not every host hears of a file that changes. */
const BETWEEN_LOOKS_MS = 200;
