/** Columns of plates: where they stand, their units, and areas by hand along the pedal. */
import { describe, expect, it } from 'vitest';
import { solve, type Answers } from '../../src/solve.ts';

const DEGREE = Math.PI / 180;

const file = (plates: string, extra = ''): string => `format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0]${extra}}
  other: {pivot: [200, 0]}
  loose: {pivot: [300, 0]}
pedal: {lever: pedal, opens: counterclockwise, travel: 40}
couplings: {gear: {from: pedal, to: shaft, ratio: -2}, on: {from: shaft, to: other, ratio: 1}}
plates: {${plates}}
`;

function values(answers: Answers, name: string, stations: readonly number[]): readonly (number | null)[] {
  const [column] = answers.table(stations, [name]).columns;
  if (column === undefined) throw new Error(`There is no column ${name}`);
  return column.values;
}

describe('columns of plates', () => {
  it('stand behind the lever on which they sit, those of several sets in the order of the file', () => {
    const { columns } = solve(file('far: {lever: other, bore: 40}, near: {lever: shaft, bore: 40}, beside: {lever: shaft, bore: 30}'));
    const names = columns.map(({ name }) => name);
    expect(names.slice(names.indexOf('shaft.ratio') + 1, names.indexOf('other.rotation'))).toEqual([
      'near.area',
      'near.fraction',
      'beside.area',
      'beside.fraction',
    ]);
    expect(names.slice(names.indexOf('other.ratio') + 1)).toEqual(['far.area', 'far.fraction']);
    const units = Object.fromEntries(columns.map(({ name, unit, dimension }) => [name, [unit, dimension]]));
    expect(units['near.area']).toEqual(['mm²', 'area']);
    expect(units['near.fraction']).toEqual(['%', 'number']);
  });

  it('are the area of one plate at seat + idle + opening, whatever their count, and its share of the greatest', () => {
    // Without a shaft: 4A/(πD²) = 1 − cos ψ / cos ψ₀.
    const answers = solve(file('bank: {lever: shaft, bore: 40, count: 4, seat: 8 deg, idle: 2 deg}'));
    const stations = [0, 0.2, 0.55, 1];
    const share = stations.map((at) => 1 - Math.cos((10 + 80 * at) * DEGREE) / Math.cos(8 * DEGREE));
    values(answers, 'bank.area', stations).forEach((area, i) => expect(area).toBeCloseTo(Math.PI * 400 * share[i]!, 9));
    values(answers, 'bank.fraction', stations).forEach((fraction, i) => expect(fraction).toBeCloseTo(100 * share[i]!, 10));
  });

  it('fall again past 90°', () => {
    const answers = solve(file('bank: {lever: shaft, bore: 40, shaft: 8, seat: 6 deg, idle: 30 deg}'));
    // ψ = 36° + 80° t: 70° and 110° lie alike to 90°.
    const [before, square, after] = values(answers, 'bank.area', [34 / 80, 54 / 80, 74 / 80]);
    expect(after).toBeCloseTo(before!, 9);
    expect(square).toBeGreaterThan(before!);
    expect(values(answers, 'bank.fraction', [54 / 80])).toEqual([100]);
  });

  it('have no value where the pedal is stopped', () => {
    const answers = solve(file('bank: {lever: shaft, bore: 40, idle: 2 deg}', ', stops: {open: 60 deg}'));
    // With no cable before the stop the pedal stops there.
    expect(values(answers, 'bank.area', [0.75, 0.76])).toEqual([expect.closeTo(Math.PI * 400 * (1 - Math.cos(62 * DEGREE)), 8), null]);
  });

  it('are not there for plates on a lever that the pedal does not move', () => {
    const { columns } = solve(file('bank: {lever: loose, bore: 40}'));
    expect(columns.filter(({ owner }) => owner === 'bank' || owner === 'loose')).toEqual([]);
  });

  it('follow figures that are formulas', () => {
    const text = file('bank: {lever: shaft, bore: 2 * half, seat: 8 deg, idle: 2 deg}').replace('levers:', 'let: {half: 20 mm}\nlevers:');
    const plain = solve(file('bank: {lever: shaft, bore: 40, seat: 8 deg, idle: 2 deg}'));
    expect(values(solve(text), 'bank.area', [0.5])[0]).toBeCloseTo(values(plain, 'bank.area', [0.5])[0]!, 10);
  });
});
