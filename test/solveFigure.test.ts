/** Values of one figure at which a demand is just met: held against the textbook's own formula, and against what may be asked wrongly. */
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../src/definition/edit.ts';
import { solve } from '../src/solve.ts';
import { solveFigure, type FigureQuestion, type FigureSolved } from '../src/solveFigure.ts';
import { finished } from '../src/studies/finished.ts';
import { textbookLinkage, twoShafts } from './studies/tolerance/cases.ts';
import { DEG } from './textbook/support/check.ts';
import { halfTangentAngles } from './textbook/support/halfTangent.ts';

/** The four-bar of the textbook with no stop anywhere; its drawn position is at 15°, full pedal at 40°. */
const linkage = textbookLinkage('')
  .replace(/, adjust: \{[^}]*\}/, '')
  .replace(/plates:[^]*$/, '');
const LINKS = { a: 40, b: 120, c: 80, d: 100 };
const drawn = halfTangentAngles(LINKS, 15 * DEG, -1).theta4;
/** Rotation of the driven lever at full pedal, deg, by the textbook's quadratic (Norton, ch. 4, from memory); the figure is the crank's drawn angle where it is none of the links. */
function rotation(figure: keyof typeof LINKS | 'angle', value: number): number {
  const links = figure === 'angle' ? LINKS : { ...LINKS, [figure]: value };
  const turned = (halfTangentAngles(links, (figure === 'angle' ? value + 25 : 40) * DEG, -1).theta4 - drawn) / DEG;
  return turned - 360 * Math.round(turned / 360);
}
const PATHS = {
  a: 'levers.foot.arms.pin.radius',
  b: 'rods.coupler.length',
  d: 'levers.driven.pivot.0',
  angle: 'levers.foot.arms.pin.angle',
} as const;

test.each([
  ['foot.pin.radius', PATHS.a],
  ['coupler.length', PATHS.b],
  ['driven.pivot.x', PATHS.d],
])('%s means the same figure as %s', (name, path) => {
  const demand = 'at(100%, driven.rotation) == 5 deg';
  const by = (change: string) => solved(linkage, { change, demand }).choices.map(({ root }) => root);
  expect(by(name)).toEqual(by(path));
});

function solved(text: string, question: FigureQuestion): FigureSolved {
  const outcome = finished(solveFigure(text, { places: 33, ...question }));
  if (outcome.kind === 'refused') throw new Error(outcome.why);
  return outcome;
}

