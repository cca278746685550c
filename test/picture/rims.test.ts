/** Drums: where the inner meets the rim, round or profiled, against what a taut string on a drum must do. */
import { describe, expect, it } from 'vitest';
import { rimMeetsInner } from '../../src/kinematics/drumRim.ts';
import type { Picture } from '../../src/protocol/picture.ts';
import { cross, dot, minus, plus, size, square, times, turned, unit, type Vector } from '../support/vector.ts';
import { expectSame, fileNamed, leverNamed, placeAt, shownOf } from './shown.ts';

const PROFILE = '[[0 deg, 20 mm], [25 deg, 22.5 mm], [60 deg, 24.5 mm], [80 deg, 25.5 mm]]';

/** A cable from a drum on the pedal to one on the shaft, about axes that lean apart. */
const twoDrums = (first: string, second: string): string => `format: 1
levers:
  foot:
    pivot: [0, 0, 4]
    axis: [0.1, -0.2, 1]
    drums: {sheave: {${first}, wraps: counterclockwise}}
  shaft:
    pivot: [260, 30, 12]
    axis: [0.2, 0.1, 1]
    drums: {snail: {${second}, wraps: clockwise}}
pedal: {lever: foot, opens: counterclockwise, travel: 62 deg}
cables:
  main: {from: foot.sheave, leaves: [70, 55, 9], enters: [190, 80, 20], to: shaft.snail, slack: 0.5 mm}
`;

interface End {
  readonly housing: Vector;
  readonly lever: Picture['levers'][number];
  /** By station. */
  readonly rim: readonly Vector[];
}

function endOf({ cables, levers, stations }: Picture, which: 'leaves' | 'enters'): End {
  const { housing, inner } = cables[0]![which]!;
  if (inner.kind !== 'drum') throw new Error('The cable ends at no drum');
  const rim = Array.from(stations, (_, i): Vector => [inner.rim[3 * i]!, inner.rim[3 * i + 1]!, inner.rim[3 * i + 2]!]);
  return { housing, lever: levers[inner.lever]!, rim };
}

/** The free inner in the plane square to the axis in which the drum lies: from the housing end, moved into it, to the rim. */
function flatInner({ housing, lever: { axis, pivot } }: End, rim: Vector): { readonly e: Vector; readonly from: Vector } {
  const from = plus(pivot, square(minus(housing, pivot), axis));
  return { e: minus(rim, from), from };
}

/** How far the line of the inner passes from the axis, m. */
function distanceFromAxis(end: End, rim: Vector): number {
  const { e, from } = flatInner(end, rim);
  return size(cross(minus(from, end.lever.pivot), unit(e)));
}

describe('a round drum', () => {
  const { picture } = shownOf(twoDrums('radius: 30 mm', 'radius: 22 mm'));

  it('meets its inner at its radius, square to it, on the side on which a pull turns it the way it wraps', () => {
    for (const [which, radius, way] of [
      // The pedal takes cable in, so its inner pulls it back, clockwise; the shaft's drum wraps clockwise.
      ['leaves', 0.03, -1],
      ['enters', 0.022, -1],
    ] as const) {
      const end = endOf(picture, which);
      for (const rim of end.rim) {
        const arm = minus(rim, end.lever.pivot);
        const { e } = flatInner(end, rim);
        expect(Math.abs(size(arm) - radius)).toBeLessThan(1e-12);
        expect(Math.abs(dot(arm, end.lever.axis))).toBeLessThan(1e-12);
        expect(Math.abs(dot(arm, unit(e)))).toBeLessThan(1e-12);
        expect(Math.sign(dot(end.lever.axis, cross(arm, times(e, -1))))).toBe(way);
      }
    }
  });

  it('has a mark on its rim', () => {
    const { drums, pivot, axis } = leverNamed(picture.levers, 'shaft');
    for (const angle of [0, 1]) {
      const arm = minus(placeAt(drums[0]!.mark, angle), pivot);
      expect(size(arm)).toBeCloseTo(0.022, 12);
      expect(dot(arm, axis)).toBeCloseTo(0, 12);
    }
  });
});

