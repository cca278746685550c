/** Which edits leave a linkage as it was, and where its words stand then. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Definition } from '../../src/definition/definition.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { sameLinkage } from '../../src/definition/sameLinkage.ts';

const text = readFileSync(new URL('../../examples/two-banks.throttle.yaml', import.meta.url), 'utf8');

function read(of: string): Definition {
  const { definition } = readDefinition(of);
  if (definition === undefined) throw new Error(`Nothing could be read of\n${of}`);
  return definition;
}

/** Demands that the edit finds its place. */
function edited(from: string | RegExp, to: string): string {
  const after = text.replace(from, to);
  expect(after).not.toBe(text);
  return after;
}

describe('the linkage stays the same', () => {
  it.each([
    ['a comment above', /^/, '# Above all\n\n'],
    ['a comment among lines', '  bellcrank:\n', '  # the crank\n  bellcrank: # leaning\n'],
    ['a title', 'title: Two', 'title: Some two'],
    ['a figure written at more length', 'reach: 34 mm', 'reach: 34.00 mm'],
    ['a requirement', '>= 79 deg', '>= 78 deg'],
    ['a requirement that has gone', / {2}in step at half.*\n/, ''],
    ['blanks', 'friction: 55 N*mm', 'friction:    55 N*mm'],
  ])('with %s', (_, from, to) => {
    const after = edited(from, to);
    const [before, now] = [read(text), read(after)];
    const moving = sameLinkage(before, now);
    for (const parts of ['levers', 'lets', 'rods', 'cables', 'plates', 'sensors', 'springs'] as const) {
      for (const [i, { nameSpan, name }] of before[parts].entries()) {
        expect(moving?.(nameSpan)).toEqual(now[parts][i]!.nameSpan);
        const { start, end } = moving!(nameSpan)!;
        expect(after.slice(start, end)).toBe(name);
      }
    }
    const stop = (of: Definition) => of.levers[2]!.stops!.open!.span;
    expect(moving?.(stop(before))).toEqual(stop(now));
  });

  it('and what is no place of it stands nowhere', () => {
    expect(sameLinkage(read(text), read(text))?.({ start: 1, end: 2 })).toBeUndefined();
  });
});

describe('the linkage is another', () => {
  it.each([
    ['a figure', 'reach: 34 mm', 'reach: 34.001 mm'],
    ['a tolerance', 'reach: 34 mm ± 0.1 mm', 'reach: 34 mm ± 0.2 mm'],
    ['a unit', 'friction: 55 N*mm', 'friction: 0.055 N*m'],
    ['a figure below nothing', 'closed: 0 deg', 'closed: -0 deg'],
    ['a name', /front_link/g, 'front_rod'],
    ['a formula of the same value', 'front: {radius: reach,', 'front: {radius: reach + 0 mm,'],
    ['a way of turning', 'opens: counterclockwise', 'opens: clockwise'],
    ['a part that has gone', / {2}rear_return: .*\n/, ''],
    ['a part more', 'springs:\n', 'springs:\n  third: {lever: rear, rate: 1 N*mm/deg}\n'],
    ['another order', /( {2}front_return: .*\n)( {2}rear_return: .*\n)/, '$2$1'],
    ['a figure that cannot be read', 'rate: 2.4 N*mm/deg', 'rate: 2.4 N*mm/degg'],
    ['a key that cannot be read', 'bend: 140 deg', 'bent: 140 deg'],
    ['a limit', 'require:', 'limits: {drive: 30 deg}\nrequire:'],
    ['what is to be tuned', 'require:', 'tune: {free: {reach: {from: 30 mm, to: 40 mm}}}\nrequire:'],
  ])('with %s', (_, from, to) => {
    expect(sameLinkage(read(text), read(edited(from, to)))).toBeUndefined();
  });
});
