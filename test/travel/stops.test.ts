/** Open stops: which lever meets its own first, exactly where, and what goes on after. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { groupsBehind, settleStops } from '../../src/travel/stops.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import { solveSketch, solveText } from '../support/solveSketch.ts';

const DEGREE = Math.PI / 180;

describe('open stops', () => {
  test('hold every lever that has one, and the one that meets it first stands on it to 1e-9 rad', { timeout: 60_000 }, () => {
    const faults: string[] = [];
    let met = 0;
    fc.sample(anyMechanism({ stops: true }), { numRuns: 600, seed: 12 }).forEach((sketch, index) => {
      const { contacts, mechanism, build, poseAt } = solveSketch(sketch);
      const openingOf = (lever: number, travel: number): number => mechanism.senses[lever]! * poseAt(travel).rotation[lever]!;
      const stopOf = (lever: number): number | undefined => {
        const stop = mechanism.levers[lever]!.openStop;
        return stop && build.parameters[stop.parameter];
      };
      for (const { lever, travel } of contacts) {
        met++;
        const miss = Math.abs(openingOf(lever, travel) - stopOf(lever)!);
        if (!(miss <= 1e-9)) faults.push(`#${index} ${mechanism.levers[lever]!.name} meets its stop at ${travel} but for ${miss}`);
      }
      for (const { index: lever, name } of mechanism.levers) {
        const stop = stopOf(lever);
        if (stop === undefined) continue;
        for (let i = 0; i <= 100; i++) {
          const opening = openingOf(lever, i / 100);
          // Past a stretch that cannot be assembled nothing was carried on from before.
          if (Number.isNaN(opening)) break;
          if (opening > stop + 1e-9) faults.push(`#${index} ${name} is at ${opening}, beyond its stop at ${stop}, at ${i} %`);
        }
      }
    });
    expect(faults).toEqual([]);
    expect(met).toBeGreaterThan(200);
  });

  test('freeze their group, and the cable takes the rest of the travel as stretch while another cable goes on', () => {
    const { contacts, poseAt, lever } = solveText(`format: 1
levers:
  foot: {pivot: [0, 0], drums: {one: {radius: 40, wraps: clockwise}, two: {radius: 40, wraps: clockwise}}}
  first: {pivot: [200, 0], drums: {seat: {radius: 20, wraps: clockwise}}, stops: {open: 30 deg}}
  geared: {pivot: [300, 0], stops: {open: 10 deg}}
  second: {pivot: [200, 200], drums: {seat: {radius: 20, wraps: counterclockwise}}}
pedal: {lever: foot, opens: clockwise, travel: 20 deg}
cables:
  one: {from: foot.one, leaves: [50, 50], enters: [150, 50], to: first.seat}
  two: {from: foot.two, leaves: [50, 60], enters: [150, 200], to: second.seat}
couplings:
  gears: {from: first, to: geared, ratio: -0.5}
`);
    // `first` turns twice as far as the pedal, `geared` as far: it meets its stop at 10 of 20 degrees, before `first` is at 30.
    expect(contacts.map((contact) => contact.lever)).toEqual([lever('geared')]);
    expect(contacts[0]?.travel).toBeCloseTo(0.5, 12);
    const open = poseAt(1);
    expect(open.rotation[lever('first')]).toBeCloseTo(-20 * DEGREE, 12);
    expect(open.rotation[lever('geared')]).toBeCloseTo(10 * DEGREE, 12);
    expect(open.rotation[lever('second')]).toBeCloseTo(40 * DEGREE, 12);
    expect(open.stretch[0]).toBeCloseTo(0.04 * 10 * DEGREE, 13);
    expect(open.stretch[1]).toBe(0);
    expect(open.rate[lever('geared')]).toBe(0);
  });

  test('stop the pedal where there is no cable upstream, and no row lies beyond', () => {
    const { contacts, poseAt, lever, build } = solveText(`format: 1
levers:
  foot: {pivot: [0, 0]}
  shaft: {pivot: [100, 0], stops: {open: 15 deg}}
pedal: {lever: foot, opens: clockwise, travel: 20 deg}
couplings:
  gears: {from: foot, to: shaft, ratio: -1}
`);
    expect(contacts[0]?.travel).toBeCloseTo(0.75, 13);
    expect(build.bounds.pedalStop).toBeCloseTo(15 * DEGREE, 13);
    expect(poseAt(0.7499).rotation[lever('shaft')]).toBeCloseTo(0.7499 * 20 * DEGREE, 12);
    expect([...poseAt(0.7501).rotation]).toEqual([NaN, NaN]);
  });
});

test('settling one group anew, and what is behind it, leaves all stops as settling the whole does', () => {
  let groups = 0;
  for (const sketch of fc.sample(anyMechanism({ stops: true, levers: 5 }), { numRuns: 150, seed: 31 })) {
    const { build, mechanism } = solveSketch(sketch);
    const whole = { pedalStop: build.bounds.pedalStop, cableStop: [...build.bounds.cableStop] };
    for (const { index, cable } of mechanism.groups) {
      if (cable === undefined) build.bounds.pedalStop = NaN;
      else build.bounds.cableStop[cable] = NaN;
      settleStops(build, undefined, groupsBehind(mechanism, index));
      expect({ pedalStop: build.bounds.pedalStop, cableStop: [...build.bounds.cableStop] }).toEqual(whole);
      groups++;
    }
  }
  expect(groups).toBeGreaterThan(200);
});
