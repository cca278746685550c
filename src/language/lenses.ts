/** One line above each part of the load path: the figure that matters for it. */
import type { Span } from '../definition/span.ts';
import type { PathPart } from '../findings/part.ts';
import { partFigureText } from '../outputs/factText.ts';
import type { Answers } from '../solve.ts';
import { readLoosely } from './cursor/looseTree.ts';

export interface Lens {
  /** The name of the part; the key of the pedal's block. */
  readonly span: Span;
  /** Short, e.g. `opens 82° at 97.1 % of pedal travel`. */
  readonly title: string;
  /** What a face may do when it is chosen. */
  readonly action: LensAction;
}

/** Shows the part where the linkage is drawn. */
export interface LensAction {
  readonly kind: 'show-part';
  readonly part: PathPart['kind'];
  readonly name: string;
}

/** One for each part that the pedal moves, in the order of the text. */
export function lensesOf(answers: Answers): readonly Lens[] {
  return answers.parts
    .flatMap((part): Lens[] => {
      const [first] = part.figures;
      if (first === undefined) return [];
      const span = part.kind === 'pedal' ? pedalKey(answers.text) : part.span;
      return span === undefined
        ? []
        : [
            {
              span,
              title: `${partFigureText(first)}${first.travel === undefined ? '' : ' of pedal travel'}`,
              action: { kind: 'show-part', part: part.kind, name: part.name },
            },
          ];
    })
    .sort((a, b) => a.span.start - b.span.start);
}

function pedalKey(text: string): Span | undefined {
  return readLoosely(text).root.entries.find(({ key }) => key === 'pedal')?.keySpan;
}
