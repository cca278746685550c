/** Which spring closes what: across cables, one-way couplings and free play. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closureOf } from '../support/closure.ts';
import { drivenLever, drivingLever, type SketchJoint } from '../support/sketch.ts';
import { anySprung } from './support/randomSprung.ts';
import { solveSprung, solveSprungText, type SprungSketch, type TorsionSketch } from './support/sprung.ts';
import { standAt } from './support/standing.ts';

const STATIONS = [0, 0.2, 0.5, 0.8, 1];

const wound = (lever: string, preload: number): TorsionSketch => ({ kind: 'torsion', name: `added_${lever}`, lever, rate: 3, preload });
const withSpring = (sketch: SprungSketch, spring: TorsionSketch): SprungSketch => ({ ...sketch, springs: [...sketch.springs, spring] });

/** Levers that stand before a cable on the way to it. */
function upstreamOf({ joints }: SprungSketch, cable: SketchJoint): readonly string[] {
  const levers: string[] = [];
  for (let lever = drivingLever(cable); lever !== undefined;) {
    levers.push(lever);
    const driver = joints.find((joint) => drivenLever(joint) === lever);
    lever = driver && drivingLever(driver);
  }
  return levers;
}

/** Levers behind a joint. */
function downstreamOf({ joints }: SprungSketch, joint: SketchJoint): readonly string[] {
  const levers = [drivenLever(joint)];
  for (const lever of levers) levers.push(...joints.filter((each) => drivingLever(each) === lever).map(drivenLever));
  return levers;
}

describe('across a cable', () => {
  const sketches = fc.sample(anySprung({ stops: true }), { numRuns: 500, seed: 41 });
  const cabled = sketches.flatMap((sketch) => {
    const cables = sketch.joints.filter((joint) => joint.kind === 'cable' && joint.from !== undefined);
    return cables.map((cable) => ({ sketch, cable }));
  });

  it('a spring before it changes no torque and no cable behind it', () => {
    let compared = 0;
    for (const { sketch, cable } of cabled) {
      const plain = solveSprung(sketch);
      for (const lever of upstreamOf(sketch, cable)) {
        const sprung = solveSprung(withSpring(sketch, wound(lever, 500)));
        for (const travel of STATIONS) {
          const [before, after] = [plain.rowAt(travel), sprung.rowAt(travel)];
          for (const behind of downstreamOf(sketch, cable)) {
            expect(after(`${behind}.closing`), `${behind} at ${travel}\n${sprung.text}`).toBe(before(`${behind}.closing`));
            compared++;
          }
          // The lever itself feels it, so the spring is not lost on the way.
          const [was, is] = [before(`${lever}.closing`), after(`${lever}.closing`)];
          const own = 500 + 3 * before(`${lever}.opening`);
          if (Number.isNaN(was)) continue;
          expect(Math.abs(is - was - own), `${lever} at ${travel}\n${sprung.text}`).toBeLessThanOrEqual(
            1e-9 * (Math.abs(was) + Math.abs(own)),
          );
        }
      }
    }
    expect(compared).toBeGreaterThan(1000);
  });

  it('a spring behind it reaches what drives it while the cable is tight and not while it is loose', () => {
    let tight = 0;
    let loose = 0;
    for (const { sketch, cable } of cabled) {
      if (cable.kind !== 'cable') continue;
      const plain = solveSprung(sketch);
      // Strong enough to outdo every other spring about this lever.
      const sprung = solveSprung(withSpring(sketch, wound(cable.to.lever, 1e6)));
      const closure = closureOf(sketch, plain.senses);
      for (const travel of STATIONS) {
        const stand = standAt(closure, sketch, plain, travel);
        if (stand === undefined) continue;
        const name = `${cable.from!.lever}.closing`;
        const [before, after] = [plain.rowAt(travel)(name), sprung.rowAt(travel)(name)];
        if (Number.isNaN(before) || Number.isNaN(after)) continue;
        const stands = stand.cable(cable);
        if (stands === 'loose') {
          expect(after, `${name} at ${travel}\n${sprung.text}`).toBe(before);
          loose++;
        } else if (stands.stretch === 0 && !isBackedOff(closure, sketch, cable, stand.rotations, plain.senses)) {
          expect(Math.abs(after - before), `${name} at ${travel}\n${sprung.text}`).toBeGreaterThan(1);
          tight++;
        }
      }
    }
    expect(tight).toBeGreaterThan(150);
    expect(loose).toBeGreaterThan(80);
  });
});

