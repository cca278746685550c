/** Friction that holds a throttle, and what is left with a spring off. */
import { describe, expect, it } from 'vitest';
import { solve, type Answers } from '../../src/solve.ts';

/** A shaft with plates, pulled by a cable; the pedal is that cable. */
const shaft = (friction: string, springs: string, more = ''): string => `format: 1
levers:
  shaft:
    pivot: [100, 0]
    drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}
    stops: {open: 82.5 deg}
    ${friction}
pedal: {cable: main, pull: 35.55 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}}
plates: {bank: {lever: shaft, count: 4, bore: 45 mm, seat: 6 deg, idle: 1.5 deg${more}}}
springs:
${springs}`;
const spring = (name: string, preload: number, rate = 2): string =>
  `  ${name}: {lever: shaft, rate: ${rate} N*mm/deg, preload: ${preload} N*mm}\n`;

const of = (text: string, code: string): Answers['findings'] => solve(text).findings.filter((finding) => finding.code === code);

describe('friction-lock', () => {
  it('is where drag is as much as the springs bring, and ends where they bring more', () => {
    // 100 + 2 N·mm a degree against 160: up to 30° of opening, 12.57 mm of pull and 1 mm of slack.
    const [lock, other] = of(shaft('friction: 160 N*mm', spring('one', 50, 1) + spring('two', 50, 1)), 'friction-lock');
    expect(other).toBeUndefined();
    expect(lock).toMatchObject({ severity: 'error', part: 'shaft', worst: { travel: 0 } });
    expect(lock!.worst!.value).toBeCloseTo(100 / 160, 9);
    expect(lock!.ranges).toHaveLength(1);
    expect(lock!.ranges![0]!.to).toBeCloseTo((1 + (24 * 30 * Math.PI) / 180) / 35.55, 8);
    expect(lock!.message).toContain('the springs bring 100 N·mm to shaft at 0 %, and friction takes 160 N·mm');
  });

  it('is not where the springs bring a little more than that', () => {
    expect(of(shaft('friction: 99.9 N*mm', spring('one', 50, 1) + spring('two', 50, 1)), 'friction-lock')).toEqual([]);
  });

  it('comes of the vacuum on a dry shaft, and not on rollers', () => {
    // 70 kPa on what four plates of 45 mm shut at rest, at the friction circle of 5 mm · sin(arctan 0.2).
    const springs = spring('one', 150) + spring('two', 150);
    const [lock] = of(shaft('bearing: {diameter: 10 mm, friction: 0.2}', springs, ', vacuum: 70 kPa'), 'friction-lock');
    const open = solve(shaft('friction: 0', springs)).table([0], ['bank.area']).columns[0]!.values[0]!;
    const load = 4 * 0.07 * ((Math.PI / 4) * 45 ** 2 - open);
    expect(lock!.worst!.value).toBeCloseTo(300 / (load * 5 * Math.sin(Math.atan(0.2))), 9);
    expect(of(shaft('bearing: {diameter: 10 mm, friction: 0.01}', springs, ', vacuum: 70 kPa'), 'friction-lock')).toEqual([]);
  });

  it('takes 70 kPa where the file gives none, and says so', () => {
    const springs = spring('one', 150) + spring('two', 150);
    const bush = 'bearing: {diameter: 10 mm, friction: 0.2}';
    const [given, taken] = [', vacuum: 70 kPa', ''].map((more) => of(shaft(bush, springs, more), 'friction-lock')[0]!.worst);
    expect(taken).toEqual(given);
    const left = solve(shaft(bush, springs)).notChecked.map(({ message }) => message);
    expect(left).toContain('Not checked: what vacuum presses on its shaft, for want of `vacuum`; 70 kPa are taken');
  });

  it('is of the pedal too, which a weak throttle cannot draw back through a bent cable', () => {
    const text = (bend: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], friction: 400 N*mm, arms: {pad: {radius: 200, angle: -90}, top: {radius: 60, angle: 90}}}
  shaft: {pivot: [300, 60], drums: {wheel: {radius: 24, wraps: clockwise}}, stops: {open: 82 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 30 deg, pad: pad}
cables: {main: {from: pedal.top, leaves: [70, 60], enters: [220, 84], to: shaft.wheel, bend: ${bend} deg, friction: 0.2}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: shaft, rate: 1 N*mm/deg, preload: 150 N*mm}
  two: {lever: shaft, rate: 1 N*mm/deg, preload: 150 N*mm}
`;
    expect(of(text(0), 'friction-lock')).toEqual([]);
    expect(of(text(270), 'friction-lock').map(({ part, severity }) => [part, severity])).toEqual([['pedal', 'error']]);
  });
});

describe('closing-margin', () => {
  const two = (friction: number, limits = ''): string =>
    shaft(`friction: ${friction} N*mm`, spring('weak', 120) + spring('strong', 200)) + limits;

  it('is of the spring that leaves least when it is off', () => {
    const [margin, other] = of(two(80), 'closing-margin');
    expect(other).toBeUndefined();
    expect(margin).toMatchObject({ severity: 'warning', part: 'shaft' });
    expect(margin!.worst!.value).toBeCloseTo(120 / 80, 9);
    expect(margin!.message).toMatch(/^With strong off/);
  });

  it('is an error where the one that is left does not bring it back', () => {
    expect(of(two(130), 'closing-margin').map(({ severity }) => severity)).toEqual(['error']);
    expect(of(two(130), 'friction-lock')).toEqual([]);
  });

  it('is not from twice the friction on, nor of a file without friction', () => {
    expect(of(two(59.9), 'closing-margin')).toEqual([]);
    expect(of(two(0), 'closing-margin')).toEqual([]);
  });

  it('goes by the limits of the file', () => {
    expect(of(two(80, 'limits: {closing_margin: [1.4, 1.2]}\n'), 'closing-margin')).toEqual([]);
    expect(of(two(59, 'limits: {closing_margin: 3}\n'), 'closing-margin').map(({ severity }) => severity)).toEqual(['warning']);
  });
});
