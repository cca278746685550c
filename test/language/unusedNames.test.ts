import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { indexNames } from '../../src/language/names.ts';
import { unusedNames } from '../../src/language/unusedNames.ts';

const EXAMPLE = readFileSync('examples/four-barrel.throttle.yaml', 'utf8');

const unusedIn = (text: string): readonly string[] => unusedNames(indexNames(text)).map(({ kind, name }) => `${kind} ${name}`);

test('figures, points and arms that nothing speaks of are told, in the order of the text', () => {
  const text = EXAMPLE.replace('let:\n', 'let:\n  spare: 3 mm\n  twice: 2 * crank_reach\n').replace(
    'points:\n',
    'points:\n  hole: [1 mm, 2 mm]\n',
  );
  expect(text).not.toBe(EXAMPLE);
  expect([...unusedIn(text)].sort()).toEqual(['let spare', 'let twice', 'point hole']);
  const starts = unusedNames(indexNames(text)).map(({ span }) => span.start);
  expect(starts).toEqual([...starts].sort((a, b) => a - b));
});

test.each([
  ['a formula', '  other: spare + 1 mm\n', ''],
  ['what tune may change', '', 'tune: {free: {spare: {from: 1 mm, to: 4 mm}}}\n'],
])('one that only %s speaks of is used', (_, inLet, behind) => {
  const text = `${EXAMPLE.replace('let:\n', `let:\n  spare: 3 mm\n${inLet}`)}${behind}`;
  expect(unusedIn(text)).not.toContain('let spare');
});

test('parts that do something without being named again are never told of', () => {
  const springless = unusedIn(
    'format: 1\nlevers: {shaft: {at: [0 mm, 0 mm]}}\nsprings: {back: {on: shaft}}\nrequire: {opens: shaft.opening > 1 deg}\n',
  );
  expect(springless).toEqual([]);
});

test('the bundled examples declare nothing in vain', () => {
  for (const name of readdirSync('examples').filter((each) => each.endsWith('.throttle.yaml')))
    expect(unusedIn(readFileSync(`examples/${name}`, 'utf8'))).toEqual([]);
});

test('of a text that cannot be read there are none', () => {
  for (const text of ['', '- - -', 'let: {', 'a', '\ufeff']) expect(unusedIn(text)).toEqual([]);
});
