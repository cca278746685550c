/** Single failures in words: the verdict says first what every part together leaves. */
import { expect, it } from 'vitest';
import { failuresVerdict, platesWords } from '../../src/outputs/failureWords.ts';
import { solve } from '../../src/solve.ts';
import { RUBS, SHAFT, plates, shaft, textOf, torsion, type Parts } from '../failures/throttles.ts';

function verdictOf(base: Parts, changes: Parts = {}): string {
  const failures = solve(textOf(base, changes)).failures();
  return failures === undefined ? 'nothing solved' : failuresVerdict(failures);
}

/** The pedal turns the shaft itself: nothing joins them that could be lost. */
const DIRECT: Parts = {
  levers: { shaft: `{pivot: [0, 0], arms: {pad: {radius: 100, angle: 90 deg}}, ${RUBS()}}` },
  pedal: '{lever: shaft, opens: clockwise, travel: 80 deg, pad: pad}',
  plates: { bank: plates('shaft') },
};

it('never says that every plate closes where no part is there to lose and nothing closes them', () => {
  expect(verdictOf(DIRECT)).toBe('not checked whether plates close with every part, and there is no part to lose');
  expect(verdictOf(DIRECT, { springs: { only: torsion('shaft') } })).toBe('of 1 part lost in turn, 1 part would leave plates open');
});

it('says first that plates stay open with every part', () => {
  expect(verdictOf(SHAFT, { levers: { shaft: shaft('', RUBS(900)) } })).toMatch(
    /^plates stay open with every part; of 3 parts lost in turn/,
  );
  expect(verdictOf(SHAFT)).toMatch(/^every plate closes with each of 3 parts lost in turn/);
});

it('does not say how long plates that stand still were followed', () => {
  const whole = solve(textOf(SHAFT, { springs: undefined })).failures()?.whole.plates[0];
  expect(whole && platesWords(whole)).toContain('time not known: bank stands still before it is closed');
});

it('speaks of two shafts as of two', () => {
  const other = `{pivot: [200, 0], ${RUBS()}}`;
  const text = textOf(SHAFT, {
    levers: { shaft: shaft(), other },
    couplings: { join: '{from: shaft, to: other, ratio: 1}' },
    plates: { bank: plates('shaft'), more: plates('other') },
    springs: undefined,
  });
  const whys = solve(text)
    .failures()
    ?.statements.map(({ why }) => why);
  expect(whys).toContain('whether shaft and other close: the file describes no springs');
});
