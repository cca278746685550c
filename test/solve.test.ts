/** The behaviour that the format promises, read off the table: way of opening, couplings, free play, and what a broken file still gives. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { FINDING_CODES } from '../src/findings/codes.ts';
import { solve } from '../src/solve.ts';
import { checkFindings } from './support/checkFindings.ts';
import { timesAsLarge } from './support/timesAsLarge.ts';

const DEGREE = Math.PI / 180;

/** One column at some stations. */
function column(text: string, name: string, stations: readonly number[]): readonly (number | null)[] {
  const [found] = solve(text).table(stations, [name]).columns;
  if (found === undefined) throw new Error(`There is no ${name} in\n${text}`);
  return found.values;
}

function expectClose(actual: readonly (number | null)[], wanted: readonly number[]): void {
  expect(actual).toHaveLength(wanted.length);
  wanted.forEach((value, i) => {
    expect(actual[i]).toBeCloseTo(value, 9);
  });
}

describe('the way a lever opens', () => {
  const geared = (ratio: number, opens: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0]${opens}}
pedal: {lever: pedal, opens: clockwise, travel: 30}
couplings: {gear: {from: pedal, to: shaft, ratio: ${ratio}}}
`;

  it('is that of its greatest rotation where the file does not say', () => {
    expectClose(column(geared(2, ''), 'shaft.rotation', [0.5]), [-30]);
    expectClose(column(geared(2, ''), 'shaft.opening', [0.5]), [30]);
    expectClose(column(geared(-2, ''), 'shaft.rotation', [0.5]), [30]);
    expectClose(column(geared(-2, ''), 'shaft.opening', [0.5]), [30]);
  });

  it('is what the file says', () => {
    expectClose(column(geared(2, ', opens: counterclockwise'), 'shaft.opening', [0.5]), [-30]);
    expect(solve(geared(2, ', opens: counterclockwise')).findings.map(({ code }) => code)).toEqual(['opens-otherwise']);
  });
});

describe('couplings', () => {
  const file = (coupling: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0], opens: counterclockwise}
pedal: {lever: pedal, opens: counterclockwise, travel: 40}
couplings: {gear: {from: pedal, to: shaft, ${coupling}}}
`;

  it('turn by their ratio of what lies beyond their lag', () => {
    expectClose(column(file('ratio: 1.5'), 'shaft.opening', [0, 0.25, 1]), [0, 15, 60]);
    expectClose(column(file('ratio: 1.5, lag: 12 deg'), 'shaft.opening', [0, 0.25, 0.3, 0.5, 1]), [0, 0, 0, 12, 42]);
    expectClose(column(file('ratio: -1.5, lag: 12 deg'), 'shaft.rotation', [0.25, 0.5, 1]), [0, -12, -42]);
  });

  it('have the right-hand ratio where the lag ends', () => {
    expectClose(column(file('ratio: 1.5, lag: 10 deg'), 'shaft.ratio', [0.2, 0.25, 0.3]), [0, 1.5, 1.5]);
  });

  it('push open and nothing else where they work one way', () => {
    expectClose(column(file('ratio: 1.5, lag: 12 deg, one_way: true'), 'shaft.opening', [0.25, 0.5]), [0, 12]);
    expectClose(column(file('ratio: -1.5, one_way: true'), 'shaft.opening', [0.25, 1]), [0, 0]);
  });
});

