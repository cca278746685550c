/**
 * What the status bar says of a throttle file: how it stands and how far it opens, in a few words, and the rest on hover.
 */
import type { FindingSeverity } from '../findings/finding.ts';
import { along } from '../findings/study.ts';
import { CAUTION } from '../outputs/caution.ts';
import { countText, figureText } from '../outputs/figure.ts';
import { marksOf, notCheckedText, verdictText } from '../outputs/marks.ts';
import { printable } from '../outputs/paint.ts';
import { answerText, OUTCOMES } from '../outputs/requirementText.ts';
import type { Answers } from '../solve.ts';
import { greatestOf } from '../travel/extremes.ts';

export interface StatusLine {
  /** E.g. `2 errors · opens 82°`; never empty. */
  readonly text: string;
  /** The worst that there is, counting a requirement that is not passed as an error; undefined where nothing is amiss. */
  readonly severity: FindingSeverity | undefined;
  /** Plain text throughout: nothing in it is markup. */
  readonly tooltip: {
    /** E.g. `2 errors, 1 warning, no notes; 2 requirements passed`. */
    readonly verdict: string;
    /** A line for each requirement, as many as one can take in. */
    readonly requirements: readonly string[];
    /** A line for each thing that was not checked. */
    readonly notChecked: readonly string[];
    readonly caution: string;
  };
}

export function statusLine(answers: Answers): StatusLine {
  const { requirements, notChecked } = answers;
  return {
    text: [standing(answers), openingText(answers)].filter((part) => part !== '').join(' · '),
    severity: worstOf(answers),
    tooltip: {
      verdict: verdictText(answers),
      requirements: few(
        requirements.map((answer) =>
          printable(`${answer.requirement.name}: ${OUTCOMES[answer.outcome].word}${reasonOf(answerText(answer))}`),
        ),
      ),
      notChecked: few(notChecked.map(({ part, message }) => printable(`${part}: ${notCheckedText(message)}`))),
      caution: CAUTION,
    },
  };
}

/** A tooltip that fills the screen is read by nobody. */
const MOST_LINES = 12;

function few(lines: readonly string[]): readonly string[] {
  const more = lines.length - MOST_LINES;
  return more <= 0 ? lines : [...lines.slice(0, MOST_LINES), `and ${more} more`];
}

function reasonOf(text: string): string {
  return text === '' ? '' : `, ${text}`;
}

/** What is worst, with its count; a requirement that is not passed is named where nothing else is an error. */
function standing(answers: Answers): string {
  if (answers.definition === undefined) return 'cannot be used';
  const marks = marksOf(answers);
  const count = (severity: FindingSeverity): number => marks.filter((mark) => mark.severity === severity).length;
  const unmet = answers.requirements.filter(({ outcome }) => outcome !== 'passed').length;
  if (count('error') > 0) return countText(count('error'), 'error');
  if (unmet > 0) return `${countText(unmet, 'requirement')} not met`;
  if (count('warning') > 0) return countText(count('warning'), 'warning');
  return answers.study === undefined ? 'nothing to solve yet' : 'no errors';
}

function worstOf(answers: Answers): FindingSeverity | undefined {
  const marks = marksOf(answers);
  const unmet = answers.requirements.some(({ outcome }) => outcome !== 'passed');
  if (answers.definition === undefined || unmet) return 'error';
  return marks[0]?.severity;
}

/** How far the plates open, of several shafts the one that opens least; empty where none turns. */
function openingText({ study, columns }: Answers): string {
  if (study === undefined) return '';
  const { mechanism, samples } = study.travel;
  const openings = mechanism.levers.flatMap(({ name, plates, group }) => {
    const column = plates.length === 0 || group < 0 ? undefined : columns.find((each) => each.name === `${name}.opening`);
    return column === undefined ? [] : [greatestOf(along(study, column.name), samples)?.value ?? NaN];
  });
  if (openings.length === 0) return '';
  if (openings.some(Number.isNaN)) return 'does not open';
  return `opens ${figureText({ value: Math.min(...openings), dimension: 'angle' })}`;
}
