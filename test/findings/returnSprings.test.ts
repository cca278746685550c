/** Which springs make up for each other: only those that close over the whole travel, and not across free play. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { onShaft, STEADY, TWO } from './hungSprings.ts';

const single = (text: string): Finding | undefined => {
  const { problems, findings } = solve(text);
  expect(problems).toEqual([]);
  return findings.find(({ code }) => code === 'single-return-spring');
};

describe('a second return spring', () => {
  it('is none while it is slack, with the reason in the message', () => {
    const tail = (free: number): string =>
      onShaft([STEADY, `tail: {from: [40, 0], to: shaft.tail, rate: 0.5 N/mm, free_length: ${free} mm}`]);
    expect(single(tail(55))?.message).toMatch(
      /^one is the only return spring that closes shaft over the whole travel: tail is slack from 0 % to [\d.]+ %/,
    );
    expect(single(tail(50))).toBeUndefined();
  });

  it('is none past its dead centre, nor while it opens', () => {
    const over = onShaft([STEADY, 'tail: {from: [100, 60], to: shaft.tail, rate: 0.5 N/mm, free_length: 40 mm}']);
    expect(single(over)?.message).toContain('tail passes its dead centre and opens shaft from 50 %');
    const opens = onShaft([STEADY, 'tail: {from: [60, 60], to: shaft.tail, rate: 0.5 N/mm, free_length: 20 mm}']);
    expect(single(opens)?.message).toContain('tail opens shaft from 0 % to 100 %');
  });

  it('brings something at rest, more than rounding', () => {
    const second = (preload: string): string => onShaft([STEADY, `two: {lever: shaft, rate: 2 N*mm/deg, preload: ${preload} N*mm}`]);
    expect(single(second('0'))?.message).toContain('two brings nothing at 0 % of pedal travel');
    expect(single(second('0.01'))).toBeUndefined();
  });

  it('acts across free play only, where that stands between', () => {
    const text = (lost: string): string => `format: 1
levers:
  near: {pivot: [0, 0], arms: {out: {radius: 40, angle: 90}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 90}}, stops: {closed: 0 deg, open: 40 deg}}
pedal: {lever: near, opens: counterclockwise, travel: 41}
rods: {link: {from: near.out, to: shaft.arm${lost}}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
springs:
  one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
  two: {lever: near, rate: 2 N*mm/deg, preload: 300 N*mm}
`;
    const { message } = single(text(', lost: 1 mm')) ?? { message: '' };
    expect(message).toBe('one is the only return spring that closes shaft directly: two acts only across the free play of link');
    expect(single(text(''))).toBeUndefined();
  });

  it('is only noted where it turns the lever of a sensor alone', () => {
    const text = (more: string, plates = ''): string => `format: 1
levers:
  shaft: {pivot: [0, 0], stops: {closed: 0 deg, open: 60 deg}}
  rotor: {pivot: [100, 0]}
pedal: {lever: shaft, opens: counterclockwise, travel: 60}
couplings: {on: {from: shaft, to: rotor}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}${plates}}
sensors: {tps: {lever: rotor, at_closed: 20 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}}
springs:
  one: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}
  inside: {lever: rotor, rate: 0.2 N*mm/deg, preload: 10 N*mm}
${more}`;
    expect(single(text(''))).toMatchObject({ severity: 'note', part: 'one' });
    expect(single(text(''))?.message).toContain('inside, which turns rotor, which carries the sensor tps and no plates');
    expect(single(text('  two: {lever: shaft, rate: 2 N*mm/deg, preload: 300 N*mm}\n'))).toBeUndefined();
    expect(single(text('', ', far: {lever: rotor, bore: 40, seat: 6 deg, idle: 1.5 deg}'))).toBeUndefined();
  });
});

describe('a dip', () => {
  const through = (springs: string): string => `format: 1
levers:
  near: {pivot: [0, 0], arms: {out: {radius: 20, angle: 130}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 100}}, stops: {closed: 0 deg}}
pedal: {lever: near, opens: counterclockwise, travel: 40}
rods: {link: {from: near.out, to: shaft.arm}}
plates: {bank: {lever: shaft, bore: 40, seat: 6 deg, idle: 1.5 deg}}
limits: {drive: 0 deg}
springs:
${springs}`;
  const dip = (text: string): Finding | undefined => solve(text).findings.find(({ code }) => code === 'closing-dips');

  it('of an extension spring is cured at its arm, and never by a stiffer spring', () => {
    const hung = (name: string): string =>
      `${name}: {from: [100, 60], to: shaft.tail, rate: 0.05 N/mm, free_length: 20 mm, initial_tension: 9 N}`;
    const cure = dip(onShaft([hung('one'), hung('two')], { angle: 195 }))?.cure;
    expect(cure).toContain('Clock the arm of one on shaft');
    expect(cure).not.toContain('stiffer');
  });

  it('of a torsion spring before the linkage is cured on the shaft', () => {
    const on = (lever: string): string =>
      through(['one', 'two'].map((name) => `  ${name}: {lever: ${lever}, rate: 0.1 N*mm/deg, preload: 300 N*mm}\n`).join(''));
    const backwards = on('near').replace('angle: 130', 'angle: 30').replace('travel: 40', 'travel: 60');
    expect(dip(backwards)?.cure).toContain('it works through the linkage, whose hold on shaft falls');
    expect(dip(backwards)?.cure).not.toContain('arm');
    expect(dip(on('shaft'))).toBeUndefined();
  });
});

describe('what a file is silent on', () => {
  const left = (text: string): readonly string[] => solve(text).notChecked.map(({ part, message }) => `${part}: ${message}`);

  it('is told first', () => {
    const bare = onShaft([]).replace('springs:\n', '');
    expect(left(bare)[0]).toBe('bank: Not checked: what closes the throttle, since the file describes no springs');
    expect(left(onShaft(TWO)).join()).not.toContain('describes no');
    expect(left(onShaft(TWO, { plates: '' }))[0]).toBe('plates: Not checked: whether anything closes, since the file describes no plates');
    const noPedal = onShaft(TWO).replace(/pedal: .*\n/, '');
    expect(left(noPedal)[0]).toBe('pedal: Not checked: the whole travel, since the file describes no pedal');
  });

  it('is a broken part once, and each figure of plates that is left out', () => {
    const lost = left(onShaft(TWO)).filter((line) => line.includes('any one spring, rod, cable or pin lost'));
    expect(lost).toHaveLength(1);
    expect(left(onShaft(TWO, { plates: '' })).join()).not.toContain('pin lost');
    expect(left(onShaft(TWO))).toContain('bank: Not checked: what `shaft` of these plates does; left out, and taken as 0');
    const all = onShaft(TWO, { plates: 'plates: {bank: {lever: shaft, bore: 40}}\n' });
    expect(left(all)).toContain('bank: Not checked: what `shaft`, `seat` and `idle` of these plates do; left out, and taken as 0');
    const given = onShaft(TWO, { plates: 'plates: {bank: {lever: shaft, bore: 40, shaft: 8, seat: 6 deg, idle: 1.5 deg}}\n' });
    expect(left(given).join()).not.toContain('taken as 0');
  });
});

it('a shaft that its cable does not open fully is told how much more pull it takes, and of slack that is the cause', () => {
  const cure = (slack: number, pull = 20): string | undefined =>
    solve(onShaft(TWO).replace('pull: 25.13', `pull: ${pull}`).replace('shaft.wheel}', `shaft.wheel, slack: ${slack} mm}`)).findings.find(
      ({ code }) => code === 'opening-missed',
    )?.cure;
  // 60° on 24 mm take 25.13 mm.
  expect(cure(0)).toBe('Pull the cable main further by 5.13 mm, or take a smaller drum than shaft.wheel');
  expect(cure(6, 25.2)).toContain('; its slack takes 6 mm');
  expect(cure(6, 25.2)).not.toContain('arm');
});

it('a rod that cannot be assembled is told no four-bar, rather than one axis for two pivots', () => {
  const fourBar = (pivot: string, at: string): string | undefined =>
    solve(`format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {at: [30, 0]}}}
  shaft: {pivot: ${pivot}, arms: {arm: {at: ${at}}}}
pedal: {lever: crank, opens: counterclockwise, travel: 20}
rods: {link: {from: crank.out, to: shaft.arm}}
`)
      .parts.find(({ name }) => name === 'link')
      ?.figures.find(({ label }) => label === 'four-bar')?.text;
  expect(fourBar('[60, 0]', '[30.3, 0]')).toBe('– (cannot be assembled)');
  expect(fourBar('[0, 0]', '[0, 30]')).toBe('none: both levers turn about one axis');
});

it('a spring between two levers is told of one end and of both ends through the linkage', () => {
  const { parts, findings } = solve(`format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 30, angle: 100}, sp: {radius: 20, angle: 200}}}
  shaft: {pivot: [90, 10], arms: {arm: {radius: 32, angle: 95}, sp: {radius: 20, angle: 290}}, stops: {closed: 0 deg}}
pedal: {lever: crank, opens: clockwise, travel: 40}
rods: {link: {from: crank.out, to: shaft.arm}}
plates: {bank: {lever: shaft, bore: 45, shaft: 8, seat: 6 deg, idle: 1.5 deg}}
springs: {mid: {from: crank.sp, to: shaft.sp, rate: 0.5 N/mm, free_length: 60 mm, initial_tension: 2 N}, a: {lever: shaft, rate: 2 N*mm/deg, preload: 150 N*mm}}
`);
  const labels = (name: string): readonly string[] => parts.find((each) => each.name === name)?.figures.map(({ label }) => label) ?? [];
  expect(labels('mid')).toEqual([
    'least closing torque about shaft, of this end alone',
    'greatest',
    'least at shaft, both ends through the linkage',
    'greatest',
  ]);
  expect(labels('a')).toEqual(['least closing torque', 'greatest']);
  expect(findings.find(({ code }) => code === 'spring-opens')?.message).toContain(', both its ends through the linkage');
});

it('closing without bound at a dead centre of the linkage is told as that dead centre only', () => {
  const codes = (angle: number): readonly string[] =>
    solve(`format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 22, angle: ${angle}}}, drums: {q: {radius: 24, wraps: clockwise, groove: 120 deg}}}
  shaft: {pivot: [90, 0], arms: {arm: {radius: 26, angle: 140}}, stops: {closed: 0 deg, open: 80 deg}}
pedal: {cable: main, pull: 46 mm, lever_ratio: 4}
cables: {main: {to: crank.q, enters: [-80, 24], slack: 1 mm, stiffness: 50 N/mm}}
rods: {link: {from: crank.out, to: shaft.arm}}
plates: {bank: {lever: shaft, count: 2, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg}}
springs:
  a: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}
  b: {lever: crank, rate: 1 N*mm/deg, preload: 150 N*mm}
`).findings.map(({ code }) => code);
  expect(codes(198)).toContain('toggle-returning');
  expect(codes(198)).not.toContain('closing-lost');
  expect(codes(198)).not.toContain('closing-dips');
});

it('a shaft held open by the rod of another is told its length', () => {
  const answers = (length: number): ReturnType<typeof solve> =>
    solve(`format: 1
levers:
  near: {pivot: [0, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {closed: 0 deg}}
  far: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {closed: 0 deg}}
pedal: {lever: near, opens: counterclockwise, travel: 60}
rods: {link: {from: near.arm, to: far.arm, length: ${length} mm}}
plates: {bank: {lever: near, bore: 40, shaft: 8, seat: 6 deg, idle: 1.5 deg}}
`);
  const held = answers(100.4).findings.find(({ code, part }) => code === 'held-open' && part === 'near');
  const told = Number(/Set link to ([\d.]+) mm/.exec(held?.cure ?? '')?.[1]);
  expect(told).toBeCloseTo(100, 2);
  expect(answers(told).findings.filter(({ code }) => code === 'held-open')).toEqual([]);
});
