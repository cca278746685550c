/**
 * Builds judged by rules, against each of them written into the file and checked as a whole: a build keeps a rule where that check brings
 * neither an error nor a warning of it. What only follows from another finding counts, too.
 */
import { describe, expect, test } from 'vitest';
import { withFollowing } from '../../../src/findings/consequences.ts';
import type { Finding } from '../../../src/findings/finding.ts';
import { variedFigures, type Toleranced } from '../../../src/kinematics/toleranced.ts';
import { solve } from '../../../src/solve.ts';
import { finished } from '../../../src/studies/finished.ts';
import { drawsOf, randomBuilds } from '../../../src/studies/tolerance/monteCarlo.ts';
import { outcomesOf } from '../../../src/studies/tolerance/outcomes.ts';
import { judgedCodes, ruleYields } from '../../../src/studies/tolerance/rules.ts';
import { tolerances } from '../../../src/studies/tolerance/tolerance.ts';
import { example } from '../../support/editorRequests.ts';
import { plainNumber } from '../../textbook/support/fourBarFile.ts';
import { textbookLinkage, twoShafts } from './cases.ts';

const BUILDS = 16;
const REQUEST = { seed: 11, law: 'uniform' } as const;
const UNITS: Readonly<Record<string, readonly [string, number]>> = {
  length: ['mm', 1e-3],
  angle: ['deg', Math.PI / 180],
  torque: ['N*mm', 1e-3],
  'linear-rate': ['N/mm', 1e3],
  number: ['', 1],
};

/** Wide enough that limits are passed in some builds and not in others. */
const FOUR_BARREL = `${example('four-barrel')}limits: {transmission: [54 deg, 52 deg], drive: [30 deg, 27 deg]}\n`
  .replace('38 mm ± 0.1 mm', '38 mm ± 6 mm')
  .replace('32 mm ± 0.1 mm', '32 mm ± 5 mm')
  .replace('angle: 166 deg', 'angle: 166 deg ± 12 deg')
  .replace('preload: 240 N*mm', 'preload: 150 N*mm ± 140 N*mm')
  .replace('friction: 0.12\n    stiffness', 'friction: 0.12 ± 0.1\n    stiffness')
  .replace('slack: 1 mm', 'slack: 0.6 mm ± 0.5 mm');
const TWO_BANKS = example('two-banks')
  .replace('34 mm ± 0.1 mm', '34 mm ± 4 mm')
  .replace('32 mm ± 0.1 mm', '32 mm ± 3 mm')
  .replace('offset: 14 mm', 'offset: 14 mm ± 12 mm')
  .replace('rate: 2.4 N*mm/deg, preload: 250 N*mm}\n  rear', 'rate: 2.4 N*mm/deg, preload: 120 N*mm ± 110 N*mm}\n  rear');

/** Which way it opens is given: else a file whose lever mostly turns the other way would say that it opens that way. */
const OFF = textbookLinkage('± 30 mm').replace('driven: {pivot', 'driven: {opens: counterclockwise, pivot');

/** The text with every figure that varies as one build has it. */
function written(text: string, varied: readonly Toleranced[], build: number): string {
  const draw = drawsOf(REQUEST.seed, REQUEST.law, varied);
  const figures = varied.map(({ span, dimension, middle }, j) => {
    const [unit, si] = UNITS[dimension]!;
    return { span, figure: `${plainNumber((middle + draw(build, j)) / si)} ${unit}`.trim() };
  });
  return figures
    .sort((a, b) => b.span.start - a.span.start)
    .reduce((whole, { span, figure }) => whole.slice(0, span.start) + figure + whole.slice(span.end), text);
}

