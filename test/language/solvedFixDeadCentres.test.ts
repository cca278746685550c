/** Fixes for what comes to a dead centre or cannot be put together, and for springs, seats and housing ends: each passes and adds nothing. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ruleNameOf, takeDocApart } from '../../scripts/ruleDocs.mjs';
import type { FindingCode } from '../../src/findings/codes.ts';
import { solve } from '../../src/solve.ts';
import { checkSolvedFix, offeredAt, solvedAt } from '../support/checkFix.ts';

const DEGREE = Math.PI / 180;

/** The example on the page of the code, with the cursor in front of some words. */
function example(code: FindingCode, before: string, changed: (text: string) => string = (text) => text): string {
  const source = readFileSync(new URL(`../../src/findings/rules/${ruleNameOf(code)}.ts`, import.meta.url), 'utf8');
  const text = changed(takeDocApart(source).example.replace(/^# .*\^.*\n/gm, ''));
  expect(text).toContain(before);
  return text.replace(before, `$0${before}`);
}

/** A column at a thousand stations, in its own unit. */
function columnOf(text: string, name: string): readonly number[] {
  const stations = Array.from({ length: 1001 }, (_, i) => i / 1000);
  return (solve(text).table(stations, [name]).columns[0]?.values ?? []).map((value) => value ?? NaN);
}

describe('a rod that reaches nowhere', () => {
  it('gets the length that it has as drawn', () => {
    // Two equal arms drawn alike: the rod is as long as the pivots are apart.
    const text = example('not-assembled', 'link:');
    checkSolvedFix(
      text,
      text.replace('$0', '').replace('10 mm', '100 mm'),
      'Solve for the length of link so that link reaches',
      'Lengthen link to 100 mm: link reaches',
    );
  });

  it('gets it by the `let` that it follows from', () => {
    const following = (quarter: string): string =>
      example('not-assembled', 'link:', (text) =>
        text.replace('10 mm', '4 * quarter').replace('levers:', `let: {quarter: ${quarter}}\nlevers:`),
      );
    checkSolvedFix(
      following('10 mm'),
      following('25 mm').replace('$0', ''),
      'Solve for `quarter` so that link reaches',
      'Set `quarter` to 25 mm: link reaches',
    );
  });

  it('is told what else would be wrong at that length', () => {
    const text = example('not-assembled', 'link:', (each) => each.replace('radius: 40 mm, angle: 60 deg', 'radius: 40 mm, angle: 150 deg'));
    expect(solvedAt(text, 'Solve for the length of link so that link reaches')).toMatchObject({
      kind: 'unsolved',
      reason: expect.stringContaining('but then: The rod link comes in line with the arm of') as string,
    });
  });
});

describe('the pedal’s travel', () => {
  it('ends before a change point', () => {
    // In a parallelogram the rod keeps its direction: the angle is 180° less that of the arm, 60° and what the pedal has turned.
    const text = example('change-point', 'link:');
    checkSolvedFix(
      text,
      text.replace('$0', '').replace('150 deg', '79.99 deg'),
      "Solve for the pedal's travel so that the pedal ends before the change point of link",
      "Shorten the pedal's travel to 79.99 deg: transmission angle of link 40° at least",
    );
  });

  it.each([
    ['toggle-returning', 'link:', 'link keeps its drive angle'],
    ['closed-stop-passed', '0 deg}\n', 'shaft does not come back below its closed stop'],
  ] as const)('ends before the dead centre of the driving arm (%s)', (code, before, goal) => {
    const text = example(code, before, (each) => each.replace('travel: 120 deg', 'travel: 80 deg'));
    const solved = solvedAt(
      code === 'closed-stop-passed' ? text.replace('travel: 80 deg', 'travel: 120 deg') : text,
      `Solve for the pedal's travel so that ${goal}`,
    );
    expect(solved).toMatchObject({ kind: 'solved', mends: true });
    // The crank is drawn at 150°, the arm at 100°: at the travel found rod and crank enclose 20° or a hundredth more.
    const travel = solved.kind === 'solved' ? solved.value / DEGREE : NaN;
    expect(driveAngle(150 + travel)).toBeGreaterThan(20);
    expect(driveAngle(150 + travel + 0.02)).toBeLessThan(20.01);
    expect(driveAngle(150 + travel - 1)).toBeGreaterThan(20.5);
  });

  it('ends too where plates come back below their seat', () => {
    const plates = 'plates:\n  bank: {lever: shaft, bore: 40 mm, seat: 78.6 deg, idle: 1.5 deg}\n';
    const text = example('closed-stop-passed', '1.5 deg', (each) => each + plates);
    const solved = solvedAt(text, "Solve for the pedal's travel so that the plates bank stay off their seat");
    expect(solved).toMatchObject({ kind: 'solved', mends: true });
    const travel = solved.kind === 'solved' ? solved.value / DEGREE : NaN;
    expect(driveAngle(150 + travel)).toBeCloseTo(20, 1);
  });
});

/** Acute angle between a crank of 20 mm at an angle and the rod to an arm of 40 mm, pivots 100 mm apart, in degrees; second method. */
function driveAngle(degrees: number): number {
  const crank = (at: number): readonly [number, number] => [20 * Math.cos(at * DEGREE), 20 * Math.sin(at * DEGREE)];
  const [x0, y0] = crank(150);
  const rod = Math.hypot(100 + 40 * Math.cos(100 * DEGREE) - x0, 40 * Math.sin(100 * DEGREE) - y0);
  const [x, y] = crank(degrees);
  const far = Math.hypot(100 - x, -y);
  // The driven pin stands above the line from the crank's pin to the driven pivot.
  const off = Math.acos((rod ** 2 + far ** 2 - 40 ** 2) / (2 * rod * far));
  const direction = Math.atan2(-y, 100 - x) + off;
  const between = Math.abs(Math.sin(direction - degrees * DEGREE));
  return Math.asin(between) / DEGREE;
}

describe('a rod of a given length that comes in line with the driven arm', () => {
  it('is set to a length that keeps its angle, where it takes its length from the file', () => {
    const text = example('toggle-opening', 'link:', (each) => each.replace('to: shaft.arm}', 'to: shaft.arm, length: 140 mm}'));
    expect(offeredAt(text)).toContain('Solve for the length of link so that link keeps its transmission angle');
    expect(offeredAt(example('toggle-opening', 'link:'))).not.toContain(
      'Solve for the length of link so that link keeps its transmission angle',
    );
  });
});

describe('plates below their seat', () => {
  it('have their closed stop where they are drawn', () => {
    const text = example('plate-below-seat', '1.5 deg');
    checkSolvedFix(
      text,
      text.replace('$0', '').replace('closed: -2 deg', 'closed: 0 deg'),
      'Solve for the closed stop of shaft so that the plates bank stay off their seat',
      'Set the closed stop of shaft to 0 deg: the plates bank stay off their seat',
    );
  });

  it('have it just off their seat by the `let` that it follows from', () => {
    const low = (value: string): string =>
      example('plate-below-seat', '1.5 deg', (text) =>
        text.replace('-2 deg', '-2 * low').replace('levers:', `let: {low: ${value}}\nlevers:`),
      );
    // Idle stands 1.5° above the seat: half of that.
    checkSolvedFix(
      low('1 deg'),
      low('0.38 deg').replace('$0', ''),
      'Solve for `low` so that the plates bank stay off their seat',
      'Set `low` to 0.38 deg: the plates bank stay off their seat',
    );
  });
});

describe('a spring', () => {
  it('is clocked so that its line stays on one side of the pivot', () => {
    const text = example('spring-dead-centre', 'tail: {from');
    const greatest = Math.max(...columnOf(text.replace('$0', ''), 'tail.torque'));
    const title = 'Solve for the angle of shaft.tail so that tail stays on one side of the pivot';
    const solved = solvedAt(text, title);
    if (solved.kind !== 'solved') throw new Error(solved.reason);
    const written = `angle: ${Number((solved.value / DEGREE).toFixed(2))} deg`;
    checkSolvedFix(text, text.replace('$0', '').replace('angle: 240 deg', written), title, solved.title);
    const least = Math.min(...columnOf(text.replace('$0', '').replace('angle: 240 deg', written), 'tail.torque'));
    // A tenth of what it brought at most before.
    expect(least).toBeCloseTo(greatest / 10, 0);
  });

  it('is wound until the dip of the others is a fifth of the whole', () => {
    const third = (preload: string): string =>
      example('closing-dips', 'shaft:', (text) => `${text}  third: {lever: shaft, rate: 0.1 N*mm/deg, preload: ${preload}}\n`);
    const [rest = NaN] = columnOf(third('50 N*mm').replace('$0', ''), 'shaft.closing');
    const least = Math.min(...columnOf(third('50 N*mm').replace('$0', ''), 'shaft.closing'));
    // (least + more) / (rest + more) = 4/5, rounded up to a whole N·mm.
    const more = 50 + 4 * rest - 5 * least;
    const written = `${Math.ceil(more)} N*mm`;
    const solved = checkSolvedFix(
      third('50 N*mm'),
      third(written).replace('$0', ''),
      'Solve for the preload of third so that shaft closes nearly as hard everywhere as at rest',
      `Raise the preload of third to ${written}: shaft closes with ${Math.round(least + Math.ceil(more) - 50)} N·mm or more`,
    );
    expect(solved.code).toBe('closing-dips');
  });

  it('has no such fix without a torsion spring on the shaft itself', () => {
    expect(offeredAt(example('closing-dips', 'shaft:'))).toEqual([]);
  });
});

describe('a housing end', () => {
  it('is turned until the inner runs straight enough out of it', () => {
    const text = example('cable-lead', 'main:');
    const title = 'Solve for `enters_along` of main so that main runs straight out of its housing';
    const solved = solvedAt(text, title);
    if (solved.kind !== 'solved') throw new Error(solved.reason);
    const after = text.replace('$0', '').replace('0.11', String(Number(solved.value.toFixed(3))));
    checkSolvedFix(text, after, title, solved.title);
    expect(Math.max(...columnOf(after, 'main.lead'))).toBeLessThan(5);
    expect(Math.max(...columnOf(after, 'main.lead'))).toBeGreaterThan(4.9);
  });

  it('has none where the file does not say which way it points', () => {
    const text = example('cable-lead', 'main:', (each) =>
      each.replace(' enters_along: [-1, 0.11],', '').replace('[250, -40]', '[140, -60]'),
    );
    expect(solve(text.replace('$0', '')).findings.map(({ code }) => code)).toContain('cable-lead');
    expect(offeredAt(text).filter((title) => title.includes('housing'))).toEqual([]);
  });
});
