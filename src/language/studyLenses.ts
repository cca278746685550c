/** Lines above what a study is of: the blocks `tune` and `measured`, and the first figure with a tolerance. */
import type { Span } from '../definition/span.ts';
import type { Answers } from '../solve.ts';
import { variedFigures } from '../kinematics/toleranced.ts';

export interface StudyLens {
  readonly span: Span;
  readonly kind: 'tune' | 'tolerance' | 'fit';
  /** What the study does, in words. */
  readonly title: string;
}

/** In the order of the text; empty where nothing is solved. */
export function studyLenses({ definition, study }: Pick<Answers, 'definition' | 'study'>): readonly StudyLens[] {
  if (definition === undefined || study === undefined) return [];
  const { tune, measured } = definition;
  const [first] = variedFigures(study.travel.mechanism)
    .map(({ span }) => span)
    .sort((a, b) => a.start - b.start);
  const lenses: readonly (StudyLens | undefined)[] = [
    first && { span: first, kind: 'tolerance', title: 'What tolerances do' },
    tune && { span: tune.nameSpan, kind: 'tune', title: 'Find dimensions' },
    measured && { span: measured.nameSpan, kind: 'fit', title: 'Fit to the measurements' },
  ];
  return lenses.filter((lens) => lens !== undefined).sort((a, b) => a.span.start - b.span.start);
}
