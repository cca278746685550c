/** Figures of competition rules, each from a throttle file a little within and a little beyond it. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { faultBand, returnSprings } from './values/rules.ts';

const codes = (parts: string): readonly string[] =>
  solve(`format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {open: 80 deg}}
pedal: {cable: main, pull: 35 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel}}
plates: {bank: {lever: shaft, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}}
${parts}`).findings.map(({ code }) => code);

describe(faultBand.name, () => {
  // The rotor turns 80°, from 0° to 80° of a range of 80°: its signal runs from end to end.
  const told = (rest: number, full: number): boolean =>
    codes(
      `sensors: {tps: {lever: shaft, at_closed: 0 deg, range: [0 deg, 80 deg], signal: [${rest} V, ${full} V], supply: 5 V}}\n`,
    ).includes('signal-in-fault-band');

  it.each([
    { rest: faultBand.low, full: faultBand.high, fault: false },
    { rest: faultBand.low - 0.01, full: faultBand.high, fault: true },
    { rest: faultBand.low, full: faultBand.high + 0.01, fault: true },
    { rest: faultBand.high + 0.01, full: faultBand.low, fault: true },
    { rest: faultBand.high, full: faultBand.low, fault: false },
  ])('$rest V at rest and $full V at full pedal: $fault', ({ rest, full, fault }) => {
    expect(told(rest, full)).toBe(fault);
  });
});

describe(returnSprings.name, () => {
  const springs = (count: number, more = ''): readonly string[] =>
    codes(
      `springs:\n${more}${Array.from({ length: count }, (_, i) => `  spring_${i}: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}\n`).join('')}`,
    );
  const IN_SENSOR = '  in_sensor: {lever: shaft, rate: 0.2 N*mm/deg, preload: 10 N*mm, counts_as_return: false}\n';

  it('are asked for in that number, a sensor’s own not counted', () => {
    expect(springs(returnSprings.least)).not.toContain('single-return-spring');
    expect(springs(returnSprings.least - 1, IN_SENSOR)).toContain('single-return-spring');
    expect(springs(0, IN_SENSOR)).toContain('no-return-spring');
  });
});
