/**
 * Throttles that touch something by construction, each beside one that passes by a tenth of a millimetre or less: the first are caught, the
 * second not accused.
 */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';

const CODES: readonly string[] = ['touches-keep-out', 'parts-touch'];

const base = (keepOut: string, more = ''): string => `format: 1
levers:
  crank: {pivot: [0, 0], width: 10 mm, arms: {out: {radius: 40 mm, angle: 110 deg}}, drums: {wheel: {radius: 22 mm, wraps: counterclockwise}}}
  shaft: {pivot: [100, 0], width: 8 mm, arms: {arm: {radius: 36 mm, angle: 110 deg}}}
${more}pedal: {cable: main, pull: 24 mm}
cables: {main: {enters: [-60, -40], to: crank.wheel}}
rods: {link: {from: crank.out, to: shaft.arm, width: 6 mm}}
${keepOut === '' ? '' : `keep_out: {thing: ${keepOut}}\n`}`;

/** The crank turns by 24 mm / 22 mm: from 110° on to 172.5°. */
const ANGLE = (110 * Math.PI) / 180 + 24 / 22;
const polar = (radius: number, angle: number): string => `[${radius * Math.cos(angle)}, ${radius * Math.sin(angle)}]`;
const half = (110 * Math.PI) / 180 + 12 / 22;
const crankPin = (angle: number) => [40 * Math.cos(angle), 40 * Math.sin(angle)] as const;
const [endX, endY] = crankPin(ANGLE);

/** Something that touches, and what it is where it passes. */
const CASES: readonly (readonly [name: string, touching: string, passing: string, part: string])[] = [
  [
    'a post in the way of the tip',
    base(`{circle: ${polar(48.95, half)}, radius: 4 mm}`),
    base(`{circle: ${polar(49.05, half)}, radius: 4 mm}`),
    'crank',
  ],
  [
    'a post that the arm meets with its side at the end',
    base(`{circle: ${polar(25, ANGLE + Math.asin(6.95 / 25))}, radius: 2 mm}`),
    base(`{circle: ${polar(25, ANGLE + Math.asin(7.05 / 25))}, radius: 2 mm}`),
    'crank',
  ],
  [
    'a wall that the tip comes to',
    base(`{polygon: [[${endX - 4.95}, -30], [${endX - 4.95}, 60], [-90, 60], [-90, -30]]}`),
    base(`{polygon: [[${endX - 5.05}, -30], [${endX - 5.05}, 60], [-90, 60], [-90, -30]]}`),
    'crank',
  ],
  [
    'the corner of a bracket',
    base(`{polygon: [[0, 21.95], [4, 40], [-4, 40]], layer: 0}`)
      .replace('angle: 110 deg}}, drums', 'angle: 250 deg}}, drums')
      .replace('rods:', '#'),
    base(`{polygon: [[0, 22.05], [4, 40], [-4, 40]], layer: 0}`)
      .replace('angle: 110 deg}}, drums', 'angle: 250 deg}}, drums')
      .replace('rods:', '#'),
    'crank',
  ],
  ['a pipe on the drum', base('{circle: [0, -31.95], radius: 10 mm}'), base('{circle: [0, -32.05], radius: 10 mm}'), 'crank'],
  [
    'the lip of a channel that the tip dips into',
    base(
      `{polygon: [[${endX + 1}, ${endY - 8}], [${endX + 1}, ${endY - 4.95}], [${endX - 9}, ${endY - 4.95}], [${endX - 9}, ${endY + 8}], [${endX - 12}, ${endY + 8}], [${endX - 12}, ${endY - 8}]]}`,
    ),
    base(
      `{polygon: [[${endX + 1}, ${endY - 8}], [${endX + 1}, ${endY - 5.8}], [${endX - 9}, ${endY - 5.8}], [${endX - 9}, ${endY + 8}], [${endX - 12}, ${endY + 8}], [${endX - 12}, ${endY - 8}]]}`,
    ),
    'crank',
  ],
  ['a wire in the way of the rod', base('{circle: [40, 39], radius: 0.5 mm}'), base('{circle: [40, 39.2], radius: 0.5 mm}'), 'link'],
  [
    'a lever on the same layer',
    base('', '  still: {pivot: [-10, -31.95], width: 20 mm, arms: {end: {radius: 20 mm, angle: 0 deg}}}\n'),
    base('', '  still: {pivot: [-10, -32.05], width: 20 mm, arms: {end: {radius: 20 mm, angle: 0 deg}}}\n'),
    'crank',
  ],
  [
    'an outline on the same layer',
    base('', '  still: {pivot: [0, -60], outline: [[-5, -21.95], [5, -21.95], [0, -60]]}\n'),
    base('', '  still: {pivot: [0, -60], outline: [[-5, -22.05], [5, -22.05], [0, -60]]}\n'),
    'crank',
  ],
  [
    'a needle between two stations',
    base(`{circle: ${polar(45.004, 110 * (Math.PI / 180) + (24 / 22) * 0.61803)}, radius: 0.005 mm}`),
    base(`{circle: ${polar(45.006, 110 * (Math.PI / 180) + (24 / 22) * 0.61803)}, radius: 0.005 mm}`),
    'crank',
  ],
];

describe('a throttle that touches', () => {
  it.each(CASES)('%s is caught, and one that passes is not accused', (_name, touching, passing, part) => {
    const found = (text: string) => {
      const { problems, findings } = solve(text);
      expect(problems.filter(({ severity, code }) => severity === 'error' && code !== 'not-driven')).toEqual([]);
      return findings.filter(({ code }) => CODES.includes(code)).map((finding) => finding.part);
    };
    expect(found(touching)).toEqual([part]);
    expect(found(passing)).toEqual([]);
  });
});
