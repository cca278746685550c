import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  circuitOf,
  couplerPointMotion,
  couplerPointPlace,
  outputSensitivities,
  pinMotions,
  solveAcceleration,
  solvePosition,
  solveVelocity,
} from '../../../src/kinematics/fourBar/index.ts';
import type { Circuit, FourBar } from '../../../src/kinematics/fourBar/index.ts';
import { halfTangentAngles } from '../../textbook/support/halfTangent.ts';
import { anyAngle, anySignedLinks } from './arbitrary.ts';

const anyCircuit: fc.Arbitrary<Circuit> = fc.constantFrom('open', 'crossed');

describe('solvePosition', () => {
  it('closes the loop to 1e-12 of its size, on the circuit asked for', () => {
    let closed = 0;
    fc.assert(
      fc.property(anySignedLinks, anyAngle, anyCircuit, (links, theta2, circuit) => {
        const position = solvePosition(links, theta2, circuit);
        if (position === undefined) {
          expect(canClose(links, theta2)).toBe(false);
          return;
        }
        closed++;
        const { a, b, c, d } = links;
        const size = Math.abs(a) + b + Math.abs(c) + d;
        const x = a * Math.cos(theta2) + b * Math.cos(position.theta3) - d - c * Math.cos(position.theta4);
        const y = a * Math.sin(theta2) + b * Math.sin(position.theta3) - c * Math.sin(position.theta4);
        expect(Math.hypot(x, y) / size).toBeLessThan(1e-12);
        if (Math.abs(Math.sin(position.theta4 - position.theta3)) > 1e-9) expect(circuitOf(links, position)).toBe(circuit);
      }),
      { numRuns: 10_000, seed: 11 },
    );
    expect(closed).toBeGreaterThan(3000);
  });

  it("gives the half-tangent formula's root of the same sign, also for reversed links", () => {
    fc.assert(
      fc.property(anySignedLinks, anyAngle, anyCircuit, (links, theta2, circuit) => {
        const position = solvePosition(links, theta2, circuit);
        const second = halfTangentAngles(links, theta2, circuit === 'open' ? -1 : 1);
        // The quadratic loses its digits where its roots meet and where its leading coefficient vanishes.
        if (position === undefined || Math.abs(Math.sin(position.theta4 - position.theta3)) < 1e-3) return;
        if (Math.abs(Math.cos(position.theta4 / 2)) < 1e-3 || Number.isNaN(second.theta4)) return;
        expect(Math.abs(Math.sin((position.theta4 - second.theta4) / 2))).toBeLessThan(1e-7);
      }),
      { numRuns: 3000, seed: 12 },
    );
  });

  it('has no answer for unusable lengths, out of reach, or with the output loose about the pin of the input', () => {
    expect(solvePosition({ a: 1, b: 0, c: 1, d: 1 }, 1, 'open')).toBeUndefined();
    expect(solvePosition({ a: 1, b: NaN, c: 1, d: 1 }, 1, 'open')).toBeUndefined();
    expect(solvePosition({ a: 1, b: 1, c: 1, d: 1 }, Infinity, 'open')).toBeUndefined();
    expect(solvePosition({ a: 1, b: 1, c: 1, d: 5 }, 0, 'open')).toBeUndefined();
    expect(solvePosition({ a: 1, b: 2, c: 2, d: 1 }, 0, 'open')).toBeUndefined();
  });
});

