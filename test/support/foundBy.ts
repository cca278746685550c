/** What a rule finds by itself, also where the findings tell it beside the cause that it follows from. */
import type { FindingCode } from '../../src/findings/codes.ts';
import type { Finding } from '../../src/findings/finding.ts';
import { RULES } from '../../src/findings/findings.ts';
import type { Answers } from '../../src/solve.ts';

/** Empty where nothing could be solved. */
export function foundBy({ study }: Answers, code: FindingCode): readonly Finding[] {
  return study === undefined ? [] : RULES[code](study);
}

/** Of every rule, in the order of the rules. */
export function foundByRules({ study }: Answers): readonly Finding[] {
  return study === undefined ? [] : Object.values(RULES).flatMap((rule) => rule(study));
}
