/** What cannot be computed says why, and what there is nothing to say of says nothing. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { anySnapOf, oneLeverText, snapOf } from './support/snap.ts';

const ONE = oneLeverText({ inertia: 95, preload: 240, rate: 2.2, opening: 80 });

test('a linkage that cannot be assembled where the foot comes off', () => {
  const text = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 60, angle: 90 deg}}}
  shaft: {pivot: [80, 0], arms: {arm: {radius: 20, angle: 90 deg}}}
pedal: {lever: pedal, opens: clockwise, travel: 80, pad: out}
rods:
  link: {from: pedal.out, to: shaft.arm}
springs:
  first: {lever: shaft, rate: 2, preload: 100}
`;
  expect(anySnapOf(text)).toEqual({ method: undefined, reason: '`shaft` cannot be assembled at 100 % of the pedal' });
  expect(anySnapOf(text, { from: 0.05 }).method).toBe('equation-of-motion');
});

test('a spring whose torque is not known', () => {
  const text = ONE.replace(/first: .*/, 'first: {from: [60, 90], to: shaft.pad, rate: 1, kind: extension}');
  expect(anySnapOf(text)).toMatchObject({ method: undefined, reason: 'the torque of `first` is not known' });
  // Lost, it is not missed.
  expect(anySnapOf(text, { without: ['first'] }).method).toBe('equation-of-motion');
});

test('a lever that the pedal drives past its own closed stop', () => {
  const text = `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 60, angle: 90 deg}}}
  shaft: {pivot: [80, 0], arms: {arm: {radius: 20, angle: 90 deg}}, opens: clockwise}
pedal: {lever: pedal, opens: counterclockwise, travel: 40, pad: pad}
couplings:
  mesh: {from: pedal, to: shaft, ratio: 1}
plates:
  bank: {lever: shaft, bore: 40 mm}
springs:
  first: {lever: shaft, rate: 2, preload: 100}
`;
  expect(anySnapOf(text)).toEqual({ method: undefined, reason: '`shaft` stands beyond one of its stops at 100 % of the pedal' });
});

test('without plates there is no time, but the levers are followed', () => {
  const answer = snapOf(ONE.replace(/plates:\n.*\n/, ''), { restitution: 0 });
  expect(answer).toMatchObject({ plates: [], time: undefined, stopSpeed: undefined, bounces: 0 });
  expect(answer.trace.rotations[0]!.at(-1)).toBeCloseTo(0, 8);
});

test('figures that are none are taken for those that are not given', () => {
  const sound = snapOf(ONE);
  for (const options of [
    { from: NaN },
    { restitution: NaN },
    { restitution: -1 },
    { horizon: NaN },
    { from: 7 },
    { without: ['nobody'], seized: ['nobody'] },
  ]) {
    expect(snapOf(ONE, options).time).toBe(sound.time);
  }
});

test('planck is not asked for what leaves its plane', () => {
  const text = readFileSync('examples/two-banks.throttle.yaml', 'utf8');
  expect(anySnapOf(text, { method: 'planck' })).toMatchObject({ method: undefined, reason: expect.stringContaining('plane') as string });
  expect(anySnapOf(text).method).toBe('equation-of-motion');
});
