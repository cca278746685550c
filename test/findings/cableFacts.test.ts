/** What is told of a cable, by hand: a drum of 24 mm that springs of 600 N·mm + 4 N·mm/deg hold closed. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/findings/finding.ts';
import { solve } from '../../src/solve.ts';
import { FULL, onShaft, TWO } from './hungSprings.ts';

const cable = (keys: string, pull = '25.13 mm'): string =>
  onShaft(TWO).replace('to: shaft.wheel}}', `to: shaft.wheel, ${keys}}}`).replace('pull: 25.13 mm', `pull: ${pull}`);
const told = (text: string): ReadonlyMap<string, Fact> =>
  new Map(
    solve(text)
      .facts.filter(({ part }) => part === 'main')
      .map((fact) => [fact.key, fact]),
  );
const valueOf = (text: string, key: string): number | undefined => told(text).get(key)?.figure?.value;

describe('a cable', () => {
  it('has its greatest tension told, by the capstan equation at its pedal end', () => {
    const full = (600 + 4 * FULL) / 24;
    expect(valueOf(cable('slack: 0 mm'), 'tension-greatest')).toBeCloseTo(full, 6);
    expect(told(cable('slack: 0 mm')).get('tension-greatest')?.label).toContain('friction left out');
    expect(valueOf(cable('bend: 180 deg, friction: 0.1'), 'tension-greatest')).toBeCloseTo(full * Math.exp(0.1 * Math.PI), 5);
  });

  it('stretches under its tension by its stiffness', () => {
    expect(valueOf(cable('stiffness: 40 N/mm'), 'stretch-under-load')).toBeCloseTo((600 + 4 * FULL) / 24 / 40e3, 9);
    expect(told(cable('slack: 0 mm')).get('stretch-under-load')).toMatchObject({ why: 'for want of `stiffness`' });
    expect(told(cable('slack: 0 mm')).get('stretch-under-load')).not.toHaveProperty('figure');
  });

  it('pulls on the stop by what its pull goes beyond it', () => {
    const text = cable('stiffness: 40 N/mm', '27.13 mm');
    // The shaft's stop at 60° lets the drum take 24 mm · π/3.
    const beyond = 27.13 - 24 * (Math.PI / 3);
    expect(valueOf(text, 'stop-force')).toBeCloseTo(40 * beyond, 6);
    // Stretch under load is that before the stop.
    expect(valueOf(text, 'stretch-under-load')).toBeCloseTo((600 + 4 * 60) / 24 / 40e3, 7);
    expect(told(cable('slack: 0 mm', '27.13 mm')).get('stop-force')).toMatchObject({ why: 'for want of `stiffness`' });
    expect(told(cable('stiffness: 40 N/mm')).has('stop-force')).toBe(false);
  });

  it('has its slack at rest told where there is some', () => {
    expect(valueOf(cable('slack: 1.5 mm'), 'slack-at-rest')).toBeCloseTo(1.5e-3, 12);
    expect(told(cable('slack: 0 mm')).has('slack-at-rest')).toBe(false);
  });

  it('loses slack and stretch together', () => {
    expect(valueOf(cable('slack: 1.5 mm, stiffness: 40 N/mm', '26.63 mm'), 'lost-motion')).toBeCloseTo(
      1.5e-3 + (600 + 4 * FULL) / 24 / 40e3,
      7,
    );
    expect(told(cable('slack: 1.5 mm')).get('lost-motion')).toMatchObject({ why: 'for want of `stiffness`' });
    const left = solve(cable('bend: 180 deg, friction: 0.1')).notChecked.map(({ message }) => message);
    expect(left).toContain(
      'Not checked: what its inner gives away across the bends of its housing, since the format holds no clearance of it',
    );
  });

  it('has no force told that is not known', () => {
    const unknown = cable('stiffness: 40 N/mm').replace(TWO[1]!, 'two: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm}');
    expect(told(unknown).get('tension-greatest')).toMatchObject({ why: 'the torque of two is not known' });
    expect(told(unknown).has('stretch-under-load')).toBe(false);
    expect(told(cable('slack: 1 mm').replace(/springs:[^]*/, '')).has('tension-greatest')).toBe(false);
  });
});
