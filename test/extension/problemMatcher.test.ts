/** The manifest's problem matcher on what `pedal-to-plate check` really prints. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { indexLines } from '../../src/definition/span.ts';
import { marksOf } from '../../src/outputs/marks.ts';
import { solve } from '../../src/solve.ts';
import { call, FAULTY_FILE } from '../cli/support.ts';

interface Matcher {
  readonly name: string;
  readonly fileLocation: readonly string[];
  readonly pattern: Readonly<Record<'file' | 'line' | 'column' | 'severity' | 'code' | 'message', number>> & { readonly regexp: string };
}

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const { problemMatchers } = (JSON.parse(read('package.json')) as { contributes: { problemMatchers: readonly Matcher[] } }).contributes;
const [matcher, second] = problemMatchers;

/** As the editor does it: line by line, without the colours of a terminal. */
function matched(output: string): readonly string[] {
  const { regexp, ...groups } = matcher!.pattern;
  const colour = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');
  return output
    .replaceAll(colour, '')
    .split('\n')
    .flatMap((line) => {
      const match = new RegExp(regexp).exec(line);
      const { file, line: row, column, severity, code, message } = groups;
      return match === null ? [] : [[file, row, column, severity, code, message].map((group) => match[group]).join('|')];
    });
}

/** What there is to match, from the answers themselves. */
function marked(file: string, text: string): readonly string[] {
  const lines = indexLines(text);
  return marksOf(solve(text)).map(({ span, severity, code, message }) => {
    const { line, character } = lines.positionAt(span.start);
    return [file, line + 1, character + 1, severity, code, message].join('|');
  });
}

test('there is one, for files named from the workspace folder or from the root', () => {
  expect([matcher?.name, matcher?.fileLocation, second]).toEqual(['pedal-to-plate', ['autoDetect', '${workspaceFolder}'], undefined]);
});

const NAMES = ['bay.throttle.yaml', '/home/me/my linkages/bay 2.throttle.yaml', 'C:\\bay\\rev:3.throttle.yaml'];
const EXAMPLES = ['binding-broken', 'four-barrel', 'two-banks'].map((name) => read(`examples/${name}.throttle.yaml`));

test.each(NAMES)('it finds each problem and finding in %s, and nothing else', async (name) => {
  for (const text of [...EXAMPLES, FAULTY_FILE, 'format: 1\nmax: [\n']) {
    const { out } = await call(['check', name], { files: { [name]: text } });
    expect(matched(out)).toEqual(marked(name, text));
  }
});

test('it finds them on a coloured and narrow terminal too', async () => {
  const [text = ''] = EXAMPLES;
  const { out } = await call(['check', '--color', 'a.throttle.yaml'], { files: { 'a.throttle.yaml': text }, terminal: true, columns: 40 });
  expect(out).toContain('\u001b[');
  expect(matched(out)).toEqual(marked('a.throttle.yaml', text));
});

test('errors, warnings and notes are all among what is tried here', () => {
  const severities = new Set([...EXAMPLES, FAULTY_FILE].flatMap((text) => marksOf(solve(text)).map(({ severity }) => severity)));
  expect([...severities].sort()).toEqual(['error', 'note', 'warning']);
});
