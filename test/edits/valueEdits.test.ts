import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { editsFor } from '../../src/edits/editsFor.ts';

const FILE = `\ufeffformat: 1\r
let:\r
  reach: 38 mm ± 0.1 mm # by the drawing\r
  half: reach / 2\r
levers:\r
  crank: {pivot: [120, '40'], arms: {out: {radius: reach, angle: "62 deg" }}}\r
springs:\r
  first: {lever: crank, rate: 2.4 N*mm/deg}\r
`;

function set(path: string, value: number, text = FILE): string {
  const edited = editsFor({ text, definition: readDefinition(text).definition }, [{ kind: 'value', path, value }]);
  return 'why' in edited ? `refused: ${edited.why}` : applyEdits(text, edited.edits);
}

describe('a figure', () => {
  test('is written in its own unit, with its tolerance, quotes, comment and line end', () => {
    expect(set('let.reach', 39.25)).toBe(FILE.replace('38 mm', '39.25 mm'));
    expect(set('levers.crank.arms.out.angle', -7.5)).toBe(FILE.replace('62 deg', '-7.5 deg'));
    expect(set('levers.crank.pivot.1', 41)).toBe(FILE.replace("'40'", "'41'"));
    expect(set('springs.first.rate', 0.1 + 0.2)).toBe(FILE.replace('2.4 N', '0.3 N'));
  });

  test('is left alone where it is that already', () => {
    expect(set('let.reach', 38)).toBe(FILE);
  });

  test('is refused in words where it is none, follows from others, or is no number', () => {
    expect(set('let.none', 1)).toBe('refused: There is no figure `let.none` in the text any more');
    expect(set('levers.crank.arms.out.radius', 1)).toMatch(/^refused: `levers.crank.arms.out.radius` follows from a formula/);
    expect(set('let.half', 1)).toMatch(/^refused: .*formula/);
    expect(set('let.reach', NaN)).toMatch(/^refused: /);
    expect(set('let.reach', 1, '- nothing')).toMatch(/^refused: /);
  });
});
