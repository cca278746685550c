/** What the car as found does not do of what its file demands, in words. Sentences without a full stop. */
import type { AsFoundCheck, NotMet } from '../studies/fit/asFound.ts';
import { answerText } from './requirementText.ts';
import type { TurningLine } from './turningWords.ts';

/** Empty where all is met. */
export function asFoundLines(check: AsFoundCheck): readonly TurningLine[] {
  if (check.kind === 'not-checked') return [{ words: `not checked: ${check.why}`, sign: 'undecided' }];
  return check.notMet.map((each) => {
    const isOpen = each.kind === 'requirement' && each.answer.outcome === 'undecided';
    return { words: `${notMetText(each)}${each.isDrawn ? '; in the drawing likewise' : ''}`, sign: isOpen ? 'undecided' : 'failed' };
  });
}

/** With its figures. */
export function notMetText(of: NotMet): string {
  if (of.kind === 'error') return of.finding.message;
  const { answer } = of;
  return `${answer.requirement.name}: ${answer.outcome === 'undecided' ? 'not decidable: ' : ''}${answerText(answer)}`;
}
