import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readDefinition } from '../../src/definition/read.ts';
import { file } from '../../src/definition/schema/file.ts';
import { describePath } from '../../src/definition/schema/walk.ts';
import { completionsAt } from '../../src/language/completion.ts';
import { solve } from '../../src/solve.ts';
import { atCaret } from './support/atCaret.ts';
import { checkCompletion, insert, itemsAt, take } from './support/checkCompletion.ts';

const LEVERS = `format: 1
let:
  reach: 36 mm
  lean: 12 deg
points:
  pivot_a: [0, 0]
levers:
  bellcrank:
    pivot: pivot_a
    arms: {out: {radius: reach, angle: 30 deg}, cable_arm: {radius: 20 mm, angle: 0 deg}}
    drums: {quadrant: {radius: 24 mm, wraps: clockwise}}
  shaft:
    pivot: [90, 0]
    arms:
      arm: {radius: 30 mm, angle: 20 deg}
`;

describe('keys', () => {
  test('of an empty file are its blocks, what must be there first', () => {
    const labels = itemsAt('$0').map(({ label }) => label);
    expect(labels[0]).toBe('format');
    expect(labels).toEqual(expect.arrayContaining(['levers', 'pedal', 'rods', 'require']));
  });

  test('of a file of one letter are the same', () => {
    expect(itemsAt('l$0').map(({ label }) => label)).toContain('levers');
    expect(itemsAt('\ufeffl$0').map(({ label }) => label)).toContain('levers');
  });

  test('that are there already are left out, above and below', () => {
    checkCompletion(
      'rods:\n  link:\n    from: a.b\n    $0\n    ends: {kind: clevis}\n',
      ['to', 'length', 'adjust', 'lost', 'width'],
      'key',
    );
  });

  test('in brackets are those of the innermost block', () => {
    checkCompletion(
      'rods:\n  link: {from: a.b, ends: {kind: rod_end, $0}, width: 8 mm}',
      ['misalignment', 'pin', 'friction', 'play'],
      'key',
    );
    checkCompletion('rods:\n  link: {from: a.b, ends: {kind: rod_end, $0', ['misalignment', 'pin', 'friction', 'play'], 'key');
  });

  test('of several ways to give one thing are those of the way that was begun', () => {
    checkCompletion('levers:\n  a:\n    arms:\n      b: {radius: 3 mm, $0}', ['angle', 'offset', 'bolt'], 'key');
    checkCompletion('levers:\n  a:\n    arms:\n      b: {at: [0, 0], $0}', ['bolt'], 'key');
    checkCompletion('pedal: {cable: main, $0}', ['pull', 'lever_ratio'], 'key');
    checkCompletion('springs:\n  s: {lever: a, $0}', ['rate', 'wire', 'strip', 'preload', 'counts_as_return'], 'key');
    checkCompletion(
      'springs:\n  s: {to: a.b, $0}',
      ['from', 'rate', 'wire', 'kind', 'free_length', 'initial_tension', 'counts_as_return'],
      'key',
    );
  });

  test('are inserted with a value to be filled in, and alone beside a colon', () => {
    expect(take(`${LEVERS}  other:\n    $0`, 'friction')).toContain('\n    friction: 15 N*mm$0');
    expect(take('levers:\n  a: {fri$0: 3}', 'friction')).toBe('levers:\n  a: {friction$0: 3}');
    expect(take('levers:\n  a:\n    "fri$0": 3', 'friction')).toBe('levers:\n  a:\n    "friction$0": 3');
  });

  test('keep a value that was written without its colon', () => {
    expect(take('levers:\n  a:\n    fri$0 12 N*mm', 'friction')).toBe('levers:\n  a:\n    friction:$0 12 N*mm');
    expect(take('pedal: {tra$0 22 deg, lever: a}', 'travel')).toBe('pedal: {travel:$0 22 deg, lever: a}');
  });

  test('of blocks open in lines outside of brackets and in brackets within', () => {
    expect(take('levers:\n  a:\n    pivot: [0, 0]\n    $0', 'arms')).toBe(
      'levers:\n  a:\n    pivot: [0, 0]\n    arms:\n      out: {radius: 40 mm, angle: 160 deg}$0',
    );
    expect(take('levers:\n  a: {pivot: [0, 0], $0}', 'arms')).toBe(
      'levers:\n  a: {pivot: [0, 0], arms: {out: {radius: 36 mm, angle: 62 deg}}$0}',
    );
  });

  test('are parted from what follows in brackets', () => {
    expect(take('pedal: {$0 lever: a}', 'opens')).toBe('pedal: {opens: clockwise,$0 lever: a}');
  });

  test('keep the line ends of the file', () => {
    expect(take('format: 1\r\nlevers:\r\n  a:\r\n    $0\r\n', 'arms')).toBe(
      'format: 1\r\nlevers:\r\n  a:\r\n    arms:\r\n      out: {radius: 40 mm, angle: 160 deg}$0\r\n',
    );
  });

  test('carry their meaning, form and example', () => {
    const [pivot] = itemsAt('levers:\n  a:\n    $0');
    expect(pivot).toMatchObject({ label: 'pivot', detail: 'place, required' });
    expect(pivot?.documentation).toContain('A place on the axis');
    expect(pivot?.documentation).toContain('`[120, 40]`');
  });

  test('stand nowhere in a comment, behind a finished value or below one', () => {
    for (const marked of ['# $0', 'format: 1 # $0', 'pedal: {lever: a} $0', 'title: a\n    $0']) expect(itemsAt(marked)).toEqual([]);
  });
});

