/**
 * Each finding about angles, reach and way of opening: a linkage that must raise it, with the figure worked out by hand, and a near
 * neighbour that must not.
 *
 * Two equal arms on a rod as long as their pivots are apart turn alike: with the arms at 60° + θ the rod lies along x, and both its
 * angles are the acute angle of the arms to x.
 */
import { describe, expect, it } from 'vitest';
import { checkFindings, marked } from '../support/checkFindings.ts';
import { acos, bisect, distance, fourBarAt, polar, radians, type FourBarByHand } from './handGeometry.ts';

const parallel = (travel: number, rest = ''): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
${rest}rods:
  link: {from: pedal.out, to: shaft.arm}
`;

describe('angles between rod and arms', () => {
  it('says nothing where all is well', () => {
    checkFindings(parallel(60));
  });

  it('warns of a flat transmission angle, from where it is under the limit', () => {
    const { only } = checkFindings(
      `${parallel(90)}# ^^^^ warning[transmission-angle]: 30° at 100 % of pedal travel; it is under 40° from 88.9 % to 100 %`,
    );
    const found = only('transmission-angle');
    expect(found.worst?.value).toBeCloseTo(radians(30), 12);
    expect(found.worst?.travel).toBe(1);
    expect(found.limit?.value).toBeCloseTo(radians(40), 12);
    expect(found.ranges).toHaveLength(1);
    expect(found.ranges?.[0]?.from).toBeCloseTo(80 / 90, 12);
    expect(found.ranges?.[0]?.to).toBe(1);
  });

  it('keeps a limit that is just met', () => {
    checkFindings(parallel(80 - 1e-9));
    checkFindings(`${parallel(95 - 1e-9)}# ^^^^ warning[transmission-angle]: 25°`);
  });

  it('fails a transmission angle under its error limit', () => {
    const { only } = checkFindings(`${parallel(96)}# ^^^^ error[transmission-angle]: 24°`);
    expect(only('transmission-angle').worst?.value).toBeCloseTo(radians(24), 12);
    expect(only('transmission-angle').limit?.value).toBeCloseTo(radians(25), 12);
  });

  it('finds a dip of a millionth of a degree between stations', () => {
    // A crank is least square where it passes the line of the pivots: law of cosines with the third side 100 − 20.
    const rod = distance(polar([0, 0], 20, -21.33), polar([100, 0], 40, 100));
    const least = acos((rod ** 2 + 40 ** 2 - 80 ** 2) / (2 * rod * 40));
    const file = (limit: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 20, angle: -21.33}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 100}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 40}
limits: {transmission: [${limit} deg, 0 deg], drive: [0 deg, 0 deg]}
rods:
  link: {from: pedal.out, to: shaft.arm}
`;
    checkFindings(file(least - 1e-6));
    const { only } = checkFindings(`${file(least + 1e-6)}# ^^^^ warning[transmission-angle]: at 53.3 %`);
    expect(only('transmission-angle').worst?.value).toBeCloseTo(radians(least), 13);
    expect(only('transmission-angle').worst?.travel).toBeCloseTo(21.33 / 40, 7);
    expect(only('transmission-angle').ranges).toHaveLength(1);
  });

  it('takes the limits of the file', () => {
    checkFindings(parallel(96, 'limits: {transmission: [20 deg, 10 deg]}\n'));
    const { only } = checkFindings(`${parallel(96, 'limits: {transmission: 30 deg}\n')}# ^^^^ warning[transmission-angle]: under 30°`);
    expect(only('transmission-angle').limit).toMatchObject({ from: 'limits of this file' });
  });

  it('warns of a flat drive angle, and fails one flatter still', () => {
    const silent = 'limits: {transmission: [2 deg, 1 deg]}\n';
    checkFindings(parallel(99.9, silent));
    const { only } = checkFindings(`${parallel(105, silent)}# ^^^^ warning[drive-angle]: 15°`);
    expect(only('drive-angle').worst?.value).toBeCloseTo(radians(15), 12);
    expect(only('drive-angle').ranges?.[0]?.from).toBeCloseTo(100 / 105, 12);
    checkFindings(`${parallel(111, silent)}# ^^^^ error[drive-angle]: 9°`);
  });
});

