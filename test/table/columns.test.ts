/**
 * Columns against geometry by hand: Rodrigues' rotation of the drawn places, and the definitions of the columns as they stand in the
 * description of the format.
 */
import { describe, expect, it } from 'vitest';
import { solve, type Answers } from '../../src/solve.ts';

type Vector = readonly [number, number, number];

const DEGREE = Math.PI / 180;
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const sum = (a: Vector, b: Vector, factor = 1): Vector => [a[0] + factor * b[0], a[1] + factor * b[1], a[2] + factor * b[2]];
const size = (a: Vector): number => Math.hypot(...a);
const unit = (a: Vector): Vector => [a[0] / size(a), a[1] / size(a), a[2] / size(a)];
const square = (a: Vector, axis: Vector): Vector => sum(a, axis, -dot(a, axis));

/** A direction turned about an axis of unit length. Rodrigues' formula. */
function turned(v: Vector, axis: Vector, angle: number): Vector {
  const [c, s] = [Math.cos(angle * DEGREE), Math.sin(angle * DEGREE)];
  const across = cross(axis, v);
  const along = dot(axis, v) * (1 - c);
  return [
    v[0] * c + across[0] * s + axis[0] * along,
    v[1] * c + across[1] * s + axis[1] * along,
    v[2] * c + across[2] * s + axis[2] * along,
  ];
}

function row(answers: Answers, travel: number): (name: string) => number {
  const { columns } = answers.table([travel]);
  return (name) => {
    const column = columns.find((each) => each.name === name);
    if (column === undefined) throw new Error(`There is no column ${name} among ${columns.map((each) => each.name).join(' ')}`);
    return column.values[0] ?? NaN;
  };
}

