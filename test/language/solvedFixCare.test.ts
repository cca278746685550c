/** What a fix that solves for a figure may not do, may not cost, and does with texts of any kind. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundFigures } from '../../src/definition/quantity/roundFigures.ts';
import { offeredFixes } from '../../src/language/offeredFixes.ts';
import { solveFix, type Solvers } from '../../src/language/solvedFix.ts';
import { solve } from '../../src/solve.ts';
import { solveFor } from '../../src/studies/solveFor.ts';
import { atCursor, solvedAt } from '../support/checkFix.ts';
import { BANK, parallel, wound } from '../support/fixFiles.ts';

const DEGREE = Math.PI / 180;
const example = (name: string): string => readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');
const FOUR = example('four-barrel');
const TWO = example('two-banks');

describe('what an edit may not do', () => {
  it('make an error that is there already worse', () => {
    // Held open by 0.8° with a rod of 99.5 mm; one that opens the shaft fully would hold it open by more.
    const text = parallel(', length: 99.5 mm')
      .replace('stops: {closed: 0 deg}', 'stops: {closed: 0 deg, open: 8$00 deg}')
      .replace('travel: 78 deg', 'travel: 70 deg')
      .replace('idle: 6 deg', 'idle: 3 deg');
    expect(solvedAt(text, 'Solve for the length of link so that shaft opens fully')).toMatchObject({
      kind: 'unsolved',
      reason: expect.stringMatching(
        /^The length of link would have to be 95\.\d+ mm, but then: shaft is held \d\.\d+° open at rest/,
      ) as string,
    });
  });

  it('cost a requirement that is met', () => {
    const text = wound('stops: {closed: 0 deg, open: 82$0 deg}', `${BANK}require:\n  short pull: max(main.pull) <= 34 mm\n`);
    expect(solvedAt(text, "Solve for the pedal's pull so that shaft opens fully")).toEqual({
      kind: 'unsolved',
      reason: "The pedal's pull would have to be 35.327 mm, but then: the requirement `short pull` would no longer be met",
    });
  });

  it('bring a warning unsaid', () => {
    const text = parallel('')
      .replace('stops: {closed: 0 deg}', 'stops: {closed: 0 deg, open: 8$00 deg}')
      .replace('travel: 78 deg', 'travel: 70 deg')
      .replace('idle: 6 deg', 'idle: 3 deg');
    expect(solvedAt(text, 'Solve for the radius of pedal.out so that shaft opens fully')).toMatchObject({
      kind: 'solved',
      title: 'Lengthen the arm pedal.out to 44.06 mm: shaft opens 79.9° (but then transmission-angle)',
    });
  });
});

describe('what is not asked for', () => {
  const text = FOUR.replace('crank_reach: 38 mm', 'crank_reach: 35 mm').replace('open: 82 deg', 'open: 82$0 deg');

  function counting(): { readonly solvers: Solvers; readonly counts: { texts: number; figures: number } } {
    const counts = { texts: 0, figures: 0 };
    return {
      counts,
      solvers: {
        solve: (changed) => {
          counts.texts++;
          return solve(changed);
        },
        solveFor: (mechanism, question) => {
          counts.figures++;
          return solveFor(mechanism, question);
        },
      },
    };
  }

  it('is not computed: offering reads no pose, and one fix solves few texts', () => {
    const { answers, cursor } = atCursor(text);
    const { study } = answers;
    if (study === undefined) throw new Error('it should be solved');
    let poses = 0;
    const watched = {
      ...answers,
      study: {
        ...study,
        figures: new Map(),
        travel: {
          ...study.travel,
          samples: study.travel.samples,
          poseAt: (travel: number) => {
            poses++;
            return study.travel.poseAt(travel);
          },
        },
      },
    };
    const offers = offeredFixes(watched, { start: 0, end: text.length });
    expect(offers.length).toBeGreaterThan(3);
    expect(poses).toBe(0);
    const { solvers, counts } = counting();
    const [offer] = offeredFixes(answers, cursor);
    if (offer === undefined) throw new Error('there should be one');
    expect(solveFix(answers, offer, solvers).kind).toBe('solved');
    expect(counts.figures).toBeLessThanOrEqual(2);
    expect(counts.texts).toBeLessThanOrEqual(6);
  });

  it('is not solved for in a text that no longer has the finding', () => {
    const { answers, cursor } = atCursor(text);
    const [offer] = offeredFixes(answers, cursor);
    if (offer === undefined) throw new Error('there should be one');
    const { solvers, counts } = counting();
    expect(solveFix(solve(FOUR), offer, solvers)).toEqual({
      kind: 'unsolved',
      reason: 'The text has changed, and this is no longer found',
    });
    expect(solveFix(solve('format: 1'), offer, solvers).kind).toBe('unsolved');
    expect(counts).toEqual({ texts: 0, figures: 0 });
    // Moved by a line, it is still the same.
    expect(solveFix(solve(`# new\n${answers.text}`), offer).kind).toBe('solved');
  });
});

describe('workshop figures', () => {
  it('are hundredths of a millimetre or degree, the nearer first, and finer when asked', () => {
    expect(roundFigures(0.0734126, 'length', 'mm', 0)).toEqual([expect.closeTo(0.07341, 12), expect.closeTo(0.07342, 12)]);
    expect(roundFigures(0.0734126, 'length', 'mm', 1)).toEqual([expect.closeTo(0.073413, 12), expect.closeTo(0.073412, 12)]);
    expect(roundFigures(0.0734, 'length', 'mm', 0)).toEqual([expect.closeTo(0.0734, 12)]);
    expect(roundFigures(12.344 * DEGREE, 'angle', 'deg', 0)).toEqual([
      expect.closeTo(12.34 * DEGREE, 12),
      expect.closeTo(12.35 * DEGREE, 12),
    ]);
    expect(roundFigures(0.0254 * 1.23456, 'length', 'inch', 0)).toEqual([
      expect.closeTo(0.0254 * 1.2346, 12),
      expect.closeTo(0.0254 * 1.2345, 12),
    ]);
    expect(roundFigures(NaN, 'length', 'mm', 0)).toEqual([]);
    expect(roundFigures(1, 'length', 'parsec', 0)).toEqual([]);
  });
});

describe('fixes of any text', () => {
  it('never throw when offered, and one edit is all that they make', () => {
    const scrap = fc.constantFrom('', '-', '9', '0', ' mm', '{', ': ', '\u0000', '\ud83d\ude00', ' deg', '1e9', '.');
    let solved = 0;
    fc.assert(
      fc.property(fc.constantFrom(FOUR, TWO, example('binding-broken')), fc.nat(), fc.nat(6), scrap, (sample, where, gone, put) => {
        const at = where % sample.length;
        const text = sample.slice(0, at) + put + sample.slice(at + gone);
        const answers = solve(text);
        for (const offer of offeredFixes(answers, { start: 0, end: text.length }).slice(0, 1)) {
          expect(offer.title).not.toMatch(/undefined|NaN/);
          // Working one out takes long; a few of all shapes do.
          if (++solved > 6) continue;
          const fix = solveFix(answers, offer);
          if (fix.kind === 'unsolved') expect(fix.reason).not.toBe('');
          else {
            const [edit] = fix.edits;
            expect(fix.edits).toHaveLength(1);
            const { start, end } = edit?.span ?? { start: -1, end: -1 };
            expect(start >= 0 && end >= start && end <= text.length).toBe(true);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