/** Whether a pull no longer opens the driven lever, which has then come past its dead centre: nothing of it can hold the cable. */
function isBackedOff(
  closure: ReturnType<typeof closureOf>,
  sketch: SprungSketch,
  cable: SketchJoint,
  rotations: Readonly<Record<string, number>>,
  senses: Readonly<Record<string, number>>,
): boolean {
  const lever = drivenLever(cable);
  const way = Math.sign(closure.leverage(cable, rotations)) * senses[lever]!;
  // A pull shortens the distance of a pin, and turns a drum its way.
  return cable.kind === 'cable' && cable.to.part in sketch.levers.find(({ name }) => name === lever)!.arms ? way > 0 : way < 0;
}

describe('a spring that does not count as return', () => {
  it('pulls like one that does', () => {
    for (const sketch of fc.sample(anySprung(), { numRuns: 60, seed: 42 })) {
      const counted = solveSprung(sketch);
      const not = solveSprung({ ...sketch, springs: sketch.springs.map((spring) => ({ ...spring, countsAsReturn: false })) });
      expect(not.text).toContain('counts_as_return: false');
      for (const travel of STATIONS) {
        const [before, after] = [counted.rowAt(travel), not.rowAt(travel)];
        const names = [
          ...sketch.levers.map(({ name }) => `${name}.closing`),
          ...sketch.springs.map(({ name }) => `${name}.torque`),
          'pedal.effort',
        ];
        for (const name of names) expect(after(name), `${name} at ${travel}\n${not.text}`).toBe(before(name));
      }
    }
  });
});

describe('a coupling that only pushes open', () => {
  const file = (springs: string, coupling = ''): string => `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pad: {radius: 200, angle: -90 deg}}}
  shaft: {pivot: [100, 0]}
pedal: {lever: foot, opens: counterclockwise, travel: 40 deg, pad: pad}
couplings: {dog: {from: foot, to: shaft, ratio: -2, one_way: true${coupling}}}
springs: ${springs}
`;

  it('lets the springs of what it pushes reach what pushes, and never the other way', () => {
    const row = solveSprungText(
      file('{a: {lever: foot, rate: 1 N*mm/deg, preload: 500}, b: {lever: shaft, rate: 2 N*mm/deg, preload: 100}}'),
    ).rowAt(0.5);
    // The pedal at 20°, the shaft at 40°: 500 + 20 and 100 + 80 N·mm, of which the pedal feels twice the shaft's.
    expect(row('shaft.opening')).toBeCloseTo(40, 9);
    expect(row('shaft.closing')).toBeCloseTo(180, 9);
    expect(row('foot.closing')).toBeCloseTo(520 + 2 * 180, 9);
    expect(row('pedal.effort')).toBeCloseTo(880 / 200, 9);
  });

  it('passes nothing back from springs that open what it pushes', () => {
    const row = solveSprungText(
      file('{a: {lever: foot, rate: 1 N*mm/deg, preload: 500}, b: {lever: shaft, rate: 0.5 N*mm/deg, preload: -100}}'),
    ).rowAt(0.5);
    expect(row('shaft.closing')).toBeCloseTo(-80, 9);
    expect(row('foot.closing')).toBeCloseTo(520, 9);
  });

  it('passes nothing within its lag', () => {
    const { rowAt } = solveSprungText(
      file('{a: {lever: foot, rate: 1 N*mm/deg, preload: 500}, b: {lever: shaft, rate: 2 N*mm/deg, preload: 100}}', ', lag: 10 deg'),
    );
    expect(rowAt(0.2)('shaft.closing')).toBeCloseTo(100, 9);
    expect(rowAt(0.2)('foot.closing')).toBeCloseTo(508, 9);
    // At 20° of the pedal, 10° past the lag, the shaft stands at 20°.
    expect(rowAt(0.5)('shaft.closing')).toBeCloseTo(140, 9);
    expect(rowAt(0.5)('foot.closing')).toBeCloseTo(520 + 2 * 140, 9);
  });

  it('presses the lever that drives it closed on that lever’s way back too, which opens the pedal', () => {
    // Crank 30, rod 90, rocker 60, ground 100: crank and rod are in line at arccos(0.8667) = 29.9°, where the rocker turns back.
    const { rowAt } = solveSprungText(`format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {radius: 30, angle: -40 deg}, pad: {radius: 200, angle: -90 deg}}}
  rocker: {pivot: [100, 0], arms: {pin: {radius: 60, angle: ${rockerDrawn()} deg}}}
  shaft: {pivot: [100, 0]}
pedal: {lever: foot, opens: counterclockwise, travel: 110 deg, pad: pad}
rods: {link: {from: foot.pin, to: rocker.pin, length: 90}}
couplings: {dog: {from: rocker, to: shaft, one_way: true}}
springs: {only: {lever: shaft, rate: 0.001 N*mm/deg, preload: 1000}}
`);
    for (const travel of [0.3, 0.5, 0.75, 0.9]) {
      const row = rowAt(travel);
      expect(row('shaft.opening')).toBeGreaterThan(1);
      expect(row('shaft.opening')).toBeCloseTo(row('rocker.opening'), 9);
      const ahead = rowAt(travel + 1e-6)('rocker.opening') - row('rocker.opening');
      const back = rowAt(travel - 1e-6)('rocker.opening') - row('rocker.opening');
      const ratio = (ahead - back) / (2e-6 * 110);
      expect(Math.sign(ratio)).toBe(travel < 0.6 ? 1 : -1);
      const torque = 1000 + 0.001 * row('shaft.opening');
      expect(row('shaft.closing')).toBeCloseTo(torque, 9);
      expect(row('rocker.closing'), `rocker at ${travel}`).toBeCloseTo(torque, 6);
      expect(row('foot.closing') / (torque * ratio), `foot at ${travel}`).toBeCloseTo(1, 6);
    }
  });
});

