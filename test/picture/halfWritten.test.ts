/** A file that is not finished shows what can be drawn of it. */
import { describe, expect, it } from 'vitest';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import { solve } from '../../src/solve.ts';
import { chainText } from './chain.ts';
import { fileNamed, leverNamed, placeAt, shownOf } from './shown.ts';

const LEVERS = `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {radius: 50 mm, angle: 60 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 90 deg}}, stops: {open: 80 deg}}
`;
const JOINED = `${LEVERS}rods:
  link: {from: foot.pin, to: shaft.arm}
slots:
  slide: {pin: foot.pin, fork: shaft, angle: 150 deg}
cables:
  main: {from: foot.pin, leaves: [20, 90], enters: [60, 90], to: shaft.arm, slack: 2 mm}
plates: {bank: {lever: shaft, bore: 40 mm, seat: 6 deg}}
sensors: {tps: {lever: shaft, at_closed: 10 deg, range: [0 deg, 100 deg], signal: [0.5 V, 4.5 V]}}
springs: {coil: {lever: shaft, rate: 2 N*mm/deg}, pull: {from: [90, 80], to: shaft.arm, rate: 1 N/mm}}
`;

describe('nothing is shown', () => {
  it.each([
    ['an empty file', ''],
    ['a file of notes', '# soon\n'],
    ['a format and no lever', 'format: 1\ntitle: One day\n'],
    ['a lever without a place', 'format: 1\nlevers: {foot: {arms: {}}}\n'],
    ['an obstacle alone', 'format: 1\nkeep_out: {rail: {circle: [0, 0], radius: 5 mm}}\n'],
    ['another format', `format: 7\n${LEVERS.slice(10)}`],
  ])('of %s', (_, text) => {
    expect(showAnswers(solve(text))).toBeUndefined();
  });
});

describe('a file without a pedal', () => {
  it('shows its levers as drawn, which nothing drives', () => {
    const { picture, charts, report } = shownOf(LEVERS);
    expect([...picture.stations]).toEqual([0, 1]);
    expect(picture.levers.map(({ name, isDriven, rotation, stops }) => ({ name, isDriven, turned: [...rotation], stops }))).toEqual([
      { name: 'foot', isDriven: false, turned: [0, 0], stops: { closed: undefined, open: undefined } },
      {
        name: 'shaft',
        isDriven: false,
        turned: [0, 0],
        stops: { closed: undefined, open: expect.closeTo((80 * Math.PI) / 180, 12) as number },
      },
    ]);
    const [x, y] = placeAt(leverNamed(picture.levers, 'shaft').arms[0]!.at, 0);
    expect([x, y]).toEqual([expect.closeTo(0.1, 12), expect.closeTo(0.04, 12)]);
    expect(charts).toEqual([]);
    expect(report.parts.map(({ kind, name }) => `${kind} ${name}`)).toEqual(['lever foot', 'lever shaft']);
    expect(picture.pedal).toEqual({ padTravel: undefined, padIs: 'pad', lever: undefined, pad: undefined, lastSolved: undefined });
  });

  it('shows all that is joined to them', () => {
    const { picture } = shownOf(JOINED);
    expect(picture.rods.map(({ name }) => name)).toEqual(['link']);
    expect(picture.slots.map(({ name }) => name)).toEqual(['slide']);
    expect(picture.cables.map(({ name, slack, stretch }) => ({ name, slack: [...slack], stretch: [...stretch] }))).toEqual([
      { name: 'main', slack: [0.002, 0.002], stretch: [0, 0] },
    ]);
    expect(picture.plates).toHaveLength(1);
    expect(picture.sensors).toHaveLength(1);
    expect(picture.springs.map(({ name }) => name)).toEqual(['coil', 'pull']);
    // Along the direction of the fork, polar angle 150°, and to its left nothing: no offset.
    const { from, to } = picture.slots[0]!.fork;
    for (const point of [from, to]) expect(Math.atan2(point[4]!, point[3]!)).toBeCloseTo((150 * Math.PI) / 180, 9);
  });

  it('shows drums with their rims', () => {
    const text = `${LEVERS.replace('stops:', 'drums: {q: {radius: 20 mm, wraps: clockwise}, p: {profile: [[0, 20], [40, 25]], wraps: clockwise}}, stops:')}
cables:
  main: {from: foot.pin, leaves: [20, 90], enters: [60, 90], to: shaft.q}
`;
    const { levers, cables } = shownOf(text).picture;
    expect(leverNamed(levers, 'shaft').drums.map(({ form }) => form.kind)).toEqual(['round', 'profile']);
    const { inner } = cables[0]!.enters;
    if (inner.kind !== 'drum') throw new Error('The cable ends at no drum');
    expect(Math.hypot(inner.rim[0]! - 0.1, inner.rim[1]!)).toBeCloseTo(0.02, 12);
  });
});

describe('a file whose pedal moves some of it', () => {
  const text = `${JOINED}pedal: {lever: foot, opens: counterclockwise, travel: 20 deg}\n`;

  it('shows what its load path leaves out too', () => {
    // The shaft is driven three times over: the file is told so, and one of the three moves it.
    const { picture, answers, report } = shownOf(text);
    expect(answers.problems.map(({ code }) => code)).toContain('driven-twice');
    expect(picture.stations.length).toBeGreaterThan(200);
    expect([picture.rods, picture.slots, picture.cables].map((parts) => parts.length)).toEqual([1, 1, 1]);
    const still = report.parts.filter(({ gives }) => gives === 'the pedal does not move it');
    expect(still.map(({ kind }) => kind).sort()).toEqual(
      ['cable', 'rod', 'slot'].filter((kind) => !answers.parts.some((part) => part.kind === kind)),
    );
    expect(still).toHaveLength(2);
  });

  it('draws levers that nothing drives last, as drawn', () => {
    const { picture } = shownOf(
      `${LEVERS}  spare: {pivot: [9, 9]}\n`.replace('  foot:', '  idle: {pivot: [200, 0]}\n  foot:') +
        'pedal: {lever: foot, opens: clockwise, travel: 9 deg}\n',
    );
    expect(picture.levers.map(({ name, isDriven }) => `${name} ${isDriven}`)).toEqual([
      'foot true',
      'idle false',
      'shaft false',
      'spare false',
    ]);
    expect(leverNamed(picture.levers, 'spare').rotation.every((turn) => turn === 0)).toBe(true);
  });
});

it('shows a lever whose axis is beyond computing about the one of the page', () => {
  const { levers } = shownOf('format: 1\nlevers: {a: {pivot: [5, 5], axis: [1e200, 0, 0], arms: {b: {radius: 9, angle: 0}}}}\n').picture;
  expect(levers[0]!.axis).toEqual([0, 0, 1]);
});

it('shows a file with more joints than are solved as drawn', () => {
  const { picture, charts, answers } = shownOf(chainText(140));
  expect(answers.study).toBeUndefined();
  expect(picture.rods).toHaveLength(140);
  expect(charts).toEqual([]);
});

it('shows an example at every stage of its writing from the first pivot on', () => {
  const text = fileNamed('two-banks');
  const lines = text.split('\n');
  const first = lines.findIndex((line) => line.includes('pivot: [0, 0, 0]'));
  for (let end = first + 1; end <= lines.length; end++) {
    expect(shownOf(lines.slice(0, end).join('\n')).picture.levers.length, `${end} lines`).toBeGreaterThan(0);
  }
});
