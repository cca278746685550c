/** Outlines and keep-outs that bound no area, told at their place; nothing else goes wrong with them. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';

const bar = (corners: string): string => `format: 1
levers: {crank: {pivot: [0, 0], width: 8 mm, arms: {out: {radius: 40 mm, angle: 0 deg}}}}
pedal: {lever: crank, opens: counterclockwise, travel: 60 deg}
keep_out: {bar: {polygon: ${corners}}}
`;
const plate = (corners: string): string => `format: 1
levers: {crank: {pivot: [0, 0], outline: ${corners}, arms: {out: {radius: 40 mm, angle: 0 deg}}}}
pedal: {lever: crank, opens: counterclockwise, travel: 60 deg}
keep_out: {post: {circle: [0, 90], radius: 5 mm}}
`;

/** Each problem as what it stands under and says. */
const told = (text: string): readonly string[] =>
  solve(text).problems.map(({ code, span, message }) => `${code} ${text.slice(span.start, span.end)}: ${message}`);

describe('corners', () => {
  it.each([
    ['two', '[[0, 50], [10, 50]]', 'wrong-shape [[0, 50], [10, 50]]: '],
    ['on one line', '[[0, 50], [10, 50], [20, 50]]', 'out-of-range [[0, 50], [10, 50], [20, 50]]: The corners of '],
    ['all the same', '[[0, 50], [0, 50], [0, 50]]', 'out-of-range [[0, 50], [0, 50], [0, 50]]: The corners of '],
    ['of a bow tie', '[[0, 50], [9, 60], [9, 50], [0, 58]]', 'out-of-range [9, 50]: The sides of '],
  ])('that are %s are told at their place', (_name, corners, beginning) => {
    for (const text of [bar(corners), plate(corners)]) {
      const all = told(text);
      expect(all).toHaveLength(1);
      expect(all[0]?.startsWith(beginning), all[0]).toBe(true);
    }
  });

  it('that cross say which sides do, and where the other begins', () => {
    const text = bar('[[0, 50], [9, 60], [9, 50], [0, 58]]');
    const [problem] = solve(text).problems;
    expect(problem?.message).toBe('The sides of `polygon` that begin at its corners 1 and 3 cross or touch');
    const [other] = problem?.related ?? [];
    expect(other && text.slice(other.span.start, other.span.end)).toBe('[0, 50]');
  });

  it('of which one is given twice, or the first again at the end, are let pass', () => {
    expect(told(bar('[[-20, 50], [20, 50], [20, 50], [20, 60], [-20, 60]]'))).toEqual([]);
    expect(told(bar('[[-20, 50], [20, 50], [20, 60], [-20, 60], [-20, 50]]'))).toEqual([]);
  });

  it('in another plane than the front view’s bound an area too', () => {
    expect(told(plate('[[0, 0, 0], [40, 0, 0], [40, 0, 20]]'))).toEqual([]);
    expect(told(plate('[[0, 0, 0], [0, 40, 0], [0, 40, 20]]'))).toEqual([]);
  });

  it('in another plane are not checked, and stop nothing', () => {
    const { problems, notChecked, findings } = solve(plate('[[0, 0, 0], [40, 0, 0], [40, 0, 20]]'));
    expect([problems, findings.filter(({ severity }) => severity === 'error')]).toEqual([[], []]);
    expect(notChecked.map(({ message }) => message)).toContain(
      'Not checked: whether it clears the keep-outs with its outline, which bounds no area seen along z',
    );
  });

  it('of which there are very many are not checked', () => {
    const round = Array.from({ length: 500 }, (_, i) => `[${90 * Math.cos(i / 80)}, ${90 * Math.sin(i / 80)}]`).join(', ');
    const { notChecked } = solve(bar(`[${round}]`));
    expect(notChecked.filter(({ part }) => part === 'bar').map(({ message }) => message)).toEqual([
      expect.stringMatching(/^Not checked: .*, which has 500 corners: more than 400 are not looked at$/) as string,
    ]);
  });
});
