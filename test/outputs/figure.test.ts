import { describe, expect, it } from 'vitest';
import { countText, decimal, figureText, percentText, travelText } from '../../src/outputs/figure.ts';

const degrees = (value: number): string => figureText({ value: (value * Math.PI) / 180, dimension: 'angle' });

describe('a figure', () => {
  it.each([
    [0.03825, 'length', '38.25 mm'],
    [0.098, 'length', '98 mm'],
    [-0.0005, 'length', '-0.5 mm'],
    [0.000001234, 'length', '0.0012 mm'],
    [2.3456, 'number', '2.35'],
    [0.0001253, 'area', '125 mm²'],
    [12.34, 'force', '12.3 N'],
    [0.245, 'torque', '245 N·mm'],
    [60e3, 'linear-rate', '60 N/mm'],
    [(2.2e-3 * 180) / Math.PI, 'torsional-rate', '2.2 N·mm/deg'],
    [95e-6, 'inertia', '95 kg·mm²'],
    [4.5, 'voltage', '4.5 V'],
    [65e3, 'pressure', '65 kPa'],
    [(2.387e3 * Math.PI) / 180, 'angle-per-length', '2.387 deg/mm'],
  ] as const)('%d of kind %s reads %s', (value, dimension, text) => {
    expect(figureText({ value, dimension })).toBe(text);
  });

  it('gives an angle one digit, two below ten degrees, and more where it is tiny', () => {
    expect([82, 81.94, 9.876, -0.041, 0.0034].map(degrees)).toEqual(['82°', '81.9°', '9.88°', '-0.04°', '0.0034°']);
  });

  it('takes the rounding of a computation for nothing, and never writes a negative zero', () => {
    expect([-1e-15, 1e-12, -0].map(degrees)).toEqual(['0°', '0°', '0°']);
    expect(decimal(-0.001, 2)).toBe('0.00');
  });

  it('says that there is no value', () => {
    expect([NaN, Infinity, -Infinity].map(degrees)).toEqual(['–', '–', '–']);
    expect(percentText(NaN)).toBe('–');
  });
});

it('writes pedal travel in percent', () => {
  expect([0, 0.621, 0.97, 1].map((travel) => percentText(travel))).toEqual(['0 %', '62.1 %', '97 %', '100 %']);
  expect(travelText(0.621)).toBe('at 62.1 % of pedal travel');
});

it('counts in words', () => {
  expect([0, 1, 2].map((count) => countText(count, 'error'))).toEqual(['no errors', '1 error', '2 errors']);
});
