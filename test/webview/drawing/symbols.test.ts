import { describe, expect, it } from 'vitest';
import { sceneOf } from '../../../webview/drawing/scene.ts';
import { shownOf } from '../../support/drawingPage.ts';
import { markOf, noted } from '../../support/noted.ts';

const TEXT = `format: 1
levers:
  crank:
    pivot: [0, 0]
    arms:
      out: {radius: 36 mm, angle: 100 deg}
      tang: {at: [22, -14]}
    drums: {quadrant: {radius: 22 mm, wraps: clockwise}}
    width: 12 mm
  shaft:
    pivot: [95, 14]
    arms:
      arm: {radius: 36 mm, angle: 100 deg}
      spring_arm: {radius: 26 mm, angle: -60 deg}
    stops: {closed: 0 deg, open: 70 deg}
  idler:
    pivot: [40, -40]
    arms: {end: {radius: 30 mm, angle: -20 deg}}
  rotor:
    pivot: [150, -20]
pedal: {cable: main, pull: 20 mm}
cables: {main: {enters: [-90, 80], enters_along: [1, -0.8], to: crank.quadrant, slack: 2 mm}}
rods: {link: {from: crank.out, to: shaft.arm, width: 8 mm}}
slots: {link_fork: {pin: crank.tang, fork: idler, drives: fork, angle: 124.7 deg, offset: 0 mm, reach: [12 mm, 60 mm]}}
couplings: {drive: {from: shaft, to: rotor, ratio: -1}}
sensors: {tps: {lever: rotor, at_closed: 14 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V], supply: 5 V, bits: 10}}
springs:
  first: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}
  second: {from: [140, -60], to: shaft.spring_arm, rate: 0.9 N/mm, free_length: 46 mm}
keep_out: {rail: {circle: [40, 90], radius: 11 mm, clearance: 3 mm}}
`;

const { picture } = shownOf(TEXT);
const scene = sceneOf(picture, 'front', undefined);
const at = (end: string, travel: number) => noted(markOf(scene, end), picture, travel);
const rotationOf = (name: string, station: number) => picture.levers.find((lever) => lever.name === name)!.rotation[station]!;
const LAST = picture.stations.length - 1;

/** Signed angle from one way to another, y down on the paper made y up. */
function turned([x1, y1]: readonly [number, number], [x2, y2]: readonly [number, number]): number {
  return Math.atan2(-(x1 * y2 - y1 * x2), x1 * x2 + y1 * y2);
}

describe('symbols', () => {
  it('stand in a linkage that moves all the way', () => {
    expect(picture.levers.flatMap(({ rotation }) => [...rotation])).not.toContain(NaN);
    expect(Math.abs(rotationOf('shaft', LAST))).toBeGreaterThan(0.5);
  });

  it('let the cable reach from its housing to the rim of its drum, and hang only while there is slack', () => {
    const slack = at('cable:main/inner', 0);
    expect(slack.d).toMatch(/^M-90 -80Q/);
    const tight = at('cable:main/inner', 0.9);
    expect(tight.d).toMatch(/^M-90 -80L/);
    for (const { figures } of [slack, tight]) {
      const [x, y] = figures.slice(-2) as [number, number];
      // Radius 22 mm about [0, 0], and the cable touches it.
      expect(Math.hypot(x, y)).toBeCloseTo(22, 2);
      expect(Math.abs(x * (x + 90) + y * (y + 80)) / Math.hypot(x + 90, y + 80)).toBeLessThan(0.05);
    }
  });

  it('turn the needle with its lever', () => {
    const tip = (travel: number): [number, number] => {
      const [x, y] = at('tps/needle', travel).figures.slice(-2) as [number, number];
      return [x - 150, y - 20];
    };
    expect(turned(tip(0), tip(1))).toBeCloseTo(rotationOf('rotor', LAST) - rotationOf('rotor', 0), 3);
    // 14° of a range from 0° to 110°, whose middle points up.
    const fromUp = turned([0, -1], tip(0));
    expect(Math.abs(fromUp)).toBeCloseTo(((55 - 14) * Math.PI) / 180, 3);
  });

  it('wind the inner end of a coiled spring up with its shaft, and leave its foot', () => {
    const ends = (travel: number) => {
      const { figures } = at('first/coil', travel);
      return { foot: figures.slice(0, 2), inner: [figures.at(-2)! - 95, figures.at(-1)! + 14] as [number, number] };
    };
    expect(ends(1).foot).toEqual(ends(0).foot);
    expect(turned(ends(0).inner, ends(1).inner)).toBeCloseTo(rotationOf('shaft', LAST) - rotationOf('shaft', 0), 2);
  });

  it('stretch a spring from its anchor to its pin', () => {
    for (const travel of [0, 1]) {
      const { figures } = at('second/coil', travel);
      expect(figures.slice(0, 2)).toEqual([140, 60]);
      const pin = at('lever:shaft/pin/spring_arm', travel).circle!;
      expect(figures.at(-2)).toBeCloseTo(pin[0], 2);
      expect(figures.at(-1)).toBeCloseTo(pin[1], 2);
    }
  });

  it('keep the pin in its slot', () => {
    for (const travel of [0, 0.5, 1]) {
      const [x, y] = at('lever:crank/pin/tang', travel).circle!;
      const f = at('link_fork/groove', travel).figures;
      // A bar with round ends: its two long sides, each from its first to its second point.
      const [ax, ay, bx, by] = [(f[0]! + f[11]!) / 2, (f[1]! + f[12]!) / 2, (f[2]! + f[9]!) / 2, (f[3]! + f[10]!) / 2];
      const off = ((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / Math.hypot(bx - ax, by - ay);
      expect(Math.abs(off)).toBeLessThan(0.05);
    }
  });

  it('put the stops where the arm is when it is closed and open', () => {
    // Opening 70° from 100°, on the side to which the shaft opens; the tick stands 2 px on.
    for (const [name, opening] of [
      ['closed', 0],
      ['open', 70],
    ] as const) {
      const [x1, y1, x2, y2] = at(`lever:shaft/stop/${name}`, 0).figures as [number, number, number, number];
      const middle: [number, number] = [(x1 + x2) / 2 - 95, (y1 + y2) / 2 + 14];
      const sense = picture.levers.find((lever) => lever.name === 'shaft')!.sense;
      const drawn = ((100 + sense * opening) * Math.PI) / 180;
      const off = turned([Math.cos(drawn), -Math.sin(drawn)], middle) * Math.hypot(...middle);
      expect(Math.abs(off)).toBeCloseTo(2, 1);
      expect(Math.sign(off)).toBe(name === 'open' ? sense : -sense);
    }
  });

  it('say what of them is schematic', () => {
    const notes = new Map(scene.symbols.map(({ key, note }) => [key, note]));
    expect(notes.get('cable:main')).toMatch(/housing is schematic/);
    expect(notes.get('spring:first')).toMatch(/schematic/);
    expect(notes.get('sensor:tps')).toMatch(/schematic/);
    expect(notes.get('rod:link')).toBeUndefined();
  });
});
