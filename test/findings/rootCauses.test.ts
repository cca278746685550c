/** The true reason, once: what follows from a mistake of the text, or from a rod of the wrong length, is not told as if it stood alone. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solve, type Answers } from '../../src/solve.ts';
import { applyMend } from '../support/applyMend.ts';

const FOUR = readFileSync(new URL('../../examples/four-barrel.throttle.yaml', import.meta.url), 'utf8');
const BINDING = readFileSync(new URL('../../examples/binding-broken.throttle.yaml', import.meta.url), 'utf8');

/** What the example has by itself. */
const ITS_OWN = ['opening-early shaft'];

/** A text with one thing in it written otherwise. */
const edited = (text: string, was: string, is: string): string => {
  expect(text.split(was)).toHaveLength(2);
  return text.replace(was, is);
};
const errors = ({ problems, findings }: Answers): readonly string[] =>
  [...problems, ...findings].filter(({ severity }) => severity !== 'note').map(({ code }) => code);
const unchecked = ({ notChecked }: Answers): string => notChecked.map(({ message }) => message).join('\n');

describe('a part that is in the file and is not understood', () => {
  it('is not said to be missing: a pedal by the cable that it pulls', () => {
    const answers = solve(edited(BINDING, 'to: bellcrank.quadrant', 'to: bellcrank.'));
    expect(errors(answers)).toEqual(['wrong-value']);
    expect(unchecked(answers)).not.toContain('describes no pedal');
    expect(unchecked(solve('format: 1\nlevers: {shaft: {pivot: [0, 0]}}\n'))).toContain('describes no pedal');
  });

  it('is not said to be missing: plates', () => {
    expect(unchecked(solve(edited(FOUR, 'bore: 42 mm', 'bore: 42 mmm')))).not.toContain('describes no plates');
  });

  it.each([
    ['its cable', 'to: bellcrank.quadrant', 'to: bellcrank.', 'wrong-value'],
    ['the arm of its rod', 'arm: {radius: shaft_reach', 'arm: {radius: 0 mm', 'out-of-range'],
    ['a lever on the way to it', 'pivot: crank_pivot', 'pivot: crank_pivt', 'unknown-name'],
  ])('alone is told, and not besides that nothing drives the shaft: %s', (_, was, is, code) => {
    const answers = solve(edited(FOUR, was, is));
    expect(errors(answers)).toEqual([code]);
    expect(unchecked(answers)).toContain('since nothing that is understood moves shaft');
    expect(unchecked(answers)).not.toContain('since the pedal does not move shaft');
  });

  it('leaves a shaft that nothing drives told as such', () => {
    const alone = FOUR.replace(/^rods:\n(?: .*\n)*/m, '');
    const answers = solve(alone);
    expect(errors(answers)).toEqual(['not-driven']);
    expect(answers.problems[0]).toMatchObject({ severity: 'error', message: expect.stringContaining('never open') as string });
    expect(unchecked(answers)).toContain('since the pedal does not move shaft');
  });

  it('a rod turned round is told once', () => {
    const turned = edited(
      edited(FOUR, 'from: bellcrank.out', 'from: shaft.arm'),
      'to: shaft.arm\n    adjust',
      'to: bellcrank.out\n    adjust',
    );
    expect(errors(solve(turned))).toEqual(['driven-twice']);
  });

  it('decides no requirement that rests on it', () => {
    const text = edited(FOUR, 'opens fully: at(100%, shaft.opening) >= 81 deg', 'light: max(pedal.effort) <= 30 N');
    const light = (file: string) => solve(file).requirements[0];
    expect(light(text)?.outcome).toBe('passed');
    expect(light(edited(text, 'to: bellcrank.quadrant', 'to: bellcrank.'))).toMatchObject({
      outcome: 'undecided',
      reason: 'pedal.effort is not known: `cables.main` is not understood',
    });
    const answers = solve(edited(text, 'arm: {radius: shaft_reach', 'arm: {radius: 0 mm'));
    expect(answers.requirements[0]?.reason).toBe('pedal.effort is not known: `rods.link` is not understood');
    expect(answers.facts.some(({ part, figure }) => part === 'pedal' && figure?.dimension === 'force')).toBe(false);
  });

  it('does not make the springs that are left the only ones', () => {
    const rear = `  rear: {pivot: [700, 172], arms: {arm: {radius: 32 mm, angle: 140 deg}}}\npedal:`;
    const two = FOUR.replace(/^ {2}return_rear: .*$/m, '  return_rear: {lever: rear, rate: 2.2 N*mm/deg, preload: 240 N*mm}')
      .replace(/^pedal:/m, rear)
      .replace(/^rods:$/m, 'rods:\n  on: {from: shaft.arm, to: rear.arm}');
    expect(errors(solve(two))).toEqual([]);
    expect(errors(solve(edited(two, 'to: rear.arm', 'to: rear.armm')))).toEqual(['unknown-name']);
  });
});