function checked(text: string): readonly Finding[] {
  const answers = solve(text);
  expect(answers.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  return withFollowing([...answers.findings, ...answers.failures()!.findings]).filter(({ severity }) => severity !== 'note');
}

describe.each([
  ['of one shaft, with springs and friction', FOUR_BARREL, ['drive-angle', 'transmission-angle', 'closing-margin', 'opening-missed']],
  ['of two shafts in space', TWO_BANKS, ['rod-end-tilt', 'opening-missed', 'closing-margin', 'failure-holds-open']],
  ['that cannot always be assembled', twoShafts('± 0.0005 mm').replace('± 0.1 deg', '± 0.001 deg'), ['not-assembled', 'held-open']],
  ['of which the rod is far off', OFF, ['drive-angle']],
])('builds %s', (_, text, expected) => {
  const { study, problems } = solve(text);
  if (study === undefined || problems.length > 0) throw new Error(JSON.stringify(problems));
  const { mechanism } = study.travel;
  const varied = variedFigures(mechanism);
  const { rules, kept } = finished(ruleYields(study, varied, { ...REQUEST, most: BUILDS }));
  const found = Array.from({ length: BUILDS }, (_, k) => checked(written(text, varied, k)));
  const judged = judgedCodes().map(([code]) => code);

  test('keep a rule where the check of the file with their figures finds nothing of it', () => {
    const tally = (of: (findings: readonly Finding[]) => boolean): number => found.filter(of).length;
    const wanted = judged.map((code) => ({
      code,
      failed: tally((all) => all.some((each) => each.code === code)),
      errors: tally((all) => all.some((each) => each.code === code && each.severity === 'error')),
    }));
    const got = judged.map((code) => rules.find((rule) => rule.code === code)!);
    expect(got.map(({ code, failed, errors }) => ({ code, failed, errors }))).toEqual(wanted);
    expect([...kept]).toEqual(found.map((all) => (all.some(({ code }) => judged.includes(code)) ? 0 : 1)));
    for (const { code, parts } of got) {
      for (const { name, builds } of parts)
        expect(builds).toBe(tally((all) => all.some((each) => each.code === code && each.part === name)));
    }
    const between = got.filter(({ failed }) => failed > 0 && failed < BUILDS).map(({ code }) => code);
    expect(between).toEqual(expect.arrayContaining(expected));
  });

  test('keep the limit of an outcome where that check finds nothing beyond it', () => {
    const outcomes = outcomesOf(study);
    const builds = finished(randomBuilds(mechanism, outcomes, varied, { ...REQUEST, from: 0, to: BUILDS }));
    let compared = 0;
    for (const [i, { name, reading }] of outcomes.entries()) {
      const codes = codesOf(name);
      const part = reading.kind === 'least' || reading.kind === 'greatest' ? reading.column.owner : / of (\w+) at/.exec(name)?.[1];
      if (codes === undefined || part === undefined) continue;
      found.forEach((all, k) => {
        compared++;
        // Nothing that follows is told of where it cannot be assembled: it has no figure there.
        const isBeyond = all.some(({ code, part: where }) => codes.includes(code) && (where === part || code === 'slack-used-up'));
        const value = builds.values[i]![k]!;
        if (!Number.isNaN(value)) expect([name, k, builds.kept[i]![k]]).toEqual([name, k, isBeyond ? 0 : 1]);
        else expect(builds.kept[i]![k]).toBe(0);
      });
    }
    expect(compared).toBeGreaterThan(BUILDS);
  });
});

/** Codes of the rules that judge an outcome; undefined where none does. */
function codesOf(name: string): readonly string[] | undefined {
  if (name.startsWith('least transmission')) return ['transmission-angle'];
  if (name.startsWith('least drive')) return ['drive-angle'];
  if (name.startsWith('greatest tilt')) return ['rod-end-tilt'];
  if (/^opening of \w+ at rest$/.test(name)) return ['held-open', 'slack-used-up'];
  return /^opening of \w+ at full pedal$/.test(name) ? ['opening-missed'] : undefined;
}

test('what the file as drawn does not keep is told so, and everything together is counted on builds gone through whole', () => {
  const text = example('four-barrel').replace(/^ {2}return_rear: .*\n/m, '');
  const { study, findings } = solve(text);
  expect(findings.map(({ code }) => code)).toContain('single-return-spring');
  const found = finished(tolerances(study!, { ...REQUEST, builds: 100 }));
  const single = found.rules.find(({ code }) => code === 'single-return-spring')!;
  expect(single).toMatchObject({ builds: 100, failed: 100, isAsDrawn: true });
  expect(found.rules[0]!.failed).toBe(100);
  expect(found.together).toMatchObject({ builds: 100, kept: { share: 0 } });
  const whole = finished(tolerances(solve(example('four-barrel')).study!, { ...REQUEST, builds: 100 }));
  expect(whole.together).toMatchObject({ builds: 100, kept: { share: 1 } });
});

test('a tolerance that no build varies is told', () => {
  const text = example('four-barrel').replace('groove: 95 deg', 'groove: 95 deg ± 2 deg');
  const { still, unchecked } = finished(tolerances(solve(text).study!, { ...REQUEST, builds: 100 }));
  expect(still).toEqual(['levers.bellcrank.drums.quadrant.groove']);
  expect(unchecked.some(({ message }) => message.includes('tolerances'))).toBe(false);
});
