/** The bounds between which one figure is looked for, as a person writes them in one line. */
import { describe, expect, test } from 'vitest';
import { readBounds, usualBounds } from '../src/figureBounds.ts';
import { solve } from '../src/solve.ts';
import { finished } from '../src/studies/finished.ts';
import { solveFigure } from '../src/solveFigure.ts';
import { example } from './support/editorRequests.ts';

const FILE = example('four-barrel');
const { study } = solve(FILE);
const ROD = 'rods.link.length';

describe('the usual bounds', () => {
  test('stand in one line, which is read as the same', () => {
    // Half of 38 mm up and down, but 20 mm at least.
    expect(usualBounds(study!, 'crank_reach')).toBe('18 mm to 58 mm');
    expect(readBounds(study!, 'crank_reach', '18 mm to 58 mm')).toEqual({ from: '18 mm', to: '58 mm' });
    // By its adjuster.
    expect(usualBounds(study!, ROD)).toBe('104 mm to 116 mm');
  });

  test('are those of `tune` where it leaves the figure free', () => {
    const tuned = `${FILE}tune: {free: {crank_reach: {from: 34 mm, to: 44 mm}}, curve: {of: shaft.opening, through: [[0 %, 0 deg], [100 %, 82 deg]]}}\n`;
    expect(usualBounds(solve(tuned).study!, 'crank_reach')).toBe('34 mm to 44 mm');
  });

  test('are asked for by an empty line, and are not there for what is no figure', () => {
    expect(readBounds(study!, 'crank_reach', '  ')).toEqual({});
    expect(usualBounds(study!, 'crank')).toBeUndefined();
    expect(readBounds(study!, 'crank', '1 mm to 2 mm')).toMatchObject({ kind: 'refused' });
  });
});

describe('a line', () => {
  test.each([
    '30 mm to 45 mm',
    '30 mm  TO 45 mm',
    '30mm..45mm',
    '30 mm … 45 mm',
    '30 mm – 45 mm',
    '30 mm - 45 mm',
    '30 mm, 45 mm',
    '30 mm; 45 mm',
    '30 to 45 mm',
    '30..45mm',
    '  30 to 45  ',
    '3 cm to 4.5 cm',
    '3 to 4.5 cm',
  ])('such as `%s` is looked for between 30 and 45 mm', (line) => {
    const bounds = readBounds(study!, 'crank_reach', line);
    if ('kind' in bounds) throw new Error(bounds.why);
    const outcome = finished(
      solveFigure(FILE, { change: 'crank_reach', demand: 'at(50%, shaft.opening) == 37 deg', places: 9, ...bounds }),
    );
    if (outcome.kind === 'refused') throw new Error(outcome.why);
    expect(outcome.bounds.from).toBeCloseTo(0.03, 12);
    expect(outcome.bounds.to).toBeCloseTo(0.045, 12);
    expect(outcome.bounds.by).toBe('asked');
  });

  test.each([
    ['45 mm to 30 mm', /^The bounds are reversed: from 45 mm to 30 mm$/, /lesser one first/],
    ['30 mm to 30 mm', /^There is no room to change `crank_reach`/],
    ['30 mm', /^Two figures are wanted, the lesser one first, such as `18 mm to 58 mm`$/],
    ['30 mm to', /^Two figures are wanted/],
    ['1 mm to 2 mm to 3 mm', /^Two figures are wanted/],
    ['about thirty', /^Two figures are wanted/],
    ['30 mm to wide', /`to` is a plain figure/],
    ['30 mm ± 1 mm to 45 mm', /`from` is a plain figure/],
    ['30 deg to 45 deg', /deg/],
    ['30 to 45 deg', /deg/],
    ['1,5 to 2,5', /1,5/],
    ['nan to nan', /plain figure/],
    ['-1e999 mm to 1e999 mm', /./],
  ] as const)('such as `%s` is refused in words', (line, why, cure?: RegExp) => {
    const bounds = readBounds(study!, 'crank_reach', line);
    expect(bounds).toMatchObject({ kind: 'refused', why: expect.stringMatching(why) as string });
    if (cure !== undefined && 'kind' in bounds) expect(bounds.cure).toMatch(cure);
  });
});
