/** Sensors: each finding with linkages that must raise it, its figures by hand, and near ones that must not. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { applyMend } from '../support/applyMend.ts';
import { checkFindings } from '../support/checkFindings.ts';
import { markedAll, markedAt } from '../support/markedAt.ts';
import { radians } from './handGeometry.ts';

const RANGE = 'range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]';

/** A pedal that opens a shaft by twice its own 40°, and a rotor geared off the shaft. */
const geared = (sensor: string, { on = 'shaft', ratio = -1 } = {}): string => `format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0], stops: {closed: 0 deg, open: 80 deg}}
  rotor: {pivot: [200, 0]}
pedal: {lever: pedal, opens: counterclockwise, travel: 40 deg}
couplings: {gear: {from: pedal, to: shaft, ratio: 2}, drive: {from: shaft, to: rotor, ratio: ${ratio}}}
plates: {bank: {lever: shaft, bore: 45, shaft: 8, seat: 6 deg, idle: 1.5 deg}}
sensors: {tps: {lever: ${on}, ${sensor}}}
`;

describe('a rotor past its range', () => {
  it('is told of at the end of the travel, with the place from which its signal is held', () => {
    const { only } = checkFindings(
      markedAt(
        geared(`at_closed: 32 deg, ${RANGE}`),
        'at_closed: |32 deg|',
        'warning[sensor-past-range]: tps is turned 2° past the end of its range at 110°, at 100 % of pedal travel: its signal is held at that end from 97.5 % to 100 %',
      ),
    );
    const { worst, limit, ranges, mend } = only('sensor-past-range');
    expect(worst?.value).toBeCloseTo(radians(112), 10);
    expect(limit?.value).toBeCloseTo(radians(110), 10);
    expect(ranges?.[0]?.from).toBeCloseTo(78 / 80, 8);
    expect(mend?.target).toBeCloseTo(radians(29.99), 9);
    checkFindings(geared(`at_closed: 30 deg, ${RANGE}`));
  });

  it('is told of at rest', () => {
    const { only } = checkFindings(
      markedAt(
        geared(`at_closed: -3 deg, ${RANGE}`),
        'at_closed: |-3 deg|',
        'warning[sensor-past-range]: tps is turned 3° past the end of its range at 0°, at 0 % of pedal travel',
      ),
    );
    expect(only('sensor-past-range').ranges?.[0]?.to).toBeCloseTo(3 / 80, 8);
    checkFindings(geared(`at_closed: 0 deg, ${RANGE}`));
  });

  it('is what a reversed sensor does that is set for the other way', () => {
    checkFindings(
      markedAt(
        geared(`at_closed: 14 deg, reversed: true, ${RANGE}`),
        'at_closed: |14 deg|',
        'warning[sensor-past-range]: tps is turned 66° past the end of its range at 0°',
      ),
    );
    checkFindings(geared(`at_closed: 96 deg, reversed: true, ${RANGE}`));
    // The rotor turns the other way round and its opening counts that way: nothing is reversed.
    checkFindings(geared(`at_closed: 14 deg, ${RANGE}`, { on: 'rotor' }));
  });

  it('is mended by turning the sensor', () => {
    for (const at of ['-3', '32']) expect(applyMend(geared(`at_closed: ${at} deg, ${RANGE}`), 'sensor-past-range').left).toEqual([]);
  });

  it('has no mend where the range is too short for the travel', () => {
    const text = geared('at_closed: 0 deg, range: [0 deg, 70 deg], signal: [0.5 V, 4.5 V]');
    const { only } = checkFindings(markedAt(text, 'at_closed: |0 deg|', 'warning[sensor-past-range]: tps is turned 10° past'));
    expect(only('sensor-past-range').mend).toBeUndefined();
    expect(only('sensor-past-range').cure).toContain('greater range');
  });
});

