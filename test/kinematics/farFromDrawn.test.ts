import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { foundBy } from '../support/foundBy.ts';

const DEGREE = Math.PI / 180;

function opening(text: string, lever: string, stations: readonly number[]): readonly (number | null)[] {
  const answers = solve(text);
  expect(answers.problems).toEqual([]);
  return answers.table(stations, [`${lever}.opening`]).columns[0]?.values ?? [];
}

const shortRod = (length: number): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 60, angle: 90}}}
  shaft: {pivot: [60, 0], arms: {arm: {radius: 20, angle: 90}}}
pedal: {lever: pedal, opens: clockwise, travel: 40}
rods: {link: {from: pedal.out, to: shaft.arm, length: ${length}}}
plates: {bank: {lever: shaft, bore: 40, idle: 2}}
`;

describe('a rest far from the drawn position', () => {
  it('is found where the drawn position cannot be assembled at all', () => {
    for (const length of [66, 64, 60]) {
      // With the shaft on its stop its pin stands at (60, 20); the pedal's pin on its circle of 60 is `length` from it where
      // 60 sin x + 20 cos x = (60² + 60² + 20² − length²) / 120.
      const standing = Math.atan2(60, 20) - Math.acos((7600 - length * length) / 120 / Math.hypot(60, 20));
      const text = shortRod(length);
      expect(opening(text, 'pedal', [0])[0], String(length)).toBeCloseTo(standing / DEGREE, 9);
      expect(opening(text, 'shaft', [0])[0], String(length)).toBeCloseTo(0, 9);
      const codes = solve(text).findings.map(({ code }) => code);
      expect(codes).toContain('held-open');
      expect(codes).not.toContain('not-assembled');
      expect(codes).not.toContain('closed-stop-passed');
    }
  });

  it('is found past places that only a long step would miss', () => {
    const drawn = Math.hypot(60 + 20 * Math.cos(160 * DEGREE), 20 * Math.sin(160 * DEGREE) - 60);
    for (const more of [3, 3.5, 4, 5, 6]) {
      const text = `format: 1
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 60, angle: 90}}, drums: {wheel: {radius: 20, wraps: counterclockwise}}}
  shaft: {pivot: [60, 0], opens: clockwise, arms: {arm: {radius: 20, angle: 160}}}
pedal: {cable: main, pull: 10}
cables: {main: {to: crank.wheel, enters: [-100, 20], slack: 8}}
rods: {link: {from: crank.out, to: shaft.arm, length: ${drawn + more}}}
plates: {bank: {lever: shaft, bore: 40, idle: 2}}
`;
      expect(opening(text, 'shaft', [0])[0], String(more)).toBeCloseTo(0, 9);
    }
  });
});

describe('what works one way only', () => {
  it('opens the way its coupling pushes, also where the file does not say which', () => {
    const text = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {}}
  shaft: {pivot: [60, 0], arms: {}}
pedal: {lever: pedal, opens: clockwise, travel: 40}
couplings: {dog: {from: pedal, to: shaft, ratio: 2, one_way: true}}
plates: {bank: {lever: shaft, bore: 40, idle: 2}}
`.replaceAll(', arms: {}', '');
    expect(opening(text, 'shaft', [0, 0.5, 1])).toEqual([0, expect.closeTo(40, 9), expect.closeTo(80, 9)]);
  });
});

describe('a shaft that rests beyond its open stop', () => {
  it('is held by it from the first, and the pedal with it', () => {
    const text = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 30, angle: 120}}}
  shaft: {pivot: [60, 0], arms: {arm: {radius: 30, angle: 120}}, stops: {open: 25}}
pedal: {lever: pedal, opens: clockwise, travel: 40}
rods: {link: {from: pedal.out, to: shaft.arm, length: 75}}
plates: {bank: {lever: shaft, bore: 40, idle: 2}}
`;
    const [rest, later] = opening(text, 'shaft', [0, 0.5]);
    expect(rest).toBeGreaterThan(25);
    expect(later).toBeNull();
    expect(solve(text).findings.map(({ code }) => code)).toEqual(expect.arrayContaining(['held-open', 'opening-early']));
  });
});

describe('a linkage that cannot be assembled from some place on', () => {
  it('has its dead centre told there, with an angle of none', () => {
    let met = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 60, noNaN: true }),
        fc.double({ min: 20, max: 60, noNaN: true }),
        fc.double({ min: 30, max: 150, noNaN: true }),
        fc.double({ min: 30, max: 150, noNaN: true }),
        (input, output, from, to) => {
          const answers = solve(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: ${input}, angle: ${from}}}}
  shaft: {pivot: [80, 10], arms: {arm: {radius: ${output}, angle: ${to}}}}
pedal: {lever: pedal, opens: clockwise, travel: 170}
rods: {link: {from: pedal.out, to: shaft.arm}}
`);
          const torn = foundBy(answers, 'not-assembled')[0];
          const start = torn?.ranges?.[0]?.from ?? 0;
          if (torn === undefined || start < 0.01) return;
          met++;
          const dead = foundBy(answers, 'toggle-opening')[0];
          expect(dead?.ranges?.some(({ from: at }) => Math.abs(at - start) < 1e-9)).toBe(true);
          const angle = foundBy(answers, 'transmission-angle')[0];
          expect(angle?.worst?.value).toBeLessThan(1e-6);
        },
      ),
      { numRuns: 400 },
    );
    expect(met).toBeGreaterThan(50);
  });
});

describe('a load path of very many joints', () => {
  it('is solved up to 128 and refused beyond, never passed over', () => {
    const chain = (joints: number): string =>
      [
        'format: 1',
        'levers:',
        ...Array.from({ length: joints + 1 }, (_, i) => `  l${i}: {pivot: [${100 * i}, 0], arms: {a: {radius: 30, angle: 120}}}`),
      ]
        .concat('pedal: {lever: l0, opens: clockwise, travel: 40}', 'rods:')
        .concat(Array.from({ length: joints }, (_, i) => `  r${i}: {from: l${i}.a, to: l${i + 1}.a}`))
        .join('\n');
    expect(solve(chain(40)).columns.length).toBeGreaterThan(40);
    const refused = solve(chain(129));
    expect(refused.columns).toEqual([]);
    expect(refused.problems.map(({ code, severity }) => `${severity} ${code}`)).toContain('error out-of-range');
  });
});
