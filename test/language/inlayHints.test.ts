import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inlayHints, type InlayKind } from '../../src/language/inlayHints.ts';
import { solve } from '../../src/solve.ts';
import { SOUND_FILE } from '../support/soundFile.ts';

/** `behind what → label` of every hint, in order. */
function told(text: string, ...kinds: readonly InlayKind[]): readonly string[] {
  const hints = inlayHints(solve(text), undefined, kinds.length === 0 ? undefined : kinds);
  return hints.map(
    ({ offset, label }) => `${text.slice(Math.max(text.lastIndexOf('\n', offset - 1) + 1, offset - 24), offset).trim()} → ${label}`,
  );
}

describe('results of formulas', () => {
  test('stand behind them, quotes and brackets included', () => {
    const text = 'format: 1\nlet:\n  a: 10 mm\n  b: 2 * a\n  c: "a * b"\nlevers:\n  x: {pivot: [a, "max(a, b)"]}\n';
    expect(told(text, 'formula')).toEqual([
      'b: 2 * a → = 20 mm',
      'c: "a * b" → = 200 mm²',
      'x: {pivot: [a → = 10 mm',
      '{pivot: [a, "max(a, b)" → = 20 mm',
    ]);
  });

  test('are told with their values put in', () => {
    const [hint] = inlayHints(solve('format: 1\nlet:\n  a: 10 mm\n  b: 2 * a'));
    expect(hint?.tooltip).toBe('`2 * 10 mm` = `20 mm`');
  });

  test('are at the same places with other line ends and a byte order mark', () => {
    const text = '\ufeffformat: 1\r\nlet:\r\n  a: 10 mm\r\n  b: 2 * a\r\n';
    const [hint] = inlayHints(solve(text));
    expect(text.slice(0, hint?.offset)).toMatch(/2 \* a$/);
  });
});

describe('lengths of rods that are as drawn', () => {
  test('stand behind a name in lines, and behind the brackets of a part in brackets', () => {
    // Between (30 mm, 120°) about (0, 0) and (32 mm, 115°) about (90, 10): hypot of the differences of their coordinates.
    const [x, y] = [30 * Math.cos((120 * Math.PI) / 180), 30 * Math.sin((120 * Math.PI) / 180)];
    const [u, v] = [90 + 32 * Math.cos((115 * Math.PI) / 180), 10 + 32 * Math.sin((115 * Math.PI) / 180)];
    const length = Math.hypot(u - x, v - y)
      .toFixed(2)
      .replace(/0+$/, '');
    expect(told(SOUND_FILE, 'rod-length')).toEqual([`, ends: {kind: rod_end}} → length ${length} mm`]);
    const lines = SOUND_FILE.replace(/link: \{(.*), to: (.*), ends.*\n/, 'link:\n    $1\n    to: $2\n');
    expect(told(lines, 'rod-length')).toEqual([`link: → length ${length} mm`]);
  });

  test('are not shown where the length is written', () => {
    expect(told(SOUND_FILE.replace('to: shaft.arm,', 'to: shaft.arm, length: 91 mm,'), 'rod-length')).toEqual([]);
  });
});

describe('offsets at rest', () => {
  test('are shown of each lever that stands off its drawn position', () => {
    const longer = SOUND_FILE.replace('to: shaft.arm,', 'to: shaft.arm, length: 110 mm,');
    const answers = solve(longer);
    const offset = answers.table([0], ['shaft.opening', 'bellcrank.opening']).columns.map(({ values }) => values[0] ?? 0);
    expect(offset.some((each) => Math.abs(each) > 0.01)).toBe(true);
    expect(told(longer, 'rest')).toHaveLength(offset.filter((each) => Math.abs(each) > 0.001).length);
    expect(told(longer, 'rest')[0]).toMatch(/: → rests at -?\d+(\.\d+)?°$/);
  });

  test('are not shown where all rests as drawn', () => {
    expect(told(SOUND_FILE, 'rest')).toEqual([]);
  });
});

test('only hints within the range that is asked for are given', () => {
  const text = 'format: 1\nlet:\n  a: 1 mm\n  b: a\n  c: a\n';
  const answers = solve(text);
  const line = { start: text.indexOf('  c:'), end: text.length };
  expect(inlayHints(answers, line)).toHaveLength(1);
  expect(inlayHints(answers)).toHaveLength(2);
});

test('cut examples are answered, in the order of the text', () => {
  for (const name of readdirSync('examples').filter((each) => each.endsWith('.throttle.yaml'))) {
    const whole = readFileSync(`examples/${name}`, 'utf8');
    for (let part = 0; part <= 20; part++) {
      const text = whole.slice(0, Math.round((whole.length * part) / 20));
      const offsets = inlayHints(solve(text)).map(({ offset }) => offset);
      expect([...offsets].sort((a, b) => a - b)).toEqual(offsets);
      expect(offsets.every((offset) => offset > 0 && offset <= text.length)).toBe(true);
    }
  }
});