describe('a rotor past its own stops', () => {
  const file = (at: number, mechanical: string): string => geared(`at_closed: ${at} deg, ${RANGE}, mechanical: ${mechanical}`);

  it('is an error, and the range is not told besides', () => {
    const { only } = checkFindings(
      markedAt(
        file(40, '[-5 deg, 115 deg]'),
        'at_closed: |40 deg|',
        'error[sensor-past-stop]: tps would be turned 5° past its stop at 115°, at 100 % of pedal travel (from 93.8 % to 100 % of pedal travel)',
      ),
    );
    expect(only('sensor-past-stop').worst?.value).toBeCloseTo(radians(120), 10);
    checkFindings(
      markedAt(file(35, '[-5 deg, 115 deg]'), 'at_closed: |35 deg|', 'warning[sensor-past-range]: 5° past the end of its range'),
    );
  });

  it('can lie within the electrical range', () => {
    checkFindings(
      markedAt(file(14, '[10 deg, 90 deg]'), 'at_closed: |14 deg|', 'error[sensor-past-stop]: tps would be turned 4° past its stop at 90°'),
    );
    checkFindings(file(10, '[10 deg, 90 deg]'));
    expect(applyMend(file(14, '[5 deg, 90 deg]'), 'sensor-past-stop').left).toEqual([]);
  });

  it('is told at rest of a sensor turned the other way round', () => {
    const text = geared(`at_closed: 14 deg, reversed: true, ${RANGE}, mechanical: [-5 deg, 115 deg]`);
    const { only } = checkFindings(
      markedAt(text, 'at_closed: |14 deg|', 'error[sensor-past-stop]: tps would be turned 61° past its stop at -5°'),
    );
    expect(only('sensor-past-stop').mend?.target).toBeCloseTo(radians(80.01), 9);
  });
});

describe('a signal in the band of faults', () => {
  const wide = (at: number, more = ''): string => geared(`at_closed: ${at} deg, range: [0 deg, 110 deg], signal: [0.2 V, 4.8 V]${more}`);
  /** Rotor angle at a signal, degrees. */
  const angle = (signal: number): number => ((signal - 0.2) / 4.6) * 110;

  it('is told of at rest and at full pedal', () => {
    const low = checkFindings(
      markedAt(wide(5), 'at_closed: |5 deg|', 'warning[signal-in-fault-band]: tps gives 0.409 V at rest, below 0.5 V'),
    );
    expect(low.only('signal-in-fault-band').worst?.value).toBeCloseTo(0.2 + (4.6 * 5) / 110, 10);
    expect(low.only('signal-in-fault-band').mend?.target).toBeCloseTo(radians(angle(0.5) + 0.01), 8);
    expect(low.only('signal-in-fault-band').limit?.from).toContain('IC.4.4.8');
    const high = checkFindings(
      markedAt(wide(25), 'at_closed: |25 deg|', 'warning[signal-in-fault-band]: tps gives 4.591 V at full pedal, above 4.5 V'),
    );
    expect(high.only('signal-in-fault-band').ranges).toEqual([{ from: 1, to: 1 }]);
    checkFindings(wide(14));
    for (const at of [5, 25]) expect(applyMend(wide(at), 'signal-in-fault-band').left).toEqual([]);
  });

  it('is none on 0.5 V and 4.5 V themselves: below and above is what counts', () => {
    checkFindings(geared('at_closed: 0 deg, range: [0 deg, 80 deg], signal: [0.5 V, 4.5 V]'));
    checkFindings(
      markedAt(
        geared('at_closed: 0 deg, range: [0 deg, 80 deg], signal: [0.49 V, 4.5 V]'),
        'at_closed: |0 deg|',
        'warning[signal-in-fault-band]: 0.49 V at rest',
      ),
    );
  });

  it('is not told besides a rotor past its range, where the signal is held', () => {
    checkFindings(
      markedAt(wide(35), 'at_closed: |35 deg|', 'warning[sensor-past-range]: tps is turned 5° past the end of its range at 110°'),
    );
    // What turns it back into its range keeps it out of the band as well.
    expect(applyMend(wide(35), 'sensor-past-range').left).toEqual([]);
  });

  it('is told of a falling signal the other way round', () => {
    const falling = (at: number): string => geared(`at_closed: ${at} deg, range: [0 deg, 110 deg], signal: [4.8 V, 0.2 V]`);
    checkFindings(markedAt(falling(5), 'at_closed: |5 deg|', 'warning[signal-in-fault-band]: tps gives 4.591 V at rest, above 4.5 V'));
    checkFindings(falling(14));
    expect(applyMend(falling(5), 'signal-in-fault-band').left).toEqual([]);
  });

  it('is not known of another supply than 5 V', () => {
    checkFindings(markedAt(wide(5, ', supply: 5.1 V'), 'at_closed: |5 deg|', 'warning[signal-in-fault-band]'));
    const { answers } = checkFindings(wide(5, ', supply: 3.3 V'));
    expect(answers.notChecked.some(({ part, message }) => part === 'tps' && message.includes('taken for a fault'))).toBe(true);
  });

  it('has no mend where no setting keeps both ends out of it', () => {
    const both = geared('at_closed: 0 deg, range: [0 deg, 80 deg], signal: [0.2 V, 4.8 V]');
    const { answers } = checkFindings(
      markedAll(both, [
        ['at_closed: |0 deg|', 'warning[signal-in-fault-band]: tps gives 4.8 V at full pedal'],
        ['at_closed: |0 deg|', 'warning[signal-in-fault-band]: tps gives 0.2 V at rest'],
      ]),
    );
    expect(answers.findings.map(({ mend }) => mend)).toEqual([undefined, undefined]);
  });
});