describe('every value', () => {
  test.each([
    ['a', 16, 64, 5, 1],
    ['d', 60, 160, 30, 1],
    ['b', 40, 150, -30, 1],
    // The crank turns: its lever comes through the same place twice.
    ['angle', -40, 60, 10, 2],
    ['angle', -40, 60, -2, 0],
    ['a', 16, 64, 40, 0],
  ] as const)('of %s from %d to %d that gives %d° is where the formula of the textbook passes it', (figure, from, to, target, count) => {
    const steps = Array.from({ length: 20_001 }, (_, i) => rotation(figure, from + ((to - from) * i) / 20_000) - target);
    expect(steps.filter((miss, i) => i > 0 && miss * steps[i - 1]! < 0)).toHaveLength(count);
    const unit = figure === 'angle' ? 'deg' : 'mm';
    const question = {
      change: PATHS[figure],
      demand: `at(100%, driven.rotation) == ${target} deg`,
      from: `${from} ${unit}`,
      to: `${to} ${unit}`,
    };
    const { choices, nearest, holding } = solved(linkage, question);
    expect(choices).toHaveLength(count);
    for (const { root, answer } of choices) {
      expect(Math.abs(rotation(figure, figure === 'angle' ? root / DEG : root * 1e3) - target)).toBeLessThan(1e-8);
      expect(answer.outcome).toBe('passed');
    }
    expect(holding).toHaveLength(count);
    if (count > 0) return expect(nearest).toBeUndefined();
    // What comes nearest is what the formula has nearest, at an end of the bounds or where it turns.
    const least = Math.min(...steps.map(Math.abs));
    expect(Math.abs(nearest!.answer.comparisons[0]!.actual!.value / DEG - target)).toBeLessThan(least + 1e-6);
  });

  test('is found next to where the linkage can no longer be assembled', () => {
    // The longest coupler that reaches is 80 mm beyond the distance of the crank's pin from the other pivot.
    const longest = 80 + Math.sqrt(40 ** 2 + 100 ** 2 - 2 * 40 * 100 * Math.cos(40 * DEG));
    const near = longest - 0.01;
    const target = rotation('b', near);
    const demand = `at(100%, driven.rotation) == ${target.toFixed(9)} deg`;
    const { choices, search } = solved(linkage, { change: PATHS.b, demand, from: '40 mm', to: '192 mm' });
    expect(search.missing).toBeGreaterThan(0);
    expect(choices).toHaveLength(1);
    expect(Math.abs(choices[0]!.root * 1e3 - near)).toBeLessThan(1e-6);
  });

  test('of a stretch on which a stop holds the lever is an end of it', () => {
    const text = twoShafts('');
    const { choices, holding } = solved(text, {
      change: 'pedal.travel',
      demand: 'at(100%, first.opening) == 68 deg',
      from: '20 deg',
      to: '60 deg',
    });
    expect(choices.map(({ answer }) => answer.outcome)).toEqual(['passed', 'passed']);
    expect(choices[1]!.root / DEG).toBeCloseTo(60, 9);
    expect(holding).toHaveLength(1);
    // The contact that the solved file reports, in the pedal's own angle.
    const { study } = solve(text);
    expect(choices[0]!.root).toBeCloseTo(study!.travel.contacts[0]!.travel * 45 * DEG, 8);
  });
});

describe('a bellcrank on a cable, whose shaft turns back from rest', () => {
  const text = `format: 1
let: {a: 30 mm}
levers:
  bellcrank: {pivot: [0, 0], arms: {out: {radius: a, angle: 120 deg}}, drums: {quadrant: {radius: 24 mm, wraps: clockwise}}}
  shaft: {pivot: [90, 10], arms: {arm: {radius: 32 mm, angle: 115 deg}}}
pedal: {cable: main, pull: 36 mm}
cables: {main: {to: bellcrank.quadrant, enters: [-60, 30]}}
rods: {link: {from: bellcrank.out, to: shaft.arm}}
`;
  const asked = { change: 'a', from: '5 mm', to: '70 mm' };

  /** The shaft's turn from rest at a share of the pull, deg, in closed form: two circles that meet. */
  function turned(a: number, share: number): number {
    const pin = (lever: number) => [a * Math.cos(lever), a * Math.sin(lever)] as const;
    const shaft = (x: number, y: number, length: number): number => {
      const [dx, dy] = [x - 90, y - 10];
      const reach = Math.hypot(dx, dy);
      return Math.atan2(dy, dx) - Math.acos((reach ** 2 + 32 ** 2 - length ** 2) / (2 * reach * 32));
    };
    const [x, y] = pin(120 * DEG);
    const arm = [90 + 32 * Math.cos(115 * DEG), 10 + 32 * Math.sin(115 * DEG)] as const;
    const length = Math.hypot(arm[0] - x, arm[1] - y);
    return (shaft(...pin(120 * DEG - (share * 36) / 24), length) - 115 * DEG) / DEG;
  }

  test('just meets a demand that is level but for rounding at both ends of the stretch alone', () => {
    const { choices, holding } = solved(text, { ...asked, demand: 'max(shaft.rotation) == 0 deg' });
    expect(choices.map(({ root }) => root * 1e3)).toEqual([5, expect.closeTo(34.457, 3)]);
    expect(holding).toHaveLength(1);
  });

  test.each(['<', '<='])('holds up to where the sides cross, with %s too', (operator) => {
    const demand = `at(50%, shaft.rotation) ${operator} -40 deg or at(50%, shaft.rotation) > -30 deg`;
    const { holding } = solved(text, { ...asked, demand });
    expect(holding[0]).toMatchObject({ from: 5e-3, open: { from: false, to: false } });
    // From -30° to -40° it does not hold; both ends are what the closed form has there.
    expect(turned(holding[0]!.to * 1e3, 0.5)).toBeCloseTo(-30, 6);
    expect(turned(holding[1]!.from * 1e3, 0.5)).toBeCloseTo(-40, 6);
  });
});

