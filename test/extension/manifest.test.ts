import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { INLAY_SETTINGS } from '../../extension/features/inlayHints.ts';
import { LANGUAGE_ID } from '../../extension/language.ts';
import { VIEW_COMMANDS, VIEW_TYPE } from '../../extension/view/names.ts';
import { FINDING_CODES } from '../../src/findings/codes.ts';
import { INLAY_KINDS } from '../../src/language/inlayHints.ts';
import { TOKEN_MODIFIERS } from '../../src/language/tokens.ts';

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

interface Setting {
  readonly type: string;
  readonly default: unknown;
  readonly scope: string;
  readonly markdownDescription: string;
  readonly propertyNames?: { readonly enum: readonly string[] };
}

interface Manifest {
  readonly icon: string;
  readonly activationEvents?: readonly string[];
  readonly contributes: {
    readonly languages: readonly { readonly id: string; readonly extensions: readonly string[]; readonly icon: Record<string, string> }[];
    readonly commands: readonly { readonly command: string; readonly title: string; readonly category: string; readonly icon?: string }[];
    readonly configuration: { readonly properties: Readonly<Record<string, Setting>> };
    readonly configurationDefaults: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
    readonly semanticTokenModifiers: readonly { readonly id: string }[];
    readonly keybindings: readonly { readonly command: string; readonly when: string }[];
    readonly menus: Readonly<Record<string, readonly { readonly command: string; readonly when?: string; readonly group?: string }[]>>;
  };
}

const text = read('package.json');
const manifest = JSON.parse(text) as Manifest;
const { languages, commands, configuration, semanticTokenModifiers, keybindings, menus } = manifest.contributes;

/** A throttle file or its view. */
const PLACES = /(?:resource|editor)LangId == throttle-linkage|activeWebviewPanelId == 'pedalToPlate\.view'/;

/** Modifiers that every editor knows (VS Code's Semantic Highlight Guide, "Standard token types and modifiers"). */
const STANDARD_MODIFIERS = ['declaration', 'readonly', 'defaultLibrary'];

describe('the manifest', () => {
  test('has every text that it refers to in package.nls.json, and no other', () => {
    const used = [...text.matchAll(/"%([\w.]+)%"/g)].map(([, key]) => key);
    expect([...new Set(used)].sort()).toEqual(Object.keys(JSON.parse(read('package.nls.json')) as object).sort());
  });

  test('claims one kind of file', () => {
    expect(languages.map(({ id, extensions }) => [id, extensions])).toEqual([[LANGUAGE_ID, ['.throttle.yaml']]]);
  });

  // The grammar is that of YAML, in which a bare word is a string; an editor completes by itself in strings only where it is told to.
  test('completes while a word is typed, by what may stand there alone', () => {
    const settings = manifest.contributes.configurationDefaults[`[${LANGUAGE_ID}]`];
    expect(settings).toMatchObject({ 'editor.quickSuggestions': { other: 'on', strings: 'on' }, 'editor.wordBasedSuggestions': 'off' });
  });

  test('wakes the extension by its language, its commands and its view only', () => {
    expect(manifest.activationEvents ?? []).toEqual([`onWebviewPanel:${VIEW_TYPE}`]);
  });

  test('takes shortcuts only where a throttle file or its view has the focus', () => {
    for (const { command, when } of keybindings) {
      expect(commands.map((each) => each.command)).toContain(command);
      for (const each of when.split('||')) expect(each).toMatch(PLACES);
    }
  });

  test('puts one icon into the title of an editor, and offers nothing in the palette where it cannot work', () => {
    const shown = menus['editor/title'] ?? [];
    expect(shown.filter(({ group }) => group === 'navigation').map(({ command }) => command)).toEqual([`pedalToPlate.${VIEW_COMMANDS[0]}`]);
    expect(shown.every(({ when }) => when?.split('||').every((each) => PLACES.test(each)))).toBe(true);
    const guarded = (menus.commandPalette ?? []).filter(({ when }) => when !== undefined).map(({ command }) => command);
    expect(guarded).toEqual(VIEW_COMMANDS.map((name) => `pedalToPlate.${name}`));
    const icons = commands.filter(({ icon }) => icon !== undefined);
    expect(icons.every(({ icon }) => /^\$\([a-z-]+\)$/.test(icon ?? ''))).toBe(true);
  });

  test('names the commands of the view, as the extension has them', () => {
    const own = new Set(commands.map(({ command }) => command));
    expect(VIEW_COMMANDS.filter((name) => !own.has(`pedalToPlate.${name}`))).toEqual([]);
  });

  test('puts every command in one category, and none without a prefix', () => {
    expect(new Set(commands.map(({ category }) => category))).toEqual(new Set(['%displayName%']));
    expect(commands.filter(({ command }) => !command.startsWith('pedalToPlate.'))).toEqual([]);
  });

  test('has a switch for every kind of hint, and lets every finding be given a severity', () => {
    const keys = Object.keys(configuration.properties);
    expect(keys.filter((key) => key.includes('inlayHints'))).toEqual(INLAY_KINDS.map((kind) => `pedalToPlate.${INLAY_SETTINGS[kind]}`));
    expect(configuration.properties['pedalToPlate.severity']?.propertyNames?.enum).toEqual(FINDING_CODES);
  });

  test('gives every setting a default, a scope and a description', () => {
    for (const setting of Object.values(configuration.properties)) {
      expect(setting).toMatchObject({ scope: 'resource', markdownDescription: expect.stringMatching(/^%setting\./) as string });
      expect(typeof setting.default).toBe(setting.type);
    }
  });

  test('introduces every token modifier that editors do not know', () => {
    expect([...STANDARD_MODIFIERS, ...semanticTokenModifiers.map(({ id }) => id)]).toEqual(TOKEN_MODIFIERS);
  });

  test('has its pictures: a PNG of 128 pixels at least, and one for files in light and dark', () => {
    const png = readFileSync(new URL(`../../${manifest.icon}`, import.meta.url));
    expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect([png.readUInt32BE(16), png.readUInt32BE(20)].every((side) => side >= 128)).toBe(true);
    const icons = languages.flatMap(({ icon }) => ['light', 'dark'].map((theme) => icon[theme] ?? ''));
    expect(icons.filter((path) => !existsSync(new URL(`../../${path}`, import.meta.url)))).toEqual([]);
  });
});