describe('a signal of which little is used', () => {
  it('is told of under half of its span', () => {
    const text = (range: number): string => geared(`at_closed: 10 deg, range: [0 deg, ${range} deg], signal: [0.5 V, 4.5 V]`);
    const { only } = checkFindings(
      markedAt(text(200), 'range: |[0 deg, 200 deg]|', 'warning[signal-span]: tps gives 1.6 V of the 4 V that its signal spans: 40 %'),
    );
    expect(only('signal-span').limit?.value).toBeCloseTo(2, 9);
    checkFindings(text(160));
    checkFindings(markedAt(text(161), 'range: |[0 deg, 161 deg]|', 'warning[signal-span]'));
  });

  it('comes of a rotor that is geared down', () => {
    const text = (ratio: number): string => geared(`at_closed: 10 deg, ${RANGE}`, { on: 'rotor', ratio });
    checkFindings(markedAt(text(0.5), 'range: |[0 deg, 110 deg]|', 'warning[signal-span]: tps gives 1.455 V of the 4 V'));
    checkFindings(text(0.75));
  });

  it('is not told of a sensor past its range, nor of a throttle that does not open', () => {
    const past = solve(geared('at_closed: 95 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]'));
    expect(past.findings.map(({ code }) => code)).toEqual(['sensor-past-range']);
    const still = solve(geared(`at_closed: 14 deg, ${RANGE}`).replace('ratio: 2', 'ratio: 2, lag: 60 deg'));
    expect(still.findings.map(({ code }) => code)).toEqual(['opening-missed']);
  });
});

describe('a signal that turns back', () => {
  /** The pedal carries the plates; the rotor hangs on a rod of its own, whose driving arm passes its line at 74° or so. */
  const rodded = (travel: number, more = '', signal = '[0.5 V, 4.5 V]'): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 20, angle: 120}}, stops: {open: ${travel} deg}}
  rotor: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 100}}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel} deg}
limits: {drive: [0 deg, 0 deg]}
rods: {link: {from: pedal.out, to: rotor.arm}}
plates: {bank: {lever: pedal, bore: 40}}
sensors:
  tps: {lever: rotor, at_closed: 30 deg, range: [20 deg, 60 deg], signal: ${signal}${more}}
`;

  it.each([
    ['', '[0.5 V, 4.5 V]'],
    ['', '[4.5 V, 0.5 V]'],
    [', supply: 5 V', '[0.5 V, 4.5 V]'],
  ])('is told beside the dead centre that it turns back from', (more, signal) => {
    const { answers, only } = checkFindings(
      markedAll(rodded(110, more, signal), [
        ['{|link|: {', 'error[toggle-returning]'],
        ['open: |110 deg|', 'warning[plate-past-square]'],
      ]),
    );
    const values = answers.table(Array.from({ length: 2001 }, (_, i) => i / 2000), ['tps.signal']).columns[0]?.values ?? []; // prettier-ignore
    const way = signal.startsWith('[0') ? 1 : -1;
    const most = Math.max(...values.map((value) => way * (value ?? NaN)));
    expect(answers.findings.find(({ code }) => code === 'toggle-returning')?.following).toContainEqual(only('signal-turns-back'));
    expect(only('signal-turns-back').message).toContain('The signal of tps goes back by');
    expect(only('signal-turns-back').worst?.value).toBeCloseTo(most - way * (values.at(-1) ?? NaN), 5);
    expect(only('signal-turns-back').ranges?.[0]?.to).toBeCloseTo(1, 12);
  });

  it('is none where the travel ends before', () => {
    expect(solve(rodded(60)).findings.map(({ code }) => code)).toEqual([]);
  });
});
