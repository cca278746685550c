/** The package that a person installs: what is in it, and that nothing else is. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, posix } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { LARGEST_PACKAGE, warns, withoutDeadLinks } from '../../scripts/package.mjs';
import { PROBLEM_CODES } from '../../src/definition/codes.ts';
import { FINDING_CODES } from '../../src/findings/codes.ts';
import { readZip } from '../support/zip.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'package-'));
let size = 0;
/** By path below the extension's own folder. */
let files: ReadonlyMap<string, string> = new Map();
/** Beside that folder. */
let about: readonly string[] = [];

beforeAll(() => {
  const path = join(folder, 'made.vsix');
  const words = [
    '--input-type=module',
    '-e',
    `import { makePackage } from './scripts/package.mjs'; await makePackage(${JSON.stringify(path)});`,
  ];
  const { status, stderr } = spawnSync(process.execPath, words, { cwd: root, encoding: 'utf8' });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  const archive = readFileSync(path);
  size = archive.length;
  const all = [...readZip(archive)].map(([name, content]) => [name, content.toString('utf8')] as const);
  files = new Map(all.filter(([name]) => name.startsWith(OURS)).map(([name, content]) => [name.slice(OURS.length), content]));
  about = all.map(([name]) => name).filter((name) => !name.startsWith(OURS));
}, 120_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const OURS = 'extension/';

const fileOf = (path: string): string => {
  const content = files.get(path);
  if (content === undefined) throw new Error(`${path} is not in the package`);
  return content;
};

test('it holds what the installed extension reads, and nothing else', () => {
  expect([...files.keys()].sort()).toEqual(
    [
      'LICENSE.txt',
      'build/extension/extension.js',
      'build/extension/main.cjs',
      'build/extension/package.json',
      'build/webview/view.css',
      'build/webview/view.js',
      'changelog.md',
      'docs/codes/README.md',
      ...[...PROBLEM_CODES, ...FINDING_CODES].map((code) => `docs/codes/${code}.md`),
      'docs/reference.md',
      'extension/icons/icon.png',
      'extension/icons/throttleFile-dark.svg',
      'extension/icons/throttleFile-light.svg',
      'extension/languageConfiguration.json',
      'extension/throttleLinkage.tmLanguage.json',
      'extension/walkthrough/linkage.svg',
      'extension/walkthrough/mechanism.svg',
      'extension/walkthrough/problems.svg',
      'extension/walkthrough/requirements.svg',
      'package.json',
      'l10n/bundle.l10n.json',
      'package.nls.json',
      'readme.md',
    ].sort(),
  );
  expect([...about].sort()).toEqual(['[Content_Types].xml', 'extension.vsixmanifest']);
});

test('it is not larger than it may be', () => {
  expect(size).toBeLessThanOrEqual(LARGEST_PACKAGE);
});

describe('its manifest', () => {
  test('is that of the clone without what only a clone has a use for', () => {
    const clone = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as Record<string, unknown>;
    const installed = JSON.parse(fileOf('package.json')) as Record<string, unknown>;
    const left = Object.keys(clone).filter((key) => !(key in installed));
    expect(left.sort()).toEqual(['allowScripts', 'bin', 'dependencies', 'devDependencies', 'private', 'scripts']);
    expect(installed).toEqual(Object.fromEntries(Object.entries(clone).filter(([key]) => !left.includes(key))));
  });

  test('names no file that is not there', () => {
    // `files` says what is taken from the clone, where some have other names.
    const { files: _, ...manifest } = JSON.parse(fileOf('package.json')) as Record<string, unknown>;
    const named = stringsIn(manifest).filter((text) => /^(?:\.\/|build\/|docs\/|extension\/)/.test(text));
    const isThere = (path: string): boolean => [...files.keys()].some((name) => name === path || name.startsWith(`${path}/`));
    expect(named.length).toBeGreaterThan(8);
    expect(named.map((path) => posix.normalize(path)).filter((path) => !isThere(path))).toEqual([]);
  });
});

function stringsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsIn) : [];
}

test('each file and folder of the extension that the code names is there', () => {
  const sources = readdirSync(`${root}extension`, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.ts'));
  const named = sources.flatMap((path) => pathsNamedIn(readFileSync(`${root}extension/${path}`, 'utf8')));
  expect(named).toContainEqual(/^docs\/codes\/[^/]+\.md(?:\/|$)/);
  expect(named.filter((path) => ![...files.keys()].some((file) => path.test(file)))).toEqual([]);
});

/** Below the extension's folder; what is put in at run time may be any name. */
function pathsNamedIn(source: string): readonly RegExp[] {
  return [...source.matchAll(/joinPath\(extensionUri,([^)]*)\)/g)].map(([, words = '']) => {
    const path = words
      .replace(/[\s'`]/g, '')
      .replaceAll(',', '/')
      .replaceAll('.', '\\.');
    return new RegExp(`^${path.replace(/\$\{\w+\}/g, '[^/]+')}(?:/|$)`);
  });
}

test('no bundle names a map that is not there', () => {
  for (const path of [...files.keys()].filter((each) => /\.(?:cjs|css|js)$/.test(each)))
    expect(fileOf(path)).not.toContain('sourceMappingURL');
});

describe('its pages', () => {
  test('link to pages that are there', () => {
    const pages = [...files.keys()].filter((path) => path.startsWith('docs/'));
    const links = pages.flatMap((path) => linksIn(fileOf(path)).map((link) => posix.join(posix.dirname(path), link.replace(/#.*/, ''))));
    expect(links.length).toBeGreaterThan(pages.length);
    expect(links.filter((link) => !files.has(link))).toEqual([]);
  });

  test.each(['readme.md', 'changelog.md'])('%s has no link that an editor would not follow', (path) => {
    expect(linksIn(fileOf(path))).toEqual([]);
  });

  test('README is that of the clone but for its links', () => {
    expect(fileOf('readme.md')).toBe(withoutDeadLinks(readFileSync(`${root}README.md`, 'utf8')));
  });

  test('the newest version of CHANGELOG is that of the manifest', () => {
    const [, newest] = /^## \[(.*)\]/m.exec(fileOf('changelog.md')) ?? [];
    expect(newest).toBe((JSON.parse(fileOf('package.json')) as { readonly version: string }).version);
  });
});

/** Targets of links to files, without those to the web and into the same page. */
function linksIn(markdown: string): readonly string[] {
  return [...markdown.matchAll(/\]\(([^)]*)\)/g)].map(([, target = '']) => target).filter((target) => !/^(?:[a-z]+:|#)/.test(target));
}

test('a link to a file of the clone becomes its name; others stay', () => {
  expect(withoutDeadLinks('[a `b`](docs/c.md), [d](https://e), [f](#g)')).toBe('a `b` (`docs/c.md`), [d](https://e), [f](#g)');
});

test('a picture of the clone is left out with its paragraph; one of the web stays', () => {
  expect(withoutDeadLinks('a\n\n![b, c](docs/d.png)\n\ne\n\n![f](https://g.png)\n\nh\n')).toBe('a\n\ne\n\n![f](https://g.png)\n\nh\n');
});

test('a warning is found in what is printed, a name with the word in it is not', () => {
  expect(warns(' WARNING  A field is missing')).toBe(true);
  expect(warns('(node:1) Warning: old\n')).toBe(true);
  expect(warns('├─ forewarnings.md\n DONE  Packaged: a.vsix')).toBe(false);
});