describe('free play', () => {
  const linked = (lost: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {closed: 0 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
rods: {link: {from: pedal.out, to: shaft.arm, lost: ${lost} mm}}
`;

  it('lets a rod that pulls move the shaft as if it had none', () => {
    expectClose(column(linked(3), 'shaft.opening', [0, 0.5, 1]), [0, 30, 60]);
  });

  it('keeps the shaft still until a rod that pushes has none left', () => {
    const text = linked(3)
      .replace('opens: counterclockwise', 'opens: clockwise')
      .replaceAll('angle: 60', 'angle: 120')
      .replace('{closed: 0 deg}}', '{closed: 0 deg}, opens: clockwise}');
    // Turned clockwise by a, the driving pin comes within 97 mm of the still driven pin.
    const near = (a: number): number =>
      Math.hypot(
        100 - 40 * (Math.cos((120 - a) * DEGREE) - Math.cos(120 * DEGREE)),
        40 * (Math.sin((120 - a) * DEGREE) - Math.sin(120 * DEGREE)),
      );
    let [low, high] = [0, 60];
    for (let i = 0; i < 100; i++) {
      const middle = (low + high) / 2;
      if (near(middle) > 97) low = middle;
      else high = middle;
    }
    expectClose(column(text, 'shaft.opening', [0, (low - 0.001) / 60]), [0, 0]);
    const [after] = column(text, 'shaft.opening', [(low + 0.01) / 60]);
    expect(after).toBeGreaterThan(0.005);
    expect(after).toBeLessThan(0.015);
    const [length] = [column(text, 'shaft.rotation', [1])[0] ?? NaN];
    const pins = Math.hypot(
      100 + 40 * (Math.cos((120 + length) * DEGREE) - Math.cos(60 * DEGREE)),
      40 * (Math.sin((120 + length) * DEGREE) - Math.sin(60 * DEGREE)),
    );
    expect(pins).toBeCloseTo(97, 9);
  });

  it('holds a fork still within its play', () => {
    const slotted = (play: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {tang: {radius: 30, angle: 0}}}
  fork: {pivot: [60, 0], stops: {closed: 0 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 20}
slots: {pair: {pin: pedal.tang, fork: fork, angle: 180 deg, play: ${play} mm}}
`;
    // The pin rises by 30 sin a before it meets the fork's side, half of the play away.
    const meets = Math.asin(0.5 / 30) / DEGREE;
    expectClose(column(slotted(1), 'fork.rotation', [0, (meets - 0.001) / 20]), [0, 0]);
    const [turned] = column(slotted(1), 'fork.rotation', [1]);
    const pin = [30 * Math.cos(20 * DEGREE) - 60, 30 * Math.sin(20 * DEGREE)] as const;
    const left = [-Math.sin((180 + (turned ?? NaN)) * DEGREE), Math.cos((180 + (turned ?? NaN)) * DEGREE)] as const;
    expect(Math.abs(left[0] * pin[0] + left[1] * pin[1])).toBeCloseTo(0.5, 9);
  });
});

describe('a stop in one group', () => {
  it('freezes every lever of that group and none of another', () => {
    const text = `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}, drums: {in: {radius: 20, wraps: counterclockwise}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}, stops: {open: 40 deg}}
  pedal: {pivot: [0, 300], drums: {one: {radius: 20, wraps: counterclockwise}, two: {radius: 10, wraps: counterclockwise}}}
  other: {pivot: [0, 500], drums: {in: {radius: 20, wraps: counterclockwise}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 50}
cables:
  a: {from: pedal.one, leaves: [-50, 280], enters: [-50, 20], to: crank.in}
  b: {from: pedal.two, leaves: [-50, 290], enters: [-50, 520], to: other.in}
rods: {link: {from: crank.out, to: shaft.arm}}
`;
    for (const [name, values] of [
      ['shaft.opening', [20, 40, 40]],
      ['crank.opening', [20, 40, 40]],
      ['crank.ratio', [1, 0, 0]],
      ['pedal.opening', [20, 45, 50]],
      ['other.opening', [10, 22.5, 25]],
      ['other.ratio', [0.5, 0.5, 0.5]],
      ['a.stretch', [0, 20 * 5 * DEGREE, 20 * 10 * DEGREE]],
      ['b.stretch', [0, 0, 0]],
    ] as const) {
      expectClose(column(text, name, [0.4, 0.9, 1]), values);
    }
  });
});

describe('two stops in one group', () => {
  it.each([
    [30, 40, 'first'],
    [40, 30, 'second'],
  ])('at %d° and %d°: the first that is met counts', (one, two, met) => {
    const text = `format: 1
levers:
  pedal: {pivot: [0, 0]}
  first: {pivot: [100, 0], stops: {open: ${one} deg}}
  second: {pivot: [200, 0], stops: {open: ${two} deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60}
couplings: {a: {from: pedal, to: first}, b: {from: pedal, to: second}}
`;
    const early = solve(text).findings.filter(({ code }) => code === 'opening-early');
    expect(early.map(({ part }) => part)).toEqual([met]);
    expect(early[0]?.ranges?.[0]?.from).toBeCloseTo(0.5, 12);
  });
});

