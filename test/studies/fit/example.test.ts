/** The examples with readings: what the comments and the scenario promise of them is found. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { ReadBeside } from '../../../src/studies/fit/gather.ts';
import { fitted } from './bench.ts';

const folder = new URL('../../../examples/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const beside: ReadBeside = (name) => ({ kind: 'text', text: textOf(name) });

/** With what the readings were made: a rod screwed out by 0.81 mm, a slack of 1.7 mm, a sensor at 13.1°, and a tenth of a volt too much at 65 %. */
const TRUTH = { 'link.length': 0.81e-3, 'main.slack': 1.7e-3, 'tps.at_closed': (13.1 * Math.PI) / 180 };

test('the car as built is found, with the slip among its readings and what to turn', () => {
  const { dimensions, readings, untold, settled, turning } = fitted(textOf('as-built.throttle.yaml'), beside);
  expect(settled).toBe(true);
  expect(dimensions.map(({ name }) => name)).toEqual(Object.keys(TRUTH));
  dimensions.forEach(({ name, value, error }) => expect(Math.abs(value - TRUTH[name as keyof typeof TRUTH])).toBeLessThan(3 * error));
  expect(readings.filter(({ verdict }) => verdict === 'off').map(({ line, column }) => [line, column])).toEqual([[15, 'tps.signal']]);
  expect(untold).toEqual([]);
  if (turning.kind !== 'turn') throw new Error(turning.why);
  expect(turning.turns.map(({ part }) => part).sort()).toEqual(['link', 'main']);
});

test('of the bellcrank two reaches cannot be told apart', () => {
  const { dimensions, untold } = fitted(textOf('tune-a-bellcrank.throttle.yaml'));
  expect(untold.map(({ unknowns }) => unknowns.map((i) => dimensions[i]!.name))).toEqual([['crank_reach', 'shaft_reach']]);
});
