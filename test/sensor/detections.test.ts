/** What can be wrong with a sensor: each detection with a case that has it, where, and a near one that has not. */
import { describe, expect, it } from 'vitest';
import {
  beyondElectrical,
  beyondMechanical,
  shareOfSpan,
  signalsTakenForFaults,
  turnsBackWhileOpening,
  type Beyond,
  type TurnedBack,
} from '../../src/sensor/detections.ts';
import { signalRateAt } from '../../src/sensor/sensorAt.ts';
import { SENSOR, sensorFile, sensorIn, type SensorFile } from './sensorFile.ts';

const DEG = Math.PI / 180;

const electrical = (sensor: string, file: SensorFile = {}): readonly Beyond[] => {
  const { travel, sensor: model } = sensorIn(sensorFile({ ...file, sensor }));
  return beyondElectrical(travel, model);
};

/** The rotor opens from `at_closed` by 80° at full pedal. */
describe('a rotor beyond the range of its signal', () => {
  const range = (atClosed: number, from: number, to: number): string =>
    `at_closed: ${atClosed} deg, range: [${from} deg, ${to} deg], signal: [0.5 V, 4.5 V]`;

  it('is found above, from where it passes the end', () => {
    const [found, ...more] = electrical(range(12, 0, 60));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ side: 'above', worst: { travel: 1 } });
    expect(found!.limit / DEG).toBeCloseTo(60, 12);
    expect(found!.worst.value / DEG).toBeCloseTo(92, 10);
    expect(found!.ranges).toEqual([{ from: expect.closeTo(48 / 80, 8) as unknown, to: 1 }]);
  });

  it('is found below, at rest', () => {
    const [found, ...more] = electrical(range(-10, 0, 100));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ side: 'below', worst: { travel: 0 } });
    expect(found!.worst.value / DEG).toBeCloseTo(-10, 10);
    expect(found!.ranges).toEqual([{ from: 0, to: expect.closeTo(10 / 80, 8) as unknown }]);
  });

  it('is found on both sides', () => {
    expect(electrical(range(-10, 0, 60)).map(({ side }) => side)).toEqual(['below', 'above']);
  });

  it('is not found where it just comes to both ends', () => {
    expect(electrical(range(0, 0, 80))).toEqual([]);
    expect(electrical(range(0, 0.001, 80))).toHaveLength(1);
    expect(electrical(range(0, 0, 79.999))).toHaveLength(1);
  });

  it('goes past the lower end as it opens where it is reversed', () => {
    const [found] = electrical(range(70, 0, 110).replace('deg,', 'deg, reversed: true,'));
    expect(found).toMatchObject({ side: 'below', worst: { travel: 1 }, ranges: [{ to: 1 }] });
    expect(found!.worst.value / DEG).toBeCloseTo(-10, 10);
  });

  it('has nothing beyond where the pedal is stopped before it', () => {
    expect(electrical(range(0, 0, 70), { stops: 'closed: 0, open: 60' })).toEqual([]);
    expect(electrical(range(0, 0, 70))).toHaveLength(1);
  });
});

describe('a rotor beyond its own stops', () => {
  const mechanical = (keys: string): readonly Beyond[] => {
    const { travel, sensor } = sensorIn(sensorFile({ sensor: `${SENSOR}${keys}` }));
    return beyondMechanical(travel, sensor);
  };

  it('is found where it is turned past them, and not where it just comes to them', () => {
    const [found] = mechanical(', mechanical: [-5 deg, 90 deg]');
    expect(found).toMatchObject({ side: 'above' });
    expect(found!.ranges).toEqual([{ from: expect.closeTo(78 / 80, 8) as unknown, to: 1 }]);
    expect(mechanical(', mechanical: [12 deg, 92 deg]')).toEqual([]);
  });

  it('is not looked for where the file gives none', () => {
    expect(mechanical('')).toEqual([]);
  });
});

/** A sensor on a rocker whose crank passes its dead centre: the rocker turns back while the shaft on the pedal's lever opens on. */
const rocker = (travel: number, sensor = 'at_closed: 30 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]'): string => `format: 1
levers:
  shaft: {pivot: [0, 0], arms: {out: {radius: 20, angle: 60}}}
  rotor: {pivot: [100, 0], opens: counterclockwise, arms: {arm: {radius: 60, angle: 110}}}
pedal: {lever: shaft, opens: counterclockwise, travel: ${travel}}
rods: {link: {from: shaft.out, to: rotor.arm}}
plates: {bank: {lever: shaft, bore: 40}}
sensors: {tps: {lever: rotor, ${sensor}}}
`;

