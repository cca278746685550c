/** Volts and counts for a degree and a percent of throttle, by hand. */
import { describe, expect, it } from 'vitest';
import { sensorResolution, type SensorResolution } from '../../src/sensor/resolution.ts';
import { SENSOR, sensorFile, sensorIn, type SensorFile } from './sensorFile.ts';

const DEG = Math.PI / 180;

function resolved(file: SensorFile | string): SensorResolution {
  const { travel, sensor } = sensorIn(typeof file === 'string' ? file : sensorFile(file));
  return sensorResolution(travel, sensor);
}

describe('resolution', () => {
  const perDegree = 4 / 110;

  it('is volts for a degree of the plates, through whatever gearing stands between', () => {
    for (const [file, gearing] of [
      [{}, 1],
      [{ ratio: 0.4 }, 0.4],
      [{ on: 'shaft' }, 1],
      [{ on: 'pedal' }, 0.5],
    ] as const) {
      const { tipIn, overall, lever } = resolved(file);
      expect(lever.name).toBe('shaft');
      expect((tipIn?.voltsPerAngle ?? NaN) * DEG).toBeCloseTo(perDegree * gearing, 12);
      expect((overall?.voltsPerAngle ?? NaN) * DEG).toBeCloseTo(perDegree * gearing, 12);
      // Full opening is 90° less seat and idle.
      expect((overall?.voltsPerFull ?? NaN) / 100).toBeCloseTo((perDegree * gearing * 82.5) / 100, 12);
    }
  });

  it('is negative where the signal falls as the plates open', () => {
    expect(resolved({ sensor: SENSOR.replace('[0.5 V, 4.5 V]', '[4.5 V, 0.5 V]') }).tipIn?.voltsPerAngle).toBeLessThan(0);
  });

  it('counts 2ⁿ over the supply, where the file gives both', () => {
    const { tipIn, overall } = resolved({ sensor: `${SENSOR}, supply: 5 V, bits: 10` });
    expect((tipIn?.countsPerAngle ?? NaN) * DEG).toBeCloseTo((perDegree * 1024) / 5, 10);
    expect((overall?.countsPerFull ?? NaN) / 100).toBeCloseTo((perDegree * 0.825 * 1024) / 5, 10);
    for (const half of ['supply: 5 V', 'bits: 10']) {
      expect(resolved({ sensor: `${SENSOR}, ${half}` }).tipIn).toMatchObject({ countsPerAngle: undefined, countsPerFull: undefined });
    }
  });

  it('goes by the lever of the sensor and its own travel where there are no plates', () => {
    const { lever, overall } = resolved({ plates: false });
    expect(lever.name).toBe('rotor');
    expect(overall?.voltsPerFull).toBeCloseTo(perDegree * 80, 12);
  });

  it('at tip-in is the slope where slack ends, and overall the mean', () => {
    const text = (slack: number): string => `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 34, angle: 165}}, drums: {wheel: {radius: 22, wraps: clockwise}}}
  shaft: {pivot: [95, 14], arms: {arm: {radius: 32, angle: 140}}, stops: {closed: 0 deg, open: 60 deg}}
pedal: {cable: main, pull: 32 mm}
cables: {main: {enters: [-70, 34], to: crank.wheel, slack: ${slack} mm}}
rods: {link: {from: crank.out, to: shaft.arm}}
plates: {bank: {lever: shaft, bore: 40 mm}}
sensors: {tps: {lever: crank, at_closed: 10 deg, range: [0 deg, 110 deg], signal: [0 V, 5 V]}}
`;
    const { tipIn, overall } = resolved(text(1.2));
    expect(tipIn?.travel).toBeCloseTo(1.2 / 32, 12);
    const { travel } = sensorIn(text(1.2));
    const { build, mechanism, poseAt } = travel;
    const opening = (name: string, at: number): number => {
      const index = mechanism.leverIndex.get(name)!;
      return build.mechanism.senses[index]! * poseAt(at).rotation[index]!;
    };
    const step = 1e-6;
    const start = 1.2 / 32;
    const slope = opening('crank', start + step) / opening('shaft', start + step);
    expect((tipIn?.voltsPerAngle ?? NaN) * DEG).toBeCloseTo((5 / 110) * slope, 5);
    // The shaft's stop holds the crank too.
    expect((overall?.voltsPerAngle ?? NaN) * DEG).toBeCloseTo((5 / 110) * (opening('crank', 1) / (60 * DEG)), 10);
    expect(Math.abs(slope - opening('crank', 1) / (60 * DEG))).toBeGreaterThan(0.1);
  });

  it('at tip-in is nothing where the rotor starts outside its range', () => {
    const { tipIn, overall } = resolved({ sensor: 'at_closed: -10 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]' });
    expect(tipIn?.voltsPerAngle).toBeCloseTo(0, 14);
    expect((overall?.voltsPerAngle ?? NaN) * DEG).toBeCloseTo((4 * 70) / 110 / 80, 12);
  });

  it('has none where nothing opens', () => {
    const { tipIn, overall } = resolved(`format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0]}
  rotor: {pivot: [100, 0]}
pedal: {lever: pedal, opens: counterclockwise, travel: 20}
couplings: {gear: {from: pedal, to: shaft, ratio: 1, lag: 30 deg}, drive: {from: shaft, to: rotor, ratio: 1}}
plates: {bank: {lever: shaft, bore: 40}}
sensors: {tps: {lever: rotor, ${SENSOR}}}
`);
    expect(tipIn).toBeUndefined();
    expect(overall).toBeUndefined();
  });

  it('goes by the plates on the way to the sensor, not by the first in the file', () => {
    const { lever, tipIn } = resolved(`format: 1
levers:
  pedal: {pivot: [0, 0]}
  one: {pivot: [100, 0]}
  two: {pivot: [200, 0]}
  rotor: {pivot: [300, 0]}
pedal: {lever: pedal, opens: counterclockwise, travel: 40}
couplings:
  first: {from: pedal, to: one, ratio: 2}
  second: {from: pedal, to: two, ratio: 1}
  drive: {from: two, to: rotor, ratio: 0.5}
plates: {near: {lever: one, bore: 40}, far: {lever: two, bore: 40}}
sensors: {tps: {lever: rotor, ${SENSOR}}}
`);
    expect(lever.name).toBe('two');
    expect((tipIn?.voltsPerAngle ?? NaN) * DEG).toBeCloseTo(perDegree / 2, 12);
  });
});
