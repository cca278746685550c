/** What changes of a file do to the outcome, in short lines, what matters most first. */
import { compareLimits, compareVerdict, effectRows } from '../outputs/compareEffects.ts';
import { figureRows } from '../outputs/compareFigures.ts';
import { printable } from '../outputs/paint.ts';
import type { Answered } from '../findings/answered.ts';
import { compareAnswers } from '../studies/compare.ts';
import type { Comparison } from '../studies/compare/comparison.ts';
import type { Solve } from './solve.ts';
import type { ListedChange } from './changes.ts';

/** Of all that changed together: how the new file stands to the old one, then what was found, then figures. */
export function effectLines(comparison: Comparison): readonly string[] {
  return [compareVerdict(comparison), ...compareLimits(comparison), ...shortened(lines(comparison), MOST_TOGETHER)];
}

/**
 * Of one change alone. It is made in the text that lacks it, which is solved.
 * @param was answers about the old text; @param is about the new one
 */
export function effectsAlone({ alone }: ListedChange, was: Answered, is: Answered, solve: Solve): readonly string[] {
  const texts = alone?.();
  if (texts === undefined) return ['What this alone does cannot be told: it cannot be made without the others'];
  if (typeof texts === 'string') return [texts];
  const sides = [texts.was, texts.is].map((text) => (text === was.text ? was : text === is.text ? is : solve(text)));
  const [before, after] = sides as [Answered, Answered];
  const made = sides.find((side) => side !== was && side !== is);
  const untouched = made === after ? was : is;
  // A name or a part that another change brings.
  const lacking = made?.problems.find(
    ({ severity, message }) => severity === 'error' && !untouched.problems.some((problem) => problem.message === message),
  );
  if (lacking !== undefined) return [printable(`What this alone does cannot be told: it needs others of the changes (${lacking.message})`)];
  const comparison = compareAnswers(before, after);
  const found = lines(comparison);
  if (found.length > 0) return shortened(found, MOST_ALONE);
  const limits = compareLimits(comparison);
  return limits.length > 0 ? limits : ['Alone it changes nothing that was found'];
}

const MOST_TOGETHER = 12;
const MOST_ALONE = 4;

function lines(comparison: Comparison): readonly string[] {
  const effects = effectRows(comparison);
  // A figure that is an effect has been told with it.
  const told = effects.map(({ subject, text }) => `${subject} ${text}`);
  const figures = figureRows(comparison).filter(
    ({ part, label, was }) => !told.some((line) => line.startsWith(`${part} ${label} ${was} `)),
  );
  return [
    ...effects.map(({ status, subject, text }) => printable(`${status}: ${subject}${text === '' ? '' : ` ${text}`}`)),
    ...figures.map(({ part, label, was, is, difference, at }) =>
      printable(`${part}: ${label} ${was} → ${is}${difference === '' ? '' : ` (${difference})`}${at === '' ? '' : `, at ${at}`}`),
    ),
  ];
}

function shortened(all: readonly string[], most: number): readonly string[] {
  return all.length <= most + 1 ? all : [...all.slice(0, most), `and ${all.length - most} more`];
}
