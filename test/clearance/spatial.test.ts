/**
 * Levers about other directions than z, and what runs straight, against keep-outs that say where along z they stand: by construction, turned out of
 * the plane with the same gaps, and against very many stations measured by formulas of the tests' own.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clearanceOf } from '../../src/clearance/clearance.ts';
import { FOUND } from '../../src/clearance/leastGap.ts';
import { solve } from '../../src/solve.ts';
import type { Point } from '../support/exactGaps.ts';

function leastOf(text: string, name = 'crank') {
  const { study, problems } = solve(text);
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  const gap = clearanceOf(study!.travel).keepOuts.find(({ one }) => one.name === name);
  return gap?.search(Infinity).least;
}

const touching = (text: string) =>
  solve(text)
    .findings.filter(({ code }) => code === 'touches-keep-out')
    .map(({ part, severity }) => `${part} ${severity}`);

/** Turns from x towards −z about y, 40 mm long and 6 mm thick. */
const upright = (keepOut: string): string => `format: 1
levers:
  crank: {pivot: [0, 0, 0], axis: [0, 1, 0], reference: [1, 0, 0], width: 6 mm, arms: {out: {radius: 40 mm, angle: 0 deg}}}
pedal: {lever: crank, opens: counterclockwise, travel: 90 deg}
keep_out: {thing: ${keepOut}}
`;

describe('a lever that turns about y', () => {
  it('has the gaps that anyone can see', () => {
    const box = (low: number, high: number) => `{polygon: [[-50, -9], [50, -9], [50, 9], [-50, 9]], from: ${low} mm, to: ${high} mm}`;
    expect(leastOf(upright(box(-70, -45)))?.gap).toBeCloseTo(0.002, 12);
    expect(leastOf(upright(box(-70, -45)))?.travel).toBe(1);
    expect(leastOf(upright(box(-70, -40)))?.gap).toBeCloseTo(-0.003, 12);
    // What stands above it is nearest as drawn, and from the first on.
    expect(leastOf(upright(box(5, 60)))?.gap).toBeCloseTo(0.002, 12);
    // Beside it along y.
    const beside = '{polygon: [[-50, 11], [50, 11], [50, 30], [-50, 30]], from: -90 mm, to: 90 mm}';
    expect(leastOf(upright(beside))?.gap).toBeCloseTo(0.008, 12);
    // A post of 5 mm along z, 24 mm out: over the arm as drawn by 4 − 3 mm.
    expect(leastOf(upright('{circle: [24, 0], radius: 5 mm, from: 4 mm, to: 30 mm}'))?.gap).toBeCloseTo(0.001, 9);
    // Farther out than it reaches: 60 − 5 − 43, as drawn.
    expect(leastOf(upright('{circle: [60, 0], radius: 5 mm, from: -30 mm, to: 30 mm}'))?.gap).toBeCloseTo(0.012, 9);
  });

  it('has the gaps of a lever about z, with what stands there turned along', () => {
    fc.assert(
      fc.property(
        fc.tuple(...[0, 1, 2, 3].map(() => fc.integer({ min: -800, max: 800 }).map((each) => each / 10))),
        fc.integer({ min: 1, max: 150 }).map((each) => each / 10),
        ([x, w, z, h], width) => {
          if (Math.abs(w!) < 0.1 || Math.abs(h!) < 0.1) return;
          const [left, right] = [Math.min(x!, x! + w!), Math.max(x!, x! + w!)];
          const [low, high] = [Math.min(z!, z! + h!), Math.max(z!, z! + h!)];
          const inSpace = upright(
            `{polygon: [[${left}, -80], [${right}, -80], [${right}, 80], [${left}, 80]], from: ${low} mm, to: ${high} mm}`,
          ).replace('width: 6', `width: ${width}`);
          const flat = `format: 1
levers:
  crank: {pivot: [0, 0], width: ${width} mm, arms: {out: {radius: 40 mm, angle: 0 deg}}}
pedal: {lever: crank, opens: counterclockwise, travel: 90 deg}
keep_out: {thing: {polygon: [[${left}, ${-high}], [${right}, ${-high}], [${right}, ${-low}], [${left}, ${-low}]]}}
`;
          const [one, other] = [leastOf(inSpace)!, leastOf(flat)!];
          // Along y it would have to go 80 mm, and never so deep.
          expect(Math.abs(one.gap - other.gap)).toBeLessThan(2 * FOUND);
        },
      ),
      { numRuns: 150 },
    );
  });
});

