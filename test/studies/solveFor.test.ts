import { describe, expect, it } from 'vitest';
import { findLoadPath } from '../../src/definition/loadPath.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { compileMechanism } from '../../src/kinematics/compile.ts';
import type { Mechanism } from '../../src/kinematics/model.ts';
import { solveFor } from '../../src/studies/solveFor.ts';

/** Pedal and shaft, 30 mm arms, pivots 100 mm apart: a parallelogram unless the rod says otherwise. */
function fourBar(rod: string, arm = '30 mm'): Mechanism {
  const { definition, problems } = readDefinition(`format: 1
levers:
  pedal:
    pivot: [0, 0]
    arms:
      out: {radius: ${arm}, angle: 120 deg}
  shaft:
    pivot: [100, 0]
    arms:
      in: {radius: 30 mm, angle: 120 deg}
pedal: {lever: pedal, opens: clockwise, travel: 60 deg}
rods:
  link: {from: pedal.out, to: shaft.in${rod}}
plates:
  bank: {lever: shaft, bore: 45 mm, seat: 6 deg, idle: 1 deg}
`);
  expect(problems).toEqual([]);
  const path = definition && findLoadPath(definition).path;
  const mechanism = definition && path && compileMechanism(definition, path);
  if (mechanism === undefined) throw new Error('the linkage should compile');
  return mechanism;
}

const MM = 1e-3;
const DEGREE = Math.PI / 180;

describe('solving for one figure', () => {
  it('finds the rod length at which a held-open shaft closes: the distance of the drawn pins', () => {
    const mechanism = fourBar(', length: 99 mm');
    const solved = solveFor(mechanism, {
      unknown: 'rods.link.length',
      outcome: { kind: 'at', column: 'shaft.opening', travel: 0.5 },
      target: 30 * DEGREE,
      from: 95 * MM,
      to: 105 * MM,
    });
    expect(solved.kind).toBe('solved');
    if (solved.kind !== 'solved') return;
    // A parallelogram turns its output as its input: 30° at half of 60°, for a rod as long as the pivots are apart.
    expect(solved.roots.map(({ value }) => value)).toEqual([expect.closeTo(100 * MM, 12)]);
  });

  it('speaks of the whole length where the file leaves it as drawn', () => {
    const solved = solveFor(fourBar(''), {
      unknown: 'rods.link.length',
      outcome: { kind: 'at', column: 'shaft.opening', travel: 0.5 },
      target: 30 * DEGREE,
      from: 95 * MM,
      to: 105 * MM,
    });
    expect(solved.kind === 'solved' && solved.roots.map(({ value }) => value)).toEqual([expect.closeTo(100 * MM, 12)]);
  });

  it('finds every root within the bounds, and tells how near it comes where there is none', () => {
    const mechanism = fourBar('');
    const question = {
      unknown: 'levers.pedal.arms.out.radius',
      outcome: { kind: 'greatest', column: 'shaft.opening' } as const,
      from: 10 * MM,
      to: 40 * MM,
    };
    const reached = solveFor(mechanism, { ...question, target: 60 * DEGREE });
    expect(reached.kind === 'solved' && reached.roots.map(({ value }) => value)).toEqual([expect.closeTo(30 * MM, 10)]);
    for (const root of reached.kind === 'solved' ? reached.roots : []) expect(root.outcome).toBeCloseTo(60 * DEGREE, 9);
    const beyond = solveFor(mechanism, { ...question, target: 300 * DEGREE });
    expect(beyond.kind === 'solved' && beyond.roots).toEqual([]);
    expect(beyond.kind === 'solved' && (beyond.nearest?.outcome ?? 0) > 60 * DEGREE).toBe(true);
  });

  it('finds both roots of an outcome that turns back, however close they lie', () => {
    const mechanism = fourBar('');
    const question = {
      unknown: 'levers.shaft.arms.in.angle',
      outcome: { kind: 'least', column: 'link.transmission' } as const,
      from: 60 * DEGREE,
      to: 150 * DEGREE,
    };
    const wide = solveFor(mechanism, { ...question, target: 50 * DEGREE });
    expect(wide.kind === 'solved' && wide.roots.length).toBe(2);
    const best = solveFor(mechanism, { ...question, target: 90 * DEGREE });
    const top = best.kind === 'solved' ? (best.nearest?.outcome ?? NaN) : NaN;
    expect(top).toBeGreaterThan(50 * DEGREE);
    expect(top).toBeLessThan(90 * DEGREE);
    const under = solveFor(mechanism, { ...question, target: top - 1e-7 });
    expect(under.kind === 'solved' && under.roots.length).toBe(2);
    const over = solveFor(mechanism, { ...question, target: top + 1e-7 });
    expect(over.kind === 'solved' && over.roots).toEqual([]);
  });

  it('answers a question that makes no sense as such', () => {
    const mechanism = fourBar('');
    const outcome = { kind: 'at', column: 'shaft.opening', travel: 1 } as const;
    expect(solveFor(mechanism, { unknown: 'rods.nothing.length', outcome, target: 1, from: 0, to: 1 }).kind).toBe('unknown-dimension');
    expect(
      solveFor(mechanism, { unknown: 'rods.link.length', outcome: { ...outcome, column: 'shaft.colour' }, target: 1, from: 0, to: 1 }).kind,
    ).toBe('unknown-column');
    expect(solveFor(mechanism, { unknown: 'rods.link.length', outcome, target: 1, from: 1, to: 1 }).kind).toBe('empty-bounds');
  });
});
