import { describe, expect, it } from 'vitest';
import { indexNames } from '../../src/language/names.ts';
import { outline, type OutlineEntry } from '../../src/language/symbols.ts';
import { solve } from '../../src/solve.ts';
import { SOUND_FILE } from '../support/soundFile.ts';
import { EVERY_NAME } from './support/everyName.ts';

/** One line an entry, indented: `kind name: detail`. */
function drawn(entries: readonly OutlineEntry[], indent = ''): readonly string[] {
  return entries.flatMap(({ kind, name, detail, children }) => [
    `${indent}${kind} ${name}${detail === '' ? '' : `: ${detail}`}`,
    ...drawn(children, `${indent}  `),
  ]);
}

function checkRanges(entries: readonly OutlineEntry[], within: { readonly start: number; readonly end: number }): void {
  for (const { name, span, selection, children } of entries) {
    expect(name).not.toBe('');
    expect(span.start).toBeGreaterThanOrEqual(within.start);
    expect(span.end).toBeLessThanOrEqual(within.end);
    expect(selection.start).toBeGreaterThanOrEqual(span.start);
    expect(selection.end).toBeLessThanOrEqual(span.end);
    checkRanges(children, span);
  }
}

describe('outline', () => {
  it('holds blocks, parts, arms and drums with the figure that matters', () => {
    const answers = solve(SOUND_FILE);
    const table = answers.table(Array.from({ length: 1001 }, (_, k) => k / 1000));
    const valuesOf = (name: string): readonly number[] => table.columns.find((column) => column.name === name)?.values.map(Number) ?? [];
    const most = (name: string): number => Number(Math.max(...valuesOf(name)).toFixed(1));
    const least = (name: string): number => Number(Math.min(...valuesOf(name)).toFixed(1));
    expect(drawn(outline(indexNames(SOUND_FILE), answers))).toEqual([
      'block format: 1',
      'block levers',
      `  lever bellcrank: lever, opens ${most('bellcrank.opening')}°`,
      '    arm out: arm, 30 mm at 120 deg',
      '    drum quadrant: drum, 24 mm',
      '  lever shaft: lever, opens 70°',
      '    arm arm: arm, 32 mm at 115 deg',
      'block pedal: pull 32 mm',
      '  key cable: main',
      '  key pull: 32 mm',
      'block cables',
      '  cable main: cable, pull 32 mm',
      'block rods',
      `  rod link: rod, least transmission angle ${least('link.transmission')}°`,
      'block plates',
      `  plates bank: set of plates, open area of one plate ${most('bank.area').toFixed(0)} mm²`,
    ]);
  });

  it('tells what formulas come to, places as written and how requirements stand', () => {
    const lines = drawn(outline(indexNames(EVERY_NAME), solve(EVERY_NAME)));
    expect(lines).toEqual(
      expect.arrayContaining([
        '  let reach: 36 mm ± 0.1 mm',
        '  let half: reach / 2 = 18 mm',
        '  point rod_side: [0, 0, 10]',
        '  requirement opens enough: passed',
        '  slot fork: slot, least transmission angle 90°',
        '  coupling drive: coupling, ratio -1',
      ]),
    );
  });

  it('stands without figures where nothing is solved, and takes none from another text', () => {
    const text =
      'levers:\n  shaft: {pivot: [0, 0], drums: {snail: {profile: [[0, 1], [2, 3]]}}, arms: {tang: {at: [1, 2]}}}\nlet: {a: 3 mm, b: 2 * a}\n';
    const lines = [
      'block levers',
      '  lever shaft: lever',
      '    arm tang: arm, at [1, 2]',
      '    drum snail: drum, profiled',
      'block let',
      '  let a: 3 mm',
      '  let b: 2 * a',
    ];
    expect(drawn(outline(indexNames(text)))).toEqual(lines);
    expect(drawn(outline(indexNames(text), solve(`${text}\n`)))).toEqual(lines);
  });

  it('keeps every range within its parent, and the name within the range', () => {
    for (const text of [EVERY_NAME, EVERY_NAME.replaceAll('\n', '\r\n'), `\ufeff${SOUND_FILE}`, SOUND_FILE.slice(0, 300)]) {
      const entries = outline(indexNames(text));
      expect(entries.length).toBeGreaterThan(1);
      checkRanges(entries, { start: 0, end: text.length });
    }
  });

  it('shows what can be read of a half-typed file', () => {
    const text = 'levers:\n  a:\n    arms:\n      out: {radius: 3 mm, ang\n  b: {pivot: [0,\nrods:\n  lin';
    const lines = drawn(outline(indexNames(text)));
    expect(lines).toEqual(expect.arrayContaining(['block levers', '  lever a: lever', '    arm out: arm, 3 mm']));
  });

  it('shows what an alias repeats where it stands only', () => {
    const text = 'levers:\n  a: {arms: &arms {out: {radius: 3 mm, angle: 0 deg}}}\n  b: {arms: *arms}\n';
    expect(drawn(outline(indexNames(text)))).toEqual([
      'block levers',
      '  lever a: lever',
      '    arm out: arm, 3 mm at 0 deg',
      '  lever b: lever',
    ]);
  });

  it('names what has no name', () => {
    expect(drawn(outline(indexNames('levers:\n  "": {pivot: [0, 0]}\n')))).toEqual(['block levers', '  lever (no name): lever']);
  });
});
