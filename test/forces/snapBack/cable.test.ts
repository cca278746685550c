/**
 * A pedal and a shaft with a cable between two drums, against closed forms. With R₁ and R₂ the drums' radii, i = R₂/R₁ and ρ = exp(μ θ) of
 * the housing, the shaft's spring draws the pedal back:
 *     (I₂ + ρ i² I₁) ö = −(M₀ − F₂ − ρ i F₁)
 * Derivation: both levers cut free, with T at the engine's end of the cable and T/ρ at the pedal's.
 */
import { expect, test } from 'vitest';
import { snapOf } from './support/snap.ts';

interface Drawn {
  readonly shaftTorque?: number;
  readonly pedalTorque?: number;
  readonly shaftDrag?: number;
  readonly pedalDrag?: number;
  readonly friction?: number;
  readonly slack?: number;
  readonly open?: number;
  readonly stiffness?: number;
}

const R = { pedal: 0.06, shaft: 0.024 };
const I = { pedal: 2e-3, shaft: 6e-5 };
const BEND = 180;

/** The shaft opens by 75° where nothing stops it: the pedal's 30° times 60/24. */
function text({
  shaftTorque = 300,
  pedalTorque = 0,
  shaftDrag = 0,
  pedalDrag = 0,
  friction = 0,
  slack = 0,
  open,
  stiffness,
}: Drawn): string {
  return `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 200, angle: -60 deg}}, drums: {sector: {radius: 60, wraps: counterclockwise}}, inertia: ${I.pedal * 1e6}, friction: ${pedalDrag}}
  shaft: {pivot: [400, 0], arms: {arm: {radius: 20, angle: 90 deg}}, drums: {quadrant: {radius: 24, wraps: clockwise}}, inertia: ${I.shaft * 1e6}, friction: ${shaftDrag}${open === undefined ? '' : `, stops: {open: ${open}}`}}
pedal: {lever: pedal, opens: counterclockwise, travel: 30 deg, pad: pad}
cables:
  main: {from: pedal.sector, leaves: [60, 100], enters: [376, 100], to: shaft.quadrant, slack: ${slack} mm, bend: ${BEND} deg, friction: ${friction}${stiffness === undefined ? '' : `, stiffness: ${stiffness} N/mm`}}
plates:
  bank: {lever: shaft, bore: 40 mm, seat: 5 deg}
springs:
  return: {lever: shaft, rate: 1e-9, preload: ${shaftTorque}}
  pedal_return: {lever: pedal, rate: 1e-9, preload: ${pedalTorque}}
`.replaceAll('1e-9', '0.000000001');
}

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const CLOSE = 1e-6;
const band = 0.01 * rad(85);

/** s for a turn that speeds up evenly. */
const falls = (turn: number, acceleration: number): number => Math.sqrt((2 * turn) / acceleration);

test.each([
  { friction: 0, shaftDrag: 0, pedalDrag: 0 },
  { friction: 0.1, shaftDrag: 20, pedalDrag: 100 },
])('the shaft draws the pedal back by a cable with friction $friction', ({ friction, shaftDrag, pedalDrag }) => {
  const ratio = Math.exp(friction * rad(BEND));
  const i = R.shaft / R.pedal;
  const torque = 0.3 - shaftDrag * 1e-3 - ratio * i * pedalDrag * 1e-3;
  const acceleration = torque / (I.shaft + I.pedal * i * i * ratio);
  const answer = snapOf(text({ friction, shaftDrag, pedalDrag }), { restitution: 0 });
  expect(Math.abs(answer.time! / falls(rad(75) - band, acceleration) - 1)).toBeLessThan(CLOSE);
  expect(Math.abs(answer.energy.residual)).toBeLessThan(CLOSE * answer.energy.springs);
  expect(answer.energy.stops + answer.energy.friction).toBeCloseTo(0.3 * rad(75), 6);
});

test('a pedal with a spring of its own runs ahead, and the shaft goes alone', () => {
  const answer = snapOf(text({ pedalTorque: 60_000, shaftDrag: 20 }), { restitution: 0 });
  expect(Math.abs(answer.time! / falls(rad(75) - band, 0.28 / I.shaft) - 1)).toBeLessThan(CLOSE);
  expect(Math.abs(answer.stopSpeed! / Math.sqrt((2 * rad(75) * 0.28) / I.shaft) - 1)).toBeLessThan(CLOSE);
});

