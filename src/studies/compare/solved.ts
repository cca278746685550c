/** One side of a comparison: what has been solved of a text. */
import type { Answered } from '../../findings/answered.ts';
import type { Fact } from '../../findings/finding.ts';
import type { PathPart } from '../../findings/part.ts';
import type { Column } from '../../table/column.ts';
import type { Travel } from '../../travel/travel.ts';

export interface SolvedSide {
  readonly parts: readonly PathPart[];
  readonly facts: readonly Fact[];
  readonly travel: Travel;
  readonly columns: readonly Column[];
}

/** Undefined where the text is not solved. */
export function solvedSide({ columns, parts, facts, study }: Answered): SolvedSide | undefined {
  return study && { parts, facts, travel: study.travel, columns };
}