describe('names and units', () => {
  it('are those of the format, in load-path order', () => {
    const { columns } = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}, drums: {wheel: {radius: 20, wraps: counterclockwise}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}, tang: {radius: 30, angle: 0}}}
  fork: {pivot: [150, 0]}
  rotor: {pivot: [150, 0]}
  far: {pivot: [0, 200], drums: {wheel: {radius: 20, wraps: counterclockwise}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 30}
rods: {link: {from: pedal.out, to: shaft.arm}}
slots: {pair: {pin: shaft.tang, fork: fork, angle: 180 deg}}
couplings: {gear: {from: fork, to: rotor, ratio: -1}}
cables: {side: {from: pedal.wheel, leaves: [-50, 20], enters: [-50, 180], to: far.wheel}}
`);
    const named = new Map(columns.map(({ name, unit: of }) => [name, of]));
    const lever = (name: string): [string, string][] => [
      [`${name}.rotation`, 'deg'],
      [`${name}.opening`, 'deg'],
      [`${name}.ratio`, ''],
    ];
    expect([...named].sort()).toEqual(
      [
        ['pedal.travel', '%'],
        ...['pedal', 'shaft', 'fork', 'rotor', 'far'].flatMap(lever),
        ...['transmission', 'drive', 'misalignment', 'twist'].map((key) => [`link.${key}`, 'deg']),
        ['pair.reach', 'mm'],
        ...['transmission', 'drive'].map((key) => [`pair.${key}`, 'deg']),
        ...['pull', 'stretch'].map((key) => [`side.${key}`, 'mm']),
        ...['transmission', 'drive', 'lead'].map((key) => [`side.${key}`, 'deg']),
      ].sort(),
    );
    expect(columns.slice(0, 4).map(({ name }) => name)).toEqual(['pedal.travel', 'pedal.rotation', 'pedal.opening', 'pedal.ratio']);
  });
});

describe('a rod in space', () => {
  const axis1 = unit([0, 1, 4]);
  const axis2 = unit([1, -0.5, 3]);
  const [pivot1, pivot2]: readonly [Vector, Vector] = [
    [0, 0, 0],
    [90, 20, 15],
  ];
  const [pin1, pin2]: readonly [Vector, Vector] = [
    [20, 30, 6],
    [80, 55, 30],
  ];
  const [bolt1, bolt2]: readonly [Vector, Vector] = [unit([0.1, 0.2, 1]), unit([-0.2, 0.3, 1])];
  const answers = solve(`format: 1
levers:
  pedal: {pivot: [${pivot1.join()}], axis: [0, 1, 4], arms: {out: {at: [${pin1.join()}], bolt: [0.1, 0.2, 1]}}}
  shaft: {pivot: [${pivot2.join()}], axis: [1, -0.5, 3], arms: {arm: {at: [${pin2.join()}], bolt: [-0.2, 0.3, 1]}}}
pedal: {lever: pedal, opens: clockwise, travel: 40}
rods: {link: {from: pedal.out, to: shaft.arm}}
`);

  const boltAngle = (e: Vector, from: Vector, to: Vector): number => {
    const [a, b] = [unit(square(from, e)), unit(square(to, e))];
    return Math.atan2(dot(cross(a, b), e), dot(a, b)) / DEGREE;
  };

  it.each([0, 0.3, 0.72, 1])('has its angles, tilt and twist at %d', (travel) => {
    const of = row(answers, travel);
    expect(of('pedal.rotation')).toBeCloseTo(-40 * travel, 12);
    expect(of('pedal.opening')).toBeCloseTo(40 * travel, 12);
    const [one, two] = [of('pedal.rotation'), of('shaft.rotation')];
    const p1 = sum(pivot1, turned(sum(pin1, pivot1, -1), axis1, one));
    const p2 = sum(pivot2, turned(sum(pin2, pivot2, -1), axis2, two));
    expect(size(sum(p2, p1, -1))).toBeCloseTo(size(sum(pin2, pin1, -1)), 11);
    const e = unit(sum(p2, p1, -1));
    const armAngle = (pin: Vector, pivot: Vector, axis: Vector): number => {
      const r = square(sum(pin, pivot, -1), axis);
      return Math.asin(Math.abs(dot(axis, cross(r, e))) / size(r)) / DEGREE;
    };
    expect(of('link.transmission')).toBeCloseTo(armAngle(p2, pivot2, axis2), 10);
    expect(of('link.drive')).toBeCloseTo(armAngle(p1, pivot1, axis1), 10);
    const [b1, b2] = [turned(bolt1, axis1, one), turned(bolt2, axis2, two)];
    const tilt = Math.max(Math.abs(dot(b1, e)), Math.abs(dot(b2, e)));
    expect(of('link.misalignment')).toBeCloseTo(Math.asin(tilt) / DEGREE, 10);
    const drawn = boltAngle(unit(sum(pin2, pin1, -1)), bolt1, bolt2);
    expect(of('link.twist')).toBeCloseTo(boltAngle(e, b1, b2) - drawn, 10);
  });

  it('has the tilt of whichever end tilts more', () => {
    const tilt = (ends: readonly [number, number]): number =>
      row(
        solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {at: [0, 40], bolt: [${Math.sin(ends[0] * DEGREE)}, 0, ${Math.cos(ends[0] * DEGREE)}]}}}
  shaft: {pivot: [100, 0], arms: {arm: {at: [100, 40], bolt: [${Math.sin(ends[1] * DEGREE)}, 0, ${Math.cos(ends[1] * DEGREE)}]}}}
pedal: {lever: pedal, opens: clockwise, travel: 40}
rods: {link: {from: pedal.out, to: shaft.arm}}
`),
        0,
      )('link.misalignment');
    // The rod lies along x as drawn.
    expect([tilt([7, 3]), tilt([2, 9])]).toEqual([expect.closeTo(7, 9), expect.closeTo(9, 9)]);
  });

  it('has a ratio that is the slope of its opening', () => {
    const at = (travel: number): number => row(answers, travel)('shaft.opening');
    expect(row(answers, 0.4)('shaft.ratio')).toBeCloseTo((at(0.4 + 1e-5) - at(0.4 - 1e-5)) / (40 * 2e-5), 7);
    expect(at(1)).toBeGreaterThan(0);
  });
});

