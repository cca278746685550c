import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cursorAt } from '../../src/language/cursor.ts';
import { atCaret } from './support/atCaret.ts';

/** `key levers.shaft/: ra` is: writing a key in that block, `ra` before the cursor. */
function told(marked: string): string {
  const { text, offset } = atCaret(marked);
  const cursor = cursorAt(text, offset);
  if (cursor.role === 'none') return cursor.inComment ? 'comment' : 'none';
  return `${cursor.role} ${cursor.path.join('/')}: ${cursor.prefix}`;
}

describe('a key is being written', () => {
  test.each([
    ['$0', 'key : '],
    ['f$0', 'key : f'],
    ['\ufeff$0', 'key : '],
    ['\ufefffo$0rmat: 1', 'key : fo'],
    ['format: 1\n$0', 'key : '],
    ['format: 1\r\nle$0\r\n', 'key : le'],
    ['levers:\n  $0', 'key levers: '],
    ['levers:\r\n  $0\r\n', 'key levers: '],
    ['levers:\n$0', 'key : '],
    ['levers:\n  shaft:\n    $0', 'key levers/shaft: '],
    ['levers:\n  shaft:\n  $0', 'key levers: '],
    ['levers:\n  shaft:\n    pivot: [0, 0]\n    ar$0\nrods:', 'key levers/shaft: ar'],
    ['levers:\n  shaft:\n    pivot: [0, 0]\n    $0\n    arms: {}', 'key levers/shaft: '],
    ['levers:\n  shaft:\n    pivot: [0, 0]\n  $0\nrods:', 'key levers: '],
    ['levers:\n  shaft:\n    pivot: [0, 0]\n\n\n$0', 'key : '],
    ['levers:\n  shaft: {$0', 'key levers/shaft: '],
    ['levers:\n  shaft: {pivot: [0, 0], $0}', 'key levers/shaft: '],
    ['levers:\n  shaft: {pivot: [0, 0],$0}', 'key levers/shaft: '],
    ['levers:\n  shaft: {pivot: [0, 0], st$0\nrods:\n  link: {}', 'key levers/shaft: st'],
    ['levers:\n  shaft: {pivot: [0, 0],\n    $0\n  other:', 'key levers/shaft: '],
    ['levers:\n  shaft: {arms: {out: {ra$0', 'key levers/shaft/arms/out: ra'],
    ['levers:\n  "sh$0aft": {}', 'key levers: sh'],
    ['{format: 1, le$0', 'key : le'],
    ['levers: # all\n  shaft: # one\n    # said\n    $0', 'key levers/shaft: '],
    ['require:\n  opens fu$0', 'key require: opens fu'],
  ])('%j', (marked, expected) => {
    expect(told(marked)).toBe(expected);
  });
});