describe('a throttle that never opens', () => {
  it('is told that its cable is never pulled tight', () => {
    const text = (slack: number): string => `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 20, wraps: counterclockwise}}, stops: {open: 80 deg}}
pedal: {cable: main, pull: 30 mm}
cables: {main: {enters: [40, 20], to: shaft.wheel, slack: ${slack} mm}}
plates: {bank: {lever: shaft, bore: 40 mm}}
`;
    const missed = (slack: number): string => solve(text(slack)).findings.find(({ code }) => code === 'opening-missed')?.cure ?? '';
    expect(missed(40)).toContain('30 mm at most, and has 40 mm of slack');
    expect(missed(10)).not.toContain('of slack');
  });
});

describe('a file with errors', () => {
  it('still yields what does not depend on them', () => {
    const answers = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40, angle: 60}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40, angle: 60}}}
  rotor: {pivot: [1, nowhere]}
pedal: {lever: pedal, opens: counterclockwise, travel: 30}
rods: {link: {from: pedal.out, to: shaft.arm}, more: {from: shaft.arm, to: rotor.arm}}
`);
    expect(answers.problems.length).toBeGreaterThan(0);
    expectClose(answers.table([1], ['shaft.opening']).columns[0]?.values ?? [], [30]);
  });

  it('has an empty table and says what it has not looked at where nothing can be solved', () => {
    const answers = solve('format: 1\nlevers:\n  shaft: {pivot: [0, 0]}\nsprings: {wound: {lever: shaft, rate: 1 N*mm/deg}}\n');
    expect(answers.table([0, 1])).toEqual({ stations: [0, 1], columns: [] });
    expect(answers.notChecked.map(({ part }) => part)).toContain('wound');
    expect(solve('').table([0])).toEqual({ stations: [0], columns: [] });
  });
});

describe('examples', () => {
  const folder = new URL('../examples/', import.meta.url);
  const names = readdirSync(folder).filter((name) => name.endsWith('.throttle.yaml'));

  it.each(names)('%s has its listed findings, or nothing worse than a note', (name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    if (name.includes('-broken')) {
      const { answers } = checkFindings(text);
      expect(answers.findings.some(({ severity }) => severity === 'error')).toBe(true);
      return;
    }
    const { problems, findings } = solve(text);
    expect(problems).toEqual([]);
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });
});

it('has a case for each finding code', () => {
  const folder = new URL('findings/', import.meta.url);
  const tests = readdirSync(folder).map((name) => readFileSync(new URL(name, folder), 'utf8'));
  const missing = FINDING_CODES.filter((code) => !tests.some((text) => new RegExp(`\\[${code}\\]|[' ]${code}'`).test(text)));
  expect(missing).toEqual([]);
});

/** What all linkages have part in. */
const isAtThePedal = (name: string): boolean => name.startsWith('pedal.') || /\.(effort|release)_off$/.test(name);

it('solves a file of many linkages behind one pedal as it solves one, each of them alike', () => {
  const one = readFileSync(new URL('../examples/two-banks.throttle.yaml', import.meta.url), 'utf8');
  const answers = solve(timesAsLarge(one, 3));
  expect(answers.problems).toEqual([]);
  const { columns } = answers.table([0, 0.2, 0.5, 1]);
  const valuesOf = (name: string): unknown => columns.find((each) => each.name === name)?.values;
  const named = solve(one)
    .table([0, 0.2, 0.5, 1])
    .columns.filter(({ name }) => !isAtThePedal(name));
  expect(named.length).toBeGreaterThan(30);
  for (const { name, values } of named) {
    for (const suffix of ['', '_2', '_3']) expect(valuesOf(name.replace('.', `${suffix}.`)), `${name} ${suffix}`).toEqual(values);
  }
  expect(answers.facts.filter(({ key }) => key.startsWith('adjuster')).length).toBe(
    3 * solve(one).facts.filter(({ key }) => key.startsWith('adjuster')).length,
  );
});
