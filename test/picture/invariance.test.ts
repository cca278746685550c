/** A linkage turned and moved as a whole is drawn turned and moved, and has the same charts. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Shown } from '../../src/protocol/messages.ts';
import { solve } from '../../src/solve.ts';
import { closureOf, jacobian, magnification } from '../support/closure.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { sketchText, type Sketch } from '../support/sketch.ts';
import { sensesOf } from '../support/solveSketch.ts';
import { scaled, turnedAndMoved } from '../support/transform.ts';
import { minus, plus, size, times, turned, unit, type Vector } from '../support/vector.ts';
import { expectSame, leverNamed, placeAt, shownOf } from './shown.ts';

const LINKAGES = 40;
/** Pedal travels that every picture has among its stations. */
const STATIONS = [0, 0.1, 0.5, 0.75];
/** Beyond this magnification a linkage stands at its dead centre, where rounding decides whether it can be assembled. */
const AT_DEAD_CENTRE = 1e5;
/** m: 1e-12, which turning and writing the figures once more takes of them, magnified, on an arm of 300 mm at most. */
const SAME_PLACE = 1e-7;
/** deg: the same on the angle, and near 0° and 90° its square root on a sine. */
const SAME_ANGLE = 1e-3;

/** Those of the stations at which the linkage stands well off its dead centres. */
function soundStations(sketch: Sketch): readonly number[] {
  const { study } = solve(sketchText(sketch));
  const { mechanism, poseAt } = study!.travel;
  const closure = closureOf(sketch, sensesOf(mechanism));
  return STATIONS.filter((travel) => {
    const { rotation } = poseAt(travel);
    const rotations = Object.fromEntries(mechanism.levers.map(({ name, index }) => [name, rotation[index]!]));
    return magnification(jacobian(closure, rotations, travel)) <= AT_DEAD_CENTRE;
  });
}

/** Pins, housing ends and rims at a pedal travel, by name. */
function placesOf({ picture }: Shown, travel: number): ReadonlyMap<string, Vector> {
  const { levers, cables, stations } = picture;
  const station = stations.indexOf(travel);
  const places = new Map<string, Vector>();
  for (const { name, arms, rotation, pivot } of levers) {
    places.set(name, pivot);
    if (!Number.isNaN(rotation[station]!)) for (const arm of arms) places.set(`${name}.${arm.name}`, placeAt(arm.at, rotation[station]!));
  }
  for (const { name, leaves, enters } of cables) {
    for (const [key, end] of Object.entries({ leaves, enters })) {
      if (end === undefined) continue;
      places.set(`${name}.${key}`, end.housing);
      if (end.inner.kind !== 'drum') continue;
      const [x, y, z] = end.inner.rim.subarray(3 * station, 3 * station + 3);
      if (!Number.isNaN(x!)) places.set(`${name}.${key}.rim`, [x!, y!, z!]);
    }
  }
  return places;
}

function checkMoved(change: (sketch: Sketch) => Sketch, move: (place: Vector) => Vector): void {
  let compared = 0;
  for (const sketch of fc.sample(anyMechanism(), { numRuns: LINKAGES, seed: 31 })) {
    const [before, after] = [shownOf(sketchText(sketch)), shownOf(sketchText(change(sketch)))];
    for (const travel of soundStations(sketch)) {
      const [places, others] = [placesOf(before, travel), placesOf(after, travel)];
      expect([...others.keys()]).toEqual([...places.keys()]);
      for (const [name, place] of places) expectSame(others.get(name)!, move(place), SAME_PLACE);
      compared += places.size;
    }
  }
  expect(compared).toBeGreaterThan(1000);
}

it('is drawn turned and moved', () => {
  const axis: Vector = [0.3, -0.5, 0.8];
  const by: Vector = [31, -47, 12];
  checkMoved(
    (sketch) => turnedAndMoved(sketch, axis, 0.7, by),
    (place) => plus(turned(place, unit(axis), 0.7), times(by, 1e-3)),
  );
});

it('is drawn of another size', () => {
  checkMoved(
    (sketch) => scaled(sketch, 1.25),
    (place) => times(place, 1.25),
  );
});

it('has the same angles in its charts', () => {
  let compared = 0;
  for (const sketch of fc.sample(anyMechanism(), { numRuns: LINKAGES, seed: 32 })) {
    const moved = turnedAndMoved(sketch, [0.3, -0.5, 0.8], 0.7, [31, -47, 12]);
    const [before, after] = [shownOf(sketchText(sketch)), shownOf(sketchText(moved))];
    for (const { column, values } of before.charts.find(({ id }) => id === 'angles')?.curves ?? []) {
      const other = after.charts.find(({ id }) => id === 'angles')?.curves.find((curve) => curve.column === column);
      for (const travel of soundStations(sketch)) {
        const [one, same] = [values[before.picture.stations.indexOf(travel)]!, other!.values[after.picture.stations.indexOf(travel)]!];
        expect(Number.isNaN(one)).toBe(Number.isNaN(same));
        if (Number.isNaN(one)) continue;
        expect(Math.abs(one - same), column).toBeLessThan(SAME_ANGLE);
        compared++;
      }
    }
  }
  expect(compared).toBeGreaterThan(300);
});

it('draws a lever on its own where its pivot is', () => {
  const { levers } = shownOf('format: 1\nlevers: {a: {pivot: [12, 34, 56]}}\n').picture;
  const { pivot } = leverNamed(levers, 'a');
  expect(size(minus(pivot, [0.012, 0.034, 0.056]))).toBeLessThan(1e-15);
});
