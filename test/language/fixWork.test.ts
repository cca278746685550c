/** A fix that is worked out piece by piece comes to what it comes to at once, by the same steps. */
import { expect, test } from 'vitest';
import { fixWork } from '../../src/language/fixWork.ts';
import { offeredFixes, type OfferedFix } from '../../src/language/offeredFixes.ts';
import { solveFix, type Solvers } from '../../src/language/solvedFix.ts';
import { solve } from '../../src/solve.ts';
import { solveFor, type Pieces } from '../../src/studies/solveFor.ts';
import { parallel } from '../support/fixFiles.ts';

// Drawn 15° too far, the rod comes to 30° of transmission angle: the driven arm and the driving one are searched.
const TEXT = parallel('').replace('travel: 78 deg', 'travel: 90 deg');
const answers = solve(TEXT);
const offers = offeredFixes(answers, { start: 0, end: TEXT.length });

/** The real ones, with what they are asked. */
function watched(): { readonly solvers: Solvers; readonly outcomes: number[]; readonly texts: string[] } {
  const outcomes: number[] = [];
  const texts: string[] = [];
  return {
    outcomes,
    texts,
    solvers: {
      solve(text) {
        texts.push(text);
        return solve(text);
      },
      solveFor(mechanism, question, pieces) {
        const known = new Map(pieces?.known);
        const found = solveFor(mechanism, question, pieces ?? { known, shouldStop: () => false });
        for (const value of (pieces?.known ?? known).keys()) if (!outcomes.includes(value)) outcomes.push(value);
        return found;
      },
    },
  };
}

const first = (): OfferedFix => {
  const [offer] = offers;
  if (offer === undefined) throw new Error('there should be a fix');
  return offer;
};

test('in single steps comes out what comes out at once, and no step is taken twice', () => {
  expect(offers.length).toBeGreaterThan(0);
  for (const offer of offers) {
    const { solvers, outcomes, texts } = watched();
    const work = fixWork(answers, offer, solvers);
    let pieces = 0;
    let taken = 0;
    while (work.go(() => true) === undefined) {
      pieces++;
      expect(outcomes.length + texts.length).toBe(++taken);
      expect(work.result).toBeUndefined();
    }
    expect(work.result).toEqual(solveFix(answers, offer));
    expect(pieces).toBeGreaterThan(20);
    expect(new Set(texts).size).toBe(texts.length);
  }
});

test('it is done in one piece where it is never stopped, and then answered from memory', () => {
  const { solvers, outcomes, texts } = watched();
  const work = fixWork(answers, first(), solvers);
  const result = work.go(() => false);
  expect(result).toMatchObject({ kind: 'solved' });
  const taken = outcomes.length + texts.length;
  expect(work.go(() => true)).toBe(result);
  expect(outcomes.length + texts.length).toBe(taken);
});

test('a piece goes on until it is told to stop', () => {
  const { solvers, outcomes } = watched();
  let left = 10;
  expect(fixWork(answers, first(), solvers).go(() => --left < 1)).toBeUndefined();
  expect(outcomes).toHaveLength(10);
});

test('what goes wrong in a step is not hidden', () => {
  const broken = (): never => {
    throw new Error('broken');
  };
  expect(() => fixWork(answers, first(), { solve: broken, solveFor: broken }).go(() => false)).toThrow('broken');
});

test('a search that is stopped says so and keeps what it found', () => {
  const { mechanism } = answers.study?.travel ?? {};
  if (mechanism === undefined) throw new Error('it should be solved');
  const question = {
    unknown: 'levers.shaft.arms.arm.angle',
    outcome: { kind: 'least', column: 'link.transmission' },
    target: 0.7,
    from: 0.2,
    to: 1.5,
  } as const;
  const pieces: Pieces = { known: new Map(), shouldStop: () => pieces.known.size >= 5 };
  expect(solveFor(mechanism, question, pieces)).toEqual({ kind: 'stopped' });
  expect(pieces.known.size).toBe(5);
  const whole = solveFor(mechanism, question, { known: pieces.known, shouldStop: () => false });
  expect(whole).toEqual(solveFor(mechanism, question));
  expect(whole.kind === 'solved' && whole.roots.length).toBeGreaterThan(0);
});
