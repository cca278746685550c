/** Columns of forces: when there are any, and what an unreadable spring leaves of them. */
import { describe, expect, it } from 'vitest';
import { createBuild } from '../../src/kinematics/createBuild.ts';
import { solve } from '../../src/solve.ts';
import { travelOf } from '../../src/travel/travel.ts';

const file = (springs: string): string => `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pad: {radius: 200, angle: 270}, pin: {radius: 30, angle: 90}}}
  shaft: {pivot: [100, 0], arms: {pin: {radius: 30, angle: 90}}}
pedal: {lever: foot, opens: counterclockwise, travel: 40 deg, pad: pad}
rods:
  link: {from: foot.pin, to: shaft.pin}
${springs}`;

const values = (text: string, name: string): readonly (number | null)[] | undefined =>
  solve(text).table([0, 0.5, 1], [name]).columns[0]?.values;

describe('columns of forces', () => {
  it('are there only where the file describes springs', () => {
    expect(values(file(''), 'shaft.closing')).toBeUndefined();
    expect(values(file(''), 'pedal.effort')).toBeUndefined();
  });

  it('pass a torque one to one through a parallelogram, and to the pad by its arm', () => {
    const text = file('springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n');
    for (const [i, torque] of [100, 140, 180].entries()) {
      expect(values(text, 'shaft.closing')![i]).toBeCloseTo(torque, 9);
      expect(values(text, 'foot.closing')![i]).toBeCloseTo(torque, 9);
      expect(values(text, 'pedal.effort')![i]).toBeCloseTo(torque / 200, 11);
    }
  });

  it('have no values while a spring cannot be read, but that spring-by-spring', () => {
    const text = file(
      'springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n  b: {lever: shaft, rate: 3 smoots, preload: 50 N*mm}\n',
    );
    expect(values(text, 'shaft.closing')).toEqual([null, null, null]);
    expect(values(text, 'pedal.effort')).toEqual([null, null, null]);
    expect(values(text, 'a.torque')![0]).toBeCloseTo(100, 9);
  });

  it('hold closing torque against friction, whole and with each spring off', () => {
    // A parallelogram: 50 N·mm of drag on the shaft, 10 on the pedal, and springs on either; what closes goes through one to one.
    const text = file(
      'springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n  b: {lever: foot, preload: 80 N*mm, rate: 1 N*mm/deg}\n',
    )
      .replace('pin: {radius: 30, angle: 90}}}\n  shaft', 'pin: {radius: 30, angle: 90}}, friction: 10 N*mm}\n  shaft')
      .replace('[100, 0], arms: {pin: {radius: 30, angle: 90}}', '[100, 0], arms: {pin: {radius: 30, angle: 90}}, friction: 50 N*mm');
    for (const [i, opening] of [0, 20, 40].entries()) {
      const [a, b] = [100 + 2 * opening, 80 + opening];
      expect(values(text, 'shaft.margin')![i]).toBeCloseTo((a + b) / 60, 9);
      expect(values(text, 'foot.margin')![i]).toBeCloseTo((a + b) / 60, 9);
      expect(values(text, 'a.margin_off')![i]).toBeCloseTo(b / 60, 9);
      expect(values(text, 'b.margin_off')![i]).toBeCloseTo(a / 60, 9);
    }
  });

  it('tell effort and release with each spring off, as of a file without it', () => {
    const [a, b] = [
      '  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n',
      '  b: {lever: foot, preload: 80 N*mm, rate: 1 N*mm/deg}\n',
    ];
    const rubbing = (springs: string): string =>
      file(`springs:\n${springs}`)
        .replace('[100, 0], arms: {pin: {radius: 30, angle: 90}}', '[100, 0], arms: {pin: {radius: 30, angle: 90}}, friction: 50 N*mm')
        .replace('{from: foot.pin, to: shaft.pin}', '{from: foot.pin, to: shaft.pin, ends: {kind: rod_end, pin: 6 mm, friction: 0.1}}');
    const both = rubbing(a + b);
    for (const key of ['effort', 'release']) {
      expect(values(both, `a.${key}_off`), key).toEqual(values(rubbing(b), `pedal.${key}`));
      expect(values(both, `b.${key}_off`), key).toEqual(values(rubbing(a), `pedal.${key}`));
    }
    // By hand, without the rod's ends: the pad is 200 mm out, and the torque goes through one to one.
    const smooth = both.replace('ends: {kind: rod_end, pin: 6 mm, friction: 0.1}', 'lost: 0 mm');
    for (const [i, opening] of [0, 20, 40].entries()) {
      expect(values(smooth, 'a.effort_off')![i]).toBeCloseTo((80 + opening + 50) / 200, 9);
      expect(values(smooth, 'a.release_off')![i]).toBeCloseTo((80 + opening - 50) / 200, 9);
    }
    // In whatever order they are asked for, and the whole beside them.
    const names = ['b.release_off', 'pedal.effort', 'a.effort_off', 'b.effort_off', 'pedal.release', 'shaft.margin'];
    const together = solve(both).table([0, 0.5, 1], names);
    for (const { name, values: found } of together.columns) expect(found, name).toEqual(values(both, name));
  });

  it('know what the foot feels with the one spring off that has no free length, and not with another', () => {
    const text = file(
      'springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n  b: {from: [150, 10], to: shaft.pin, rate: 0.5 N/mm}\n' +
        'require:\n  light: max(b.effort_off) <= 5 N\n  other: max(a.effort_off) <= 5 N\n',
    );
    expect(values(text, 'b.effort_off')![0]).toBeCloseTo(0.5, 9);
    expect(values(text, 'a.effort_off')).toEqual([null, null, null]);
    expect(solve(text).requirements.map(({ outcome }) => outcome)).toEqual(['passed', 'undecided']);
    expect(JSON.stringify(solve(text).requirements)).toContain('b has no `free_length`');
  });

  it('tell with a spring off the least of the shafts that it reaches', () => {
    const shaft = (name: string, friction: number): string =>
      `  ${name}: {pivot: [100, 0], arms: {pin: {radius: 30, angle: 90}}, friction: ${friction} N*mm}\n`;
    const text = `format: 1
levers:
  foot: {pivot: [0, 0]}
${shaft('near', 20)}${shaft('far', 45)}pedal: {lever: foot, opens: counterclockwise, travel: 40 deg}
couplings:
  one: {from: foot, to: near, ratio: 1, one_way: true}
  two: {from: foot, to: far, ratio: 1, one_way: true}
plates:
  n: {lever: near, bore: 40 mm}
  f: {lever: far, bore: 40 mm}
springs:
  pedal_spring: {lever: foot, preload: 90 N*mm, rate: 1 N*mm/deg}
  a: {lever: near, preload: 100 N*mm, rate: 1 N*mm/deg}
  b: {lever: far, preload: 90 N*mm, rate: 1 N*mm/deg}
`;
    // Each shaft has its own spring alone, so that without it nothing closes it; the pedal's own reaches no shaft.
    expect(values(text, 'near.margin')![0]).toBeCloseTo(100 / 20, 9);
    expect(values(text, 'far.margin')![0]).toBeCloseTo(90 / 45, 9);
    expect(values(text, 'a.margin_off')).toEqual([0, 0, 0]);
    expect(values(text, 'b.margin_off')).toEqual([0, 0, 0]);
  });

  it('have no margin where the file gives no friction, and a requirement says so', () => {
    const text = file(
      'springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\nrequire:\n  returns: min(a.margin_off) >= 2\n  whole: min(shaft.margin) >= 2\n',
    );
    expect(values(text, 'shaft.margin')).toBeUndefined();
    expect(solve(text).requirements.map(({ outcome }) => outcome)).toEqual(['undecided', 'undecided']);
    expect(JSON.stringify(solve(text).requirements)).toContain('the file gives no friction');
  });

  it('tell what each cable carries, by the capstan equation', () => {
    const text = `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 20 mm, wraps: counterclockwise}}}
pedal: {cable: main, pull: 20 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel, bend: 180 deg, friction: 0.1}}
springs: {a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}}
`;
    // Known to nine digits: T₂ = T₁ exp(0.1 π).
    expect(values(text, 'main.tension')![0]).toBeCloseTo((100 / 20) * Math.exp(0.1 * Math.PI), 9);
    expect(values(text, 'main.tension')![2]).toBeCloseTo(((100 + 2 * (180 / Math.PI)) / 20) * Math.exp(0.1 * Math.PI), 9);
    expect(values(text, 'main.tension')).toEqual(values(text, 'pedal.effort'));
  });

  it('answer for the build that they are asked of', () => {
    const { study, columns } = solve(file('springs:\n  a: {lever: shaft, rate: 2 N*mm/deg, preload: 100 N*mm}\n'));
    const { mechanism, build, poseAt } = study!.travel;
    const closing = columns.find(({ name }) => name === 'shaft.closing')!;
    const preload = mechanism.dimensions.find(({ path }) => path === 'springs.a.preload')!.index;
    const other = Float64Array.from(mechanism.nominal);
    other[preload] = 0.3;
    const changed = travelOf(createBuild(mechanism, other));
    expect(closing.read(build, poseAt(0))).toBeCloseTo(0.1, 12);
    expect(closing.read(changed.build, changed.poseAt(0))).toBeCloseTo(0.3, 12);
    expect(closing.read(build, poseAt(0))).toBeCloseTo(0.1, 12);
  });
});
