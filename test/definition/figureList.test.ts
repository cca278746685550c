import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { checkProblems } from '../support/checkProblems.ts';
import { LINKED } from '../support/linkage.ts';
import { cpuTime } from '../support/cpuTime.ts';

const file = (list: string): string => `format: 1\npoints:\n  a: ${list}\n`;

/** The one problem of a place, and what its edits make of it. */
function mended(list: string): string {
  const text = file(list);
  const { problems } = readDefinition(text);
  expect(problems.length, list).toBe(1);
  const [problem] = problems;
  const after = applyEdits(text, problem?.replacements ?? []);
  if (problem?.replacements !== undefined) checkProblems(after);
  return problem?.replacements === undefined ? `no edit: ${problem?.cure ?? ''}` : after.slice(file('').length - 1).trimEnd();
}

describe('a list of figures', () => {
  it('without commas is told once, with the commas in the cure', () => {
    checkProblems(`format: 1
points:
  a: [90 10]
  #  ^^^^^^^ error[wrong-shape]: Write \`[90, 10]\`
`);
    expect(mended('[1 2 3]')).toBe('[1, 2, 3]');
    expect(mended('[90 mm 10 mm]')).toBe('[90 mm, 10 mm]');
    expect(mended('[90 -10]')).toBe('[90, -10]');
    expect(mended('[90;10]')).toBe('[90, 10]');
    expect(mended('["90 10"]')).toContain('no edit');
    expect(mended('[90-10]')).toContain('no edit');
  });

  it('with decimal commas is told as that, where a space tells them from the others', () => {
    checkProblems(`format: 1
points:
  a: [90,5, 10,2]
  #  ^^^^^^^^^^^^ error[bad-quantity]: Write \`[90.5, 10.2]\`
`);
    expect(mended('[90,5 mm, -10,2 mm]')).toBe('[90.5 mm, -10.2 mm]');
    expect(mended('[0,5, 1,5, 2,5]')).toBe('[0.5, 1.5, 2.5]');
    expect(mended('[90,5,10,2]')).toBe('no edit: Write `[90.5, 10.2]` where the commas are decimal ones, else two or three figures');
    expect(mended('[1, 2, 3, 4]')).toBe('no edit: Write `[x, y]` or `[x, y, z]`');
  });

  it('is mended likewise where it is a range', () => {
    const sensor = (range: string): string =>
      `${LINKED}sensors:\n  s: {lever: shaft, at_closed: 14, range: ${range}, signal: [0.5, 4.5]}\n`;
    const cures = (range: string): readonly (string | undefined)[] => readDefinition(sensor(range)).problems.map(({ cure }) => cure);
    expect(cures('[0 deg, 110 deg]')).toEqual([]);
    expect(cures('[0 deg 110 deg]')).toEqual(['Write `[0 deg, 110 deg]`']);
    expect(cures('[0,5 deg, 110 deg]')).toEqual(['Write `[0.5 deg, 110 deg]`']);
  });

  it('names the list where an item is at fault', () => {
    checkProblems(`format: 1
points:
  a: [{x: 1}, 2]
  #   ^^^^^^ error[wrong-shape]: \`a\` must be one figure
`);
  });

  it('without a value before a comma is told at the comma', () => {
    checkProblems(`format: 1
points:
  a: [1,, 2]
  #     ^ error[yaml-syntax]: no value before this comma
  b: [3, 4]
`);
  });

  it('is taken apart in time, however long an item is', () => {
    const began = cpuTime();
    readDefinition(file(`[${'90 mm '.repeat(40_000)}!]`));
    expect(cpuTime() - began).toBeLessThan(2_000);
  });
});