describe('values', () => {
  test('of a part are its pins, and drums where a cable winds', () => {
    checkCompletion(`${LEVERS}rods:\n  link: {from: $0`, ['bellcrank.out', 'bellcrank.cable_arm', 'shaft.arm'], 'pin');
    checkCompletion(
      `${LEVERS}cables:\n  main: {to: bell$0`,
      ['bellcrank.out', 'bellcrank.cable_arm', 'bellcrank.quadrant', 'shaft.arm'],
      'pin',
    );
    checkCompletion(
      `${LEVERS}rods:\n  link:\n    from: bellcrank.$0\n    to: shaft.arm`,
      ['bellcrank.out', 'bellcrank.cable_arm', 'shaft.arm'],
      'pin',
    );
  });

  test('of the other end are those of other levers first', () => {
    checkCompletion(`${LEVERS}rods:\n  link: {from: bellcrank.out, to: $0}`, ['shaft.arm', 'bellcrank.out', 'bellcrank.cable_arm'], 'pin');
  });

  test('replace the whole name around the cursor', () => {
    expect(take(`${LEVERS}rods:\n  link: {from: bellc$0rank.ou, to: shaft.arm}`, 'bellcrank.out')).toContain(
      '{from: bellcrank.out$0, to: shaft.arm}',
    );
    expect(take(`${LEVERS}rods:\n  link: {from: "be$0"}`, 'bellcrank.out')).toContain('{from: "bellcrank.out$0"}');
    expect(take(`${LEVERS}rods:\n  link:\n    from:$0`, 'shaft.arm')).toContain('from: shaft.arm$0');
  });

  test('of a lever are the levers, of a place the points, of a spring end both', () => {
    checkCompletion(`${LEVERS}plates:\n  bank: {lever: $0`, ['bellcrank', 'shaft'], 'part-name');
    checkCompletion(`${LEVERS}  idler:\n    pivot: $0`, ['pivot_a'], 'point');
    checkCompletion(`${LEVERS}springs:\n  s: {from: $0`, ['bellcrank.out', 'bellcrank.cable_arm', 'shaft.arm', 'pivot_a'], 'pin', 'point');
    checkCompletion(`${LEVERS}  idler:\n    pivot:\n      $0`, ['pivot_a'], 'point');
  });

  test('of the pad are the arms of its lever, of what moves all that can', () => {
    checkCompletion(`${LEVERS}pedal: {lever: bellcrank, pad: $0}`, ['out', 'cable_arm'], 'pin');
    checkCompletion(
      `${LEVERS}cables:\n  main: {}\nsprings:\n  s: {from: [0, 0]}\n  t: {lever: shaft}\nmovements:\n  rock: {moves: [shaft, $0]}`,
      ['bellcrank', 'shaft', 'main.leaves', 'main.enters', 's.from'],
      'part-name',
      'pin',
    );
  });

  test('of a few words are those words with their meaning', () => {
    checkCompletion('rods:\n  link: {ends: {kind: $0}}', ['rod_end', 'ball_stud', 'clevis'], 'word');
    checkCompletion('sensors:\n  tps: {reversed: $0', ['true', 'false'], 'word');
    expect(itemsAt('rods:\n  link: {ends: {kind: $0}}')[0]?.detail).toContain('spherical bearing');
  });
});

