/** Fixes that wind return springs until any one of them may break: the finding is gone, and every figure is as great as it must be. */
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { offeredFixes } from '../../src/language/offeredFixes.ts';
import { fixWork } from '../../src/language/fixWork.ts';
import { solveFix } from '../../src/language/solvedFix.ts';
import { solve } from '../../src/solve.ts';
import { rubbing } from '../editor/fixCases/linkages.ts';
import { checkSolvedFix, offeredAt, solvedAt } from '../support/checkFix.ts';

const marked = (text: string): string => text.replace('shaft:', 'sh$0aft:');
const EITHER = 'shaft closes with 2 times the friction or more with either spring off';

describe('springs that are left when one is off', () => {
  it('are wound to twice the friction, and the spring that is off is not offered', () => {
    // At rest a preload stands against 90 N·mm of drag: 180 N·mm are twice that.
    const text = marked(rubbing('250 N*mm', '150 N*mm'));
    expect(offeredAt(text)).toEqual(['Solve for the preload of second so that shaft closes against friction with first off']);
    checkSolvedFix(
      text,
      rubbing('250 N*mm', '180 N*mm'),
      'Solve for the preload of second so that shaft closes against friction with first off',
      `Raise the preload of second to 180 N*mm: ${EITHER}`,
    );
    expect(offeredAt(marked(rubbing('150 N*mm', '250 N*mm')))).toEqual([
      'Solve for the preload of first so that shaft closes against friction with second off',
    ]);
  });

  it('are wound both where each alone is too weak, in one fix', () => {
    checkSolvedFix(
      marked(rubbing('170 N*mm', '150 N*mm')),
      rubbing('180 N*mm', '180 N*mm'),
      'Solve for the preload of second so that shaft closes against friction with first off',
      `Raise the preload of second to 180 N*mm and the preload of first to 180 N*mm: ${EITHER}`,
    );
  });

  it('are given a preload where the file has none', () => {
    const text = rubbing('250 N*mm', '0 N*mm').replace(', preload: 0 N*mm', '');
    checkSolvedFix(
      marked(text),
      text.replace('second: {lever: shaft, rate: 2 N*mm/deg', 'second: {lever: shaft, rate: 2 N*mm/deg, preload: 180 N*mm'),
      'Solve for the preload of second so that shaft closes against friction with first off',
      `Raise the preload of second to 180 N*mm: ${EITHER}`,
    );
  });

  it('are wound by their `let` once, where both follow from it', () => {
    const text = rubbing('wind', 'wind', 'let: {wind: 150 N*mm}\n');
    checkSolvedFix(
      marked(text),
      text.replace('wind: 150', 'wind: 180'),
      'Solve for `wind` so that shaft closes against friction with first off',
      `Set \`wind\` to 180 N*mm: ${EITHER}`,
    );
  });

  it('go by the limit of the file', () => {
    const limit = 'limits: {closing_margin: [3, 1]}\n';
    expect(
      solvedAt(
        marked(rubbing('300 N*mm', '250 N*mm') + limit),
        'Solve for the preload of second so that shaft closes against friction with first off',
      ),
    ).toMatchObject({ kind: 'solved', title: expect.stringContaining('to 270 N*mm: shaft closes with 3 times') as string });
  });

  it('are rounded to the side that passes where the bearing rubs by what they load it with', () => {
    const text = rubbing('400 N*mm', '150 N*mm').replace(
      'friction: 90 N*mm',
      'bearing: {diameter: 10 mm, friction: 0.13}\n    friction: 91.7 N*mm',
    );
    const answers = solve(text);
    const [offer] = offeredFixes(answers, answers.findings.find(({ code }) => code === 'closing-margin')!.span);
    const fix = solveFix(answers, offer!);
    if (fix.kind !== 'solved') throw new Error(fix.reason);
    const marginAt = (preload: number): number => {
      const { study, table } = solve(applyEdits(text, [{ ...fix.edits[0]!, text: `${preload} N*mm` }]));
      const { columns } = table(study!.travel.samples, ['first.margin_off']);
      return Math.min(...columns[0]!.values.map((value) => value ?? NaN));
    };
    const written = fix.value * 1e3;
    expect(written).toBe(Math.round(written));
    expect([marginAt(written) >= 2, marginAt(written - 1) < 2]).toEqual([true, true]);
    expect(fix.mends).toBe(true);
  });
});

describe('friction that holds a shaft with all springs on', () => {
  it('is overcome by either spring alone', () => {
    const fix = solvedAt(
      marked(rubbing('40 N*mm', '20 N*mm')),
      'Solve for the preload of second so that shaft closes against friction with first off',
    );
    expect(fix).toMatchObject({
      kind: 'solved',
      mends: true,
      figures: [{ writes: 'springs.second.preload' }, { writes: 'springs.first.preload' }],
    });
    const after = solve(applyEdits(rubbing('40 N*mm', '20 N*mm'), fix.kind === 'solved' ? fix.edits : []));
    expect(after.findings.map(({ code }) => code)).toEqual([]);
  });

  it('comes out alike piece by piece', () => {
    const answers = solve(rubbing('40 N*mm', '20 N*mm'));
    const [offer] = offeredFixes(answers, answers.findings[0]!.span);
    const work = fixWork(answers, offer!);
    let pieces = 1;
    while (work.go(() => true) === undefined && pieces < 1000) pieces++;
    expect(pieces).toBeGreaterThan(20);
    expect(work.result).toEqual(solveFix(answers, offer!));
  });

  it('is beyond any preload where all of it comes of what the springs load', () => {
    // A pin of 30 mm in an arm of 20 mm, and no drag: friction grows as the springs do, and the share of them that it takes stays.
    const text = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 20 mm, angle: 90 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 20 mm, angle: 90 deg}}}
pedal: {lever: pedal, opens: clockwise, travel: 20 deg}
rods:
  link: {from: pedal.out, to: shaft.arm, ends: {kind: ball_stud, pin: 60 mm, friction: 0.5}}
plates: {bank: {lever: shaft, count: 1, bore: 40 mm}}
springs:
  first: {lever: shaft, rate: 1 N*mm/deg, preload: 100 N*mm}
  second: {lever: shaft, rate: 1 N*mm/deg, preload: 100 N*mm}
`;
    const answers = solve(text);
    const codes = ['friction-lock', 'closing-margin'];
    const finding = answers.findings.find(({ code }) => codes.includes(code));
    const offers = offeredFixes(answers, finding!.span).filter(({ code }) => code === finding!.code);
    expect(offers.length).toBeGreaterThan(0);
    for (const offer of offers) {
      const fix = solveFix(answers, offer);
      expect(fix).toMatchObject({
        kind: 'unsolved',
        reason: expect.stringMatching(
          /^No value of the preload of \w+ between .* does it; .* comes nearest: shaft closes with [\d.]+ times the friction/,
        ) as string,
      });
    }
  });
});
