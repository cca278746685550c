/** What the text of tolerances says of an outcome that hardly moves, and of what each dimension does to it; held against files solved anew. */
import { describe, expect, test } from 'vitest';
import { toleranceText } from '../../src/outputs/toleranceText.ts';
import { solve } from '../../src/solve.ts';
import { finished } from '../../src/studies/finished.ts';
import { tolerances, type OutcomeTolerance } from '../../src/studies/tolerance/tolerance.ts';

interface Cut {
  /** mm, with its tolerance as it is written. */
  readonly crank?: string;
  readonly arm?: string;
  readonly slack?: string;
  readonly rod?: string;
  readonly more?: string;
}

const linkage = ({ crank = '38 mm', arm = '32 mm', slack = '1 mm', rod = '110.19 mm', more = '' }: Cut): string => `format: 1
let: {reach: ${crank}}
levers:
  foot: {pivot: [0, 0], arms: {pad: {radius: 240 mm, angle: -70 deg}, clevis: {radius: 72 mm, angle: 104 deg}}}
  crank:
    pivot: [512, 148]
    arms: {out: {radius: reach, angle: 166 deg}}
    drums: {quadrant: {radius: 22 mm, wraps: clockwise, groove: 95 deg}}
  shaft: {pivot: [604, 172], arms: {arm: {radius: ${arm}, angle: 140 deg}}, stops: {closed: 0 deg, open: 100 deg}}
pedal: {lever: foot, opens: counterclockwise, travel: 27 deg, pad: pad}
cables: {main: {from: foot.clevis, leaves: [96, 68], enters: [448, 186], to: crank.quadrant, slack: ${slack}}}
rods: {link: {from: crank.out, to: shaft.arm, length: ${rod}}}
plates: {bank: {lever: shaft, count: 4, bore: 42 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}}
${more}`;

const FEW = { seed: 1, law: 'normal', builds: 200 } as const;
function studied(text: string): { readonly told: string; outcome(name: string): OutcomeTolerance } {
  const study = finished(tolerances(solve(text).study!, FEW));
  return {
    told: toleranceText(study, { file: 'car', width: 1000 }),
    outcome: (name) => study.outcomes.find((each) => each.outcome.name === name)!,
  };
}

const openingOf = (cut: Cut, at: number): number => Number(solve(linkage(cut)).table([at], ['shaft.opening']).columns[0]!.values[0]);

describe('a shaft that only a corner of the tolerances holds open at rest', () => {
  const { told } = studied(linkage({ crank: '38 mm ± 0.3 mm', arm: '32 mm ± 0.3 mm', slack: '1 mm ± 0.4 mm', rod: '110.19 mm ± 0.5 mm' }));
  const [, atRest = ''] = /\nopening of shaft at rest\n([^]*?)\n\n/.exec(told) ?? [];

  test('is told with the figure of that corner, as the file of it has it', () => {
    const open = openingOf({ crank: '37.7 mm', arm: '32.3 mm', slack: '0.6 mm', rod: '110.69 mm' }, 0);
    expect(open).toBeGreaterThan(0.1);
    const [, most = ''] = /linear, 0° to ([\d.]+)° exactly/.exec(atRest) ?? [];
    expect(Number(most)).toBeCloseTo(open, 2);
  });

  test('is never told to stand the same in every build', () => {
    expect(atRest).not.toMatch(/no tolerance moves it|in every build/);
  });

  test('has no root of the sum of squares told, which would be nothing', () => {
    expect(atRest).toContain('nothing moves it next to its middle: a root of the sum of squares would mean nothing here');
    expect(atRest).not.toContain('± 0°');
  });
});

test('where nothing in any corner moves it, its stop is told to hold it', () => {
  const { told } = studied(linkage({ crank: '38 mm ± 0.01 mm' }));
  expect(told).toContain('0°: its closed stop holds it there in every build');
});

test('each dimension is told with what half of its tolerance does, with its sign', () => {
  const { told } = studied(linkage({ slack: '1 mm ± 0.1 mm' }));
  const more = openingOf({ slack: '1.1 mm' }, 1) - openingOf({}, 1);
  expect(more).toBeLessThan(-0.1);
  const [, swing = ''] = /cables\.main\.slack \+ 0\.1 mm: (-[\d.]+)°/.exec(told) ?? [];
  expect(Math.abs(Number(swing) - more)).toBeLessThan(0.02);
});

test('a dimension that `tune` leaves free is told by what a millimetre of it does', () => {
  const tune = `tune:
  free: {reach: {from: 30 mm, to: 45 mm}}
  curve: {of: shaft.opening, through: [[0 %, 0 deg], [100 %, 80 deg]]}
`;
  const { told, outcome } = studied(linkage({ slack: '1 mm ± 0.1 mm', more: tune }));
  const [free] = outcome('opening of shaft at full pedal').free;
  const byHand = (openingOf({ crank: '38.001 mm' }, 1) - openingOf({ crank: '37.999 mm' }, 1)) / 0.002;
  expect(free!.of.path).toBe('let.reach');
  expect((free!.swing * 180) / Math.PI).toBeCloseTo(byHand, 4);
  expect(told).toMatch(/free: let\.reach \+ 1 mm: [+-][\d.]+°/);
});

describe('a file in inches', () => {
  const tune = `tune:
  free: {reach: {from: 1.2 inch, to: 1.8 inch}}
  curve: {of: shaft.opening, through: [[0 %, 0 deg], [100 %, 80 deg]]}
`;
  const { told } = studied(linkage({ crank: '1.5 inch', arm: '1.25 inch ± 0.02 inch', slack: '0.04 in +0.02/-0.01 in', more: tune }));

  test('has its tolerances told in inches, with what they do', () => {
    expect(told).toMatch(/levers\.shaft\.arms\.arm\.radius \+ 0\.02 inch: [+-][\d.]+°/);
    expect(told).toMatch(/cables\.main\.slack \+ 0\.015 in: [+-][\d.]+°/);
    expect(told).not.toMatch(/\d mm: /);
  });

  test('has free dimensions told by a hundredth of an inch, as files with them so changed have it', () => {
    const at = (crank: string): number => openingOf({ crank, arm: '1.25 inch', slack: '0.045 in' }, 1);
    const [, swing = ''] = /opening of shaft at full pedal[^]*?free: let\.reach \+ 0\.01 inch: ([+-][\d.]+)°/.exec(told) ?? [];
    expect(Math.abs(Number(swing) - (at('1.505 inch') - at('1.495 inch')))).toBeLessThan(0.01);
    expect(Math.abs(Number(swing))).toBeGreaterThan(0.04);
  });
});
