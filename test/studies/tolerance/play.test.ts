/** Play of rod ends and slots in the studies of tolerances. */
import { describe, expect, test } from 'vitest';
import { solve } from '../../../src/solve.ts';
import { finished } from '../../../src/studies/finished.ts';
import { settings } from '../../../src/studies/tolerance/advice.ts';
import { distributionsOf } from '../../../src/studies/tolerance/distribution.ts';
import { randomBuilds, type Law } from '../../../src/studies/tolerance/monteCarlo.ts';
import { effectsOn } from '../../../src/studies/tolerance/sensitivity.ts';
import { corners, stackOf } from '../../../src/studies/tolerance/stack.ts';
import { variedFigures } from '../../../src/kinematics/toleranced.ts';
import { DEG } from '../../textbook/support/check.ts';
import { toleranceCase } from '../../textbook/values/tolerance.ts';
import { caseOf, textbookLinkage } from './cases.ts';

const OPENING = 'opening of driven at full pedal';
const PLAY = 0.1;
const ends = (text: string): string => text.replace(', adjust:', `, ends: {kind: rod_end, play: ${PLAY} mm}, adjust:`);

describe('play of both ends of a rod', () => {
  const own = caseOf(ends(textbookLinkage('')));
  const varied = variedFigures(own.mechanism);
  const at = own.outcome(OPENING);
  const { effects, middle } = finished(effectsOn(own.mechanism, own.outcomes, varied))[at]!;
  /** Of either end, rad: clearance acts like an error of the link's length (Garrett and Hall, from memory), half of it either way. */
  const each = (Math.abs(toleranceCase.perUnit.b) * PLAY) / 2;

  test('does each what half of it does to the length of the rod', () => {
    expect(varied.map(({ play }) => play?.pin)).toEqual(['foot.pin', 'driven.pin']);
    for (const { swing } of effects) expect(Math.abs(swing) / each).toBeCloseTo(1, 4);
    const stack = stackOf(effects);
    expect(stack.highest / (2 * each)).toBeCloseTo(1, 4);
    expect(stack.lowest / (2 * each)).toBeCloseTo(-1, 4);
    expect(stack.rootSumSquare / (Math.SQRT2 * each)).toBeCloseTo(1, 4);
  });

  test('has the corners of a rod that much longer and shorter', () => {
    const range = finished(corners(own.mechanism, own.outcomes, varied))![at]!;
    const openingAt = (length: number): number => {
      const file = textbookLinkage('').replace('length: 120 mm', `length: ${length} mm`);
      return solve(file).table([1], ['driven.opening']).columns[0]!.values[0]! * DEG;
    };
    const [one, other] = [openingAt(120 - PLAY), openingAt(120 + PLAY)];
    expect(range.least).toBeCloseTo(Math.min(one, other), 11);
    expect(range.most).toBeCloseTo(Math.max(one, other), 11);
  });

  test('with a tolerance counts with as much as that lets it be', () => {
    const toleranced = caseOf(ends(textbookLinkage('')).replace(`play: ${PLAY} mm`, `play: ${PLAY} mm ± 0.04 mm`));
    const plays = variedFigures(toleranced.mechanism);
    const own = finished(effectsOn(toleranced.mechanism, toleranced.outcomes, plays))[at]!.effects;
    expect(own).toHaveLength(2);
    for (const { swing } of own) expect(Math.abs(swing) / ((Math.abs(toleranceCase.perUnit.b) * (PLAY + 0.04)) / 2)).toBeCloseTo(1, 4);
    const greatest = caseOf(ends(textbookLinkage('')).replace(`play: ${PLAY} mm`, `play: ${PLAY + 0.04} mm`));
    const [one, other] = [toleranced, greatest].map(
      (each) => finished(corners(each.mechanism, each.outcomes, variedFigures(each.mechanism)))![at]!,
    );
    expect(one!.least).toBeCloseTo(other!.least, 11);
    expect(one!.most).toBeCloseTo(other!.most, 11);
  });

  test.each(['normal', 'uniform'] as const)('is taken up evenly, whatever the law: %s', (law: Law) => {
    const builds = finished(randomBuilds(own.mechanism, own.outcomes, varied, { seed: 4, law, from: 0, to: 10_000 }));
    const { deviation, mean } = finished(distributionsOf(own.outcomes, [builds])).outcomes[at]!;
    // An even law of half width h has the standard deviation h/√3; two of them add up as squares.
    expect(Math.abs(deviation / ((Math.SQRT2 * each) / Math.sqrt(3)) - 1)).toBeLessThan(0.03);
    expect(Math.abs(mean - middle)).toBeLessThan(deviation / 20);
  });

  test('is not won back by setting the rod', () => {
    const both = caseOf(ends(textbookLinkage('± 0.05 mm')));
    const all = variedFigures(both.mechanism);
    const of = finished(effectsOn(both.mechanism, both.outcomes, all));
    const full = both.outcome(OPENING);
    const setting = finished(settings(both.mechanism, of, all)).find(({ by, rod }) => by.name === OPENING && rod === 'coupler')!;
    expect(setting.spreads[full]!.after / (Math.SQRT2 * each)).toBeCloseTo(1, 4);
    expect(setting.spreads[full]!.before).toBeGreaterThan(setting.spreads[full]!.after);
  });

  test('moves nothing but the draws that are its own', () => {
    const [without, withPlay] = ['', PLAY].map((play) =>
      caseOf(play === '' ? textbookLinkage('± 0.05 mm') : ends(textbookLinkage('± 0.05 mm'))),
    );
    const all = variedFigures(withPlay!.mechanism);
    const still = all.map((figure) => (figure.play === undefined ? figure : { ...figure, half: 0 }));
    const request = { seed: 2, law: 'normal', from: 0, to: 50 } as const;
    const one = finished(randomBuilds(without!.mechanism, without!.outcomes, without!.toleranced, request));
    const other = finished(randomBuilds(withPlay!.mechanism, withPlay!.outcomes, still, request));
    one.values[at]!.forEach((value, k) => expect(other.values[at]![k]).toBeCloseTo(value, 12));
  });
});