describe('dead centres and reach', () => {
  // Arms 30 and 20 on pivots 60 apart: the rod ends the travel where driving pin, driven pin and driven pivot lie on one line.
  const bar: FourBarByHand = { from: [0, 0], driving: 30, start: 70, to: [60, 0], driven: 20, end: 100 };
  const text = (travel: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 30, angle: 70}}}
  shaft: {pivot: [60, 0], arms: {arm: {radius: 20, angle: 100}}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
limits: {transmission: [0 deg, 0 deg], drive: [0 deg, 0 deg]}
rods:
  link: {from: pedal.out, to: shaft.arm}
`;
  const rod = Math.hypot(
    60 + 20 * Math.cos(radians(100)) - 30 * Math.cos(radians(70)),
    20 * Math.sin(radians(100)) - 30 * Math.sin(radians(70)),
  );
  // Law of cosines in the triangle of both pivots and the driving pin, whose third side is then rod and driven arm together.
  const end = acos((30 ** 2 + 60 ** 2 - (rod + 20) ** 2) / (2 * 30 * 60)) - 70;

  it('says where a rod comes in line with the driven arm and from where it cannot reach', () => {
    const travel = 80;
    const { only } = checkFindings(`${text(travel)}# ^^^^ error[toggle-opening]: the pedal cannot turn shaft beyond it`);
    expect(only('not-assembled').ranges?.[0]?.from).toBeCloseTo(end / travel, 9);
    expect(only('not-assembled').ranges?.[0]?.to).toBe(1);
    expect(only('toggle-opening').worst?.travel).toBeCloseTo(end / travel, 9);
    expect(only('toggle-opening').worst?.value).toBeLessThan(1e-6);
    expect(fourBarAt(bar, end - 1e-6)).toBeDefined();
    expect(fourBarAt(bar, end + 1e-6)).toBeUndefined();
  });

  it('says nothing just short of it', () => {
    checkFindings(text(end - 0.01));
  });

  it('says where a rod comes in line with the driving arm, and that the driven lever turns back', () => {
    // Extended dead centre of a crank of 20 on a rod: crank and rod together from pivot to driven pin.
    const crank: FourBarByHand = { from: [0, 0], driving: 20, start: 150, to: [100, 0], driven: 40, end: 100 };
    const length = Math.hypot(
      100 + 40 * Math.cos(radians(100)) - 20 * Math.cos(radians(150)),
      40 * Math.sin(radians(100)) - 20 * Math.sin(radians(150)),
    );
    // The driven pin then lies length − 20 from the driving pivot, behind which the crank points.
    const dead = 180 + acos(((length - 20) ** 2 + 100 ** 2 - 40 ** 2) / (2 * (length - 20) * 100)) - 150;
    const file = (travel: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 20, angle: 150}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 100}}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
limits: {drive: [0 deg, 0 deg]}
rods:
  link: {from: pedal.out, to: shaft.arm}
${travel > dead ? '# ^^^^ error[toggle-returning]: the throttle can stay open\n' : ''}`;
    checkFindings(file(dead - 0.1));
    const travel = 80;
    const { only } = checkFindings(file(travel));
    expect(only('toggle-returning').worst?.travel).toBeCloseTo(dead / travel, 9);
    const most = fourBarAt(crank, dead)?.turned ?? NaN;
    const last = fourBarAt(crank, travel)?.turned ?? NaN;
    expect(only('turns-back').worst?.value).toBeCloseTo(Math.abs(radians(most - last)), 10);
    expect(only('turns-back').ranges?.[0]?.from).toBeCloseTo(dead / travel, 7);
  });

  it('tells a change point from a dead centre alone', () => {
    const { only } = checkFindings(
      `${parallel(150, 'limits: {transmission: [0 deg, 0 deg], drive: [0 deg, 0 deg]}\n')}# ^^^^ error[change-point]: all its links lie on one line`,
    );
    expect(only('change-point').worst?.travel).toBeCloseTo(120 / 150, 6);
    // Told once, though both arms know of it.
    expect(only('toggle-returning').ranges).toHaveLength(1);
    checkFindings(parallel(119, 'limits: {transmission: [0 deg, 0 deg], drive: [0 deg, 0 deg]}\n'));
  });

  it('asks for the side where a rod is drawn in line with the driven arm', () => {
    const file = (angle: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 0}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 30, angle: ${angle}}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 10}
limits: {transmission: [0 deg, 0 deg], drive: [0 deg, 0 deg]}
rods:
  link: {from: pedal.out, to: shaft.arm}