describe('a rod that is not as long as drawn', () => {
  // The pins as drawn, by hand: crank (512 + 38 cos 166°, 148 + 38 sin 166°), shaft (604 + 32 cos 140°, 172 + 32 sin 140°).
  const drawn = Math.hypot(
    604 + 32 * Math.cos((140 * Math.PI) / 180) - 512 - 38 * Math.cos((166 * Math.PI) / 180),
    172 + 32 * Math.sin((140 * Math.PI) / 180) - 148 - 38 * Math.sin((166 * Math.PI) / 180),
  );
  const withLength = (length: string): string => edited(FOUR, '    to: shaft.arm\n', `    to: shaft.arm\n    length: ${length}\n`);

  it('is the cause of a cable without slack, told at its length with its own mend', () => {
    const text = withLength('112.19 mm');
    const [found] = solve(text).findings.filter(({ code }) => code === 'slack-used-up');
    expect(found).toMatchObject({
      message: expect.stringMatching(
        /^The rod link is 2 mm longer than drawn: the cable main is tight at rest by 1\.27 mm and holds bellcrank open$/,
      ) as string,
      cure: expect.stringMatching(
        new RegExp(`^Set link to ${drawn.toFixed(2)} mm \\(2 turns shorter\\), its length as drawn, or give main`),
      ) as string,
      related: [{ message: 'main has 1 mm of slack' }],
    });
    expect(text.slice(found?.span.start, found?.span.end)).toBe('112.19 mm');
    const mended = applyMend(text, 'slack-used-up');
    expect(mended.mend.unknown).toBe('rods.link.length');
    expect(mended.mend.target * 1e3).toBeCloseTo(Number(drawn.toFixed(2)), 9);
    expect(mended.left).toEqual(ITS_OWN);
  });

  it('is not blamed where the stop lets the throttle close further than drawn', () => {
    const text = edited(withLength('110.191 mm'), 'stops: {closed: 0 deg', 'stops: {closed: -5 deg');
    const [found] = solve(text).findings.filter(({ code }) => code === 'slack-used-up');
    expect(found?.message).toMatch(/^The cable main is tight/);
    expect(found?.mend?.unknown).toBe('cables.main.slack');
  });

  it('is the cause of an opening that is missed', () => {
    const text = withLength('108 mm');
    const [found] = solve(text).findings.filter(({ code }) => code === 'opening-missed');
    expect(found?.cure).toBe(`Set link to ${drawn.toFixed(2)} mm (2.19 turns longer), its length as drawn`);
    expect(found?.related?.map(({ span, message }) => [text.slice(span.start, span.end), message])).toEqual([
      ['108 mm', 'link is 2.19 mm shorter than drawn'],
    ]);
    expect(applyMend(text, 'opening-missed').left).toEqual(ITS_OWN);
  });

  it('is not blamed where its drawn length would not open fully either', () => {
    const text = edited(withLength('108 mm'), 'travel: 27 deg', 'travel: 20 deg');
    const [found] = solve(text).findings.filter(({ code }) => code === 'opening-missed');
    expect(found?.cure).not.toContain('as drawn');
  });

  it('says so where it reaches nowhere', () => {
    const [found] = solve(withLength('300 mm')).findings.filter(({ code }) => code === 'not-assembled');
    expect(found?.cure).toMatch(/^The rod is 189\.81 mm longer than drawn: set it to /);
  });
});

describe('a throttle that hardly opens', () => {
  it.each([
    ['the pedal turns the wrong way', 'lever: pedal, opens: counterclockwise', 'lever: pedal, opens: clockwise'],
    ['the cable has more slack than it is pulled', 'slack: 1 mm', 'slack: 100 mm'],
  ])('is told by itself: %s', (_, was, is) => {
    expect(errors(solve(edited(FOUR, was, is)))).toEqual(['opening-missed']);
  });

  it('is not told of its sensor besides', () => {
    const codes = errors(solve(edited(FOUR, 'travel: 27 deg', 'travel: 12 deg')));
    expect(codes).toContain('opening-missed');
    expect(codes).not.toContain('signal-span');
    const wide = edited(edited(FOUR, 'travel: 27 deg', 'travel: 12 deg'), 'range: [0 deg, 110 deg]', 'range: [0 deg, 300 deg]');
    expect(errors(solve(wide))).toContain('signal-span');
  });
});
