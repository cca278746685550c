/**
 * The one door for every face: text in, answers out.
 */
import type { Definition } from './definition/definition.ts';
import type { LoadPath } from './definition/loadPath.ts';
import type { Problem } from './definition/problem.ts';
import type { Fact, Finding, NotChecked } from './findings/finding.ts';
import type { Column, Table } from './table/column.ts';
import type { PathPart } from './findings/part.ts';

export interface Answers {
  readonly text: string;
  /** Undefined where nothing of the text can be understood. */
  readonly definition: Definition | undefined;
  readonly loadPath: LoadPath | undefined;
  readonly problems: readonly Problem[];
  /** Every column that this file has, in load-path order; empty where nothing can be solved. */
  readonly columns: readonly Column[];
  readonly findings: readonly Finding[];
  readonly facts: readonly Fact[];
  readonly notChecked: readonly NotChecked[];
  /** The load path in order, each part with the figure that matters for it. */
  readonly parts: readonly PathPart[];
  /** @param stations pedal travels, fractions from 0 to 1; @param names columns wanted, all where absent */
  table(stations: readonly number[], names?: readonly string[]): Table;
}
