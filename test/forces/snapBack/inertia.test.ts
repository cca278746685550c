/** What a snap-back puts in for masses that the file does not give, against figures worked out by hand for simple shapes. */
import { expect, test } from 'vitest';
import type { Assumption } from '../../../src/forces/snapBack/assumed.ts';
import { snapOf } from './support/snap.ts';

/** What is put in where the file says nothing, as told to the user. */
const STEEL = 7850;
const BRASS = 8500;
const THICK = 5e-3;

function assumedFor(shaft: string, rest = ''): readonly Assumption[] {
  return snapOf(`format: 1
levers:
  shaft: {pivot: [10, 20], arms: {pad: {radius: 60, angle: 30 deg}}${shaft}}
pedal: {lever: shaft, opens: counterclockwise, travel: 60, pad: pad}
springs:
  first: {lever: shaft, rate: 2, preload: 200}
${rest}`).assumed;
}

const ofLever = (assumed: readonly Assumption[]): Assumption => {
  const found = assumed.find(({ kind }) => kind === 'lever-inertia');
  if (found === undefined) throw new Error('Nothing is said of the inertia');
  return found;
};

test('an inertia that is given is taken as it is, and nothing is said of it', () => {
  expect(assumedFor(', inertia: 95').map(({ kind }) => kind)).not.toContain('lever-inertia');
});

test('an arm is a bar from the pivot to its pin', () => {
  const mass = STEEL * THICK * 0.012 * 0.06;
  const { value, text, part } = ofLever(assumedFor(', width: 12'));
  expect(part).toBe('shaft');
  expect(value).toBeCloseTo(mass * (0.06 ** 2 / 3 + 0.012 ** 2 / 12), 15);
  expect(text).toContain('12 mm wide');
  expect(text).not.toContain('assumption');
  expect(ofLever(assumedFor('')).text).toContain('by assumption');
});

test('an outline is a plate of its area about the pivot: here 40 mm by 30 mm about a corner', () => {
  const outline = ', outline: [[10, 20], [50, 20], [50, 50], [10, 50]]';
  const mass = STEEL * THICK * 0.04 * 0.03;
  expect(ofLever(assumedFor(outline)).value).toBeCloseTo((mass * (0.04 ** 2 + 0.03 ** 2)) / 3, 15);
  // The same whichever way round it is drawn, and with a corner in the middle of an edge.
  const turned = ', outline: [[10, 50], [50, 50], [50, 35], [50, 20], [10, 20]]';
  expect(ofLever(assumedFor(turned)).value).toBeCloseTo((mass * (0.04 ** 2 + 0.03 ** 2)) / 3, 15);
});

test('drums are discs, plates turn about a diameter', () => {
  const arm = STEEL * THICK * 0.012 * 0.06 * (0.06 ** 2 / 3 + 0.012 ** 2 / 12);
  const drum = (STEEL * THICK * Math.PI * 0.022 ** 4) / 2;
  const plate = (BRASS * 2e-3 * (Math.PI / 4) * 0.042 ** 4) / 16;
  const found = ofLever(
    assumedFor(', drums: {quadrant: {radius: 22, wraps: clockwise}}', 'plates:\n  bank: {lever: shaft, count: 4, bore: 42 mm}\n'),
  );
  expect(found.value).toBeCloseTo(arm + drum + 4 * plate, 14);
});

test('an inertia of none is not taken for none', () => {
  const found = assumedFor(', inertia: 0').find(({ kind, part }) => kind === 'left-out' && part === 'shaft');
  expect(found?.value).toBe(1e-9);
  expect(found?.text).toContain('its inertia of 0 is taken for 0.001 kg·mm²');
});

test('a pedal that is only a cable is not taken for massless, and it is said what it is taken for', () => {
  const text = (pedal: string): string => `format: 1
levers:
  shaft: {pivot: [0, 0], arms: {arm: {radius: 20, angle: 0 deg}}, drums: {quadrant: {radius: 25, wraps: counterclockwise}}, inertia: 60}
pedal: {cable: main, pull: 30 mm${pedal}}
cables:
  main: {enters: [25, 100], to: shaft.quadrant}
plates:
  bank: {lever: shaft, bore: 40 mm}
springs:
  first: {lever: shaft, rate: 0.000000001, preload: 300}
`;
  const pedalOf = (of: string): Assumption => snapOf(text(of)).assumed.find(({ kind }) => kind === 'pedal-mass')!;
  const bar = (STEEL * THICK * 0.012 * 0.25) / 3;
  expect(pedalOf('').value).toBeCloseTo(bar * 16, 12);
  expect(pedalOf(', lever_ratio: 5').value).toBeCloseTo(bar * 25, 12);
  // It goes with the shaft: 25 mm of cable a radian.
  const answer = snapOf(text(''), { restitution: 0 });
  const { plates, energy } = answer;
  const opening = 30 / 25;
  const acceleration = 0.3 / (60e-6 + bar * 16 * 0.025 ** 2);
  expect(answer.time! / Math.sqrt((2 * (opening - plates[0]!.band)) / acceleration)).toBeCloseTo(1, 6);
  expect(Math.abs(energy.residual)).toBeLessThan(1e-6 * energy.springs);
});

test('friction and restitution that are put in are told of', () => {
  const kinds = (assumed: readonly Assumption[]): readonly string[] => assumed.map(({ kind, part }) => `${kind} ${part ?? ''}`.trim());
  expect(kinds(assumedFor(''))).toEqual(expect.arrayContaining(['restitution', 'friction shaft', 'left-out']));
  expect(kinds(assumedFor(', friction: 10, bearing: {diameter: 8, friction: 0.1}'))).not.toContain('friction shaft');
});
