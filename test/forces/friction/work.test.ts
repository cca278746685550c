/** Work in is work stored and work lost; more friction is never less; a mirror image feels the same. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createFriction, type FrictionStatics } from '../../../src/forces/friction/statics.ts';
import type { Pass } from '../../../src/forces/friction/pass.ts';
import { CableState, type Pose } from '../../../src/kinematics/pose.ts';
import { closureOf } from '../../support/closure.ts';
import { leverNamed } from '../../support/sketch.ts';
import { mirrored } from '../../support/transform.ts';
import { minus, size, square, unit, type Vector } from '../../support/vector.ts';
import { leastSine } from '../support/freeBody.ts';
import { anySprung } from '../support/randomSprung.ts';
import { isPlace, solveSprungText, type SolvedSprung, type SprungSketch } from '../support/sprung.ts';
import { dissipated } from './support/dissipated.ts';
import { ALL_RUBS, rubbingText, type Rubbing } from './support/rubbing.ts';

const STATIONS = [0.17, 0.41, 0.73, 0.94];
/** Relative to the sum of what goes in, is stored and is lost. */
const KEPT = 1e-9;
/** Sine of the angle from a dead centre: nearer to it friction circles reach across. */
const CLEAR = 0.2;
const MM = 1e3;

interface Case {
  readonly sketch: SprungSketch;
  readonly solved: SolvedSprung;
}

function sample(choice: Parameters<typeof anySprung>[0], numRuns: number, seed: number): readonly SprungSketch[] {
  return fc.sample(anySprung(choice), { numRuns, seed });
}

/** Where every lever moves with the pedal, clear of dead centres. */
function isMoving({ sketch, solved }: Case, pose: Pose, at: number): boolean {
  const closure = closureOf(sketch, solved.senses);
  return (
    solved.mechanism.cables.every(({ cable }) => pose.cableState[cable] === CableState.moving) &&
    leastSine(closure, sketch, solved.rotationsAt(at)) >= CLEAR
  );
}

/** Power in at the pedal less that into the springs, and what is lost; N·mm for the whole travel at once. */
function balanceOf(
  { sketch, solved }: Case,
  at: number,
  forces: FrictionStatics,
  pass: Pass,
  way: 1 | -1,
): { off: number; all: number; lost: number } {
  const { mechanism, travel } = solved;
  const pose = travel.poseAt(at);
  const closure = closureOf(sketch, solved.senses);
  const rates = Object.fromEntries(mechanism.levers.map(({ name, index }) => [name, pose.rate[index]!]));
  const lost = dissipated(closure, sketch, ALL_RUBS, solved.rotationsAt(at), rates, {
    bearing: (name) => pass.bearing[mechanism.leverIndex.get(name)!]!,
    joint: (name) => pass.force[mechanism.joints.find((joint) => joint.name === name)!.index]!,
    cable: (name) => {
      const joint = mechanism.cables.find((each) => each.name === name)!;
      return { before: pass.tension[joint.cable]!, behind: pass.force[joint.index]!, speed: pose.passedRate[joint.cable]! * MM };
    },
  });
  const stored = mechanism.levers.map(
    ({ index }) => forces.frictionless.springs[index]! * MM * mechanism.senses[index]! * pose.rate[index]!,
  );
  const put = pass.pad * padSpeed(sketch, rates);
  const sum = stored.reduce((total, each) => total + each, 0);
  const all = Math.abs(put) + stored.reduce((total, each) => total + Math.abs(each), 0) + lost;
  return { off: Math.abs(put - sum - way * lost), all, lost };
}

function padSpeed(sketch: SprungSketch, rates: Readonly<Record<string, number>>): number {
  const { pivot, axis, arms } = leverNamed(sketch, 'foot');
  return size(square(minus(arms[sketch.pad!]!, pivot), unit(axis))) * Math.abs(rates.foot!);
}

describe('what the foot puts in is stored by springs or lost by friction', () => {
  it.each([
    { what: 'in planar linkages', choice: { only: 'planar' }, seed: 81 },
    { what: 'in spatial linkages', choice: { only: 'spatial' }, seed: 82 },
  ] as const)('$what', { timeout: 240_000 }, ({ choice, seed }) => {
    const faults: string[] = [];
    let compared = 0;
    let felt = 0;
    for (const sketch of sample(choice, 300, seed)) {
      if (sketch.pad === undefined) continue;
      const solved = solveSprungText(rubbingText(sketch, ALL_RUBS));
      const friction = createFriction(solved.travel.build);
      for (const at of STATIONS) {
        const pose = solved.travel.poseAt(at);
        if (!isMoving({ sketch, solved }, pose, at)) continue;
        const forces = friction.at(pose);
        for (const [pass, way] of [
          [forces.pressing, 1],
          [forces.releasing, -1],
        ] as const) {
          // A cable that is pulled open by the springs behind it is loose, and what hangs on it moves by itself.
          if (solved.mechanism.cables.some(({ index }) => pass.force[index] === 0)) continue;
          const { off, all, lost } = balanceOf({ sketch, solved }, at, forces, pass, way);
          compared++;
          if (lost > 0.02 * all) felt++;
          if (!(off <= KEPT * all)) faults.push(`${at} ${way}: off by ${off} of ${all}, lost ${lost}\n${solved.text}`);
        }
      }
    }
    expect(faults.slice(0, 3)).toEqual([]);
    expect(compared).toBeGreaterThan(200);
    expect(felt).toBeGreaterThan(100);
  });
});