/** A crank about a slanted axis that draws a shaft by a rod; a cable and a spring hang on the shaft. */
const slanted = (axis: string, keepOut: string): string => `format: 1
levers:
  crank: {pivot: [0, 0, 10], axis: ${axis}, reference: [1, 0, 0], width: 8 mm, arms: {out: {radius: 36 mm, angle: 80 deg}}}
  shaft: {pivot: [90, 0, 20], axis: [0.1, 0.2, 1], reference: [1, 0, 0], width: 6 mm, arms: {arm: {radius: 34 mm, angle: 95 deg}, tail: {radius: 25 mm, angle: 250 deg}, eye: {radius: 20 mm, angle: 30 deg}}}
  idler: {pivot: [200, -40, 0], axis: [0, 0.3, 1], reference: [1, 0, 0], arms: {pin: {radius: 25 mm, angle: 190 deg}}}
pedal: {lever: crank, opens: clockwise, travel: 35 deg}
rods: {link: {from: crank.out, to: shaft.arm, width: 7 mm}}
cables: {wire: {from: shaft.tail, leaves: [150, -60, 20], enters: [150, -40, 0], to: idler.pin, slack: 0, diameter: 2 mm}}
springs: {back: {from: [100, 80, 0], to: shaft.eye, free_length: 30 mm, wire: {diameter: 1.6 mm, mean_coil: 11 mm, active_turns: 14, material: music_wire}}}
keep_out: {thing: ${keepOut}}
`;

describe('the least gap in space', () => {
  it('is what very many stations come to, and nowhere above them', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(
        fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), fc.integer({ min: 3, max: 9 })),
        fc.tuple(fc.integer({ min: -30, max: 160 }), fc.integer({ min: -70, max: 90 })),
        fc.integer({ min: 2, max: 20 }),
        fc.tuple(fc.integer({ min: -60, max: 60 }), fc.integer({ min: 1, max: 60 })),
        fc.boolean(),
        (axis, [x, y], size, [low, tall], isRound) => {
          const square: readonly Point[] = [[x - size, y - size], [x + size, y - size], [x + size, y + size], [x - size, y + size]]; // prettier-ignore
          const shape = isRound
            ? `circle: [${x}, ${y}], radius: ${size} mm`
            : `polygon: [${square.map(([a, b]) => `[${a}, ${b}]`).join(', ')}]`;
          const { study } = solve(slanted(`[${axis.join(', ')}]`, `{${shape}, from: ${low} mm, to: ${low + tall} mm}`));
          const { travel } = study!;
          for (const { one, search, along } of clearanceOf(travel).keepOuts) {
            const { least, proved } = search(Infinity);
            // A crank that happens to turn about z is seen along it.
            if (least === undefined || !one.inSpace) continue;
            const [from, to] = one.pieces[0]!.corners as unknown as readonly [Corner, Corner];
            const measured = (at: number): number => {
              const pose = travel.poseAt(at);
              const stand = ({ lever, base, perp, cross }: Corner): readonly number[] =>
                [0, 1, 2].map(
                  (i) => (base[i] ?? 0) + (lever < 0 ? 0 : pose.cosine[lever]! * (perp[i] ?? 0) + pose.sine[lever]! * (cross[i] ?? 0)),
                );
              const [p, q] = [stand(from), stand(to)];
              let best = Infinity;
              for (let i = 0; i <= 60; i++) {
                const along = (k: number): number => p[k]! + (i / 60) * (q[k]! - p[k]!);
                const [across, up, pz] = [Math.abs(along(0) - x), Math.abs(along(1) - y), along(2)];
                const level = isRound ? Math.hypot(across, up) - size : Math.hypot(Math.max(0, across - size), Math.max(0, up - size));
                best = Math.min(best, Math.hypot(Math.max(0, level), Math.max(0, low - pz, pz - low - tall)));
              }
              // Where it cannot be assembled there is nothing to meet.
              return Number.isNaN(best) ? Infinity : (best - one.pieces[0]!.radius) / 1e3;
            };
            let lowest = Infinity;
            for (let i = 0; i <= 400; i++) lowest = Math.min(lowest, measured(i / 400));
            // One bar of each body is measured here at places along it: never nearer than what was found of all bars.
            expect(least.gap).toBeLessThan(lowest + FOUND);
            expect(proved).toBeLessThan(lowest + FOUND);
            if (one.pieces.length === 1 && lowest > 0.002) {
              expect(least.gap).toBeGreaterThan(lowest - 0.002);
              seen.set(one.kind, (seen.get(one.kind) ?? 0) + 1);
            }
            expect(along(least.travel)).toBeCloseTo(least.gap, 8);
          }
        },
      ),
      { numRuns: 60 },
    );
    expect([...seen.keys()].sort()).toEqual(['cable', 'lever', 'rod', 'spring']);
  });
});

interface Corner {
  readonly lever: number;
  readonly base: readonly (number | undefined)[];
  readonly perp: readonly (number | undefined)[];
  readonly cross: readonly (number | undefined)[];
}

