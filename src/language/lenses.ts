/** One line above each part of the load path: the figure that matters for it. */
import type { Span } from '../definition/span.ts';
import { greatestEffort } from '../findings/facts/effort.ts';
import type { PartFigure, PathPart } from '../findings/part.ts';
import { partFigureText } from '../outputs/factText.ts';
import type { Answers } from '../solve.ts';
import { readLoosely } from './cursor/looseTree.ts';
import type { NameIndex } from './names.ts';
import { partKindOf } from './partKinds.ts';

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
      const first = (part.kind === 'pedal' ? effortOf(answers) : undefined) ?? part.figures[0];
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

/** What the pedal takes: how far it goes stands in its line. Undefined where that is not known. */
function effortOf({ study }: Answers): PartFigure | undefined {
  const effort = study && greatestEffort(study);
  if (effort?.figure === undefined) return undefined;
  const { label, figure, travel } = effort;
  return { label, figure, ...(travel !== undefined && { travel }) };
}

/** Where a lens stands, before it is known what it says. */
export interface LensPlace {
  readonly span: Span;
  readonly part: PathPart['kind'];
  readonly name: string;
}

/**
 * The places of all parts that may have a lens, in the order of the text: without solving, and of a part that is not solved too.
 *
 * @param pressed the lever that the pedal is, of which the pedal speaks
 */
export function lensPlaces(index: NameIndex, pressed = pressedLever(index)): readonly LensPlace[] {
  return index.names.flatMap(({ kind, name, span }) => {
    const part = partKindOf(kind);
    return part === undefined || part === 'keep-out' || (kind === 'lever' && name === pressed) ? [] : [{ span, part, name }];
  });
}

/** The name of the lever that the pedal is; undefined where its block names none that is there. */
export function pressedLever({ names, places }: NameIndex): string | undefined {
  const pedal = names.find(({ kind }) => kind === 'drive')?.entrySpan;
  if (pedal === undefined) return undefined;
  return places.find(({ span, declared }) => declared.kind === 'lever' && pedal.start <= span.start && span.end <= pedal.end)?.declared
    .name;
}

/** Where what is of the whole file stands: its first key. Undefined where it has none. */
export function topOf(text: string): Span | undefined {
  return readLoosely(text).root.entries[0]?.keySpan;
}

function pedalKey(text: string): Span | undefined {
  return readLoosely(text).root.entries.find(({ key }) => key === 'pedal')?.keySpan;
}
