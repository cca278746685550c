/** The walkthrough of the manifest: what it shows is there, and what it runs exists. */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { NEW_FILE_COMMAND, STARTING_FILES } from '../../extension/newFile.ts';

interface Step {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly media: { readonly svg: string; readonly altText: string };
  readonly completionEvents: readonly string[];
}

interface Manifest {
  readonly contributes: {
    readonly commands: readonly { readonly command: string }[];
    readonly walkthroughs: readonly { readonly steps: readonly Step[] }[];
  };
}

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const { contributes } = JSON.parse(read('package.json')) as Manifest;
const texts = JSON.parse(read('package.nls.json')) as Record<string, string>;
const said = (key: string): string => texts[key.slice(1, -1)] ?? '';

/** The editor's own commands that a step may run. */
const OF_THE_EDITOR = ['workbench.actions.view.problems', 'testing.runAll'];

const [walkthrough, second] = contributes.walkthroughs;
const steps = walkthrough?.steps ?? [];

test('there is one, of few steps', () => {
  expect(second).toBeUndefined();
  expect(steps.length).toBeGreaterThan(1);
  expect(steps.length).toBeLessThan(5);
});

describe.each(steps.map((step) => [step.id, step] as const))('step %s', (_id, step) => {
  const links = [...said(step.description).matchAll(/\(command:([^?)]+)(?:\?([^)]*))?\)/g)];

  test('runs commands that exist, with arguments that they know', () => {
    const known = [...OF_THE_EDITOR, ...contributes.commands.map(({ command }) => command)];
    expect(links.length).toBeGreaterThan(0);
    for (const [, command = '', words] of links) {
      expect(known).toContain(command);
      if (command !== NEW_FILE_COMMAND) continue;
      const [name] = JSON.parse(decodeURIComponent(words ?? '[]')) as readonly string[];
      expect(STARTING_FILES.map((file) => file.name)).toContain(name);
    }
  });

  test('is done once its first command was run', () => {
    expect(step.completionEvents).toEqual([`onCommand:${links[0]?.[1]}`]);
  });

  test('begins with a verb, and says what its drawing shows', () => {
    expect(said(step.title)).toMatch(/^(?:Open|Read|Check) \w+/);
    expect(said(step.media.altText)).toMatch(/^Drawing of .*\.$/);
  });

  test('has a drawing in the colours of the theme alone', () => {
    const drawing = read(step.media.svg);
    expect(existsSync(new URL(`../../${step.media.svg}`, import.meta.url))).toBe(true);
    const colours = [...drawing.matchAll(/(?:stroke|fill)="([^"]+)"/g)].map(([, colour = '']) => colour);
    expect(colours.filter((colour) => !/^(?:none|var\(--vscode-[A-Za-z-]+\))$/.test(colour))).toEqual([]);
    expect(drawing).not.toMatch(/<(?:script|image|foreignObject|style)|href/);
  });
});
