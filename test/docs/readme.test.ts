import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { solve } from '../../src/solve.ts';

const root = new URL('../../', import.meta.url);
const readme = readFileSync(new URL('README.md', root), 'utf8');
const files = [...readme.matchAll(/^```yaml\n(.*?)^```/gms)].map(([, text = '']) => text);

describe('the throttle file that the README shows', () => {
  test('is there', () => {
    expect(files).toHaveLength(1);
  });

  test.each(files)('solves without a problem or an error', (text) => {
    const { problems, findings } = solve(text);
    expect(problems).toEqual([]);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});

describe('what the README tells of the extension', () => {
  const manifest = json('package.json') as {
    readonly contributes: {
      readonly commands: readonly { readonly title: string }[];
      readonly configuration: { readonly properties: Readonly<Record<string, unknown>> };
    };
  };
  const titles = json('package.nls.json') as Readonly<Record<string, string>>;
  const firstCells = [...readme.matchAll(/^\| (.+?) +\|/gm)].map(([, cell = '']) => cell);

  test.each(manifest.contributes.commands.map(({ title }) => titles[title.replaceAll('%', '')]))('the command “%s”', (title) => {
    expect(firstCells).toContain(title);
  });

  test.each(Object.keys(manifest.contributes.configuration.properties))('the setting `%s`', (setting) => {
    expect(firstCells).toContain(`\`${setting}\``);
  });
});

describe('a picture in the README', () => {
  const pictures = [...readme.matchAll(/!\[([^\]]*)\]\(([^)]*)\)/g)].map(([, words = '', path = '']) => ({ words, path }));

  test('is one of two, of the view', () => {
    expect(pictures.map(({ path }) => path)).toEqual(['docs/media/view.png', 'docs/media/stroke.gif']);
  });

  test.each(pictures)('$path is told in words, and not larger than it may be', ({ words, path }) => {
    expect(words.length).toBeGreaterThan(40);
    const { length } = readFileSync(new URL(path, root));
    expect(length).toBeLessThanOrEqual(path.endsWith('.gif') ? 1_500_000 : 200_000);
  });
});

function json(path: string): unknown {
  return JSON.parse(readFileSync(new URL(path, root), 'utf8'));
}