describe('more friction', () => {
  const more: readonly (readonly [string, Rubbing])[] = [
    ['drag', { ...ALL_RUBS, drag: 25 }],
    ['bearings', { ...ALL_RUBS, bearing: { diameter: 8, friction: 0.2 } }],
    ['rod ends', { ...ALL_RUBS, ends: { pin: 6, friction: 0.2 } }],
    ['slots', { ...ALL_RUBS, slot: 0.2 }],
    ['cables', { ...ALL_RUBS, cable: { bend: 180, friction: 0.16 } }],
  ];

  it.each(more)('in %s is never less effort, nor a higher release or margin', { timeout: 240_000 }, (_, worse) => {
    const faults: string[] = [];
    let felt = 0;
    for (const sketch of sample({}, 90, 91)) {
      const one = solveSprungText(rubbingText(sketch, ALL_RUBS));
      const other = solveSprungText(rubbingText(sketch, worse));
      const [less, greater] = [createFriction(one.travel.build), createFriction(other.travel.build)];
      for (const at of STATIONS) {
        if (!(leastSine(closureOf(sketch, one.senses), sketch, one.rotationsAt(at)) >= CLEAR)) continue;
        const before = less.at(one.travel.poseAt(at));
        const after = greater.at(other.travel.poseAt(at));
        const slop = 1e-9 * Math.abs(before.effort);
        if (!(before.release <= before.effort)) faults.push(`${at}: release ${before.release} over ${before.effort}`);
        if (!(after.effort >= before.effort - slop)) faults.push(`${at}: effort ${before.effort} to ${after.effort}\n${one.text}`);
        // Where the springs open the pedal by themselves, what holds it back is no release.
        if (before.effort >= 0 && !(after.release <= before.release + slop))
          faults.push(`${at}: release ${before.release} to ${after.release}\n${one.text}`);
        if (after.releasing.pad > before.releasing.pad + slop)
          faults.push(`${at}: ${before.releasing.pad} to ${after.releasing.pad} coming back`);
        if (after.effort > before.effort + 1e-4) felt++;
        after.margin.forEach((margin, lever) => {
          if (before.margin[lever]! > 0 && margin > before.margin[lever]! * (1 + 1e-9))
            faults.push(`${at}: margin ${before.margin[lever]} to ${margin}`);
        });
      }
    }
    expect(faults.slice(0, 3)).toEqual([]);
    expect(felt).toBeGreaterThan(8);
  });
});

describe('the mirror image', () => {
  it('feels the same', { timeout: 240_000 }, () => {
    const faults: string[] = [];
    let compared = 0;
    for (const sketch of sample({}, 120, 95)) {
      const [one, other] = [sketch, inMirror(sketch)].map((each) => solveSprungText(rubbingText(each, ALL_RUBS))) as [
        SolvedSprung,
        SolvedSprung,
      ];
      const [first, second] = [createFriction(one.travel.build), createFriction(other.travel.build)];
      for (const at of STATIONS) {
        if (!(leastSine(closureOf(sketch, one.senses), sketch, one.rotationsAt(at)) >= CLEAR)) continue;
        const a = first.at(one.travel.poseAt(at));
        const b = second.at(other.travel.poseAt(at));
        compared++;
        for (const key of ['effort', 'release'] as const) {
          if (!(Math.abs(a[key] - b[key]) <= 1e-9 * Math.max(1, Math.abs(a[key]))))
            faults.push(`${key} at ${at}: ${a[key]} and ${b[key]}\n${one.text}`);
        }
      }
    }
    expect(faults.slice(0, 3)).toEqual([]);
    expect(compared).toBeGreaterThan(100);
  });
});

function inMirror(sketch: SprungSketch): SprungSketch {
  const place = ([x, y, z]: Vector): Vector => [-x, y, z];
  const springs = sketch.springs.map((spring) =>
    spring.kind !== 'torsion' && isPlace(spring.from) ? { ...spring, from: place(spring.from) } : spring,
  );
  return { ...sketch, ...mirrored(sketch), springs };
}