describe('a choice', () => {
  const text = `${twoShafts('± 0.1 mm')}require:\n  opens: at(60%, first.opening) >= 40 deg\n  light: at(40%, pedal.effort) <= 4 N and at(0%, first.closing) >= 0.2 N*m\n`;

  test('is rounded to the side on which the demand holds, and its edit changes one figure alone', () => {
    const { choices, holding, demand } = solved(text, { change: 'levers.first.arms.arm.radius', demand: 'opens' });
    const [choice] = choices;
    expect(demand.name).toBe('opens');
    expect(choices).toHaveLength(1);
    expect(choice!.value).not.toBe(choice!.root);
    expect(choice!.value).toBeGreaterThanOrEqual(holding[0]!.from);
    expect(choice!.value).toBeLessThanOrEqual(holding[0]!.to);
    const edited = applyEdits(text, choice!.edits);
    const [whole, tolerance] = [/arm: \{radius: ([\d.]+) mm (± 0\.1 mm), angle: 140 deg\}/.exec(edited)!, '± 0.1 mm'];
    expect(whole[2]).toBe(tolerance);
    expect(edited.replace(whole[1]!, '40')).toBe(text);
    const [answer] = solve(edited).requirements;
    expect(answer).toMatchObject({ outcome: 'passed' });
    expect(answer!.comparisons[0]!.margin!.value).toBeLessThan(0.1 * DEG);
  });

  test('is found by the name of a requirement that has blanks, however it is written there', () => {
    const question = { change: 'levers.first.arms.arm.radius', places: 33 };
    const { choices } = solved(text, { ...question, demand: 'opens' });
    for (const name of ['opens far enough', 'opens, 40° or more', '"opens: far enough"', "'it''s open'"]) {
      const named = text.replace('opens: at', `${name}: at`);
      const [own] = solve(named).requirements;
      const found = solved(named, { ...question, demand: ` ${own!.requirement.name} ` });
      expect(found.demand.name).toBe(own!.requirement.name);
      expect(found.choices.map(({ value }) => value)).toEqual(choices.map(({ value }) => value));
    }
  });

  test('says what it does to the rest of the file', () => {
    const { choices } = solved(text, { change: 'springs.close.preload', demand: 'at(40%, pedal.effort) <= 1 N' });
    expect(choices).toHaveLength(1);
    const { requirements, verdict } = choices[0]!.effects;
    expect(requirements.find(({ name }) => name === 'light')).toMatchObject({ was: { outcome: 'passed' }, is: { outcome: 'failed' } });
    expect(verdict).toMatchObject({ worse: true, lostRequirements: 1 });
  });

  test('of a demand in two parts is where either is just met, and holds between', () => {
    const { choices, holding } = solved(text, { change: 'springs.close.preload', demand: 'light' });
    expect(choices.map(({ comparison }) => comparison)).toEqual([1, 0]);
    expect(choices[0]!.root).toBeCloseTo(0.2, 9);
    expect(holding).toHaveLength(1);
    expect(holding[0]).toMatchObject({ from: choices[0]!.root, to: choices[1]!.root, open: { from: false, to: false } });
  });

  test('of a demand in two parts is none where the other is not met', () => {
    const demand = 'at(40%, pedal.effort) <= 1 N and at(40%, pedal.effort) >= 2 N';
    expect(solved(text, { change: 'springs.close.preload', demand }).choices).toEqual([]);
  });

  test('is the same every time, and the bounds of `tune` are the first to be taken', () => {
    const tuned = `${text.replace('format: 1\n', 'format: 1\nlet: {reach: 40 mm}\n').replace('radius: 40 mm ± 0.1 mm', 'radius: reach')}tune: {free: {reach: {from: 35 mm, to: 50 mm}}, curve: {of: first.opening, through: [[0 %, 0 deg], [100 %, 60 deg]]}}\n`;
    const question = { change: 'reach', demand: 'opens' };
    const first = solved(tuned, question);
    expect(first.bounds).toEqual({ from: 0.035, to: 0.05, by: 'tune' });
    expect(solved(tuned, question)).toEqual(first);
  });
});