describe('play of a pin in its slot', () => {
  const file = (play: string): string => `format: 1
levers:
  crank: {pivot: [0, 0], arms: {pin: {radius: 40 mm, angle: 80 deg}}}
  fork: {pivot: [0, -30], stops: {closed: -20 deg}}
pedal: {lever: crank, opens: clockwise, travel: 40 deg}
slots: {link: {pin: crank.pin, fork: fork, angle: ${(Math.atan2(40 * Math.sin(80 * DEG) + 30, 40 * Math.cos(80 * DEG)) / DEG).toPrecision(17)} deg, reach: [20 mm, 90 mm]${play}}}
plates: {bank: {lever: fork, bore: 40 mm, shaft: 8 mm, seat: 5 deg}}
`;

  test('turns the fork by half of it over the reach, either way', () => {
    const own = caseOf(file(`, play: ${PLAY} mm`));
    const varied = variedFigures(own.mechanism);
    expect(varied.map(({ play }) => play?.pin)).toEqual(['crank.pin']);
    const at = own.outcome('opening of fork at full pedal');
    const { effects } = finished(effectsOn(own.mechanism, own.outcomes, varied))[at]!;
    const [reach] = solve(file('')).table([1], ['link.reach']).columns[0]!.values as number[];
    // n·D = offset turns by δ/reach, the derivation in `kinematics/joints/slot.ts`.
    expect(Math.abs(effects[0]!.swing) / (PLAY / 2 / reach!)).toBeCloseTo(1, 4);
  });

  test('stands in the middle of it with everything in its middle', () => {
    const own = caseOf(file(`, play: ${PLAY} mm`));
    const { middle } = finished(effectsOn(own.mechanism, own.outcomes, variedFigures(own.mechanism)))[
      own.outcome('opening of fork at full pedal')
    ]!;
    const [opening] = solve(file('')).table([1], ['fork.opening']).columns[0]!.values as number[];
    expect(middle / DEG).toBeCloseTo(opening!, 9);
  });
});
