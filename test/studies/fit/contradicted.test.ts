/** Tolerances held against the readings: what is built beyond one is not pulled back into it, and what is within keeps it. */
import { describe, expect, test } from 'vitest';
import { dimensionWords, fitVerdict, isSoundFit, toleranceWords } from '../../../src/outputs/fitWords.ts';
import { BENCH, benchText, fitted, TEN } from './bench.ts';
import { otherCar } from './otherCar.ts';

const FIT = ['crank_reach', 'link.length', 'main.slack', 'tps.at_closed'];
/** Of another model of the parts, with the arm 38.45 mm, the rod 111.2 mm and 1.6 mm of slack, with the noises below. */
const ROWS = [
  [0, 0.9644607105023917, 0.057951160464532504],
  [5, 1.0223857102063305, 1.488507812001037],
  [10, 1.1350370012507502, 4.883471358052951],
  [15, 1.2678318728504698, 8.279211071795537],
  [20, 1.3998684488419113, 11.98529490453422],
  [25, 1.5427438307425205, 15.406429757343883],
  [30, 1.6752780075104239, 19.765798912885423],
  [35, 1.8150054917039733, 23.474943700929643],
  [40, 1.9664382023614184, 27.498889151699263],
  [45, 2.1232130427298466, 31.299915534779643],
  [50, 2.2725495640586124, 35.673191405680406],
  [55, 2.4337794793818603, 40.16658677194316],
  [60, 2.601910161893189, 44.61523350696806],
  [65, 2.7668887934157085, 49.16968668714182],
  [70, 2.9285234825093647, 53.86250876173716],
  [75, 3.0984088281521744, 58.3295401575106],
  [80, 3.274596190863532, 63.44135513116845],
  [85, 3.453709344069593, 68.42512739024723],
  [90, 3.6344762047636996, 73.32869680001284],
  [95, 3.826840248998792, 78.32004467992381],
] as const;

describe('an arm bored too far out and a rod too long', () => {
  const found = fitted(otherCar({ reach: '38 mm ± 0.1 mm', length: '110 mm ± 0.3 mm' }, FIT, ROWS));
  const free = fitted(otherCar({}, FIT, ROWS));

  test('are found as without their tolerances, and the truth with them', () => {
    const truth = [38.45e-3, 111.2e-3, 1.6e-3];
    truth.forEach((each, i) => {
      const { value, error } = found.dimensions[i]!;
      expect(Math.abs(value - each)).toBeLessThan(2 * error);
      expect(Math.abs(value - free.dimensions[i]!.value)).toBeLessThan(0.05 * error);
      expect(error / free.dimensions[i]!.error).toBeCloseTo(1, 2);
    });
  });

  test('are told as beyond them, and the fit is not sound', () => {
    expect(found.dimensions.map(({ beyond }) => beyond)).toEqual([true, true, undefined, undefined]);
    expect(dimensionWords(found.dimensions[0]!)).toMatch(
      /crank_reach: 38\.4\d+ mm ± 0\.1\d+ mm; the file has 38 mm ± 0\.1 mm; that is beyond its tolerance, and what the readings alone want/,
    );
    expect(isSoundFit(found)).toBe(false);
    expect(found.turning).toMatchObject({ kind: 'not-checked', why: expect.stringContaining('crank_reach, link.length') as string });
    expect(fitVerdict(found)).toContain('a dimension is beyond its tolerance');
  });
});

test('cars built within their tolerances keep them', () => {
  let contradicted = 0;
  for (let seed = 1; seed <= 25; seed++) {
    const text = benchText({
      columns: ['pedal.travel', 'shaft.opening'],
      at: TEN,
      car: { 'rods.link.length': 0.1105 + 0.0002 * ((seed % 3) - 1) },
      fit: ['link.length', 'crank.out.radius', 'main.slack'],
      noise: ['0.1 deg'],
      seed,
    });
    contradicted += fitted(text).dimensions.filter(({ isContradicted }) => isContradicted).length;
  }
  // Three in a thousand of fifty are meant.
  expect(contradicted).toBeLessThan(2);
});

test('a tolerance that is not the same to both sides is told as the file has it', () => {
  const linkage = BENCH.replace('arms: {out: {radius: 38 mm ± 0.3 mm', 'arms: {out: {radius: 38 mm +0.6/-0.1 mm');
  const found = fitted(
    benchText({
      columns: ['pedal.travel', 'shaft.opening'],
      at: TEN,
      fit: ['crank.out.radius', 'link.length'],
      noise: ['0.1 deg'],
      linkage,
    }),
  );
  expect(found.dimensions.map(toleranceWords)).toEqual([' +0.6/−0.1 mm', ' ± 0.6 mm']);
});