/** Where the rotor stands furthest, by a scan of its signal. */
const crest = (text: string): { readonly travel: number; readonly signal: number; readonly end: number } => {
  const { travel, sensor } = sensorIn(text);
  const signal = (at: number): number =>
    0.5 + (4 / 110) * (30 + travel.mechanism.senses[sensor.lever]! * (travel.poseAt(at).rotation[sensor.lever]! / DEG));
  let best = { travel: 0, signal: -Infinity };
  for (let i = 0; i <= 20_000; i++) {
    const value = signal(i / 20_000);
    if (value > best.signal) best = { travel: i / 20_000, signal: value };
  }
  return { ...best, end: signal(1) };
};

describe('a signal that turns back while the plates open', () => {
  const found = (text: string): TurnedBack | undefined => {
    const { travel, sensor } = sensorIn(text);
    return turnsBackWhileOpening(travel, sensor);
  };
  it('is found from the dead centre of the crank on', () => {
    const text = rocker(200);
    const { travel, signal, end } = crest(text);
    expect(travel).toBeGreaterThan(0.3);
    expect(travel).toBeLessThan(0.95);
    const back = found(text);
    expect(back?.ranges).toEqual([{ from: expect.closeTo(travel, 3) as unknown, to: 1 }]);
    // To more digits than a scan has them: there the signal stands still.
    const { travel: solved, sensor } = sensorIn(text);
    expect(signalRateAt(solved.build, solved.poseAt(back?.ranges[0]?.from ?? NaN), sensor)).toBeCloseTo(0, 9);
    expect(back?.worst.travel).toBe(1);
    expect(back?.worst.value).toBeCloseTo(signal - end, 6);
  });

  it('is not found before the dead centre', () => {
    const { travel } = crest(rocker(200));
    expect(found(rocker(200 * travel * 0.99))).toBeUndefined();
    expect(found(rocker(200 * travel * 1.05))).toBeDefined();
  });

  it('is not found where the signal is held meanwhile', () => {
    const { travel } = crest(rocker(200));
    const held = 'at_closed: 30 deg, range: [0 deg, 32 deg], signal: [0.5 V, 4.5 V]';
    expect(found(rocker(200 * travel * 1.1, held))).toBeUndefined();
  });

  // Several ends: rounding puts the place where it comes back now just within the range, now just outside.
  it.each([64.2, 64.6, 65, 65.3, 65.7, 66, 66.1, 66.4])(
    'starts where the signal comes back into its range, held at first above %d°',
    (end) => {
      const text = rocker(200, `at_closed: 30 deg, range: [0 deg, ${end} deg], signal: [0.5 V, 4.5 V]`);
      const { travel, sensor } = sensorIn(text);
      const angle = (at: number): number => 30 + (travel.mechanism.senses[sensor.lever]! * travel.poseAt(at).rotation[sensor.lever]!) / DEG;
      const [range, ...more] = found(text)?.ranges ?? [];
      expect(more).toEqual([]);
      expect(angle(range?.from ?? NaN)).toBeCloseTo(end, 8);
      expect(angle((range?.from ?? NaN) - 0.01)).toBeGreaterThan(end);
      expect(range?.to).toBe(1);
    },
  );

  it('starts where its lever leaves the stop that holds it meanwhile', () => {
    // The clevis is furthest from the housing at 180°: 80° of the 140° that it turns.
    const text = `format: 1
levers:
  shaft: {pivot: [0, 0], arms: {clevis: {radius: 40, angle: 100}}}
  rotor: {pivot: [300, 0], drums: {wheel: {radius: 30, wraps: counterclockwise}}, stops: {closed: 0, open: 40 deg}}
pedal: {lever: shaft, opens: counterclockwise, travel: 140}
cables: {main: {from: shaft.clevis, leaves: [100, 0], enters: [200, 30], to: rotor.wheel}}
plates: {bank: {lever: shaft, bore: 40}}
sensors: {tps: {lever: rotor, at_closed: 30 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}}
`;
    const pinAt = (at: number): number => Math.hypot(100 - 40 * Math.cos((100 + 140 * at) * DEG), 40 * Math.sin((100 + 140 * at) * DEG));
    // The stop is left where the clevis comes back to the distance at which it was met.
    const held = pinAt(0) + 30 * 40 * DEG;
    let [low, high] = [80 / 140, 1];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (pinAt(middle) > held) low = middle;
      else high = middle;
    }
    const [range, ...more] = found(text)?.ranges ?? [];
    expect(more).toEqual([]);
    expect(range?.from).toBeCloseTo(low, 9);
    expect(low).toBeGreaterThan(0.6);
    expect(low).toBeLessThan(0.95);
    expect(found(text)?.worst.value).toBeCloseTo(((4 / 110) * (held - pinAt(1))) / 30 / DEG, 9);
  });

  it('is found of a falling signal as well', () => {
    expect(found(rocker(200, 'at_closed: 30 deg, range: [0 deg, 110 deg], signal: [4.5 V, 0.5 V]'))?.ranges).toHaveLength(1);
  });

  it('is not found of one that goes steadily, whichever way, or back with the plates', () => {
    for (const sensor of [
      SENSOR,
      SENSOR.replace('[0.5 V, 4.5 V]', '[4.5 V, 0.5 V]'),
      SENSOR.replace('12 deg', '100 deg, reversed: true'),
    ]) {
      expect(found(sensorFile({ sensor }))).toBeUndefined();
    }
    expect(found(rocker(200).replace('plates: {bank: {lever: shaft', 'plates: {bank: {lever: rotor'))).toBeUndefined();
  });
});