describe('figures and formulas', () => {
  test('right after a number are the units of the place, and nothing else', () => {
    checkCompletion('levers:\n  a:\n    friction: 12 $0', ['N*mm', 'N*m', 'lbf*inch', 'lbf*ft']);
    checkCompletion('levers:\n  a: {friction: 12 N*$0', ['N*mm', 'N*m', 'lbf*inch', 'lbf*ft'], 'unit');
    checkCompletion('let:\n  reach: 3 mm\nlevers:\n  a: {friction: 12 N*$0', ['reach'], 'let');
    checkCompletion('springs:\n  s: {lever: a, rate: 2 $0}', ['N*mm/deg', 'N*m/rad', 'lbf*inch/deg']);
    checkCompletion('springs:\n  s: {from: [0, 0], rate: 2 $0}', ['N/mm', 'N/m', 'lbf/inch']);
    checkCompletion('levers:\n  a: {pivot: [12 $0', ['mm', 'cm', 'm', 'um', 'inch', 'in', 'ft']);
  });

  test('a unit is put behind its number with a blank, and replaces what was begun', () => {
    expect(take('levers:\n  a: {friction: 12$0}', 'N*m')).toBe('levers:\n  a: {friction: 12 N*m$0}');
    expect(take('levers:\n  a: {friction: 12 N*$0}', 'N*m')).toBe('levers:\n  a: {friction: 12 N*m$0}');
    expect(take('levers:\n  a: {friction: "2 * reach + 12 N$0*mm"}', 'N*m')).toBe('levers:\n  a: {friction: "2 * reach + 12 N*m$0*mm"}');
    expect(take('levers:\n  a: {stops: {open: 82$0}}', '°')).toBe('levers:\n  a: {stops: {open: 82°$0}}');
  });

  test('a number that is whole without a unit is left alone until there is a blank', () => {
    checkCompletion('plates:\n  bank: {count: 4$0}', []);
    checkCompletion('let:\n  ratio: 4$0', []);
    checkCompletion('plates:\n  bank: {count: 4 $0}', ['%'], 'unit');
  });

  test('behind a quantity stands its tolerance', () => {
    expect(take('let:\n  reach: 38 mm $0', '± tolerance')).toBe('let:\n  reach: 38 mm ± 0.1 mm$0');
  });

  test('names of `let` that fit come before those that do not', () => {
    const labels = (marked: string): readonly string[] => {
      const { text, offset } = atCaret(marked);
      const items = completionsAt(text, offset, solve(text)).filter(({ kind }) => kind === 'let');
      return [...items].sort((a, b) => (a.sortText < b.sortText ? -1 : 1)).map(({ label }) => label);
    };
    expect(labels(`${LEVERS}  other:\n    pivot: [0, 0]\n    width: $0`)).toEqual(['reach', 'lean']);
    expect(labels(`${LEVERS}  other:\n    stops: {open: 2 * $0`)).toEqual(['lean', 'reach']);
  });

  test('a name of other letters, which is none, is replaced whole', () => {
    expect(take('let:\n  länge: 3 mm\n  half: län$0ge / 2', 'länge')).toBe('let:\n  länge: 3 mm\n  half: länge$0 / 2');
    expect(take('let:\n  φ: 3 deg\n  twice: 2 * φ$0', 'φ')).toBe('let:\n  φ: 3 deg\n  twice: 2 * φ$0');
    expect(take('let:\n  cafe\u0301: 3 mm\n  half: caf$0e\u0301 / 2', 'cafe\u0301')).toBe(
      'let:\n  cafe\u0301: 3 mm\n  half: cafe\u0301$0 / 2',
    );
  });

  test('a formula over several lines is still one', () => {
    const folded = (marked: string): string => `${LEVERS}require:\n  opens: >-\n    ${marked}`;
    checkCompletion(folded('at(100%,\n    shaft.$0)\n    >= 80 deg'), ['rotation', 'opening', 'ratio', 'closing', 'margin']);
    expect(take(folded('at(100%, sh$0aft.opening)\n    >= 80 deg'), 'shaft')).toBe(folded('at(100%, shaft.$0.opening)\n    >= 80 deg'));
    checkCompletion(folded('at(100%, shaft.opening)\n    >= 80 $0'), ['deg', '°', 'rad', '%']);
    checkCompletion('let:\n  one: 1\n  two: |2\n    o$0\n', ['one'], 'let');
    checkCompletion('title: >-\n  so$0me\n', []);
  });

  test('nothing of a formula is offered behind the star of an alias', () => {
    checkCompletion(`${LEVERS}  other:\n    width: *$0k`, []);
    checkCompletion(`${LEVERS}  other:\n    width: 2 *$0`, ['reach', 'lean'], 'let');
  });

  test('in `let` only those above are offered', () => {
    checkCompletion('let:\n  one: 1\n  two: on$0\n  three: 3', ['one'], 'let');
  });

  test('functions of the travel are offered in requirements only', () => {
    const names = (marked: string): readonly string[] =>
      itemsAt(marked)
        .filter(({ kind }) => kind === 'function')
        .map(({ label }) => label);
    expect(names('let:\n  a: $0')).not.toContain('at');
    expect(names('let:\n  a: mi$0')).toContain('min');
    expect(names('require:\n  opens: $0')).toEqual(expect.arrayContaining(['at', 'where', 'max']));
  });

  test('in requirements the part comes first, then its columns', () => {
    checkCompletion(
      `${LEVERS}plates:\n  bank: {lever: shaft}\nrequire:\n  opens: at(100%, $0`,
      ['pedal', 'bellcrank', 'shaft', 'bank'],
      'part-name',
    );
    expect(take(`${LEVERS}require:\n  opens: at(100%, sh$0`, 'shaft')).toContain('at(100%, shaft.$0');
    checkCompletion(`${LEVERS}require:\n  opens: at(100%, shaft.$0) >= 80 deg`, ['rotation', 'opening', 'ratio', 'closing', 'margin']);
    checkCompletion(`${LEVERS}require:\n  opens: pedal.$0`, ['travel', 'effort', 'release']);
    expect(take(`${LEVERS}require:\n  opens: at(100%, shaft.op$0en) >= 80 deg`, 'opening')).toContain('at(100%, shaft.opening$0) >=');
    expect(take(`${LEVERS}require:\n  opens: $0`, 'at')).toContain('opens: at(100%, )$0');
  });

  test('a column says what it means and between what it lies', () => {
    const marked = `${readFileSync('examples/four-barrel.throttle.yaml', 'utf8')}  more: shaft.`;
    const opening = completionsAt(marked, marked.length, solve(marked)).find(({ label }) => label === 'opening');
    expect(opening?.documentation).toContain('Rotation counted in its opening direction.');
    expect(opening?.documentation).toContain('greatest 82° at 98.1 %');
  });

  test('in a requirement the units are those of the columns that it speaks of', () => {
    checkCompletion(`${LEVERS}require:\n  opens: at(100%, shaft.opening) >= 80 $0`, ['deg', '°', 'rad', '%']);
  });

  test('a half-typed formula in brackets is still one', () => {
    checkCompletion(`${LEVERS}rods:\n  link: {from: a.b, length: max(reach, re$0`, ['reach', 'lean'], 'let');
    checkCompletion(`${LEVERS}rods:\n  link: {from: a.b, length: "2 * (re$0}`, ['reach', 'lean'], 'let');
  });
});

