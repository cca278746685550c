/**
 * Dips of what closes a shaft that are narrower than the places at which it is looked at, put where no such place is: a stiff spring that the
 * shaft's pin passes presses it on for an instant. How narrow such a dip may be is measured, and nothing is accused that passes.
 */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';
import { RUBS, SHAFT, shaft, textOf } from './throttles.ts';

const DEGREE = Math.PI / 180;
/** mm: the pin's way about the axis; and N·mm: all that rubs, a drag alone. */
const [ARM, DRAG] = [20, 50];
/** N·mm of both springs at an opening. */
const closing = (opening: number): number => 600 + (6 * opening) / DEGREE;

/** Torque that opens, over the spring's rate, N·mm per N/mm, of a spring of this length as the pin has passed it by an angle. */
function opens(past: number, free: number, off: number): number {
  const away = Math.sqrt(ARM ** 2 + (ARM + off) ** 2 - 2 * ARM * (ARM + off) * Math.cos(past));
  return away >= free ? 0 : ((free - away) * ARM * (ARM + off) * Math.sin(past)) / away;
}

/** A shaft of which at some opening, for about `wide` rad, the springs bring `left` times what rubs. */
function passing(at: number, wide: number, left: number): string {
  const free = wide * ARM;
  const off = free / 3;
  const least = (rate: number): number => {
    let lowest = Infinity;
    for (let i = 0; i <= 4000; i++) {
      const past = (i / 4000) * wide;
      lowest = Math.min(lowest, closing(at + past) - rate * opens(past, free, off));
    }
    return lowest;
  };
  let [low, high] = [0, 1e12];
  for (let i = 0; i < 200; i++) {
    const rate = (low + high) / 2;
    if (least(rate) > left * DRAG) low = rate;
    else high = rate;
  }
  const place = 240 * DEGREE + at;
  const from = `[${100 + (ARM + off) * Math.cos(place)}, ${(ARM + off) * Math.sin(place)}]`;
  return textOf(SHAFT, {
    levers: { shaft: shaft('', RUBS(DRAG, 0)) },
    cables: { main: '{enters: [40, 24], to: shaft.wheel, slack: 1 mm, bend: 0 deg, friction: 0}' },
    springs: {
      pop: `{kind: compression, from: ${from}, to: shaft.tail, rate: ${low} N/mm, free_length: ${free} mm, counts_as_return: false}`,
    },
  });
}

/** Uniform, 0 … 1; a linear congruence (Numerical Recipes, from memory). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => (state = (1664525 * state + 1013904223) % 2 ** 32) / 2 ** 32;
}

interface Dip {
  readonly wide: number;
  readonly at: number;
}
const random = seeded(571);
const DIPS: readonly Dip[] = Array.from({ length: 40 }, (_, i) => ({ wide: 10 ** (-1 - (3 * i) / 39), at: (10 + 55 * random()) * DEGREE }));

const whole = (text: string) => {
  const { problems, failures } = solve(text);
  expect(problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  return failures()!.whole.plates[0]!;
};
const locks = (text: string): boolean => solve(text).findings.some(({ code }) => code === 'friction-lock');

describe('a dip for an instant, between the places looked at', () => {
  it('is found by single failures down to a ten-thousandth of a radian, and one that is left over is not accused', () => {
    for (const { at, wide } of DIPS) {
      const caught = whole(passing(at, wide, 0.8));
      expect({ wide, outcome: caught.outcome }).toEqual({ wide, outcome: 'stays-open' });
      expect(caught.weakest!.margin!).toBeCloseTo(0.8, 3);
      const sound = whole(passing(at, wide, 1.2));
      expect({ wide, butPedal: sound.butPedal }).toEqual({ wide, butPedal: true });
      expect(sound.weakest!.margin!).toBeCloseTo(1.2, 3);
    }
  }, 60_000);

  it('is found by friction-lock just as narrow', () => {
    expect(DIPS.filter(({ at, wide }) => !locks(passing(at, wide, 0.8)))).toEqual([]);
    expect(DIPS.filter(({ at, wide }) => locks(passing(at, wide, 1.2)))).toEqual([]);
  }, 60_000);

  it('is tried from fourteen times the distance between two places down to a sixtieth of it', () => {
    // The pull of 33.5 mm on a drum of 24 mm turns the shaft by 200 of these.
    const between = 33.5 / 24 / 200;
    expect(between / DIPS.at(-1)!.wide).toBeGreaterThan(60);
    expect(DIPS[0]!.wide / between).toBeGreaterThan(14);
  });
});