describe('a figure that is a whole number', () => {
  const text = twoShafts('').replace('one: {lever: first,', 'one: {lever: first, count: 2,');

  test('that nothing depends on is told so, though the format takes whole numbers alone', () => {
    const outcome = finished(solveFigure(text, { change: 'plates.one.count', demand: 'at(40%, pedal.effort) <= 1 kN' }));
    expect(outcome.kind === 'refused' && outcome.why).toMatch(/does not depend on `plates\.one\.count`.*it is met/);
  });
});

describe('what is asked wrongly', () => {
  const formula = linkage
    .replace('format: 1\n', 'format: 1\nlet: {half: 20 mm, whole: 2 * half, idle: 3 mm}\n')
    .replace('radius: 40 mm', 'radius: whole');
  const full = 'at(100%, driven.rotation) == 5 deg';
  test.each([
    [{ change: 'hlf', demand: full }, /no figure `hlf`/, /Did you mean `half`/],
    [{ change: 'whole', demand: full }, /follows from the formula `2 \* half`/, /Change `half` instead/],
    [{ change: 'coupler', demand: full }, /not one figure/, /rods\.coupler\.length/],
    [{ change: 'levers.foot', demand: full }, /not one figure/, /levers\.foot\.pivot/],
    [{ change: 'idle', demand: full }, /does not depend on `idle` within the bounds: it is not met/],
    [{ change: 'half', demand: 'opens' }, /no requirement `opens`/, /Write a comparison/],
    [{ change: 'half', demand: '' }, /missing/],
    [{ change: 'half', demand: 'driven.opening ==' }, /./],
    [{ change: 'half', demand: 'at(100%, drivn.opening) == 5 deg' }, /drivn/, /driven/],
    [{ change: 'half', demand: 'at(100%, driven.rotation) == 5 mm' }, /cannot be compared/],
    [{ change: 'half', demand: 'a\n: b == 1' }, /several lines/],
    [{ change: 'half', demand: full, from: '30 mm', to: '10 mm' }, /reversed: from 30 mm to 10 mm/],
    [{ change: 'half', demand: full, from: '20 mm', to: '20 mm' }, /no room/],
    [{ change: 'half', demand: full, from: '20 deg' }, /deg/],
    [{ change: 'half', demand: full, from: '1,5' }, /1,5/],
    [{ change: 'half', demand: full, from: 'half' }, /plain figure/],
    [{ change: 'half', demand: full, from: '300 mm', to: '400 mm' }, /no value with any `half`/],
  ] as const)('%j is answered in words', (question, why, cure?: RegExp) => {
    const outcome = finished(solveFigure(formula, { places: 5, ...question }));
    if (outcome.kind !== 'refused') throw new Error(`it was solved: ${JSON.stringify(outcome.choices)}`);
    expect(outcome.why).toMatch(why);
    if (cure !== undefined) expect(outcome.cure).toMatch(cure);
    expect(`${outcome.why} ${outcome.cure ?? ''}`).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('a file with nothing in it is refused, and so is one in which a demand finds no place', () => {
    for (const text of ['', 'format: 1\n', '{]', '- a'])
      expect(finished(solveFigure(text, { change: 'x', demand: full })).kind).toBe('refused');
    const flow = `{format: 1, levers: {foot: {pivot: [0, 0]}}, pedal: {lever: foot, opens: clockwise, travel: 20 deg}}`;
    expect(finished(solveFigure(flow, { change: 'pedal.travel', demand: 'max(foot.opening) == 10 deg' }))).toMatchObject({
      kind: 'refused',
    });
  });
});