describe('snippets', () => {
  const ALL = Object.keys(file.about.kind === 'record' ? file.about.keys : {});

  test.each(ALL.filter((block) => describePath([block]).some(({ shape }) => shape.kind === 'map')))(
    'a part of %s can be inserted in lines and in brackets',
    (block) => {
      const start = block === 'levers' ? LEVERS : `${LEVERS}${block}:\n`;
      const lines = `${start}  $0`;
      const snippets = itemsAt(block === 'let' || block === 'points' ? `format: 1\n${block}:\n  $0` : lines).filter(
        ({ kind }) => kind === 'snippet',
      );
      expect(snippets.length).toBeGreaterThan(0);
      for (const marked of block === 'let' || block === 'points'
        ? [`format: 1\n${block}:\n  $0`, `format: 1\n${block}: {$0}`]
        : [lines, block === 'levers' ? `format: 1\nlevers: {$0}` : `${LEVERS}${block}: {$0}`]) {
        const { text, offset } = atCaret(marked);
        for (const item of completionsAt(text, offset).filter(({ kind }) => kind === 'snippet')) {
          const after = insert(text, item);
          const codes = readDefinition(after).problems.map(({ code }) => code);
          // Names of an example, and the load path that it is no part of yet, are for the person to mend.
          expect(
            codes.filter((code) => !FOR_THE_PERSON.has(code)),
            after,
          ).toEqual([]);
        }
      }
    },
  );

  test('take names of the file, two ends on two levers', () => {
    expect(take(`${LEVERS}rods:\n  $0`, 'rod')).toContain('link:\n    from: bellcrank.out\n    to: shaft.arm\n    ends:');
  });

  test('take a name that is free', () => {
    expect(take('rods:\n  link: {}\n  $0', 'rod')).toContain('link_2:\n');
  });

  test('offer each way of writing a spring and a pedal', () => {
    expect(itemsAt('springs:\n  $0').map(({ label }) => label)).toEqual([
      'spring with lever, rate, preload',
      'spring with lever, preload, wire',
      'spring with lever, preload, strip',
      'spring with from, to, rate, free_length',
      'spring with from, to, free_length, wire',
    ]);
    expect(
      itemsAt('$0')
        .filter(({ kind }) => kind === 'snippet')
        .map(({ label }) => label),
    ).toEqual(['pedal with lever, opens, travel', 'pedal with cable, pull']);
  });
});

/** Not of the keys: what a part refers to is not there yet, or nothing drives it. */
const FOR_THE_PERSON: ReadonlySet<string> = new Set([
  'unknown-name',
  'wrong-value',
  'missing-key',
  'driven-twice',
  'not-driven',
  'load-path-loop',
  'no-pedal',
]);
