/**
 * Where everything stands in the picture, against a second method: drawn places turned about their axes by Rodrigues' formula, with the
 * rotation that the table gives.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyMechanism } from '../support/mechanisms.ts';
import { drivenLever, leverNamed as sketched, sketchText, type Sketch, type SketchLever } from '../support/sketch.ts';
import { dot, minus, plus, size, square, times, turned, unit, type Vector } from '../support/vector.ts';
import { expectSame, FILES, fiveOf, leverNamed, placeAt, shownOf } from './shown.ts';

const metres = (place: Vector): Vector => times(place, 1e-3);

/** Rotation of a lever at a station by the table, rad; NaN where it has none. */
function rotations({ answers, picture }: ReturnType<typeof shownOf>, lever: string, station: number): number {
  const [column] = answers.table([picture.stations[station]!], [`${lever}.rotation`]).columns;
  const degrees = column?.values[0];
  return degrees === null || degrees === undefined ? NaN : (degrees * Math.PI) / 180;
}

/** Drawn place of an arm turned as its lever stands, m. */
const turnedArm = ({ pivot, axis }: SketchLever, arm: Vector, rotation: number): Vector =>
  metres(plus(pivot, turned(minus(arm, pivot), unit(axis), rotation)));

function checkSketch(sketch: Sketch): void {
  const shown = shownOf(sketchText(sketch));
  const { levers, rods, slots, cables, stations } = shown.picture;
  expect(new Set(levers.map(({ name }) => name))).toEqual(new Set(sketch.levers.map(({ name }) => name)));
  for (const station of fiveOf(stations)) {
    for (const lever of sketch.levers) {
      const drawn = leverNamed(levers, lever.name);
      const rotation = rotations(shown, lever.name, station);
      const own = drawn.rotation[station]!;
      expect(Number.isNaN(own)).toBe(Number.isNaN(rotation));
      if (Number.isNaN(rotation)) continue;
      expectSame(drawn.pivot, metres(lever.pivot));
      expectSame(drawn.axis, unit(lever.axis));
      for (const [name, arm] of Object.entries(lever.arms)) {
        const at = drawn.arms.find((each) => each.name === name)!.at;
        expectSame(placeAt(at, own), turnedArm(lever, arm, rotation));
      }
    }
    for (const joint of sketch.joints) {
      if (joint.kind === 'coupling') continue;
      const driven = levers.find(({ name }) => name === drivenLever(joint))!;
      if (Number.isNaN(driven.rotation[station]!)) continue;
      const place = ({ lever, at }: { readonly lever: number; readonly at: readonly number[] }): Vector =>
        placeAt(at, levers[lever]!.rotation[station]!);
      if (joint.kind === 'rod') {
        const { from, to } = rods.find(({ name }) => name === joint.name)!;
        const drawn = size(
          minus(sketched(sketch, joint.to.lever).arms[joint.to.part]!, sketched(sketch, joint.from.lever).arms[joint.from.part]!),
        );
        // It keeps its length wherever it is assembled.
        if (joint.lost === undefined)
          expect(Math.abs(size(minus(place(to), place(from))) - 1e-3 * (joint.length ?? drawn))).toBeLessThan(1e-9);
      }
      if (joint.kind === 'slot') {
        const { pin, fork } = slots.find(({ name }) => name === joint.name)!;
        const [from, to] = [fork.from, fork.to].map((at) => place({ lever: fork.lever, at })) as [Vector, Vector];
        const { axis } = levers[fork.lever]!;
        const along = unit(minus(to, from));
        const off = square(minus(place(pin), from), axis);
        // In the fork's plane the pin stands on its centreline, between its ends.
        if (joint.play === undefined) expect(size(square(off, along))).toBeLessThan(1e-9);
        expect(dot(off, along)).toBeGreaterThan(0);
        expect(dot(off, along)).toBeLessThan(size(minus(to, from)));
      }
      if (joint.kind === 'cable') {
        const { enters, leaves } = cables.find(({ name }) => name === joint.name)!;
        expectSame(enters.housing, metres(joint.enters));
        expect(leaves === undefined).toBe(joint.leaves === undefined);
        if (leaves !== undefined && joint.leaves !== undefined) expectSame(leaves.housing, metres(joint.leaves));
      }
    }
  }
}

describe('places in the picture', () => {
  it('are those of the drawn linkage, turned as the table says, in random planar linkages', () => {
    fc.assert(fc.property(anyMechanism({ only: 'planar', stops: true }), checkSketch), { numRuns: 60 });
  });

  it('are so about tilted axes too', () => {
    fc.assert(fc.property(anyMechanism({ only: 'spatial', stops: true }), checkSketch), { numRuns: 60 });
  });

  it.each(FILES)('of $name follow from the radius, angle and offset in the file', ({ text }) => {
    const shown = shownOf(text);
    const { definition } = shown.answers;
    const { levers, stations } = shown.picture;
    let seen = 0;
    for (const lever of definition!.levers) {
      const drawn = leverNamed(levers, lever.name);
      const pivot: Vector = [lever.pivot.x.nominal, lever.pivot.y.nominal, lever.pivot.z?.nominal ?? 0];
      expectSame(drawn.pivot, pivot);
      const given = lever.axis?.kind === 'direction' ? lever.axis.direction : undefined;
      const axis = unit(given === undefined ? [0, 0, 1] : [given.x.nominal, given.y.nominal, given.z?.nominal ?? 0]);
      const reference = unit(square([1, 0, 0], axis));
      for (const { name, position } of lever.arms) {
        if (position.kind !== 'polar') continue;
        const arm = times(turned(reference, axis, position.angle.nominal), position.radius.nominal);
        for (const station of fiveOf(stations)) {
          const rotation = rotations(shown, lever.name, station);
          if (Number.isNaN(rotation)) {
            expect(drawn.rotation[station]).toBeNaN();
            continue;
          }
          const wanted = plus(plus(pivot, times(axis, position.offset?.nominal ?? 0)), turned(arm, axis, rotation));
          expectSame(placeAt(drawn.arms.find((each) => each.name === name)!.at, drawn.rotation[station]!), wanted);
          seen++;
        }
      }
    }
    expect(seen).toBeGreaterThanOrEqual(8);
  });

  it('keep a rod whose other end cannot be assembled out of the figures', () => {
    const { picture } = shownOf(FILES.find(({ name }) => name.startsWith('binding'))!.text);
    const shaft = leverNamed(picture.levers, 'shaft');
    const { lastSolved } = picture.pedal;
    // Where the rod lies along the arm of the shaft: |pin − shaft| = rod + arm, by the engine's own finding a dead centre at 54.6 %.
    expect(lastSolved).toBeCloseTo(0.5457621758, 8);
    picture.stations.forEach((at, i) => expect(Number.isNaN(shaft.rotation[i]!)).toBe(at > lastSolved!));
  });
});