describe('share of its span', () => {
  const share = (text: string): number | undefined => {
    const { travel, sensor } = sensorIn(text);
    return shareOfSpan(travel, sensor);
  };

  it('is what the travel uses of what the file gives, rising or falling', () => {
    expect(share(sensorFile())).toBeCloseTo(80 / 110, 12);
    expect(share(sensorFile({ ratio: 0.5 }))).toBeCloseTo(40 / 110, 12);
    expect(share(sensorFile({ sensor: SENSOR.replace('[0.5 V, 4.5 V]', '[4.5 V, 0.5 V]') }))).toBeCloseTo(80 / 110, 12);
    expect(share(sensorFile({ sensor: SENSOR.replace('110', '40') }))).toBeCloseTo(28 / 40, 12);
  });

  it('counts what the signal uses on the way, where it turns back', () => {
    const used = share(rocker(200)) ?? NaN;
    const { travel, sensor } = sensorIn(rocker(200));
    const ends = Math.abs(travel.poseAt(1).rotation[sensor.lever]! - travel.poseAt(0).rotation[sensor.lever]!) / DEG / 110;
    expect(used).toBeGreaterThan(ends + 0.01);
    expect(used).toBeCloseTo((crest(rocker(200)).signal - (0.5 + (4 * 30) / 110)) / 4, 6);
  });

  it('has no value where nothing assembles', () => {
    expect(share(rocker(20).replace('to: rotor.arm', 'to: rotor.arm, length: 400 mm'))).toBeUndefined();
  });
});

describe('signals that electronics take for a fault', () => {
  /** Signals at rest and at full pedal as given: the rotor uses its whole range. */
  const told = (rest: number, full: number): readonly unknown[] => {
    const { travel, sensor } = sensorIn(sensorFile({ sensor: `at_closed: 0 deg, range: [0 deg, 80 deg], signal: [${rest} V, ${full} V]` }));
    return signalsTakenForFaults(travel, sensor).map(({ at, side, limit }) => [at, side, limit]);
  };

  it('lie below 0.5 V or above 4.5 V, at rest or at full pedal', () => {
    expect(told(0.5, 4.5)).toEqual([]);
    expect(told(0.49, 4.5)).toEqual([['rest', 'below', 0.5]]);
    expect(told(0.5, 4.51)).toEqual([['full pedal', 'above', 4.5]]);
    expect(told(4.6, 0.4)).toEqual([
      ['rest', 'above', 4.5],
      ['full pedal', 'below', 0.5],
    ]);
  });

  it('carry the signal itself', () => {
    const { travel, sensor } = sensorIn(sensorFile({ sensor: SENSOR.replace('0.5 V', '0 V').replace('12 deg', '5 deg') }));
    expect(signalsTakenForFaults(travel, sensor)).toMatchObject([{ signal: expect.closeTo((4.5 * 5) / 110, 12) as unknown }]);
  });
});
