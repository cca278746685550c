/** What presses on bearings and the format has no figures for is told, and what it has figures for is not. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';

const file = (shaft: string, spring: string, more = ''): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
  shaft: {pivot: [100, 0], ${shaft}}
pedal: {lever: pedal, opens: counterclockwise, travel: 40 deg}
${more === '' ? 'rods: {link: {from: pedal.out, to: shaft.arm}}' : more}
springs: {first: {${spring}}}
`;
const BEARING = 'bearing: {diameter: 8 mm, friction: 0.1}';
const TORSION = 'lever: shaft, rate: 2 N*mm/deg, preload: 150 N*mm';
const HUNG = 'from: [150, 60], to: shaft.tail, rate: 0.5 N/mm, free_length: 30 mm';
const arms = (offset = ''): string => `arms: {arm: {radius: 40 mm, angle: 60 deg${offset}}, tail: {radius: 20 mm, angle: 300 deg}}`;

const told = (text: string): readonly string[] =>
  solve(text)
    .notChecked.map(({ part, message }) => `${part} – ${message}`)
    .filter((line) => line.includes('in the bearing of'));

describe('a bearing', () => {
  it('is told of the legs of a torsion spring on its lever', () => {
    expect(told(file(`${arms()}, ${BEARING}`, TORSION))).toEqual([
      'shaft – Not checked: friction in the bearing of shaft by the legs of first, whose length the format does not hold; left out',
    ]);
  });

  it('is told of a coupling and of arms beside it', () => {
    expect(told(file(`${arms()}, ${BEARING}`, HUNG, 'couplings: {gears: {from: pedal, to: shaft, ratio: -1}}'))).toEqual([
      'shaft – Not checked: friction in the bearing of shaft by what the coupling gears drives its shafts apart with, since the format holds only its ratio; left out',
    ]);
    expect(told(file(`${arms(', offset: 5 mm')}, ${BEARING}`, HUNG))).toEqual([
      'shaft – Not checked: friction in the bearing of shaft by arms that stand beside it along the axis and tilt it; left out',
    ]);
  });

  it('is told of nothing that the file describes whole, and neither is a lever without one', () => {
    expect(told(file(`${arms()}, ${BEARING}`, HUNG))).toEqual([]);
    expect(told(file(`${arms(', offset: 5 mm')}, friction: 20 N*mm`, TORSION))).toEqual([]);
  });
});
