import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { snapBack } from '../../src/forces/snapBack/snapBack.ts';
import { fewer, traceReturn } from '../../src/picture/returnTraces.ts';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import { isAnswered } from '../../src/protocol/guards.ts';
import type { FailureKey, ReturnTrace } from '../../src/protocol/returns.ts';
import { solve } from '../../src/solve.ts';

const example = (name: string): string => readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');

function traceOf(text: string, failure?: FailureKey): ReturnTrace {
  const trace = traceReturn(solve(text), failure);
  if ('why' in trace) throw new Error(trace.why);
  return trace;
}

describe.each([
  ['four-barrel', undefined],
  ['four-barrel', { kind: 'rod-lost', part: 'link' }],
  ['two-banks', undefined],
  ['two-banks', { kind: 'spring-lost', part: 'front_return' }],
] as const)('the snap-back of %s after %o', (name, failure) => {
  const answers = solve(example(name));
  const { picture } = showAnswers(answers)!;
  const trace = traceOf(example(name), failure);

  test('passes the guard of the view, as it comes out of a clone', () => {
    expect(isAnswered.trace(structuredClone(trace))).toBe(true);
  });

  test('begins where the picture has each lever at full pedal, in the order of the picture', () => {
    expect(trace.rotations).toHaveLength(picture.levers.length);
    picture.levers.forEach(({ rotation }, i) => expect(trace.rotations[i]![0]).toBeCloseTo(rotation[rotation.length - 1]!, 9));
  });

  test('closes the plates, and says when', () => {
    expect(trace.shafts.map((shaft) => picture.levers[shaft]!.name)).toEqual([
      ...new Set(picture.plates.map(({ lever }) => picture.levers[lever]!.name)),
    ]);
    const options = failure === undefined ? {} : { without: [failure.part] };
    const motion = snapBack(answers.study!.travel.build, options);
    expect(trace.closed).toBe(motion.method === undefined ? NaN : motion.time);
    expect(trace.outcome).toMatch(/^closed after 0\.\d+ s$/);
    // 1 % of some 80° of opening.
    for (const shaft of trace.shafts) expect(Math.abs(trace.rotations[shaft]!.at(-1)!)).toBeLessThan(0.015);
  });
});

describe('a snap-back', () => {
  test('has the levers in the order of the picture, whatever their order in the file', () => {
    const text = example('four-barrel').replace(/(levers:\n)([^]*?)( {2}shaft:[^]*?)(\npedal:)/, '$1$3$2$4');
    const answers = solve(text);
    const { picture } = showAnswers(answers)!;
    expect(answers.definition!.levers.map(({ name }) => name)).not.toEqual(picture.levers.map(({ name }) => name));
    const { rotations, shafts } = traceOf(text);
    picture.levers.forEach(({ rotation }, i) => expect(rotations[i]![0]).toBeCloseTo(rotation[rotation.length - 1]!, 9));
    expect(shafts.map((shaft) => picture.levers[shaft]!.name)).toEqual(['shaft']);
  });

  test('that cannot be computed says why', () => {
    expect(traceReturn(solve(example('binding-broken')), undefined)).toEqual({
      why: 'It cannot be computed: shaft cannot be assembled at 100 % of the pedal',
    });
    expect(traceReturn(solve('format: 1\n'), undefined)).toEqual({ why: 'The linkage is not solved' });
  });

  test('in which nothing moves says where it is held', () => {
    expect(traceReturn(solve(example('four-barrel')), { kind: 'cable-seized', part: 'main' })).toEqual({
      why: 'Nothing moves as the foot comes off: bank stands still before it is closed, at 82°',
    });
  });

  test('that stops on its way says where', () => {
    // So stiff a shaft stops its plates where the spring has lost what it had more than the drag.
    const text = example('four-barrel').replace('friction: 20 N*mm', 'friction: 560 N*mm');
    expect(traceOf(text, { kind: 'rod-lost', part: 'link' }).outcome).toMatch(/^bank stands still before it is closed, at \d+(?:\.\d+)?°$/);
  });
});

describe('fewer moments', () => {
  const motion = (figures: readonly number[]) => ({
    times: Float64Array.from(figures, (_, i) => i / 1000),
    rotations: [Float64Array.from(figures)],
  });

  test('are all where there are no more, and never more than wanted, with both ends', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 2, maxLength: 60 }),
        fc.integer({ min: 2, max: 40 }),
        (figures, most) => {
          const kept = fewer(motion(figures), most);
          expect(kept).toHaveLength(Math.min(figures.length, most));
          expect([kept[0], kept.at(-1)]).toEqual([0, figures.length - 1]);
          expect(kept).toEqual([...new Set(kept)].sort((a, b) => a - b));
        },
      ),
    );
  });

  test('keep every bounce', () => {
    const zigzag = Array.from({ length: 1001 }, (_, i) => Math.abs((i % 100) - 50));
    const kept = fewer(motion(zigzag), 21);
    expect(kept).toEqual(Array.from({ length: 21 }, (_, i) => 50 * i));
  });

  test('stay near a motion of ten thousand moments', () => {
    const figures = Array.from({ length: 10_000 }, (_, i) => Math.exp(-i / 3000) * Math.cos(i / 400));
    const kept = fewer(motion(figures), 240);
    let miss = 0;
    kept.slice(1).forEach((to, n) => {
      const from = kept[n]!;
      for (let i = from; i <= to; i++) {
        const share = (i - from) / (to - from);
        miss = Math.max(miss, Math.abs(figures[i]! - figures[from]! - share * (figures[to]! - figures[from]!)));
      }
    });
    // Evenly spaced, 42 apart, the chords of a wave of 400 a radian would miss by (42/400)²/8 = 0.0014.
    expect(miss).toBeLessThan(0.0014);
  });
});