/** Degrees at which the rocker's arm is drawn: two circles about the crank's pin and the rocker's pivot. */
function rockerDrawn(): number {
  const [x, y] = [30 * Math.cos((-40 * Math.PI) / 180) - 100, 30 * Math.sin((-40 * Math.PI) / 180)];
  const away = Math.hypot(x, y);
  const lift = Math.acos((60 ** 2 + away ** 2 - 90 ** 2) / (2 * 60 * away));
  return ((Math.atan2(y, x) - lift) * 180) / Math.PI;
}

describe('a rod with free play', () => {
  // A parallelogram: both levers turn alike while the rod is taut.
  const file = (lost: string, opens: string): string => `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {radius: 40, angle: 90 deg}, pad: {radius: 200, angle: -90 deg}}}
  shaft: {pivot: [100, 0], arms: {pin: {radius: 40, angle: 90 deg}}}
pedal: {lever: foot, opens: ${opens}, travel: 40 deg, pad: pad}
rods: {link: {from: foot.pin, to: shaft.pin${lost}}}
springs: {a: {lever: foot, rate: 1 N*mm/deg, preload: 500}, b: {lever: shaft, rate: 2 N*mm/deg, preload: 100}}
`;

  it('leaves each side to its own springs within the play', () => {
    const row = solveSprungText(file(', lost: 5', 'clockwise')).rowAt(0.1);
    expect(row('foot.opening')).toBeCloseTo(4, 9);
    expect(row('shaft.opening')).toBe(0);
    expect(row('foot.closing')).toBeCloseTo(504, 9);
    expect(row('shaft.closing')).toBeCloseTo(100, 9);
    expect(row('pedal.effort')).toBeCloseTo(504 / 200, 9);
  });

  it('brings the springs behind it to the pedal once it pushes', () => {
    const row = solveSprungText(file(', lost: 5', 'clockwise')).rowAt(0.75);
    expect(row('shaft.opening')).toBeGreaterThan(10);
    expect(row('foot.closing')).toBeGreaterThan(530 + 0.5 * (100 + 2 * row('shaft.opening')));
  });

  it('works as one without play where it pulls from the first', () => {
    const [with5, without] = [solveSprungText(file(', lost: 5', 'counterclockwise')), solveSprungText(file('', 'counterclockwise'))];
    for (const travel of [0.1, 0.5, 1]) {
      for (const name of ['foot.closing', 'shaft.closing', 'pedal.effort']) {
        expect(with5.rowAt(travel)(name), `${name} at ${travel}`).toBeCloseTo(without.rowAt(travel)(name), 9);
      }
    }
  });
});

describe('a slot with play', () => {
  it('leaves each side to its own springs within the play and joins them beyond', () => {
    const { rowAt } = solveSprungText(`format: 1
levers:
  foot: {pivot: [0, 0], arms: {tang: {radius: 50, angle: 0 deg}, pad: {radius: 200, angle: -90 deg}}}
  fork: {pivot: [100, 0]}
pedal: {lever: foot, opens: counterclockwise, travel: 20 deg, pad: pad}
slots: {pair: {pin: foot.tang, fork: fork, angle: 180 deg, play: 4}}
springs: {a: {lever: foot, rate: 1 N*mm/deg, preload: 500}, b: {lever: fork, rate: 2 N*mm/deg, preload: 100}}
`);
    // The pin has risen by 50 sin 1° = 0.87 mm of the 2 mm to the edge of the play.
    expect(rowAt(0.05)('foot.closing')).toBeCloseTo(501, 9);
    expect(rowAt(0.05)('fork.closing')).toBeCloseTo(100, 9);
    const row = rowAt(1);
    expect(row('fork.opening')).toBeGreaterThan(5);
    const [ahead, back] = [rowAt(1), rowAt(1 - 1e-6)];
    const ratio = (ahead('fork.opening') - back('fork.opening')) / (20 * 1e-6);
    const fork = 100 + 2 * row('fork.opening');
    expect(row('foot.closing') / (520 + ratio * fork)).toBeCloseTo(1, 5);
  });
});