describe('velocities and accelerations', () => {
  it('are the first and second differences of positions and points', () => {
    let compared = 0;
    fc.assert(
      fc.property(anySignedLinks, anyAngle, anyCircuit, (links, theta2, circuit) => {
        const [omega2, alpha2] = [0.7, -0.4];
        const step = 1e-4;
        const at = (t: number) => solvePosition(links, theta2 + omega2 * t + (alpha2 * t * t) / 2, circuit);
        const [before, now, after] = [at(-step), at(0), at(step)];
        if (!before || !now || !after || Math.abs(Math.sin(now.theta4 - now.theta3)) < 0.2) return;
        const velocity = solveVelocity(links, now, omega2)!;
        const acceleration = solveAcceleration(links, now, velocity, alpha2)!;
        const point = { radius: 1.5, angle: 0.6 };
        const moving = couplerPointMotion(links, now, velocity, acceleration, point);
        const places = [before, now, after].map((position) => couplerPointPlace(links, position, point));
        // Where everything moves fast, third derivatives make the differences coarse.
        const speed = Math.max(
          1,
          Math.abs(velocity.omega3),
          Math.abs(velocity.omega4),
          Math.abs(acceleration.alpha3),
          Math.abs(acceleration.alpha4),
        );
        if (speed > 5) return;
        compared++;
        const check = (values: readonly (number | undefined)[], first: number, second: number): void => {
          const [x0 = NaN, x1 = NaN, x2 = NaN] = values;
          expect(Math.abs((x2 - x0) / (2 * step) - first)).toBeLessThan(1e-4);
          expect(Math.abs((x2 - 2 * x1 + x0) / (step * step) - second)).toBeLessThan(2e-3);
        };
        check(unwrap([before.theta3, now.theta3, after.theta3]), velocity.omega3, acceleration.alpha3);
        check(unwrap([before.theta4, now.theta4, after.theta4]), velocity.omega4, acceleration.alpha4);
        check(
          places.map(({ x }) => x),
          moving.velocity.x,
          moving.acceleration.x,
        );
        check(
          places.map(({ y }) => y),
          moving.velocity.y,
          moving.acceleration.y,
        );
      }),
      { numRuns: 3000, seed: 13 },
    );
    expect(compared).toBeGreaterThan(500);
  });

  it('add up around the loop: the pin of the output moves as that of the input and relative to it', () => {
    const links = { a: 40, b: 120, c: 80, d: 100 };
    const position = solvePosition(links, 1.1, 'crossed')!;
    const velocity = solveVelocity(links, position, 3)!;
    const pins = pinMotions(links, position, velocity, solveAcceleration(links, position, velocity, 2)!);
    for (const kind of ['velocity', 'acceleration'] as const) {
      for (const axis of ['x', 'y'] as const) {
        expect(pins.a[kind][axis] + pins.bRelativeToA[kind][axis]).toBeCloseTo(pins.b[kind][axis], 9);
      }
    }
  });

  it('have no value at a toggle', () => {
    const links = { a: 4, b: 2, c: 1, d: 4 };
    const toggle = { theta2: 0.768, theta3: 1.2, theta4: 1.2 };
    expect(solveVelocity(links, toggle, 1)).toBeUndefined();
    expect(solveAcceleration(links, toggle, { omega2: 1, omega3: 0, omega4: 0 }, 0)).toBeUndefined();
    expect(outputSensitivities(links, toggle)).toBeUndefined();
  });
});

describe('sensitivities', () => {
  it('are the differences of the output angle by every dimension', () => {
    let compared = 0;
    fc.assert(
      fc.property(anySignedLinks, anyAngle, anyCircuit, (links, theta2, circuit) => {
        const now = solvePosition(links, theta2, circuit);
        if (now === undefined || Math.abs(Math.sin(now.theta4 - now.theta3)) < 0.3) return;
        const slopes = outputSensitivities(links, now)!;
        if ([slopes.a, slopes.b, slopes.c, slopes.d, slopes.theta2].some((slope) => Math.abs(slope) > 3)) return;
        compared++;
        const step = 1e-6;
        const output = (moved: FourBar, angle: number): number => solvePosition(moved, angle, circuit)?.theta4 ?? NaN;
        for (const name of ['a', 'b', 'c', 'd'] as const) {
          const [low, high] = [-step, step].map((by) => output({ ...links, [name]: links[name] + by }, theta2));
          expect(Math.abs(Math.sin((high ?? NaN) - (low ?? NaN)) / (2 * step) - slopes[name]), name).toBeLessThan(1e-6);
        }
        const difference = Math.sin(output(links, theta2 + step) - output(links, theta2 - step)) / (2 * step);
        expect(Math.abs(difference - slopes.theta2)).toBeLessThan(1e-6);
      }),
      { numRuns: 2000, seed: 14 },
    );
    expect(compared).toBeGreaterThan(300);
  });
});

function canClose({ a, b, c, d }: FourBar, theta2: number): boolean {
  const reach = Math.hypot(a * Math.cos(theta2) - d, a * Math.sin(theta2));
  const size = Math.abs(a) + b + Math.abs(c) + d;
  return reach > 1e-13 * size && reach < b + Math.abs(c) - 1e-13 * size && reach > Math.abs(b - Math.abs(c)) + 1e-13 * size;
}

function unwrap(angles: readonly number[]): readonly number[] {
  const first = angles[0] ?? 0;
  return angles.map((angle) => angle - 2 * Math.PI * Math.round((angle - first) / (2 * Math.PI)));
}
