/**
 * The one door for every face: text in, answers out.
 */
import type { Definition } from './definition/definition.ts';
import { findLoadPath, type LoadPath } from './definition/loadPath.ts';
import type { Problem } from './definition/problem.ts';
import { readDefinition } from './definition/read.ts';
import { findFacts } from './findings/facts.ts';
import type { Fact, Finding, NotChecked } from './findings/finding.ts';
import { findAll } from './findings/findings.ts';
import { findNotChecked } from './findings/notChecked.ts';
import type { PathPart } from './findings/part.ts';
import { pathParts } from './findings/parts.ts';
import { createStudy } from './findings/study.ts';
import { compileMechanism } from './kinematics/compile.ts';
import type { Column, Table } from './table/column.ts';
import { columnsOf } from './table/columns.ts';
import { tabulate } from './table/table.ts';
import { solveTravel } from './travel/travel.ts';

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

/** Never throws, whatever the text. */
export function solve(text: string): Answers {
  const { definition, problems } = readDefinition(text);
  const loadPath = definition && findLoadPath(definition).path;
  const mechanism = definition && loadPath && compileMechanism(definition, loadPath);
  if (definition === undefined || mechanism === undefined) {
    return {
      text,
      definition,
      loadPath,
      problems,
      columns: [],
      findings: [],
      facts: [],
      notChecked: definition === undefined ? [] : findNotChecked(definition, undefined),
      parts: [],
      table: (stations) => ({ stations, columns: [] }),
    };
  }
  const travel = solveTravel(mechanism);
  const columns = columnsOf(travel);
  const study = createStudy(definition, travel, columns);
  return {
    text,
    definition,
    loadPath,
    problems,
    columns,
    findings: findAll(study),
    facts: findFacts(study),
    notChecked: findNotChecked(definition, study),
    parts: pathParts(study),
    table: (stations, names) =>
      tabulate(travel, names === undefined ? columns : columns.filter(({ name }) => names.includes(name)), stations),
  };
}