/** Something that touches by a twentieth of a millimetre, and the same a tenth further off. */
const flat = (cable: string, spring: string, keepOut: string): string => `format: 1
levers:
  crank: {pivot: [0, 0], drums: {wheel: {radius: 20 mm, wraps: counterclockwise}}, arms: {eye: {radius: 30 mm, angle: 90 deg}}}
pedal: {cable: main, pull: 15 mm}
cables: {main: {enters: [-80, 20], to: crank.wheel${cable}}}
springs: {back: {from: [70, 30], to: crank.eye, rate: 1 N/mm, free_length: 40 mm${spring}}}
keep_out: {thing: ${keepOut}}
`;
const WIRE = ', wire: {diameter: 2 mm, mean_coil: 10 mm, active_turns: 12, material: music_wire}';
const noRate = (text: string): string => text.replace('rate: 1 N/mm, ', '');

const CASES: readonly (readonly [name: string, text: (off: number) => string, part: string])[] = [
  ['a post over the free inner', (off) => flat(', diameter: 3 mm', '', `{circle: [-50, ${20 + 1.5 + 4 + off}], radius: 4 mm}`), 'main error'],
  // As drawn from [0, 30] to [70, 30], 12 mm thick.
  ['a post under the spring', (off) => noRate(flat('', WIRE, `{circle: [40, ${30 + 6 + 4 + off}], radius: 4 mm}`)), 'back warning'],
  ['a box that the tip comes down on', (off) => upright(`{polygon: [[-9, -9], [9, -9], [9, 9], [-9, 9]], from: -70 mm, to: ${-43 - off} mm}`), 'crank error'],
  ['a roof over the arm as drawn', (off) => upright(`{polygon: [[10, -9], [90, -9], [90, 9], [10, 9]], from: ${3 + off} mm, to: 40 mm}`), 'crank error'],
  ['a post on the way of the tip', (off) => upright(`{circle: [${43 * Math.SQRT1_2 + 4 + off * Math.SQRT2}, 0], radius: 4 mm, from: -80 mm, to: ${-43 * Math.SQRT1_2} mm}`), 'crank error'],
  ['a wall beside the arm', (off) => upright(`{polygon: [[10, ${3 + off}], [90, ${3 + off}], [90, 20], [10, 20]], from: -10 mm, to: 10 mm}`), 'crank error'],
]; // prettier-ignore

describe('what touches', () => {
  it.each(CASES)('%s is caught, and one that passes is not accused', (_name, text, part) => {
    expect(touching(text(-0.05))).toEqual([part]);
    expect(touching(text(0.05))).toEqual([]);
  });
});

describe('a keep-out without its extent', () => {
  const notChecked = (text: string): readonly string[] => solve(text).notChecked.map(({ part, message }) => `${part}: ${message}`);

  it('never passes what does not turn about z', () => {
    const lines = notChecked(upright('{circle: [500, 500], radius: 5 mm}'));
    expect(lines).toContain(
      'crank: Not checked: whether it clears thing: it does not turn about z, and without `from` and `to` that may stand anywhere along it',
    );
    expect(solve(upright('{circle: [500, 500], radius: 5 mm}')).facts.filter(({ part }) => part === 'thing')).toEqual([]);
  });

  it('and one whose ends are wrong is told, and is none', () => {
    const told = (ends: string) => {
      const { problems, notChecked: lines } = solve(upright(`{circle: [24, 0], radius: 5 mm, ${ends}}`));
      return {
        codes: problems.map(({ code, severity }) => `${code} ${severity}`),
        left: lines.filter(({ message }) => message.includes('whether it clears')).length,
      };
    };
    expect(told('from: 4 mm, to: 30 mm')).toEqual({ codes: [], left: 0 });
    expect(told('from: 30 mm, to: 4 mm')).toEqual({ codes: ['out-of-range error'], left: 1 });
    expect(told('from: 4 mm, to: 4 mm')).toEqual({ codes: ['out-of-range error'], left: 1 });
    expect(told('from: 4 mm')).toEqual({ codes: ['missing-key error'], left: 1 });
    expect(told('to: 4 mm')).toEqual({ codes: ['missing-key error'], left: 1 });
    expect(told('fron: 4 mm, to: 9 mm')).toEqual({ codes: ['unknown-key error'], left: 1 });
    expect(told('from: 1,5 mm, to: 9 mm')).toEqual({ codes: ['bad-quantity error'], left: 1 });
    expect(told('from: 4 kg, to: 9 mm')).toEqual({ codes: ['wrong-unit error'], left: 1 });
    expect(told('from: 1e9 mm, to: 2e9 mm').codes).not.toEqual([]);
  });

  it('names in one line all that has no shape', () => {
    const lines = notChecked(flat('', '', '{circle: [500, 500], radius: 5 mm}'));
    expect(lines.filter((line) => line.includes('these clear'))).toEqual([
      'thing: Not checked: whether these clear it: the housing of main; the inner of main for want of `diameter`; the spring back for want of `wire`',
    ]);
  });
});
