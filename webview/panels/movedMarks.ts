/** What differs between the findings as written and those with what is tried. */
import type { ReportedMark } from '../../src/protocol/report.ts';

export interface MovedMark {
  readonly how: 'came' | 'went' | 'moved';
  readonly message: string;
}

/** Those that came first, then those that say something else of the same part, then those that went. */
export function movedMarks(before: readonly ReportedMark[], now: readonly ReportedMark[]): readonly MovedMark[] {
  const left = before.filter(({ message }) => now.every((each) => each.message !== message));
  const moved: MovedMark[] = [];
  const came: MovedMark[] = [];
  for (const { code, part, message } of now.filter((each) => before.every((other) => other.message !== each.message))) {
    const former = left.findIndex((each) => each.code === code && each.part === part);
    if (former >= 0) left.splice(former, 1);
    (former >= 0 ? moved : came).push({ how: former >= 0 ? 'moved' : 'came', message });
  }
  return [...came, ...moved, ...left.map(({ message }): MovedMark => ({ how: 'went', message }))];
}
