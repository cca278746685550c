/** What has been worked out so far of the fixes that solve for a figure, each for the answers that it was offered with. */
import { fixWork, type FixWork } from '../../src/language/fixWork.ts';
import type { OfferedFix } from '../../src/language/offeredFixes.ts';
import type { Answers } from '../../src/solve.ts';

/** The work on a fix, begun or not; the same one for all who ask. */
export type FixWorks = (answers: Answers, offer: OfferedFix) => FixWork;

/** Every version of a text has answers of its own: work on another one is forgotten with those. */
export function keepFixWorks(): FixWorks {
  const kept = new WeakMap<Answers, Map<string, FixWork>>();
  return (answers, offer) => {
    const works = kept.get(answers) ?? new Map<string, FixWork>();
    kept.set(answers, works);
    const { code, part, figure, writes, span } = offer;
    const key = [code, part, figure, writes, span.start].join(' ');
    const work = works.get(key) ?? fixWork(answers, offer);
    works.set(key, work);
    return work;
  };
}
