/** For lines too long for carets: a throttle file whose only problem is about what stands between « and ». */
import { expect } from 'vitest';
import { readDefinition } from '../../src/definition/read.ts';

/** @param place severity and code, as `error[out-of-range]` @param words a part of the message or of the cure */
export function checkOneProblem(marked: string, place: string, words: string): void {
  const start = marked.indexOf('«');
  const end = marked.indexOf('»') - 1;
  if (start < 0 || end < start) throw new Error(`There is no «…» in\n${marked}`);
  const text = marked.replace(/[«»]/g, '');
  const { problems } = readDefinition(text);
  expect(problems.map(({ severity, code, span }) => `${severity}[${code}] «${text.slice(span.start, span.end)}»`)).toEqual([
    `${place} «${text.slice(start, end)}»`,
  ]);
  expect(problems.map(({ span }) => span)).toEqual([{ start, end }]);
  expect(`${problems[0]?.message ?? ''} | ${problems[0]?.cure ?? ''}`).toContain(words);
}