describe('a value is being written', () => {
  test.each([
    ['format: $0', 'value format: '],
    ['format:$0', 'value format: '],
    ['format: 1$0', 'value format: 1'],
    ['levers:\n  shaft:\n    friction: 12 $0\n    width: 3', 'value levers/shaft/friction: 12 '],
    ['levers:\n  shaft:\n    friction: 12 N*$0 # drag', 'value levers/shaft/friction: 12 N*'],
    ['levers:\n  shaft:\n    friction: "12 N$0"', 'value levers/shaft/friction: 12 N'],
    ["levers:\n  shaft:\n    friction: '12 N$0", 'value levers/shaft/friction: 12 N'],
    ['levers:\n  shaft: {friction: 12 $0', 'value levers/shaft/friction: 12 '],
    ['levers:\n  shaft: {friction: max(a, $0', 'value levers/shaft/friction: max(a, '],
    ['levers:\n  shaft: {friction: max(a, b$0), width: 3}', 'value levers/shaft/friction: max(a, b'],
    ['levers:\n  shaft: {friction: max(a, wid: 3$0}', 'value levers/shaft/wid: 3'],
    ['levers:\n  shaft: {pivot: [0, $0', 'value levers/shaft/pivot/1: '],
    ['levers:\n  shaft: {pivot: [$0]}', 'value levers/shaft/pivot/0: '],
    ['levers:\n  shaft: {pivot: [0, 1$0], friction: 2}', 'value levers/shaft/pivot/1: 1'],
    ['levers: {a: {drums: {d: {profile: [[0, 1], [2, $0', 'value levers/a/drums/d/profile/1/1: '],
    ['movements:\n  rock:\n    moves:\n      - sha$0', 'value movements/rock/moves/0: sha'],
    ['movements:\n  rock:\n    moves:\n    - a\n    - $0', 'value movements/rock/moves/1: '],
    ['rods:\n  link:\n    from: a$0\n    to: b.c', 'value rods/link/from: a'],
    ['rods:\n  link: {from: a.$0, to: b.c}', 'value rods/link/from: a.'],
    ['rods:\n  link: {\n    from: a.$0\n  }\nplates: {}', 'value rods/link/from: a.'],
    ['require:\n  opens: at(100%, sha$0', 'value require/opens: at(100%, sha'],
    ['rods:\n  link:\n    length: &l 3$0', 'value rods/link/length: 3'],
  ])('%j', (marked, expected) => {
    expect(told(marked)).toBe(expected);
  });
});

describe('nothing can be written', () => {
  test.each([
    ['# lev$0ers', 'comment'],
    ['format: 1 # the$0', 'comment'],
    ['levers:\n  shaft: {pivot: [0, 0], # here $0\n    arms: {}}', 'comment'],
    ['levers:\n  shaft: {pivot: [0, 0]} $0', 'none'],
    ['title: "done" $0', 'none'],
    ['title: done\n    $0', 'none'],
    ['levers:\n $0 shaft: {}', 'none'],
  ])('%j', (marked, expected) => {
    expect(told(marked)).toBe(expected);
  });
});

test('keys beside the cursor are known above and below it', () => {
  const { text, offset } = atCaret('rods:\n  link:\n    from: a.b\n    $0\n    to: c.d\nplates: {}');
  expect(cursorAt(text, offset).siblings).toEqual(['from', 'to']);
});

test('an outline follows the reader in every example', () => {
  for (const name of readdirSync('examples').filter((each) => each.endsWith('.throttle.yaml'))) {
    const text = readFileSync(`examples/${name}`, 'utf8');
    for (const [match] of text.matchAll(/^ {6}\w+: \{radius/gm)) {
      const cursor = cursorAt(text, text.indexOf(match) + match.length);
      expect(cursor.path.length).toBe(4);
      expect(cursor.path[0]).toBe('levers');
    }
  }
});

test('no text makes it throw or hang', () => {
  const piece = fc.constantFrom(
    'levers:',
    '\n',
    '  ',
    '{',
    '}',
    '[',
    ']',
    ',',
    ': ',
    '"',
    "'",
    '#',
    ' # ',
    '- ',
    '|',
    '&a ',
    'a',
    '1 mm',
    '(',
    ')',
    '\r\n',
    '\t',
    '\ufeff',
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
      const text = pieces.join('');
      for (let offset = 0; offset <= text.length; offset++) {
        const cursor = cursorAt(text, offset);
        expect(cursor.span.start).toBeLessThanOrEqual(cursor.span.end);
        expect(cursor.span.end).toBeLessThanOrEqual(text.length);
        if (cursor.role !== 'none') expect(cursor.span.start).toBeLessThanOrEqual(offset);
      }
    }),
    { numRuns: 600 },
  );
});

test('a large file of brackets and a deep one are read in time', () => {
  const deep = '['.repeat(100_000);
  const wide = `levers: {${'a: {b: [1, 2]}, '.repeat(12_000)}`;
  for (const text of [deep, wide, '- '.repeat(120_000), `${' '.repeat(3)}a:\n`.repeat(20_000)]) {
    const start = performance.now();
    cursorAt(text, text.length - 1);
    expect(performance.now() - start).toBeLessThan(2_000);
  }
});