describe('a cable', () => {
  const pinned = (extra: string): Answers =>
    solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {clevis: {radius: 70, angle: 100}}}
  shaft: {pivot: [300, 0], opens: counterclockwise, arms: {arm: {radius: 40, angle: 250}}, stops: {open: 20 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 25}
cables:
  main: {from: pedal.clevis, leaves: [60, 60], enters: [450, -40], to: shaft.arm, slack: 1.5 mm${extra}}
`);
  const clevis = (rotation: number): Vector => [70 * Math.cos((100 + rotation) * DEGREE), 70 * Math.sin((100 + rotation) * DEGREE), 0];
  const arm = (rotation: number): Vector => [300 + 40 * Math.cos((250 + rotation) * DEGREE), 40 * Math.sin((250 + rotation) * DEGREE), 0];
  const leaves: Vector = [60, 60, 0];
  const enters: Vector = [450, -40, 0];
  const angle = (a: Vector, b: Vector): number => Math.atan2(size(cross(a, b)), dot(a, b)) / DEGREE;
  const pullAt = (travel: number): number => size(sum(clevis(25 * travel), leaves, -1)) - size(sum(clevis(0), leaves, -1));
  const drawn = size(sum(arm(0), enters, -1));
  const stopPull = drawn - size(sum(arm(20), enters, -1));

  it('pulls at its pin, passes on what slack leaves and takes the rest as stretch', () => {
    const answers = pinned('');
    for (const travel of [0, 0.03, 0.2, 0.5, 0.9, 1]) {
      const of = row(answers, travel);
      const pull = pullAt(travel);
      expect(of('main.pull')).toBeCloseTo(pull, 10);
      const passed = Math.min(Math.max(0, pull - 1.5), stopPull);
      expect(of('main.stretch')).toBeCloseTo(Math.max(0, pull - 1.5 - stopPull), 10);
      expect(drawn - size(sum(arm(of('shaft.opening')), enters, -1))).toBeCloseTo(passed, 10);
      const inner = sum(arm(of('shaft.rotation')), enters, -1);
      const square2 = angle(inner, sum(arm(of('shaft.rotation')), [300, 0, 0], -1));
      expect(of('main.transmission')).toBeCloseTo(Math.min(square2, 180 - square2), 9);
      const drive = angle(sum(clevis(25 * travel), leaves, -1), clevis(25 * travel));
      expect(of('main.drive')).toBeCloseTo(Math.min(drive, 180 - drive), 9);
    }
    expect(row(answers, 1)('main.stretch')).toBeGreaterThan(1);
    expect(row(answers, 1)('shaft.ratio')).toBe(0);
  });

  it('has the right-hand ratio where slack is taken up, and none before', () => {
    const answers = pinned('');
    let [low, high] = [0, 1];
    for (let i = 0; i < 100; i++) {
      const middle = (low + high) / 2;
      if (pullAt(middle) < 1.5) low = middle;
      else high = middle;
    }
    expect(row(answers, low - 1e-9)('shaft.ratio')).toBe(0);
    expect(row(answers, high + 1e-12)('shaft.ratio')).toBeGreaterThan(0.5);
  });

  it('has the greater of both leads where the file says how its housings point', () => {
    const answers = pinned(', leaves_along: [-1, 0.2], enters_along: [-1, 0.05]');
    for (const travel of [0, 0.4, 1]) {
      const of = row(answers, travel);
      const atLeaves = angle(sum(clevis(25 * travel), leaves, -1), [-1, 0.2, 0]);
      const atEnters = angle(sum(arm(of('shaft.rotation')), enters, -1), [-1, 0.05, 0]);
      expect(of('main.lead')).toBeCloseTo(Math.max(atLeaves, atEnters), 9);
    }
  });

  it('has its housings midway of what the inner sweeps where the file does not say', () => {
    const answers = pinned('');
    const heading = (v: Vector): number => Math.atan2(v[1], -v[0]) / DEGREE;
    const swept = (at: (travel: number) => number): { readonly middle: number } => {
      const all = Array.from({ length: 20_001 }, (_, i) => at(i / 20_000));
      return { middle: (Math.min(...all) + Math.max(...all)) / 2 };
    };
    const shaftAt = (travel: number): number => row(answers, travel)('shaft.rotation');
    const most = shaftAt(1);
    const leave = swept((t) => heading(sum(clevis(25 * t), leaves, -1)));
    const enter = swept((t) => heading(sum(arm(most * t), enters, -1)));
    for (const travel of [0, 0.35, 1]) {
      const wanted = Math.max(
        Math.abs(heading(sum(clevis(25 * travel), leaves, -1)) - leave.middle),
        Math.abs(heading(sum(arm(shaftAt(travel)), enters, -1)) - enter.middle),
      );
      expect(row(answers, travel)('main.lead')).toBeCloseTo(wanted, 2);
    }
  });

  it('runs straight off a round drum whichever way it wraps, at right angles to its radius', () => {
    for (const [wraps, side] of [
      ['counterclockwise', 1],
      ['clockwise', -1],
    ] as const) {
      // The housing stands 90 to the left and one radius up or down, so that the inner is level.
      const answers = solve(`format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 20, wraps: ${wraps}}}}
pedal: {cable: main, pull: 30 mm}
cables:
  main: {enters: [10, ${20 * side}], enters_along: [1, 0], to: shaft.wheel, slack: 0 mm}