`;
    checkFindings(`${file(180)}# ^^^^ error[side-undecided]: to the side on which it works`);
    checkFindings(file(150));
  });

  it('says that a fork too far off its pin cannot reach it, not that it has no side', () => {
    const file = (offset: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {tang: {radius: 20, angle: 90}}}
  fork: {pivot: [30, 0]}
pedal: {lever: pedal, opens: counterclockwise, travel: 20}
slots:
  pair: {pin: pedal.tang, fork: fork, angle: 150 deg, offset: ${offset} mm}
`;
    const { only } = checkFindings(`${file(46)}# ^^^^ error[not-assembled]: from 0 % to 100 %`);
    expect(only('not-assembled').cure).toContain('offset');
    checkFindings(file(-1));
  });
});

describe('the way of opening', () => {
  // The crank of a dead centre again, turned on: the shaft opens, comes back and would pass its stop.
  const bar: FourBarByHand = { from: [0, 0], driving: 20, start: 150, to: [100, 0], driven: 40, end: 100 };
  const turned = (rotation: number): number => fourBarAt(bar, rotation)?.turned ?? NaN;

  it('says by how much a shaft would pass its closed stop and its plates their seat', () => {
    const travel = 120;
    const { only } = checkFindings(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 20, angle: 150}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 100}}, stops: {closed: 0 deg}}
#                                                                                 ^^^^^ error[closed-stop-passed]: at 100 %
pedal: {lever: pedal, opens: counterclockwise, travel: ${travel}}
limits: {drive: [0 deg, 0 deg]}
rods:
  link: {from: pedal.out, to: shaft.arm}
# ^^^^ error[toggle-returning]
plates:
  bank: {lever: shaft, bore: 40 mm, seat: 78.6 deg, idle: 1.5 deg}
#                                                         ^^^^^^^ error[plate-below-seat]: jam in the bore
`);
    expect(only('closed-stop-passed').worst?.value).toBeCloseTo(radians(turned(travel)), 11);
    expect(only('closed-stop-passed').ranges?.[0]?.from).toBeCloseTo(
      bisect((t) => turned(travel * t), 0.6, 1),
      8,
    );
    expect(only('plate-below-seat').limit?.value).toBeCloseTo(radians(-1.5), 12);
    expect(only('plate-below-seat').worst?.value).toBeCloseTo(radians(turned(travel)), 11);
    expect(only('plate-below-seat').ranges?.[0]?.from).toBeCloseTo(
      bisect((t) => turned(travel * t) + 1.5, 0.6, 1),
      8,
    );
  });

  it('keeps quiet about stop and seat where the shaft comes back to neither', () => {
    checkFindings(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 20, angle: 150}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 100}}, stops: {closed: 0 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: ${bisect(turned, 60, 120) - 0.01}}
limits: {drive: [0 deg, 0 deg]}
rods:
  link: {from: pedal.out, to: shaft.arm}
# ^^^^ error[toggle-returning]
plates:
  bank: {lever: shaft, bore: 40 mm, seat: 79.6 deg, idle: 0.5 deg}
`);
  });

  it('says that a lever is driven against what the file calls opening, and nothing that follows from it', () => {
    const file = (opens: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], opens: ${opens}, arms: {arm: {radius: 40, angle: 60}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
rods:
  link: {from: pedal.out, to: shaft.arm}
`;
    checkFindings(file('counterclockwise'));
    checkFindings(marked(file('clockwise'), 'shaft', 'error[opens-otherwise]: `wraps` of the drum'));
  });

  it('calls plates below their seat that a closed stop lets close too far', () => {
    const file = (closed: number): string => `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 20, wraps: counterclockwise}}, stops: {closed: ${closed} deg, open: 60 deg}}
pedal: {cable: main, pull: ${1 + 20 * radians(60)} mm}
cables:
  main: {enters: [40, 20], to: shaft.wheel, slack: 1 mm}
plates:
  bank: {lever: shaft, bore: 40 mm, seat: 6 deg, idle: 1.5 deg}
`;
    const { only } = checkFindings(marked(file(-2), '1.5 deg', 'error[plate-below-seat]'));
    expect(only('plate-below-seat').worst?.value).toBeCloseTo(radians(-2), 12);
    expect(only('plate-below-seat').message).toContain('0.5° beyond their seat at 0 %');
    checkFindings(file(-1.4));
  });
});
