/** What closes a lever follows from what is joined to it and what it drives, and from nothing on the other side of the pedal. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { closingCause, forcesCause } from '../../src/findings/forcesCause.ts';
import { solve } from '../../src/solve.ts';
import { timesAsLarge } from '../support/timesAsLarge.ts';

const example = readFileSync(new URL('../../examples/two-banks.throttle.yaml', import.meta.url), 'utf8');
/** Two linkages behind one pedal. */
const two = timesAsLarge(example, 2);
const ACROSS = 'springs:\n  across: {from: front_2.arm, to: rear.arm, rate: 0.1 N/mm, free_length: 40 mm}\n';
const across = two.replace('springs:\n', ACROSS);

/** Whether what closes each lever follows from the same before and after an edit. */
function taken(before: string, from: string, to: string): Readonly<Record<string, boolean>> {
  expect(before).toContain(from);
  const causes = [before, before.replace(from, to)].map((text) => {
    const { study } = solve(text);
    const levers = study!.travel.mechanism.levers.map(({ name, index }) => [name, closingCause(study!, index)] as const);
    return { levers, all: forcesCause(study!) };
  });
  const [one, other] = [causes[0]!, causes[1]!];
  return Object.fromEntries([
    ...one.levers.map(([name, cause], i) => [name, cause === other.levers[i]![1]] as const),
    ['all', one.all === other.all],
  ]);
}

const FIRST = { bellcrank: true, front: true, rear: true, rotor: true };
const SECOND = { bellcrank_2: true, front_2: true, rear_2: true, rotor_2: true };
const none = (levers: Readonly<Record<string, boolean>>) => Object.fromEntries(Object.keys(levers).map((name) => [name, false]));

describe('what closes a lever', () => {
  it('is what it was after an edit of a spring in another linkage behind the pedal', () => {
    expect(taken(two, 'rear_return_2: {lever: rear_2, rate: 2.4', 'rear_return_2: {lever: rear_2, rate: 2.5')).toEqual({
      ...FIRST,
      ...none(SECOND),
      pedal: false,
      all: false,
    });
  });

  it('is another after one of friction, of a place or of a cable in its own', () => {
    const expected = { ...none(FIRST), ...SECOND, pedal: false, all: false };
    expect(taken(two, 'friction: 14 N*mm', 'friction: 15 N*mm')).toEqual(expected);
    expect(taken(two, 'crank_pivot: [420,', 'crank_pivot: [421,')).toEqual(expected);
    expect(taken(two, 'bend: 140 deg', 'bend: 150 deg')).toEqual(expected);
  });

  it('follows from the pedal only by the way that the pedal takes', () => {
    expect(taken(two, 'friction: 55 N*mm', 'friction: 56 N*mm')).toEqual({ ...FIRST, ...SECOND, pedal: false, all: false });
    expect(taken(two, 'travel: 27 deg', 'travel: 28 deg')).toEqual({ ...none(FIRST), ...none(SECOND), pedal: false, all: false });
  });

  it('follows from both linkages where a spring joins them', () => {
    expect(taken(across, 'front_shaft_2: [330,', 'front_shaft_2: [331,')).toMatchObject({ ...none(FIRST), ...none(SECOND) });
  });

  it('is found to the last bit as with nothing known, springs across the linkages among it', () => {
    const edits = [
      [two, 'friction: 14 N*mm', 'friction: 94 N*mm'],
      [two, 'rear_return_2: {lever: rear_2, rate: 2.4', 'rear_return_2: {lever: rear_2, rate: 0.4'],
      [across, 'front_shaft_2: [330,', 'front_shaft_2: [338,'],
      [across, 'rear_return: {lever: rear, rate: 2.4', 'rear_return: {lever: rear, rate: 0.4'],
    ] as const;
    const told = (text: string): string => JSON.stringify(solve(text).findings);
    for (const [before, from, to] of edits) {
      const after = before.replace(from, to);
      told(before);
      const kept = told(after);
      // Two that share nothing with it are then all that is known.
      for (const turn of ['31 deg', '32 deg']) {
        told(`format: 1\nlevers: {a: {pivot: [3, 4]}}\npedal: {lever: a, opens: clockwise, travel: ${turn}}\n`);
      }
      expect(kept).toBe(told(after));
    }
  });
});
