/** What is wrong or worth knowing, of the text and of the linkage together, and how a file stands by it: for every kind of output alike. */
import type { Problem } from '../definition/problem.ts';
import type { Finding, FindingSeverity } from '../findings/finding.ts';
import type { Answers } from '../solve.ts';
import { countText } from './figure.ts';
import { plain, type Paint } from './paint.ts';
import { requirementCounts } from './requirementText.ts';

export type Mark = Problem | Finding;

/** Problems and findings together: errors first, then warnings, then notes, each in the order of the file. */
export function marksOf({ problems, findings }: Pick<Answers, 'problems' | 'findings'>): Mark[] {
  const rank: Readonly<Record<FindingSeverity, number>> = { error: 0, warning: 1, note: 2 };
  return [...problems, ...findings].sort((a, b) => rank[a.severity] - rank[b.severity] || a.span.start - b.span.start);
}

/**
 * E.g. `no errors, 1 warning, 2 notes; 3 requirements passed, 1 failed; 4 things not checked`, or that the file cannot be used. That nothing can
 * be solved is said besides: without a word, nothing found would read like a pass.
 */
export function verdictText(answers: Answers, paint: Paint = plain): string {
  if (answers.definition === undefined) return paint('error', 'cannot be used');
  const marks = marksOf(answers);
  const counts = (['error', 'warning', 'note'] as const).map((severity) => {
    const count = marks.filter((mark) => mark.severity === severity).length;
    return count === 0 ? countText(0, severity) : paint(severity, countText(count, severity));
  });
  const open = answers.notChecked.length;
  const rest = [
    requirementCounts(answers.requirements, paint),
    open === 0 ? '' : `${countText(open, 'thing')} not checked`,
    answers.study === undefined ? paint('error', 'nothing in it can be solved') : '',
  ];
  return [counts.join(', '), ...rest].filter((part) => part !== '').join('; ');
}

/** What was not checked and why, without the words that say that it was not. */
export function notCheckedText(message: string): string {
  return message.replace(/^Not checked: /, '');
}
