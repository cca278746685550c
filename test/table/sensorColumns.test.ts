/** Columns of a sensor: where they stand, their units, and percent of the signal's own span. */
import { describe, expect, it } from 'vitest';
import { solve, type Answers } from '../../src/solve.ts';

const file = (sensor: string, stops = '', travel = 40): string => `format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0]${stops}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
couplings: {gear: {from: pedal, to: shaft, ratio: -2}}
plates: {bank: {lever: shaft, bore: 40}}
sensors: {tps: {lever: shaft, ${sensor}}, foot: {lever: pedal, at_closed: 5, range: [0, 50], signal: [1, 4]}}
`;
const plain = 'at_closed: 12 deg, range: [0 deg, 100 deg], signal: [0.5 V, 4.5 V]';

function at(answers: Answers, station: number): (key: string) => number | null {
  return (key) => {
    const [column] = answers.table([station], [key]).columns;
    if (column === undefined) throw new Error(`There is no column ${key}`);
    return column.values[0] ?? null;
  };
}

describe('columns of a sensor', () => {
  it('stand behind the lever on which it sits, after its plates; on the pedal too', () => {
    const { columns } = solve(file(plain));
    const names = columns.map(({ name }) => name);
    expect(names).toEqual([
      'pedal.travel',
      ...['rotation', 'opening', 'ratio'].map((key) => `pedal.${key}`),
      ...['angle', 'signal', 'percent'].map((key) => `foot.${key}`),
      ...['rotation', 'opening', 'ratio'].map((key) => `shaft.${key}`),
      ...['area', 'fraction'].map((key) => `bank.${key}`),
      ...['angle', 'signal', 'percent'].map((key) => `tps.${key}`),
    ]);
    const units = Object.fromEntries(columns.map(({ name, unit, dimension }) => [name, [unit, dimension]]));
    expect([units['tps.angle'], units['tps.signal'], units['tps.percent']]).toEqual([
      ['deg', 'angle'],
      ['V', 'voltage'],
      ['%', 'number'],
    ]);
  });

  it('are angle, volts and percent of its own span from rest to full pedal', () => {
    const answers = solve(file(plain));
    for (const [station, percent] of [
      [0, 0],
      [0.25, 25],
      [0.5, 50],
      [1, 100],
    ] as const) {
      const of = at(answers, station);
      expect(of('tps.angle')).toBeCloseTo(12 + 80 * station, 10);
      expect(of('tps.signal')).toBeCloseTo(0.5 + (4 * (12 + 80 * station)) / 100, 12);
      expect(of('tps.percent')).toBeCloseTo(percent, 10);
      expect(of('foot.signal')).toBeCloseTo(1 + (3 * (5 + 40 * station)) / 50, 12);
    }
  });

  it('rise in percent where the signal falls, and stand still where it is held', () => {
    const falling = solve(file('at_closed: 12 deg, range: [12 deg, 52 deg], signal: [4.5 V, 0.5 V]'));
    expect([0, 0.25, 0.5, 0.75, 1].map((station) => at(falling, station)('tps.percent'))).toEqual(
      [0, 50, 100, 100, 100].map((percent) => expect.closeTo(percent, 9) as unknown),
    );
  });

  it('have full pedal where an open stop stops the pedal', () => {
    const answers = solve(file(plain, ', stops: {open: 60 deg}'));
    expect(at(answers, 0.75)('tps.percent')).toBeCloseTo(100, 9);
    expect(at(answers, 0.3)('tps.percent')).toBeCloseTo(40, 9);
    expect([at(answers, 0.8)('tps.percent'), at(answers, 0.8)('tps.signal')]).toEqual([null, null]);
  });

  it('have no percent where the signal has no span', () => {
    const held = solve(file('at_closed: 12 deg, range: [95 deg, 100 deg], signal: [0.5 V, 4.5 V]'));
    expect([at(held, 0.5)('tps.signal'), at(held, 0.5)('tps.percent')]).toEqual([0.5, null]);
  });

  it('have no percent where the linkage does not come to full pedal', () => {
    const answers = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 20, angle: 60}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 120}
rods: {link: {from: pedal.out, to: shaft.arm}}
sensors: {tps: {lever: shaft, at_closed: 12 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}}
`);
    expect(at(answers, 1)('tps.signal')).toBeNull();
    expect(at(answers, 0.1)('tps.signal')).not.toBeNull();
    expect(at(answers, 0.1)('tps.percent')).toBeNull();
  });

  it('do not disturb each other or other columns when read in one table', () => {
    const answers = solve(file(plain));
    const together = answers.table([0.3]).columns;
    for (const { name, values } of together) expect(at(answers, 0.3)(name)).toBe(values[0]);
    expect(together.length).toBe(15);
  });
});