describe('a profiled drum', () => {
  const text = twoDrums('radius: 30 mm', `profile: ${PROFILE}`);
  const { picture, answers } = shownOf(text);
  const end = endOf(picture, 'enters');

  it('keeps its inner at the effective radius from the axis where the file gives that', () => {
    const { poseAt, build } = answers.study!.travel;
    const shaft = answers.study!.travel.mechanism.leverIndex.get('shaft')!;
    const openings = [0, 25, 60, 80].map((degrees) => (degrees * Math.PI) / 180);
    const radii = [0.02, 0.0225, 0.0245, 0.0255];
    expect(build.mechanism.senses[shaft]).toBe(-1);
    picture.stations.forEach((at, i) => {
      const opening = -poseAt(at).rotation[shaft]!;
      const radius = distanceFromAxis(end, end.rim[i]!);
      const k = openings.findIndex((each) => each > opening);
      // Monotone between its points, and exactly theirs on them.
      if (k > 0) {
        expect(radius).toBeGreaterThanOrEqual(radii[k - 1]! - 1e-12);
        expect(radius).toBeLessThanOrEqual(radii[k]! + 1e-12);
      }
    });
    expect(distanceFromAxis(end, end.rim[0]!)).toBeCloseTo(0.02, 12);
  });

  /**
   * A string neither stretches nor slips: what goes into the housing is what leaves the rim, less what the free stretch grows by.
   *     Δpassed = Δ(arc of the rim) − Δ(free length)
   * The arc is summed by chords of a thousand fine stations; passed is the pedal's pull less slack, by the round drum's own radius.
   */
  it('pays out as much cable as its rim is long', () => {
    const fine = Array.from({ length: 4001 }, (_, i) => 0.05 + (0.9 * i) / 4000);
    const figures = (column: string): number[] => answers.table(fine, [column]).columns[0]!.values.map((value) => value ?? NaN);
    const [rotations, pulls] = [figures('shaft.rotation'), figures('main.pull')];
    const { contactAt } = contacts(answers);
    let arc = 0;
    let before: Vector | undefined;
    const frees: number[] = [];
    fine.forEach((at, i) => {
      const contact = contactAt(at);
      const angle = (rotations[i]! * Math.PI) / 180;
      const onLever = turned(minus(contact, end.lever.pivot), end.lever.axis, -angle);
      if (before !== undefined) arc += size(minus(onLever, before));
      before = onLever;
      frees.push(size(flatInner(end, contact).e));
    });
    const passed = (pulls.at(-1)! - pulls[0]!) * 1e-3;
    expect(Math.max(...rotations.map((angle) => -angle))).toBeLessThan(80);
    expect(passed).toBeGreaterThan(0.02);
    expect(Math.abs(arc - (frees.at(-1)! - frees[0]!) - passed)).toBeLessThan(2e-8);
  });

  it('is drawn by the rim that its inner touches', () => {
    const { form } = end.lever.drums[0]!;
    if (form.kind !== 'profile') throw new Error('The drum has no profile');
    const corners = form.rim.map((at) => placeAt(at, 0));
    expect(corners.length).toBeGreaterThan(20);
    picture.stations.forEach((_, i) => {
      const touched = plus(end.lever.pivot, turned(minus(end.rim[i]!, end.lever.pivot), end.lever.axis, -end.lever.rotation[i]!));
      // Within what a chord of 4.4° leaves of an arc of 26 mm: r (1 − cos 2.2°) = 0.02 mm.
      expect(distanceToLine(touched, corners)).toBeLessThan(2e-5);
    });
  });

  it('of one radius is a round drum', () => {
    const flat = shownOf(twoDrums('radius: 30 mm', 'profile: [[0 deg, 22 mm], [40 deg, 22 mm], [80 deg, 22 mm]]')).picture;
    const round = endOf(shownOf(twoDrums('radius: 30 mm', 'radius: 22 mm')).picture, 'enters');
    const same = endOf(flat, 'enters');
    const { form } = same.lever.drums[0]!;
    if (form.kind !== 'profile') throw new Error('The drum has no profile');
    for (const at of form.rim) expect(size(minus(placeAt(at, 0), same.lever.pivot))).toBeCloseTo(0.022, 12);
    expectSame(same.rim[0]!, round.rim[0]!, 1e-12);
    expectSame(same.rim.at(-1)!, round.rim.at(-1)!, 1e-9);
  });

  it('without a cable is drawn for one that comes from far away', () => {
    const { levers } = shownOf(
      'format: 1\nlevers:\n  a: {pivot: [0, 0], drums: {d: {profile: [[0, 20], [90, 30]], wraps: clockwise}}}\n',
    ).picture;
    const { form } = levers[0]!.drums[0]!;
    if (form.kind !== 'profile') throw new Error('The drum has no profile');
    // By a support function p(θ) = 20 + 20 θ/π mm, whose envelope is at √(p² + p′²), p′ = 20/π mm: at both ends of the profile.
    const at = (i: number): number => 1e3 * size(placeAt(form.rim.at(i)!, 0));
    expect(at(0)).toBeCloseTo(Math.hypot(20, 20 / Math.PI), 9);
    expect(at(-1)).toBeCloseTo(Math.hypot(30, 20 / Math.PI), 9);
  });
});

it('draws no rim where the housing end lies within the drum', () => {
  const text = fileNamed('four-barrel').replace('enters: [448, 186]', 'enters: [512, 150]');
  const { picture } = shownOf(text);
  expect(endOf(picture, 'enters').rim.every((place) => place.every(Number.isNaN))).toBe(true);
});

/** The contact at any pedal travel, by a picture of its own: stations are those of the answers, so the foot is moved there instead. */
function contacts(answers: ReturnType<typeof shownOf>['answers']): { contactAt(travel: number): Vector } {
  const { travel } = answers.study!;
  const joint = travel.mechanism.cables[0]!;
  return {
    contactAt: (at) => rimMeetsInner({ joint, build: travel.build, which: 'enters' }, travel.poseAt(at))!,
  };
}

function distanceToLine(place: Vector, corners: readonly Vector[]): number {
  return Math.min(
    ...corners.slice(1).map((to, i) => {
      const from = corners[i]!;
      const along = minus(to, from);
      const share = Math.min(1, Math.max(0, dot(minus(place, from), along) / dot(along, along)));
      return size(minus(place, plus(from, times(along, share))));
    }),
  );
}
