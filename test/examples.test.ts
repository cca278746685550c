/** Every file in `examples/` is solved; what its name and its comments promise is held. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solve } from '../src/solve.ts';
import { checkAnnotated } from './support/annotatedFile.ts';

const folder = new URL('../examples/', import.meta.url);
const names = readdirSync(folder).filter((name) => name.endsWith('.throttle.yaml'));
const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const isBroken = (name: string): boolean => name.endsWith('-broken.throttle.yaml');

const least = (name: string, column: string): number => {
  const values = solve(textOf(name)).table(thousand, [column]).columns[0]?.values ?? [];
  return Math.min(...values.map((value) => value ?? NaN));
};
const thousand = Array.from({ length: 1001 }, (_, i) => i / 1000);

it('has sound examples and broken ones', () => {
  expect(names.filter(isBroken).length).toBeGreaterThanOrEqual(1);
  expect(names.filter((name) => !isBroken(name)).length).toBeGreaterThanOrEqual(2);
});

describe.each(names.filter((name) => !isBroken(name)))('%s', (name) => {
  const answers = solve(textOf(name));

  it('has no problem, and no finding that is an error or a warning', () => {
    expect(answers.problems).toEqual([]);
    expect(answers.findings.filter(({ severity }) => severity !== 'note').map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });

  it('has a value in every column at every station', () => {
    const { columns } = answers.table(thousand);
    expect(columns.length).toBeGreaterThan(10);
    expect(columns.filter(({ values }) => values.includes(null)).map(({ name: column }) => column)).toEqual([]);
  });

  it('opens every shaft with plates fully, shortly before the pedal lands', () => {
    const shafts = [...new Set(answers.definition?.plates.map(({ lever }) => lever.name))];
    expect(shafts.length).toBeGreaterThan(0);
    for (const shaft of shafts) {
      const open = answers.definition?.levers.find((lever) => lever.name === shaft)?.stops?.open?.nominal ?? NaN;
      const [before, after] = answers.table([0.94, 0.99], [`${shaft}.opening`]).columns[0]?.values ?? [];
      expect(after).toBeCloseTo((open * 180) / Math.PI, 6);
      expect(before).toBeLessThan((open * 180) / Math.PI);
    }
  });
});

it('keeps both banks of the two-bank example in step', () => {
  const [front, rear] = solve(textOf('two-banks.throttle.yaml')).table(thousand, ['front.opening', 'rear.opening']).columns;
  const apart = front?.values.map((value, i) => Math.abs((value ?? NaN) - (rear?.values[i] ?? NaN))) ?? [NaN];
  expect(Math.max(...apart)).toBeLessThan(1e-9);
});

it('leaves the plane in the two-bank example, so that its rod ends have to tilt', () => {
  expect(least('two-banks.throttle.yaml', 'front_link.misalignment')).toBeGreaterThan(5);
});

it('has angles in the four-barrel example that a builder need not think about', () => {
  expect(least('four-barrel.throttle.yaml', 'link.transmission')).toBeGreaterThan(45);
  expect(least('four-barrel.throttle.yaml', 'link.drive')).toBeGreaterThan(25);
});

it.each(names.filter(isBroken))('%s gives exactly the findings written under its lines', (name) => {
  const { findings } = checkAnnotated(textOf(name));
  expect(findings.some(({ severity }) => severity === 'error')).toBe(true);
});
