/** What the tests of the picture look at: texts, what is shown of them, and where a point stands by the view's own equation. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import { isPicture } from '../../src/protocol/pictureGuards.ts';
import { isCharts, isReport } from '../../src/protocol/reportGuards.ts';
import type { Shown } from '../../src/protocol/messages.ts';
import type { DrawnLever, TurningPoint } from '../../src/protocol/picture.ts';
import { solve, type Answers } from '../../src/solve.ts';
import type { Vector } from '../support/vector.ts';

const EXAMPLES = new URL('../../examples/', import.meta.url);

/** Every example and the sample of the tests, by name. */
export const FILES: readonly { readonly name: string; readonly text: string }[] = [
  ...readdirSync(EXAMPLES)
    .filter((name) => name.endsWith('.throttle.yaml'))
    .map((name) => ({ name, text: readFileSync(new URL(name, EXAMPLES), 'utf8') })),
  { name: 'sample', text: readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8') },
];

export const fileNamed = (name: string): string => {
  const found = FILES.find((file) => file.name.startsWith(name));
  if (found === undefined) throw new Error(`There is no file ${name}`);
  return found.text;
};

/** Shown, and held to what the page takes. */
export function shownOf(text: string): Shown & { readonly answers: Answers } {
  const answers = solve(text);
  const shown = showAnswers(answers);
  if (shown === undefined) throw new Error(`Nothing is shown of\n${text}`);
  checkShown(shown, text);
  return { ...shown, answers };
}

/** What is shown is what the page accepts, and its places lie in the text. */
export function checkShown({ picture, charts, report, dials }: Shown, text: string): void {
  expect(isPicture(picture), text).toBe(true);
  expect(isCharts(charts), text).toBe(true);
  expect(isReport(report), text).toBe(true);
  for (const { curves } of charts) {
    for (const { values } of curves) {
      expect(values.length).toBe(picture.stations.length);
      expect(values.every((value) => Number.isFinite(value) || Number.isNaN(value))).toBe(true);
    }
  }
  const places = [...report.parts, ...report.marks, ...report.requirements, ...dials].map(({ place }) => place);
  for (const { start, end } of places) expect(0 <= start && start <= end && end <= text.length, text).toBe(true);
}

/** P(φ) = base + cos φ · perp + sin φ · cross, m. */
export function placeAt(point: TurningPoint, angle: number): Vector {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const along = (i: number): number => point[i]! + c * point[i + 3]! + s * point[i + 6]!;
  return [along(0), along(1), along(2)];
}

export function leverNamed(levers: readonly DrawnLever[], name: string): DrawnLever {
  const lever = levers.find((each) => each.name === name);
  if (lever === undefined) throw new Error(`There is no lever ${name}`);
  return lever;
}

/** First, last and three between, as indices. */
export function fiveOf(stations: ArrayLike<number>): readonly number[] {
  const last = stations.length - 1;
  return [...new Set([0, 0.21, 0.5, 0.83, 1].map((share) => Math.round(share * last)))];
}

/** Every place equal to a nanometre. */
export function expectSame(actual: Vector, wanted: Vector, close = 1e-9): void {
  actual.forEach((figure, axis) =>
    expect(Math.abs(figure - wanted[axis]!), `${actual.join(', ')} is not ${wanted.join(', ')}`).toBeLessThan(close),
  );
}
