/** Pedal, cables, plates, sensors, springs, slots, obstacles and outlines in the picture, against figures by hand. */
import { describe, expect, it } from 'vitest';
import { fileNamed, fiveOf, leverNamed, placeAt, shownOf } from './shown.ts';

const DEGREE = Math.PI / 180;

describe('the pedal', () => {
  it('has the path of its pad: radius times angle', () => {
    const { pedal, levers } = shownOf(fileNamed('four-barrel')).picture;
    expect(pedal).toMatchObject({ padIs: 'pad', lever: 0, lastSolved: undefined });
    expect(pedal.padTravel).toBeCloseTo(0.24 * 27 * DEGREE, 12);
    expect(pedal.pad).toEqual(levers[0]!.arms.find(({ name }) => name === 'pad')!.at);
  });

  it('that is a cable has its pull, or the path of the pad by its lever ratio', () => {
    const broken = fileNamed('binding');
    expect(shownOf(broken).picture.pedal).toMatchObject({ padIs: 'pad', lever: undefined, padTravel: 0.032 * 4.2 });
    const bare = broken.replace(', lever_ratio: 4.2', '');
    expect(shownOf(bare).picture.pedal).toMatchObject({ padIs: 'cable', padTravel: 0.032 });
  });

  it('that stops before its travel says where', () => {
    // A pedal on its own shaft of plates, stopped at 30° of 40°.
    const { pedal, stations, levers } = shownOf(`format: 1
levers: {shaft: {pivot: [0, 0], stops: {open: 30 deg}}}
pedal: {lever: shaft, opens: clockwise, travel: 40 deg}
plates: {bank: {lever: shaft, bore: 40 mm}}
`).picture;
    expect(pedal.lastSolved).toBeCloseTo(0.75, 9);
    stations.forEach((at, i) => expect(Number.isNaN(levers[0]!.rotation[i]!)).toBe(at > 0.75 + 1e-9));
    expect(levers[0]!.stops).toEqual({ closed: 0, open: 30 * DEGREE });
    expect(levers[0]!.sense).toBe(-1);
  });
});

describe('a pedal with two rods', () => {
  it('binds where the first of the levers loses its place', () => {
    // A rod of length r to an arm of radius a is in line with it where the driving pin, 40 mm from the foot's pivot, is r − a from the shaft's:
    // D² + 40² − 80 D cos θ = (r − a)², the pin having come down from 90° to θ.
    const bindsAt = (distance: number, arm: number): number => {
      const rod = Math.hypot(distance, arm - 40);
      const angle = Math.acos((distance ** 2 + 1600 - (rod - arm) ** 2) / (80 * distance));
      return (90 - angle / DEGREE) / 100;
    };
    const [late, early] = [bindsAt(110, 38), bindsAt(90, 20)];
    const { pedal, levers, stations } = shownOf(`format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {radius: 40 mm, angle: 90 deg}}}
  late: {pivot: [110, 0], arms: {pin: {radius: 38 mm, angle: 90 deg}}}
  early: {pivot: [90, 0], arms: {pin: {radius: 20 mm, angle: 90 deg}}}
pedal: {lever: foot, opens: clockwise, travel: 100 deg}
rods: {one: {from: foot.pin, to: late.pin}, other: {from: foot.pin, to: early.pin}}
`).picture;
    expect(late).toBeGreaterThan(early + 0.1);
    expect(pedal.lastSolved).toBeCloseTo(early, 9);
    for (const [name, at] of Object.entries({ late, early })) {
      const { rotation } = leverNamed(levers, name);
      stations.forEach((travel, i) => expect(Number.isNaN(rotation[i]!), `${name} at ${travel}`).toBe(travel > at + 1e-9));
    }
  });
});

describe('a cable', () => {
  const { picture, answers } = shownOf(fileNamed('four-barrel'));
  const [cable] = picture.cables;
  const contact = answers.study!.travel.contacts[0]!.travel;

  it('has as much slack left as its pull has not taken up, and none once it is tight', () => {
    const pulls = answers.table([...picture.stations], ['main.pull']).columns[0]!.values;
    picture.stations.forEach((_, i) => expect(cable!.slack[i]).toBeCloseTo(Math.max(0, 1e-3 - pulls[i]! * 1e-3), 12));
    expect(cable!.slack[0]).toBeCloseTo(0.001, 12);
    expect(cable!.slack.at(-1)).toBe(0);
  });

  it('is stretched past the open stop by what the pedal goes on to pull', () => {
    const at = (travel: number) => answers.table([travel], ['main.pull']).columns[0]!.values[0]! * 1e-3;
    expect(cable!.stretch.at(-1)).toBeCloseTo(at(1) - at(contact), 9);
    expect(cable!.stretch[0]).toBe(0);
  });

  it('shows the way of its housing end where the file gives it', () => {
    const { cables } = shownOf(fileNamed('two-banks')).picture;
    const length = Math.hypot(1, 0.024, 0.03);
    expect(cables[0]!.leaves!.along!.map((figure) => figure * length)).toEqual(
      [-1, -0.024, -0.03].map((figure) => expect.closeTo(figure, 12) as number),
    );
    expect(cables[0]!.enters.along).toBeUndefined();
  });
});

