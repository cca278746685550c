/**
 * The one door for every face: text in, answers out.
 */
import type { Definition } from './definition/definition.ts';
import { findLoadPath, type LoadStep } from './definition/loadPath.ts';
import type { Problem } from './definition/problem.ts';
import { readDefinition } from './definition/read.ts';
import type { Answered } from './findings/answered.ts';
import { findFacts } from './findings/facts.ts';
import { findFailures, type Failures } from './findings/failures.ts';
import { findAll } from './findings/findings.ts';
import { findNotChecked } from './findings/notChecked.ts';
import { pathParts } from './findings/parts.ts';
import { createStudy } from './findings/study.ts';
import { compileMechanism } from './kinematics/compile.ts';
import { decideRequirements } from './requirements/decide.ts';
import type { Table } from './table/column.ts';
import { columnsOf } from './table/columns.ts';
import { tabulate } from './table/table.ts';
import { later } from './travel/once.ts';
import { solveTravelAgain } from './travel/travel.ts';

export interface Answers extends Answered {
  /** @param stations pedal travels, fractions from 0 to 1; @param names columns wanted, all where absent */
  table(stations: readonly number[], names?: readonly string[]): Table;
  /** Every single failure, worked out when first asked for; undefined where nothing can be solved. */
  failures(): Failures | undefined;
}

/** Never throws, whatever the text. */
export function solve(text: string): Answers {
  const reading = readDefinition(text);
  const { definition } = reading;
  const problems = [...reading.problems];
  const loadPath = definition && findLoadPath(definition).path;
  const excess = loadPath?.steps[MOST_JOINTS];
  if (definition !== undefined && excess !== undefined) problems.push(tooManyJoints(definition, excess));
  const mechanism = definition && loadPath && excess === undefined ? compileMechanism(definition, loadPath) : undefined;
  if (definition === undefined || mechanism === undefined) {
    return {
      text,
      definition,
      loadPath,
      problems,
      columns: [],
      findings: [],
      facts: [],
      requirements: definition === undefined ? [] : decideRequirements({ text, definition, problems, columns: [] }),
      notChecked: definition === undefined ? [] : findNotChecked(definition, undefined),
      parts: [],
      study: undefined,
      table: (stations) => ({ stations, columns: [] }),
      failures: () => undefined,
    };
  }
  const travel = solveTravelAgain(mechanism);
  const columns = columnsOf(travel);
  const study = createStudy(definition, travel, columns);
  // While a person types only problems and findings are wanted; the rest is worked out for those who ask.
  const facts = later(() => findFacts(study));
  const requirements = later(() => decideRequirements({ text, definition, problems, travel, columns }));
  const notChecked = later(() => findNotChecked(definition, study));
  const parts = later(() => pathParts(study));
  const failures = later(() => findFailures(study));
  return {
    text,
    definition,
    loadPath,
    problems,
    columns,
    findings: findAll(study),
    get facts() {
      return facts();
    },
    get requirements() {
      return requirements();
    },
    get notChecked() {
      return notChecked();
    },
    get parts() {
      return parts();
    },
    study,
    failures,
    table: (stations, names) =>
      tabulate(travel, names === undefined ? columns : columns.filter(({ name }) => names.includes(name)), stations),
  };
}

/** More joints than any throttle linkage has; the search for turning places grows with the cube of their number. */
const MOST_JOINTS = 128;

/** Says that nothing was solved, so that a file without other mistakes does not read like a sound linkage. */
function tooManyJoints(definition: Definition, first: LoadStep): Problem {
  const parts = [...definition.rods, ...definition.cables, ...definition.slots, ...definition.couplings];
  const span = parts.find(({ name }) => name === first.joint.name)?.nameSpan ?? { start: 0, end: 0 };
  return {
    code: 'out-of-range',
    severity: 'error',
    span,
    message: `The load path has more than ${MOST_JOINTS} joints; \`${first.joint.name}\` is one too many, and nothing is solved`,
    cure: 'Describe the linkage of one throttle in a file',
  };
}
