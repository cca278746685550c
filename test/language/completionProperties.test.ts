/** Completion at any place of any text, and at every block of the format. */
import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.ts';
import { file } from '../../src/definition/schema/file.ts';
import type { About } from '../../src/definition/schema/shape.ts';
import { keysAt } from '../../src/definition/schema/walk.ts';
import { completionsAt } from '../../src/language/completion.ts';
import { hoverAt } from '../../src/language/hover.ts';
import { inlayHints } from '../../src/language/inlayHints.ts';
import { lensesOf } from '../../src/language/lenses.ts';
import { solve } from '../../src/solve.ts';
import { atCaret } from './support/atCaret.ts';
import { insert } from './support/checkCompletion.ts';

describe('every block of the format', () => {
  const blocks = blocksOf(file.about, []);

  test('is reached', () => {
    expect(blocks.length).toBeGreaterThan(15);
  });

  test.each(blocks.map((path) => [path.join('.'), path] as const))(
    '%s: each of its keys is offered, in lines and in brackets, and read',
    (_, path) => {
      for (const text of [inLines(path), inBrackets(path)]) {
        const { text: bare, offset } = atCaret(text);
        const items = completionsAt(bare, offset).filter(({ kind }) => kind === 'key');
        const wanted = [...keysAt(path).keys()].filter((key) => path.length > 0 || key !== 'format');
        expect(items.map(({ label }) => label).sort()).toEqual(wanted.sort());
        for (const item of items) {
          const after = insert(bare, item);
          const wrong = readDefinition(after).problems.filter(({ code }) =>
            ['unknown-key', 'duplicate-key', 'yaml-syntax', 'bad-quantity'].includes(code),
          );
          expect(wrong, after).toEqual([]);
        }
      }
    },
  );
});

/** Paths of all records, with a name for each part. */
function blocksOf(about: About, path: readonly string[]): readonly (readonly string[])[] {
  switch (about.kind) {
    case 'record':
      return [path, ...Object.entries(about.keys).flatMap(([name, key]) => blocksOf(key.shape, [...path, name]))];
    case 'map':
      return blocksOf(about.of, [...path, 'part_1']);
    case 'either': {
      const found = about.forms.flatMap((form) => blocksOf(form, path));
      return found.filter((each, index) => found.findIndex((other) => other.join('.') === each.join('.')) === index);
    }
    default:
      return [];
  }
}

function inLines(path: readonly string[]): string {
  return `format: 1\n${path.map((key, depth) => `${'  '.repeat(depth)}${key}:\n`).join('')}${'  '.repeat(path.length)}$0`;
}

function inBrackets(path: readonly string[]): string {
  return `{format: 1, ${path.map((key) => `${key}: {`).join('')}$0${'}'.repeat(path.length + 1)}`;
}

describe('at any place of any cut of an example', () => {
  const examples = readdirSync('examples')
    .filter((name) => name.endsWith('.throttle.yaml'))
    .map((name) => readFileSync(`examples/${name}`, 'utf8'));
  const texts = [...examples, readFileSync('test/support/sample.throttle.yaml', 'utf8')];

  test('it answers, replaces text around the cursor on its line, and offers nothing twice', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.boolean(),
        (whole, from, part, cut) => {
          const end = Math.floor(whole.length * Math.max(from, part));
          const text = cut ? whole.slice(0, end) : whole.slice(0, end) + whole.slice(end + 7);
          const offset = cut ? end : Math.floor(end * part);
          const items = completionsAt(text, offset);
          expect(new Set(items.map(({ label, kind }) => `${kind} ${label}`)).size).toBe(items.length);
          for (const { replace } of items) {
            expect(replace.start).toBeLessThanOrEqual(offset);
            expect(replace.end).toBeGreaterThanOrEqual(offset);
            expect(text.slice(replace.start, replace.end)).not.toMatch(/[\r\n]/);
          }
        },
      ),
      { numRuns: 800 },
    );
  });

  test('every key that is offered is one that the reader knows there', () => {
    let inserted = 0;
    const counts = (text: string): number =>
      readDefinition(text).problems.filter(({ code }) => code === 'unknown-key' || code === 'duplicate-key').length;
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean(), (whole, at, crlf) => {
        const lines = whole.split('\n');
        const line = Math.floor(at * lines.length);
        const before = lines.slice(0, line);
        const indent = /^ */.exec(before.at(-1) ?? '')?.[0] ?? '';
        const deeper = before.at(-1)?.trimEnd().endsWith(':') === true ? '  ' : '';
        const marked = [...before, `${indent}${deeper}$0`, ...lines.slice(line)].join(crlf ? '\r\n' : '\n');
        const { text, offset } = atCaret(marked);
        const known = counts(text);
        for (const item of completionsAt(text, offset).filter(({ kind }) => kind === 'key')) {
          expect(counts(insert(text, item)), insert(text, item)).toBeLessThanOrEqual(known);
          inserted++;
        }
      }),
      { numRuns: 60 },
    );
    expect(inserted).toBeGreaterThan(100);
  });

  test('and in brackets too', () => {
    let inserted = 0;
    const counts = (text: string): number =>
      readDefinition(text).problems.filter(({ code }) => code === 'unknown-key' || code === 'duplicate-key').length;
    for (const whole of texts) {
      const braces = [...whole.matchAll(/\{/g)].map(({ index }) => index + 1);
      for (const offset of braces) {
        // Before the first key, and in its place.
        for (const text of [`${whole.slice(0, offset)} ${whole.slice(offset)}`, whole]) {
          const known = counts(text);
          for (const item of completionsAt(text, offset).filter(({ kind }) => kind === 'key')) {
            expect(counts(insert(text, item)), insert(text, item)).toBeLessThanOrEqual(known);
            inserted++;
          }
        }
      }
    }
    expect(inserted).toBeGreaterThan(100);
  });
});

test('of no text does it throw, at no place', () => {
  const piece = fc.constantFrom(
    ...[
      'levers',
      'require',
      'let',
      'springs',
      'shaft',
      ':',
      ': ',
      '\n',
      '\n  ',
      '\n    ',
      '{',
      '}',
      '[',
      ']',
      ', ',
      '"',
      "'",
      '#',
      ' # ',
      '- ',
      '|',
    ],
    ...['&a ', '*a', '1 mm', '12', '(', ')', '\r\n', '\t', '\ufeff', '°', '%', '±', '.', 'shaft.', '😀', '\\', '__proto__', 'constructor'],
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
      const text = pieces.join('');
      const answers = solve(text);
      inlayHints(answers);
      lensesOf(answers);
      for (let offset = -1; offset <= text.length + 1; offset++) {
        completionsAt(text, offset, answers);
        hoverAt(answers, offset);
      }
    }),
    { numRuns: 300 },
  );
});

test('a line of any length is answered in time', () => {
  for (const line of [
    '1 ' + 'a'.repeat(100_000) + '!',
    '1' + ' '.repeat(200_000),
    '(1+'.repeat(50_000),
    'a*'.repeat(100_000),
    '"'.repeat(100_000),
  ]) {
    const text = `levers:\n  a:\n    friction: ${line}`;
    const start = performance.now();
    completionsAt(text, text.length);
    expect(performance.now() - start).toBeLessThan(2_000);
  }
});