describe('what hangs on levers', () => {
  const { picture, answers } = shownOf(fileNamed('sample'));

  it('plates stand at seat and idle as drawn', () => {
    const [first] = picture.plates;
    expect(first).toMatchObject({ name: 'bank_a', count: 2, bore: 0.045, shaft: 0.008 });
    expect(picture.levers[first!.lever]!.name).toBe('shaft_a');
    expect(first!.drawnAngle).toBeCloseTo(7.5 * DEGREE, 12);
    expect(first!.seat).toBeCloseTo(6 * DEGREE, 12);
  });

  it('a sensor has its own angle', () => {
    const [sensor] = picture.sensors;
    const table = answers.table([...picture.stations], ['tps.angle']).columns[0]!.values;
    for (const i of fiveOf(picture.stations)) expect(sensor!.angle[i]).toBeCloseTo(table[i]! * DEGREE, 12);
    expect(sensor!.range[1]).toBeCloseTo(110 * DEGREE, 12);
  });

  it('springs are about their shaft, or from their anchor to their pin', () => {
    expect(picture.springs.map(({ name, form }) => `${name} ${form.kind}`)).toEqual([
      'return_a torsion',
      'return_b torsion',
      'helper extension',
    ]);
    const { form } = picture.springs[2]!;
    if (form.kind === 'torsion') throw new Error('The helper is wound');
    expect(form.from).toEqual([0.29, 0.028, 0]);
    const [x, y] = placeAt(form.to.at, 0);
    expect(x).toBeCloseTo(0.32 + 0.018 * Math.cos(300 * DEGREE), 12);
    expect(y).toBeCloseTo(0.08 + 0.018 * Math.sin(300 * DEGREE), 12);
  });

  it('couplings have their ratio', () => {
    const [{ from, to, ratio } = { from: 0, to: 0, ratio: 0 }] = picture.couplings;
    expect([picture.levers[from]!.name, picture.levers[to]!.name, ratio]).toEqual(['shaft_b', 'rotor', -1]);
  });

  it('levers stand in load-path order', () => {
    expect(picture.levers.map(({ name }) => name)).toEqual(['pedal', 'bellcrank', 'shaft_a', 'shaft_b', 'rotor']);
  });
});

const FORKED = `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {radius: 50 mm, angle: 60 deg}}}
  fork: {pivot: [80, 0], width: 12 mm, outline: [[80, 0], [40, 40], [50, 60]]}
pedal: {lever: foot, opens: counterclockwise, travel: 20 deg}
slots:
  slide: {pin: foot.pin, fork: fork, angle: 141.787 deg}
keep_out:
  rail: {circle: [140, 120], radius: 11 mm, clearance: 3 mm}
  bonnet: {polygon: [[60, 150], [260, 150], [260, 160]]}
`;

describe('a fork', () => {
  it('reaches a tenth beyond what its pin takes where the file does not say', () => {
    const { slots, levers } = shownOf(FORKED).picture;
    const [slot] = slots;
    const reaches = [0, 5, 10, 15, 20].map((turn) =>
      Math.hypot(50 * Math.cos((60 + turn) * DEGREE) - 80, 50 * Math.sin((60 + turn) * DEGREE)),
    );
    const reach = (point: readonly number[]): number => 1e3 * Math.hypot(point[3]!, point[4]!);
    expect(levers[slot!.fork.lever]!.name).toBe('fork');
    expect(reach(slot!.fork.to)).toBeCloseTo(Math.max(...reaches) * 1.1, 3);
    expect(reach(slot!.fork.from)).toBeCloseTo(Math.min(...reaches) - 0.1 * Math.max(...reaches), 3);
  });

  it('reaches as far as the file says', () => {
    const { slots } = shownOf(FORKED.replace('angle: 141.787 deg', 'angle: 141.787 deg, reach: [50 mm, 90 mm]')).picture;
    const { from, to } = slots[0]!.fork;
    expect([from, to].map((point) => Math.hypot(point[3]!, point[4]!))).toEqual([expect.closeTo(0.05, 12), expect.closeTo(0.09, 12)]);
  });

  it('comes with the outline, the width and the obstacles of its file', () => {
    const { levers, keepOuts } = shownOf(FORKED).picture;
    const { outline, width } = leverNamed(levers, 'fork');
    expect(width).toBe(0.012);
    expect(outline.map((corner) => placeAt(corner, 0).map((figure) => Math.round(figure * 1e6)))).toEqual([
      [80_000, 0, 0],
      [40_000, 40_000, 0],
      [50_000, 60_000, 0],
    ]);
    expect(keepOuts).toEqual([
      { name: 'rail', shape: { kind: 'circle', centre: [0.14, 0.12, 0], radius: 0.011 }, clearance: 0.003 },
      {
        name: 'bonnet',
        shape: {
          kind: 'polygon',
          corners: [
            [0.06, 0.15, 0],
            [0.26, 0.15, 0],
            [0.26, 0.16, 0],
          ],
        },
        clearance: 0,
      },
    ]);
  });
});

describe('a picture is planar', () => {
  const isPlanar = (text: string): boolean => shownOf(text).picture.isPlanar;

  it('where all lies at one height about axes square to it', () => {
    expect(isPlanar(fileNamed('four-barrel'))).toBe(true);
    expect(isPlanar(FORKED)).toBe(true);
    expect(isPlanar(fileNamed('two-banks'))).toBe(false);
  });

  it.each([
    ['a pin off it', 'angle: 60 deg}', 'angle: 60 deg, offset: 2 mm}'],
    ['an axis that leans', 'pivot: [80, 0],', 'pivot: [80, 0], axis: [0, 0.01, 1],'],
    ['a pivot off it', 'pivot: [80, 0],', 'pivot: [80, 0, 1],'],
    ['an obstacle off it', '[140, 120]', '[140, 120, 5]'],
  ])('not with %s', (_, before, after) => {
    expect(FORKED).toContain(before);
    expect(isPlanar(FORKED.replace(before, after))).toBe(false);
  });
});
