/** The bundle of the extension as it is built, with a stand-in for the editor. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { SourceMap, type SourceMapPayload } from 'node:module';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { compileFunction } from 'node:vm';
import { afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { ExtensionContext } from 'vscode';
import { nextTurn } from '../../extension/turns.ts';
import { BINDING, openThrottle, tidyUp } from '../support/editorRequests.ts';
import * as editor from '../support/vscode.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

beforeAll(() => {
  const words = ['-e', "import('./scripts/build.mjs').then((build) => build.buildExtension())"];
  const { status, stderr } = spawnSync(process.execPath, words, { cwd: root, encoding: 'utf8' });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
}, 120_000);

afterEach(tidyUp);

interface Extension {
  activate(context: ExtensionContext): void;
}

/** @param ask hears each module that the bundle asks its host for */
function evaluate(code: string, ask: (name: string) => void): Extension {
  const module = { exports: {} };
  const require = (name: string): unknown => {
    ask(name);
    return editor;
  };
  const run = compileFunction(code, ['exports', 'require', 'module']) as (...given: readonly unknown[]) => void;
  run(module.exports, require, module);
  return module.exports as Extension;
}

describe('the bundle', () => {
  const code = (): string => readFileSync(`${root}build/extension/extension.js`, 'utf8');
  const map = (): SourceMapPayload => JSON.parse(readFileSync(`${root}build/extension/extension.js.map`, 'utf8')) as SourceMapPayload;

  test('asks its host for nothing but the editor, and runs the core only with the first throttle file', async () => {
    const asked: string[] = [];
    // The editor's own.
    const subscriptions: { dispose(): unknown }[] = [editor.commands.registerCommand('setContext', () => undefined)];
    const { activate } = evaluate(code(), (module) => asked.push(module));
    activate({
      subscriptions,
      extensionUri: editor.Uri.parse('file:///extension'),
      extension: { packageJSON: {} },
    } as unknown as ExtensionContext);
    const before = asked.length;
    await nextTurn();
    expect(asked).toHaveLength(before);

    const { uri } = openThrottle(BINDING);
    for (let turn = 0; turn < MOST_TURNS && !editor.shownProblems.has(uri.toString()); turn++) await nextTurn();
    expect(editor.shownProblems.get(uri.toString())?.length).toBeGreaterThan(0);
    expect(asked.length).toBeGreaterThan(before);
    expect(new Set(asked)).toEqual(new Set(['vscode']));
    for (const each of subscriptions.reverse()) each.dispose();
    await nextTurn();
  });

  test('holds no part of a package that nothing uses', () => {
    const packages = map().sources.map((source) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(source)?.[1] ?? '');
    expect([...new Set(packages)].sort()).toEqual([
      '',
      '@babel/runtime',
      'earcut',
      'escape-latex',
      'mathjs',
      'planck',
      'tiny-emitter',
      'typed-function',
      'yaml',
    ]);
  });

  test.each([
    ['markdown.showPreview', 'extension/features/codePages.ts'],
    ['What to start from', 'extension/newFile.ts'],
    ['open at rest, though it is drawn on its idle stop', 'src/findings/rules/heldOpen.ts'],
    ['throttle-linkage', 'extension/language.ts'],
  ])('its map leads from “%s” to %s', (text, file) => {
    const lines = code().split('\n');
    const line = lines.findIndex((each) => each.includes(text));
    const entry = new SourceMap(map()).findEntry(line, lines[line]?.indexOf(text) ?? -1);
    if (!('originalSource' in entry)) throw new Error(`nothing is known of “${text}”`);
    expect(entry.originalSource).toBe(`../../${file}`);
    expect(readFileSync(root + file, 'utf8').split('\n')[entry.originalLine]).toContain(text);
  });
});

/** Of the event loop; a few are needed. */
const MOST_TURNS = 1000;
