import { describe, expect, it } from 'vitest';
import { createHoming } from '../../../webview/drawing/homing.ts';

/**
 * A pin at 30 mm from its pivot whose lever stands at φ(drawn angle) = start + gain · drawn angle, held at the angle `hand`: the drawn angle
 * that puts it there solves drawn + φ(drawn) = hand.
 */
function chase(gain: number, hand: number, pictures: number) {
  const start = 0.4;
  const phi = (drawn: number) => start + gain * drawn;
  const homing = createHoming(phi(0));
  const place = () => hand - homing.rotation();
  const apart = (drawn: number) => 30 * Math.abs(drawn + phi(drawn) - hand);
  const first = place();
  for (let i = 0; i < pictures; i++) homing.seen(apart(place()), 0.1, phi(place()));
  return { homing, first: apart(first), now: () => apart(place()), restart: () => homing.restart() };
}

describe('homing', () => {
  it('closes in where the lever turns little with the place', () => {
    const { first, now } = chase(0.25, 0.9, 4);
    expect(first).toBeGreaterThan(3);
    // Each step leaves a quarter: 30 mm · 0.25 · 0.5 rad · 0.25³ = 0.06 mm.
    expect(now()).toBeLessThan(0.1);
  });

  it('goes three steps for one place of the hand, however far it is', () => {
    const { homing, now } = chase(0.55, 0.9, 4);
    const after = now();
    expect(homing.seen(after, 0.1, 0)).toBe(false);
    expect(after).toBeGreaterThan(0.1);
  });

  it.each([-1, 1, -3])('stays with the rotation before where it does not close in, with %s rad to the radian', (gain) => {
    const { homing, first, now } = chase(gain, 0.9, 6);
    expect(now()).toBe(first);
    expect(homing.rotation()).toBe(0.4);
  });

  it('forgets a step that no picture has borne out when the hand moves', () => {
    const { homing, restart } = chase(0.25, 0.9, 1);
    expect(homing.rotation()).not.toBe(0.4);
    expect(restart()).toBe(true);
    expect(homing.rotation()).toBe(0.4);
    expect(restart()).toBe(false);
  });
});
