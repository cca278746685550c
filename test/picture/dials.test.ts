/** `let` values as dials: which there are, one step of each, and its ends. */
import { describe, expect, it } from 'vitest';
import type { Dial } from '../../src/protocol/report.ts';
import { shownOf } from './shown.ts';

const dialsOf = (lets: string): readonly Dial[] => shownOf(`format: 1\nlet: {${lets}}\nlevers: {a: {pivot: [0, 0]}}\n`).dials;
const only = (value: string): Dial => dialsOf(`x: ${value}`)[0]!;
const ends = ({ step, least, greatest }: Dial): readonly number[] => [step, least, greatest];

describe('a dial', () => {
  it('is there for each plain value, none for one that follows from others', () => {
    const dials = dialsOf('reach: 38 mm ± 0.1 mm, twice: 2 * reach, ratio: 2.31, turn: 12 deg');
    expect(dials.map(({ path, label, value, unit }) => [path, label, value, unit])).toEqual([
      ['let.reach', 'reach', 38, 'mm'],
      ['let.ratio', 'ratio', 2.31, ''],
      ['let.turn', 'turn', 12, 'deg'],
    ]);
  });

  it('goes a quarter of its value to either side, in steps that one sets at a bench', () => {
    expect(ends(only('38 mm'))).toEqual([0.1, 28.5, 47.5]);
    expect(ends(only('60 deg'))).toEqual([0.1, 45, 75]);
    expect(ends(only('240 N*mm'))).toEqual([1, 180, 300]);
  });

  it('is in the unit as written', () => {
    expect(only('1.5 inch')).toMatchObject({ value: 1.5, unit: 'inch', step: 0.005 });
    expect(only('0.4 N*m')).toMatchObject({ value: 0.4, step: 0.001 });
    expect(only('35 %')).toMatchObject({ value: 35, unit: '%' });
  });

  it('takes finer steps for a small value', () => {
    expect(only('1.5 deg').step).toBe(0.02);
    expect(only('0.2 mm').step).toBe(0.005);
  });

  it('reaches beyond a wide tolerance', () => {
    const { least, greatest } = only('10 mm ± 1 mm');
    expect([least, greatest]).toEqual([5, 15]);
  });

  it('never makes a length negative, but an angle', () => {
    for (const value of ['0 mm', '0.4 mm', '2 mm', '0 N', '0 N*mm']) expect(only(value).least, value).toBeGreaterThanOrEqual(0);
    expect(only('0 deg').least).toBeLessThan(0);
    expect(only('-3 mm').least).toBeLessThan(-3);
  });

  it('has its value a whole number of steps from its ends, between them', () => {
    for (const value of ['38 mm', '38.25 mm', '1.5 inch', '0 mm', '0.03 mm', '-17 deg', '2.4 N*mm/deg', '0.7', '1e4 mm', '35 %', '3 J']) {
      const { value: at, step, least, greatest } = only(value);
      expect(least, value).toBeLessThanOrEqual(at);
      expect(greatest, value).toBeGreaterThan(at);
      for (const end of [least, greatest]) {
        const steps = (end - at) / step;
        expect(Math.abs(steps - Math.round(steps)), value).toBeLessThan(1e-6);
      }
    }
  });

  it('stands at its value in the text', () => {
    const text = 'format: 1\nlet: {x: 38 mm}\nlevers: {a: {pivot: [0, 0]}}\n';
    const { start, end } = shownOf(text).dials[0]!.place;
    expect(text.slice(start, end)).toBe('38 mm');
  });
});
