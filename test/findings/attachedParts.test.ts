/** Plates, sensors and springs in the load path, each behind its lever with the figure that matters. */
import { describe, expect, it } from 'vitest';
import { partFigureText } from '../../src/outputs/factText.ts';
import { solve } from '../../src/solve.ts';
import { applyMend } from '../support/applyMend.ts';
import { FULL, onShaft, STEADY, TWO } from './hungSprings.ts';

const path = (text: string): readonly string[] =>
  solve(text).parts.map(({ kind, name, depth, figures }) => `${depth} ${kind} ${name}: ${figures.map(partFigureText).join('; ')}`);

describe('the load path', () => {
  it('has what sits on a lever behind it and one deeper', () => {
    const text = onShaft([...TWO, 'tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: 30 mm}']).concat(
      'sensors: {tps: {lever: shaft, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}}\n',
    );
    const lines = path(text);
    const shaft = lines.findIndex((line) => line.startsWith('1 lever shaft'));
    const most = Math.round(300 + 2 * FULL);
    const signal = (opening: number): string => `${Number((0.5 + (4 * (14 + opening)) / 110).toFixed(3))} V`;
    expect(lines.slice(shaft + 1)).toEqual([
      expect.stringMatching(/^2 plates bank: open area of one plate \d+ mm² at 100 %$/),
      `2 sensor tps: signal at rest ${signal(0)}; at full pedal ${signal(FULL)}`,
      `2 spring one: least closing torque 300 N·mm at 0 %; greatest ${most} N·mm at 100 %`,
      `2 spring two: least closing torque 300 N·mm at 0 %; greatest ${most} N·mm at 100 %`,
      expect.stringMatching(/^2 spring tail: least closing torque \d+ N·mm at 0 %; greatest \d+ N·mm at [\d.]+ %$/),
    ]);
  });

  it('has springs on the pedal right behind it', () => {
    const text = `format: 1
levers: {pedal: {pivot: [0, 0]}, shaft: {pivot: [100, 0]}}
pedal: {lever: pedal, opens: counterclockwise, travel: 30 deg}
couplings: {on: {from: pedal, to: shaft}}
springs: {foot: {lever: pedal, rate: 1 N*mm/deg, preload: 20 N*mm}}
`;
    expect(path(text).slice(0, 2)).toEqual([
      '0 pedal pedal: travel 30°',
      '1 spring foot: least closing torque 20 N·mm at 0 %; greatest 50 N·mm at 100 %',
    ]);
  });

  it('says what is missing for a figure', () => {
    expect(path(onShaft([STEADY, 'tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm}'])).at(-1)).toBe(
      '2 spring tail: closing torque not checked, for want of `free_length`',
    );
  });
});

describe('springs mended by one figure', () => {
  it('are drawn tight over the whole travel with a shorter free length', () => {
    const text = onShaft([...TWO, 'tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: 55 mm}']);
    const mended = applyMend(text, 'spring-slack');
    expect(mended.left).toEqual([]);
    expect(mended.value).toBeLessThan(0.053);
  });

  it('stay on their seat in compression with a longer one', () => {
    const text = onShaft([...TWO, 'push: {from: [150, -60], to: shaft.tail, kind: compression, rate: 0.4 N/mm, free_length: 65 mm}']);
    const mended = applyMend(text, 'spring-slack');
    expect(mended.left).toEqual([]);
    expect(mended.value).toBeGreaterThan(0.065);
  });

  it('close once they are wound the right way', () => {
    expect(applyMend(onShaft([...TWO, 'three: {lever: shaft, rate: 2 N*mm/deg, preload: -40 N*mm}']), 'spring-opens').left).toEqual([]);
  });
});
