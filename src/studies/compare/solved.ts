/** One side of a comparison: what has been found out about a text. */
import type { Definition } from '../../definition/definition.ts';
import type { LoadPath } from '../../definition/loadPath.ts';
import type { Problem } from '../../definition/problem.ts';
import type { Fact, Finding, NotChecked } from '../../findings/finding.ts';
import type { PathPart } from '../../findings/part.ts';
import type { Study } from '../../findings/study.ts';
import type { RequirementAnswer } from '../../requirements/requirement.ts';
import type { Column } from '../../table/column.ts';
import type { Travel } from '../../travel/travel.ts';

/** The answers about a text, as far as a comparison looks at them. */
export interface Answered {
  readonly text: string;
  readonly definition: Definition | undefined;
  readonly loadPath: LoadPath | undefined;
  readonly problems: readonly Problem[];
  /** Empty where nothing is solved. */
  readonly columns: readonly Column[];
  readonly findings: readonly Finding[];
  readonly facts: readonly Fact[];
  readonly requirements: readonly RequirementAnswer[];
  readonly notChecked: readonly NotChecked[];
  readonly parts: readonly PathPart[];
  readonly study: Study | undefined;
}

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