`);
      const of = row(answers, 0.5);
      // Pulled to the left at the top a drum turns counter-clockwise.
      expect(of('shaft.rotation')).toBeCloseTo((side * 15) / 20 / DEGREE, 10);
      expect(of('main.lead')).toBeCloseTo(0, 6);
      expect(of('main.transmission')).toBe(90);
      expect(of('main.drive')).toBeNaN();
      expect(of('shaft.ratio')).toBeCloseTo(1 / 20 / DEGREE, 10);
      expect(answers.table([0.5], ['shaft.ratio']).columns[0]?.unit).toBe('deg/mm');
    }
  });

  it('leaves a driving drum on the side where turning takes it in', () => {
    for (const [wraps, side] of [
      ['counterclockwise', -1],
      ['clockwise', 1],
    ] as const) {
      const answers = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], drums: {wheel: {radius: 20, wraps: ${wraps}}}}
  shaft: {pivot: [300, 0], drums: {wheel: {radius: 30, wraps: counterclockwise}}}
pedal: {lever: pedal, opens: ${wraps}, travel: 30}
cables:
  main: {from: pedal.wheel, leaves: [-80, ${20 * side}], leaves_along: [1, 0], enters: [200, 30], enters_along: [1, 0], to: shaft.wheel}
`);
      const of = row(answers, 1);
      expect(of('main.pull')).toBeCloseTo(20 * 30 * DEGREE, 10);
      expect(of('main.lead')).toBeCloseTo(0, 6);
      expect(of('main.drive')).toBe(90);
    }
  });
});

describe('a slot', () => {
  const text = (drives: string, offset: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {tang: {radius: 30, angle: 150}}}
  fork: {pivot: [-10, 45], arms: {tang: {radius: 30, angle: 280}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 25}
slots:
  pair: {pin: ${drives === 'fork' ? 'pedal.tang, fork: fork' : 'fork.tang, fork: pedal'}, drives: ${drives}, angle: ${drives === 'fork' ? 241 : 100} deg, offset: ${offset} mm}
`;

  it.each([
    ['fork', 0],
    ['fork', 3],
    ['pin', 0],
    ['pin', -4],
  ] as const)('that drives its %s with offset %d keeps its pin on the centreline', (drives, offset) => {
    const answers = solve(text(drives, offset));
    expect(answers.problems).toEqual([]);
    for (const travel of [0, 0.5, 1]) {
      const of = row(answers, travel);
      const rotation = { pedal: of('pedal.rotation'), fork: of('fork.rotation') };
      const place = (pivot: Vector, radius: number, angle: number): Vector => [
        pivot[0] + radius * Math.cos(angle * DEGREE),
        pivot[1] + radius * Math.sin(angle * DEGREE),
        0,
      ];
      const pivots: Readonly<Record<'pedal' | 'fork', Vector>> = { pedal: [0, 0, 0], fork: [-10, 45, 0] };
      const [pinLever, forkLever] = drives === 'fork' ? (['pedal', 'fork'] as const) : (['fork', 'pedal'] as const);
      const pin = drives === 'fork' ? place(pivots.pedal, 30, 150 + rotation.pedal) : place(pivots.fork, 30, 280 + rotation.fork);
      const heading = (drives === 'fork' ? 241 : 100) + rotation[forkLever];
      const f: Vector = [Math.cos(heading * DEGREE), Math.sin(heading * DEGREE), 0];
      const left: Vector = [-f[1], f[0], 0];
      const from = sum(pin, pivots[forkLever], -1);
      expect(dot(left, from)).toBeCloseTo(offset, 10);
      expect(of('pair.reach')).toBeCloseTo(dot(f, from), 10);
      const turning = (arm: Vector): number => Math.asin(Math.abs(cross(arm, left)[2]) / size(arm)) / DEGREE;
      const [atPin, atFork] = [turning(sum(pin, pivots[pinLever], -1)), turning(from)];
      // The arc sine is known to the square root of rounding near 90°.
      expect(of('pair.transmission')).toBeCloseTo(drives === 'fork' ? atFork : atPin, 5);
      expect(of('pair.drive')).toBeCloseTo(drives === 'fork' ? atPin : atFork, 5);
    }
  });
});

describe('missing values', () => {
  it('are null in every column that has none, and JSON keeps them so', () => {
    const answers = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 30, angle: 70}}}
  shaft: {pivot: [60, 0], arms: {arm: {radius: 20, angle: 100}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 80}
rods: {link: {from: pedal.out, to: shaft.arm}}
`);
    const { columns } = answers.table([0, 1]);
    for (const { name, values } of columns) {
      const own = name.startsWith('pedal.');
      expect(values[0], name).toBeTypeOf('number');
      expect(values[1], name).toBe(own ? values[1] : null);
      if (own) expect(values[1], name).toBeTypeOf('number');
    }
    expect(JSON.parse(JSON.stringify(columns))).toEqual(columns);
  });

  it('say nothing but the pedal where nothing opens at all', () => {
    const of = row(
      solve(`format: 1
levers:
  pedal: {pivot: [0, 0]}
pedal: {lever: pedal, opens: clockwise, travel: 80}
`),
      0.25,
    );
    expect([of('pedal.travel'), of('pedal.rotation'), of('pedal.opening'), of('pedal.ratio')]).toEqual([
      25,
      expect.closeTo(-20, 12),
      expect.closeTo(20, 12),
      1,
    ]);
  });
});