test('with its cable lost the shaft goes alone, and the pedal stays', () => {
  const answer = snapOf(text({}), { restitution: 0, without: ['main'] });
  expect(Math.abs(answer.time! / falls(rad(75) - band, 0.3 / I.shaft) - 1)).toBeLessThan(CLOSE);
  expect(answer.trace.rotations[0]!.at(-1)).toBeCloseTo(rad(30), 9);
});

test('a cable that has seized holds the shaft where it stands', () => {
  const answer = snapOf(text({}), { seized: ['main'], from: 0.4 });
  expect(answer.plates[0]).toMatchObject({ time: undefined, why: 'sticks' });
  expect(answer.plates[0]!.opening).toBeCloseTo(rad(30), 9);
});

test('a pedal that drags more than the spring can pull through the cable holds the shaft open', () => {
  // 300 N·mm at the shaft are 750 N·mm at the pedal; less 1/ρ of the housing.
  const ratio = Math.exp(0.1 * rad(BEND));
  const least = (300 * R.pedal) / R.shaft / ratio;
  expect(snapOf(text({ friction: 0.1, pedalDrag: 1.01 * least })).plates[0]).toMatchObject({ time: undefined, why: 'sticks' });
  expect(snapOf(text({ friction: 0.1, pedalDrag: 0.99 * least }), { horizon: 30 }).time).toBeGreaterThan(0);
});

test('slack that the pedal leaves lets the shaft close first; the pedal stays where the shaft no longer pulls it', () => {
  const answer = snapOf(text({ slack: 10 }), { restitution: 0 });
  expect(answer.time).toBeGreaterThan(0);
  // 10 mm on 60 mm: the pedal has run on without drag, to its stop.
  expect(answer.trace.rotations[0]!.at(-1)).toBeCloseTo(0, 8);
  const dragged = snapOf(text({ slack: 10, pedalDrag: 740 }), { restitution: 0, horizon: 30 });
  expect(dragged.trace.rotations[0]!.at(-1)).toBeLessThan(0.01 / 0.06 + 1e-9);
  expect(dragged.trace.rotations[0]!.at(-1)).toBeGreaterThan(0.5 * (0.01 / 0.06));
});

test('past an open stop the cable first gives back what it was stretched by', () => {
  const whole = snapOf(text({ open: 60, stiffness: 40 }), { restitution: 0 });
  // The pedal's last 6° are 6.28 mm of stretch: its energy comes besides.
  const stretch = rad(6) * R.pedal;
  const held = 0.3 / R.shaft;
  const given = 0.3 * rad(60) + held * stretch + (40e3 * stretch ** 2) / 2;
  expect(whole.energy.springs).toBeCloseTo(given, 6);
  expect(Math.abs(whole.energy.residual)).toBeLessThan(1e-5 * given);
  expect(whole.assumed.some(({ kind }) => kind === 'cable-stiffness')).toBe(false);
  const unknown = snapOf(text({ open: 60 }), { restitution: 0 });
  expect(unknown.assumed.find(({ kind }) => kind === 'cable-stiffness')).toMatchObject({ part: 'main' });
  expect(unknown.energy.springs).toBeCloseTo(0.3 * rad(60) + held * stretch, 6);
  // What is left out does not make it look quicker.
  expect(unknown.time!).toBeGreaterThanOrEqual(whole.time!);
});

test.each([
  { friction: 0.1, shaftDrag: 20, pedalDrag: 100 },
  { pedalTorque: 60_000, shaftDrag: 20 },
  { slack: 5 },
  { open: 60, stiffness: 40 },
])('planck has the same to 2 %% where nothing bounces: %j', (drawn) => {
  const [one, other] = (['equation-of-motion', 'planck'] as const).map((method) => snapOf(text(drawn), { restitution: 0, method }));
  expect(other!.method).toBe('planck');
  expect(Math.abs(other!.time! / one!.time! - 1)).toBeLessThan(0.02);
  expect(Math.abs(other!.stopSpeed! / one!.stopSpeed! - 1)).toBeLessThan(0.02);
  expect(Math.abs(other!.energy.springs / one!.energy.springs - 1)).toBeLessThan(1e-3);
  expect(Math.abs(other!.energy.residual)).toBeLessThan(0.05 * one!.energy.springs);
});
