/** Solving for a figure that is its own outcome, and for one whose outcome stays on the target. */
import { describe, expect, it } from 'vitest';
import { findLoadPath } from '../../src/definition/loadPath.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { compileMechanism } from '../../src/kinematics/compile.ts';
import type { Mechanism } from '../../src/kinematics/model.ts';
import { solveFor, type Question, type Solutions } from '../../src/studies/solveFor.ts';

const DEGREE = Math.PI / 180;

/** A drum of 24 mm behind 1 mm of slack, with a stop at 60°. */
function drum(): Mechanism {
  const { definition } = readDefinition(`format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise, groove: 50 deg}}, stops: {closed: 0 deg, open: 60 deg}}
pedal: {cable: main, pull: 20 mm}
cables:
  main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}
`);
  const path = definition && findLoadPath(definition).path;
  const mechanism = definition && path && compileMechanism(definition, path);
  if (mechanism === undefined) throw new Error('the linkage should compile');
  return mechanism;
}

const answer = (question: Question): Solutions => solveFor(drum(), question);

describe('a figure that is its own outcome', () => {
  const groove = { unknown: 'levers.shaft.drums.wheel.groove', outcome: { kind: 'itself' }, target: 61 * DEGREE } as const;

  it('is the target, whether it is a dimension of the linkage or not', () => {
    const value = 61 * DEGREE;
    expect(answer({ ...groove, from: 0, to: 2 })).toEqual({
      kind: 'solved',
      roots: [{ value, outcome: value }],
      nearest: { value, outcome: value },
    });
    expect(answer({ ...groove, unknown: 'cables.main.slack', target: 0.002, from: 0, to: 0.01 })).toMatchObject({
      roots: [{ value: 0.002 }],
    });
  });

  it('comes as near as the bounds let it', () => {
    expect(answer({ ...groove, from: 0, to: 1 })).toEqual({ kind: 'solved', roots: [], nearest: { value: 1, outcome: 1 } });
    expect(answer({ ...groove, from: 1.5, to: 2 })).toEqual({ kind: 'solved', roots: [], nearest: { value: 1.5, outcome: 1.5 } });
    expect(answer({ ...groove, from: 2, to: 2 })).toEqual({ kind: 'empty-bounds' });
  });
});

describe('an outcome that stays on the target', () => {
  const opens = { unknown: 'pedal.pull', outcome: { kind: 'greatest', column: 'shaft.opening' }, target: 60 * DEGREE } as const;
  /** Slack, and the drum's share up to the stop. */
  const met = 1e-3 + 24e-3 * 60 * DEGREE;
  const rootsOf = (question: Question): readonly number[] => {
    const solved = answer(question);
    if (solved.kind !== 'solved') throw new Error(solved.kind);
    return solved.roots.map(({ value }) => value);
  };

  it('has its roots where it comes on it and where the bounds end it, and none between', () => {
    expect(rootsOf({ ...opens, from: 0.01, to: 0.05 })).toEqual([expect.closeTo(met, 12), 0.05]);
    // More slack than pull, and it stays shut.
    const shut = { unknown: 'cables.main.slack', outcome: opens.outcome, target: 0, from: 0.01, to: 0.04 };
    expect(rootsOf(shut)).toEqual([expect.closeTo(0.02, 12), 0.04]);
    expect(rootsOf({ ...opens, from: met + 0.001, to: met + 0.002 })).toEqual([
      expect.closeTo(met + 0.001, 12),
      expect.closeTo(met + 0.002, 12),
    ]);
  });

  it('has no root where it never comes on it', () => {
    expect(rootsOf({ ...opens, from: 0.005, to: 0.02 })).toEqual([]);
  });
});
