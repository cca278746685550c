/** The places where a joint's angles are extreme, against dense samples of its columns: bolts of any direction, free play, housing ends. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columnsOf } from '../../src/table/columns.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { leverNamed, sketchText, type Sketch, type SketchEnd, type SketchJoint } from '../support/sketch.ts';
import { minus, type Vector } from '../support/vector.ts';
import { mechanismOf } from '../support/solveSketch.ts';

const STATIONS = 4001;
const WITHIN = 2 / (STATIONS - 1);
/** rad. */
const ROUNDING = 1e-12;

/** A linkage with bolts off their axes, housing ends aimed anywhere, and free play. */
const anyRigged = fc.tuple(anyMechanism(), fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 60, maxLength: 60 }));

function rigged(sketch: Sketch, draws: readonly number[]): string {
  let at = 0;
  const draw = (): number => draws[at++ % draws.length]!;
  const direction = (): string => `[${(draw() + 0.01).toFixed(3)}, ${(draw() + 0.02).toFixed(3)}, ${(draw() + 1.5).toFixed(3)}]`;
  const joints = sketch.joints.map((joint): SketchJoint => {
    const play = draw() > 0.6 ? Math.abs(draw()) : undefined;
    if (play === undefined) return joint;
    if (joint.kind === 'rod') return { ...joint, lost: play };
    return joint.kind === 'slot' ? { ...joint, play } : joint;
  });
  const aims = sketch.joints.flatMap((joint) => {
    if (joint.kind !== 'cable') return [];
    const aim = (end: SketchEnd, housing: Vector): Vector => {
      const lever = leverNamed(sketch, end.lever);
      const [x, y, z] = minus(lever.arms[end.part] ?? lever.pivot, housing);
      return [x + 20 * draw(), y + 20 * draw(), z + 20 * draw()];
    };
    return [...(joint.from && joint.leaves ? [aim(joint.from, joint.leaves)] : []), aim(joint.to, joint.enters)];
  });
  let end = 0;
  return sketchText({ ...sketch, joints })
    .replace(/\{at: (\[[^\]]*\])\}/g, (all, place: string) => (draw() > 0 ? `{at: ${place}, bolt: ${direction()}}` : all))
    .replace(
      /(leaves|enters): (\[[^\]]*\])/g,
      (_, key: string, place: string) => `${key}: ${place}, ${key}_along: [${aims[end++]!.join(', ')}]`,
    );
}

/** Maxima; and minima too where the figure is one smooth angle. */
function turnsOf(values: Float64Array, maximaOnly: boolean): readonly number[] {
  const turns: number[] = [];
  for (let i = 1; i < values.length - 1; i++) {
    const before = values[i]! - values[i - 1]!;
    const after = values[i + 1]! - values[i]!;
    const turns2 = before * after < 0 && (before > 0 || !maximaOnly);
    if (turns2 && Math.min(Math.abs(before), Math.abs(after)) > ROUNDING) turns.push(i / (values.length - 1));
  }
  return turns;
}

const ANGLES = ['transmission', 'drive', 'misalignment', 'lead'] as const;
type Angle = (typeof ANGLES)[number];

/** Linkages that are looked at for an angle: the first of the same ones. */
const linkagesFor = (key: Angle): number => (key === 'lead' ? 250 : 150);

/** What was found of an angle. */
interface Seen {
  turned: number;
  readonly faults: string[];
}

function lookAtAll(): Readonly<Record<Angle, Seen>> {
  const seen = {} as Record<Angle, Seen>;
  for (const key of ANGLES) seen[key] = { turned: 0, faults: [] };
  fc.sample(anyRigged, { numRuns: Math.max(...ANGLES.map(linkagesFor)), seed: 4242 }).forEach(([sketch, draws], index) => {
    const travel = solveTravel(mechanismOf(rigged(sketch, draws)));
    const columns = columnsOf(travel).flatMap((column) => {
      const key = ANGLES.find((each) => each === column.key);
      return key === undefined || column.joint === undefined || index >= linkagesFor(key) ? [] : [{ key, column }];
    });
    if (columns.length === 0) return;
    const values = columns.map(() => new Float64Array(STATIONS));
    // One pose serves every column.
    for (let i = 0; i < STATIONS; i++) {
      const pose = travel.poseAt(i / (STATIONS - 1));
      columns.forEach(({ column }, k) => (values[k]![i] = column.read(travel.build, pose)));
    }
    const places = travel.places.all;
    columns.forEach(({ key, column }, k) => {
      // The greater of two angles has a corner below where they cross; only its greatest value is ever asked for.
      const maximaOnly = key === 'misalignment' || key === 'lead';
      // Housing ends aimed far off the inner are searched where a profiled drum stands out of their plane.
      const told = key === 'lead' ? values[k]!.map((value) => (value < Math.PI / 3 ? value : NaN)) : values[k]!;
      for (const turn of turnsOf(told, maximaOnly)) {
        seen[key].turned++;
        if (!places.some((place) => Math.abs(place - turn) <= WITHIN)) seen[key].faults.push(`#${index} ${column.name} turns at ${turn}`);
      }
    });
  });
  return seen;
}

let looked: ReturnType<typeof lookAtAll> | undefined;

describe('places of angles', () => {
  test.each(ANGLES)('hold every turn of %s', { timeout: 120_000 }, (key) => {
    const { faults, turned } = (looked ??= lookAtAll())[key];
    expect(faults).toEqual([]);
    expect(turned).toBeGreaterThan(15);
  });
});

describe('a tilt between two stations', () => {
  test('is found where a bolt off its axis makes the rod tilt for less than a thousandth of the travel', () => {
    const travel = solveTravel(
      mechanismOf(`format: 1
levers:
  foot: {pivot: [0, 0]}
  crank: {pivot: [0, 100], arms: {pin: {radius: 10, angle: 33, bolt: [0.1, 0.2, 1]}}}
  rocker: {pivot: [90, 100, 4], arms: {pin: {radius: 40, angle: 80, bolt: [0, 0.3, 1]}}}
pedal: {lever: foot, opens: counterclockwise, travel: 90 deg}
couplings:
  gears: {from: foot, to: crank, ratio: 13.37}
rods:
  link: {from: crank.pin, to: rocker.pin, ends: {kind: rod_end}}
`),
    );
    const column = columnsOf(travel).find(({ name }) => name === 'link.misalignment')!;
    const tilt = (at: number): number => column.read(travel.build, travel.poseAt(at));
    const found = Math.max(...travel.places.all.map(tilt));
    let dense = 0;
    for (let i = 0; i <= 200_000; i++) dense = Math.max(dense, tilt(i / 200_000));
    expect(found).toBeGreaterThanOrEqual(dense);
    expect(found - dense).toBeLessThan(1e-7);
    const stations = Math.max(...Array.from({ length: 201 }, (_, i) => tilt(i / 200)));
    expect(found - stations).toBeGreaterThan(1e-6);
  });
});
