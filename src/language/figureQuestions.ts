/** What a file can be asked for one figure: which of its figures may be changed, and what may be demanded of it. */
import type { Span } from '../definition/span.ts';
import { linkageValues } from '../definition/values.ts';
import { answerText } from '../outputs/requirementText.ts';
import type { Answers } from '../solve.ts';

/** A plain figure of the linkage. */
export interface ChangeableFigure {
  /** As a question names it: a name of `let`, else its path. */
  readonly change: string;
  /** As it stands in the text. */
  readonly written: string;
  readonly span: Span;
}

/** In the order of the text; those that follow from a formula are left out, since they change with what is in it. */
export function changeableFigures({ text, definition }: Pick<Answers, 'text' | 'definition'>): readonly ChangeableFigure[] {
  if (definition === undefined) return [];
  return [...linkageValues(definition).values()]
    .filter(({ formula }) => formula === undefined)
    .sort((a, b) => a.span.start - b.span.start)
    .map(({ path, span }) => ({ change: path.replace(/^let\./, ''), written: text.slice(span.start, span.end), span }));
}

/** A line of `require`. */
export interface AskableDemand {
  readonly name: string;
  readonly condition: string;
  /** How the file stands to it, in words. */
  readonly standing: string;
  readonly outcome: 'passed' | 'failed' | 'undecided';
  readonly span: Span;
}

/** What is not met first, then in the order of the text. */
export function askableDemands({ requirements }: Pick<Answers, 'requirements'>): readonly AskableDemand[] {
  const all = requirements.map((answer): AskableDemand => {
    const { requirement, outcome } = answer;
    return { name: requirement.name, condition: requirement.text, standing: answerText(answer), outcome, span: requirement.span };
  });
  return [...all.filter(({ outcome }) => outcome === 'failed'), ...all.filter(({ outcome }) => outcome !== 'failed')];
}

/** The one at a place, its ends counted in; undefined where none is. */
export function standingAt<Of extends { readonly span: Span }>(all: readonly Of[], offset: number): Of | undefined {
  return all.find(({ span }) => span.start <= offset && offset <= span.end);
}
