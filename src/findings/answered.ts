/** What has been found out about a text, as plain data: the answers of the one door, and what a comparison looks at. */
import type { Definition } from '../definition/definition.ts';
import type { LoadPath } from '../definition/loadPath.ts';
import type { Problem } from '../definition/problem.ts';
import type { RequirementAnswer } from '../requirements/requirement.ts';
import type { Column } from '../table/column.ts';
import type { Fact, Finding, NotChecked } from './finding.ts';
import type { PathPart } from './part.ts';
import type { Study } from './study.ts';

/** The answers about a text: what can be told of it without asking for stations. */
export interface Answered {
  readonly text: string;
  /** Undefined where nothing of the text can be understood. */
  readonly definition: Definition | undefined;
  readonly loadPath: LoadPath | undefined;
  readonly problems: readonly Problem[];
  /** Every column that this file has, in load-path order; empty where nothing can be solved. */
  readonly columns: readonly Column[];
  readonly findings: readonly Finding[];
  readonly facts: readonly Fact[];
  /** How the linkage stands to each line of `require`, in the order of the file. */
  readonly requirements: readonly RequirementAnswer[];
  readonly notChecked: readonly NotChecked[];
  /** The load path in order, each part with the figure that matters for it. */
  readonly parts: readonly PathPart[];
  /** The solved travel with its columns and limits; undefined where nothing can be solved. */
  readonly study: Study | undefined;
}
