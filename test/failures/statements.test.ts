/** How linkages stand to the figures of rules: met, not met, or not checked, and never anything more. */
import { describe, expect, it } from 'vitest';
import { RETURN_TIMES, RULE_FIGURES, type FigureKey } from '../../src/failures/figures.ts';
import type { Standing } from '../../src/failures/statements.ts';
import { statementWords } from '../../src/outputs/failureWords.ts';
import { solve } from '../../src/solve.ts';
import { CRANK, RUBS, SHAFT, shaft, textOf, torsion, type Parts } from './throttles.ts';

function standings(base: Parts, changes: Parts = {}): Readonly<Partial<Record<FigureKey, Standing>>> {
  const statements = solve(textOf(base, changes)).failures()?.statements ?? [];
  return Object.fromEntries(statements.map(({ figure, standing }) => [figure.key, standing]));
}

it('says of each figure where it stands and how it is known', () => {
  expect(new Set(RULE_FIGURES.map(({ key }) => key)).size).toBe(RULE_FIGURES.length);
  // Of the three times the last alone was read, so that the figure as a whole is from memory; no copy of S5.3 itself was found to read.
  for (const { key, status, readIn, source } of RULE_FIGURES) {
    expect(status, key).toBe(key === 'return-times' ? 'from memory' : 'read');
    expect(readIn !== undefined, key).toBe(source.startsWith('49 CFR') && key !== 'return-times');
  }
  expect(RETURN_TIMES.map(({ seconds, status }) => `${seconds} ${status}`)).toEqual(['1 from memory', '2 from memory', '3 read']);
});

it('speaks of figures, not of rules', () => {
  for (const text of [textOf(CRANK), textOf(SHAFT), textOf(SHAFT, { springs: { second: undefined } })]) {
    for (const statement of solve(text).failures()?.statements ?? []) {
      expect(statementWords(statement)).toMatch(
        /^(?:meets the figure of|does not meet the figure of|not checked:) .*\((?:read|from memory|read in [^)]+)\)/,
      );
      expect(statementWords(statement)).not.toMatch(/complian|legal|approved|safe/i);
    }
  }
});

describe('what is met', () => {
  it('is all of it where two springs on the shaft close it whatever is lost', () => {
    const all = standings(CRANK);
    expect(new Set(Object.values(all))).toEqual(new Set(['meets']));
    expect(Object.keys(all)).toHaveLength(RULE_FIGURES.length);
    const times = solve(textOf(CRANK))
      .failures()
      ?.statements.find(({ figure }) => figure.key === 'return-times');
    expect(times?.why).toMatch(/ s at most without \w+, with inertias estimated/);
  });

  it('is not the time of a throttle whose pedal or mass the file leaves out, and it says which', () => {
    const timesOf = (text: string) =>
      solve(text)
        .failures()
        ?.statements.find(({ figure }) => figure.key === 'return-times');
    const cable = timesOf(textOf(SHAFT));
    expect(cable?.standing).toBe('not-checked');
    expect(cable?.why).toContain('the pedal’s return is not checked');
    const light = timesOf(textOf(CRANK).replace('  crank: {', '  crank: {inertia: 0, '));
    expect(light?.standing).toBe('not-checked');
    expect(light?.why).toContain('mass of crank');
  });

  it('is not that of two springs with one, with one that does not count, or with both before a rod', () => {
    const one = standings(SHAFT, { springs: { second: undefined } });
    expect(one).toMatchObject({
      'springs-at-throttle-body': 'does-not-meet',
      'energy-sources': 'does-not-meet',
      'springs-alone': 'does-not-meet',
    });
    // What is left open with every part, the pedal's own return, is left open without a cable, too.
    expect(one['linkage-failure']).toBe('not-checked');
    const inSensor = '{lever: shaft, rate: 3 N*mm/deg, preload: 300 N*mm, counts_as_return: false}';
    expect(standings(SHAFT, { springs: { second: inSensor } })['springs-at-throttle-body']).toBe('does-not-meet');
    const before = standings(CRANK, { springs: { first: torsion('crank', 450), second: torsion('crank', 450) } });
    expect(before).toMatchObject({
      'energy-sources': 'meets',
      'springs-at-throttle-body': 'does-not-meet',
      'return-on-disconnection': 'does-not-meet',
      'no-single-failure': 'does-not-meet',
      'linkage-failure': 'does-not-meet',
      'return-times': 'does-not-meet',
    });
  });

  it('is none of it where friction holds the shaft with every part', () => {
    const { 'springs-at-throttle-body': count, ...others } = standings(SHAFT, { levers: { shaft: shaft('', RUBS(900)) } });
    expect(count).toBe('meets');
    expect(new Set(Object.values(others))).toEqual(new Set(['does-not-meet']));
  });

  it('is none of it where friction is not given, but for how many springs there are', () => {
    const { 'springs-at-throttle-body': count, ...others } = standings(SHAFT, {
      levers: { shaft: shaft('', 'opens: counterclockwise') },
    });
    expect(count).toBe('meets');
    expect(new Set(Object.values(others))).toEqual(new Set(['not-checked']));
  });

  it('is not the time where the drag leaves the shaft slow, and says how slow', () => {
    // An inertia of 4000 kg·cm² on 0.6 N·m of springs: √(2 · 1.4 rad · 0.4 kg·m² / 0.7 N·m) is well over a second.
    const heavy = `{pivot: [100, 0], arms: {tail: {radius: 20 mm, angle: 240 deg}}, drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {open: 80 deg}, inertia: 400000 kg*mm^2, ${RUBS()}}`;
    const statements = solve(textOf(SHAFT, { levers: { shaft: heavy } })).failures()?.statements ?? [];
    const times = statements.find(({ figure }) => figure.key === 'return-times');
    expect(times?.standing).toBe('does-not-meet');
    expect(times?.why).toMatch(/^[1-9]\S* s at most/);
  });
});
