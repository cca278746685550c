/** Angle and signal of a sensor by hand, and the rate of its signal against differences. */
import { describe, expect, it } from 'vitest';
import { fullTravel, rotorAngleAt, shareOf, signalAt, signalEnds, signalRateAt } from '../../src/sensor/sensorAt.ts';
import { sensorFile, sensorIn, SENSOR, type SensorFile } from './sensorFile.ts';

const DEG = Math.PI / 180;

interface Read {
  readonly angle: number;
  readonly signal: number;
  readonly rate: number;
}

/** Angle in degrees, signal in V, its rate in V for the whole travel. */
function reading(file: SensorFile, at: number): Read {
  const { travel, sensor } = sensorIn(sensorFile(file));
  const pose = travel.poseAt(at);
  return {
    angle: rotorAngleAt(travel.build, pose, sensor) / DEG,
    signal: signalAt(travel.build, pose, sensor),
    rate: signalRateAt(travel.build, pose, sensor),
  };
}

describe('a sensor', () => {
  it.each([0, 0.25, 0.6, 1])('turns by the opening of its lever and signals in proportion, at %d of the pedal', (at) => {
    // The rotor opens clockwise, as it turns; 80° at full pedal.
    const { angle, signal, rate } = reading({}, at);
    expect(angle).toBeCloseTo(12 + 80 * at, 10);
    expect(signal).toBeCloseTo(0.5 + (4 * (12 + 80 * at)) / 110, 12);
    expect(rate).toBeCloseTo((4 * 80) / 110, 12);
  });

  it('turns back from its angle at closed where it is reversed', () => {
    const file: SensorFile = { sensor: 'at_closed: 100 deg, reversed: true, range: [10 deg, 110 deg], signal: [4.8 V, 0.2 V]' };
    const { angle, signal, rate } = reading(file, 0.5);
    expect(angle).toBeCloseTo(60, 10);
    expect(signal).toBeCloseTo(4.8 - 4.6 / 2, 12);
    expect(rate).toBeCloseTo((4.6 * 80) / 100, 12);
  });

  it('falls with the opening where its signal is written falling', () => {
    const { signal, rate } = reading({ sensor: 'at_closed: 0 deg, range: [0 deg, 100 deg], signal: [4.5 V, 0.5 V]' }, 0.5);
    expect(signal).toBeCloseTo(4.5 - 1.6, 12);
    expect(rate).toBeCloseTo(-3.2, 12);
  });

  it('turns with the shaft when it sits there, whichever way that turns', () => {
    expect(reading({ on: 'shaft', sensor: SENSOR }, 0.5).angle).toBeCloseTo(52, 10);
    expect(reading({ on: 'pedal', sensor: SENSOR }, 0.5).angle).toBeCloseTo(32, 10);
    expect(reading({ ratio: 0.5 }, 0.5).angle).toBeCloseTo(32, 10);
  });

  it('holds its signal outside its range, with no rate, and at an end has the rate of where it goes', () => {
    const file: SensorFile = { on: 'shaft', sensor: 'at_closed: 0 deg, range: [20 deg, 60 deg], signal: [0.5 V, 4.5 V]' };
    const inside = (4 / 40) * 80;
    expect(reading(file, 0.1)).toMatchObject({ signal: 0.5, rate: 0 });
    expect(reading(file, 0.9)).toMatchObject({ signal: 4.5, rate: 0 });
    expect(reading(file, 0.5).rate).toBeCloseTo(inside, 10);
    expect(reading({ ...file, sensor: file.sensor!.replace('[20', '[0') }, 0).rate).toBeCloseTo((4 / 60) * 80, 10);
    expect(reading({ ...file, sensor: file.sensor!.replace('60 deg', '80 deg') }, 1)).toMatchObject({ signal: 4.5, rate: 0 });
    const reversed = 'at_closed: 60 deg, reversed: true, range: [20 deg, 60 deg], signal: [0.5 V, 4.5 V]';
    expect(reading({ ...file, sensor: reversed }, 0).rate).toBeCloseTo(-inside, 10);
    expect(reading({ ...file, sensor: reversed }, 0.5)).toMatchObject({ signal: 0.5, rate: 0 });
  });

  it('has the rate that differences give where rods drive its lever unevenly', () => {
    const { travel, sensor } = sensorIn(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 120}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 30, angle: 100}}}
pedal: {lever: pedal, opens: clockwise, travel: 50}
rods: {link: {from: pedal.out, to: shaft.arm}}
sensors: {tps: {lever: shaft, at_closed: 15 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}}
`);
    const signal = (at: number): number => signalAt(travel.build, travel.poseAt(at), sensor);
    const rates = [0.2, 0.5, 0.8].map((at) => {
      const rate = signalRateAt(travel.build, travel.poseAt(at), sensor);
      expect(rate).toBeCloseTo((signal(at + 1e-5) - signal(at - 1e-5)) / 2e-5, 7);
      return rate;
    });
    expect(Math.abs(rates[0]! - rates[2]!)).toBeGreaterThan(0.05);
  });

  it('is read from the build and not from the file', () => {
    const changed = sensorIn(sensorFile(), (path, nominal) => (path === 'sensors.tps.at_closed' ? 20 * DEG : nominal));
    expect(rotorAngleAt(changed.travel.build, changed.travel.poseAt(0), changed.sensor) / DEG).toBeCloseTo(20, 12);
  });
});

describe('its signal at both ends of the pedal', () => {
  const ends = (file: SensorFile): { readonly rest: number; readonly full: number } => {
    const { travel, sensor } = sensorIn(sensorFile(file));
    return signalEnds(travel.build, sensor);
  };

  it('is that at rest and at full pedal', () => {
    const { rest, full } = ends({});
    expect([rest, full]).toEqual([expect.closeTo(0.5 + 48 / 110, 12), expect.closeTo(0.5 + (4 * 92) / 110, 12)]);
  });

  it('is that where an open stop with no cable before it stops the pedal', () => {
    const stopped: SensorFile = { stops: 'closed: 0, open: 60' };
    expect(fullTravel(sensorIn(sensorFile(stopped)).travel.build)).toBeCloseTo(0.75, 14);
    expect(fullTravel(sensorIn(sensorFile()).travel.build)).toBe(1);
    expect(ends(stopped).full).toBeCloseTo(0.5 + (4 * 72) / 110, 12);
  });

  it('gives the share of a signal between them, and none where they are the same', () => {
    expect(shareOf({ rest: 1, full: 3 }, 1.5)).toBe(0.25);
    expect(shareOf({ rest: 4, full: 2 }, 3.5)).toBe(0.25);
    expect(shareOf({ rest: 2, full: 2 }, 2)).toBeNaN();
    expect(shareOf({ rest: 2, full: NaN }, 2)).toBeNaN();
  });
});
