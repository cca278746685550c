/** What movements of the engine do with friction counted: against moments about the shaft, worked out by hand here. */
import { describe, expect, it } from 'vitest';
import { factText } from '../../src/outputs/factText.ts';
import { solve } from '../../src/solve.ts';
import { bisect, distance, polar, radians, type Point } from './handGeometry.ts';

/** A shaft that a spring at a tail closes, from an anchor that the engine carries, and that rubs with 60 N·mm. */
const file = (shift: string, friction = '60 N*mm', rest = ''): string => `format: 1
levers:
  shaft: {pivot: [100, 0], opens: clockwise, arms: {tail: {radius: 20, angle: 90}}, drums: {wheel: {radius: 24 mm, wraps: clockwise}}, stops: {closed: 0 deg, open: 80 deg}${friction === '' ? '' : `, friction: ${friction}`}}
pedal: {cable: main, pull: 33 mm}
cables: {main: {enters: [160, 24], to: shaft.wheel, slack: 2 mm}}
plates: {bank: {lever: shaft, bore: 40 mm, seat: 6 deg, idle: 4 deg}}
springs: {tail: {from: [40, 20], to: shaft.tail, rate: 0.2 N/mm, free_length: 46 mm}}
movements: {rock: {moves: [tail.from], shift: ${shift}}}
${rest}`;

/** Closing torque of the spring at an opening, N·mm, by its line's distance from the pivot. */
function torque(anchor: Point, opening: number): number {
  const pin = polar([100, 0], 20, 90 - opening);
  const length = distance(anchor, pin);
  const arm = ((pin[0] - 100) * (anchor[1] - pin[1]) - pin[1] * (anchor[0] - pin[0])) / length;
  return Math.max(0, 0.2 * (length - 46)) * arm;
}

const facts = (text: string): readonly string[] =>
  solve(text)
    .facts.filter(({ part }) => part === 'rock')
    .map((each) => `${each.label}: ${factText(each)}`);

const atRest = (text: string) => solve(text).findings.filter(({ code }) => code === 'movement-at-rest');

describe('a movement that takes load off a spring', () => {
  const anchor: Point = [49, 20];
  const least = (from: Point): number => Math.min(...Array.from({ length: 740 }, (_, i) => torque(from, i / 10)));

  it('is found where friction then holds the shaft, with how far open', () => {
    // Unmoved the spring brings 56 N·mm or more, moved by 9 mm less than 40 N·mm near rest.
    expect([least([40, 20]) > 40, torque(anchor, 0) < 40]).toEqual([true, true]);
    const held = bisect((opening) => torque(anchor, opening) - 40, 0, 30);
    const [finding, ...others] = atRest(file('[9, 0]', '40 N*mm'));
    expect(others).toEqual([]);
    expect(finding).toMatchObject({
      severity: 'error',
      message: `With the movement rock friction may hold shaft up to ${held.toFixed(1)}° open with the foot off, farther than without it`,
    });
    expect(finding?.worst?.value).toBeCloseTo(radians(held), 8);
    expect(facts(file('[9, 0]', '40 N*mm'))).toEqual([
      'shaft open at rest with it at least: 0°',
      `shaft open at rest with it at most, where friction holds it: ${held.toFixed(1)}°`,
      'shaft open at full pedal with it, a matter of lengths and not of friction: 74°',
      'slack of main at rest with it, a matter of lengths and not of friction: 2 mm',
    ]);
  });

  it('is none where the springs still overcome friction, and where no friction is given', () => {
    const few = file('[9, 0]', `${(least(anchor) * 0.8).toFixed(3)} N*mm`);
    expect(atRest(few)).toEqual([]);
    expect(facts(few)[0]).toBe('shaft open at rest with it; friction does not change that: the springs bring 1.25 times of it or more: 0°');
    expect(atRest(file('[9, 0]', ''))).toEqual([]);
    expect(facts(file('[9, 0]', ''))[0]).toBe('shaft open at rest with it, friction left out: 0°');
  });

  it('is not blamed for what friction holds without it', () => {
    const text = file('[0, 0.0001]', '60 N*mm');
    expect(solve(text).findings.map(({ code }) => code)).toContain('friction-lock');
    expect(atRest(text)).toEqual([]);
  });

  it('that takes up slack besides is told of both', () => {
    const text = file('[6, 0]', '50 N*mm').replace('moves: [tail.from]', 'moves: [tail.from, main.enters]');
    const [finding] = atRest(text);
    expect(finding?.message).toMatch(
      /^The movement rock opens shaft by [\d.]+° with the foot off, and friction may hold shaft up to [\d.]+° open/,
    );
    expect(facts(text)).toContain('slack of main at rest with it, a matter of lengths and not of friction: none: the cable is tight');
  });
});
