/** What the textbook tests share: degrees, and figures held to the digits they are given with. */
import { expect } from 'vitest';
import { lastDigit } from '../values/provenance.ts';

export const DEG = Math.PI / 180;

/** The value, rounded to so many digits after the point, is the figure given. */
export function expectFigure(value: number | undefined, figure: number, decimals: number, what: string): void {
  expect(value, what).toBeDefined();
  const off = Math.abs((value ?? NaN) - figure);
  expect(off, `${what}: ${value} should be ${figure}`).toBeLessThanOrEqual(lastDigit(decimals));
}

/** The same for an angle in radians against a figure in degrees, whole turns aside; or within so many degrees. */
export function expectAngle(
  radians: number | undefined,
  degrees: number,
  decimals: number,
  what: string,
  within: number = lastDigit(decimals),
): void {
  expect(radians, what).toBeDefined();
  const off = (radians ?? NaN) - degrees * DEG;
  const folded = Math.abs(Math.atan2(Math.sin(off), Math.cos(off))) / DEG;
  expect(folded, `${what}: ${(radians ?? NaN) / DEG}° should be ${degrees}°`).toBeLessThanOrEqual(within);
}
