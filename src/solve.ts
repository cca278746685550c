/**
 * The one door for every face: text in, answers out.
 */
import type { Definition } from './definition/definition.ts';
import { findLoadPath, type LoadPath, type LoadStep } from './definition/loadPath.ts';
import type { Problem } from './definition/problem.ts';
import { readDefinition } from './definition/read.ts';
import type { Answered } from './findings/answered.ts';
import { findFacts } from './findings/facts.ts';
import { findFailures, type Failures } from './findings/failures.ts';
import { findAgain } from './findings/findAgain.ts';
import { findNotChecked } from './findings/notChecked.ts';
import { pathParts } from './findings/parts.ts';
import { createStudy, type Study } from './findings/study.ts';
import { compileMechanism } from './kinematics/compile.ts';
import { askedFor } from './numeric/askedFor.ts';
import { decideRequirements } from './requirements/decide.ts';
import type { Column, Table } from './table/column.ts';
import { columnsOf } from './table/columns.ts';
import { untoldDimensions } from './studies/fit/toldApart.ts';
import { tabulate } from './table/table.ts';
import { later } from './travel/once.ts';
import { solveTravelAgain, type Travel } from './travel/travel.ts';

export interface Answers extends Answered {
  /** @param stations pedal travels, fractions from 0 to 1; @param names columns wanted, all where absent */
  table(stations: readonly number[], names?: readonly string[]): Table;
  /** Every single failure, worked out when first asked for; undefined where nothing can be solved. */
  failures(): Failures | undefined;
}

/** How the linkage of a text moves: what all its answers rest on, and all that solving for one figure needs of most of its texts. */
export interface Motion {
  readonly definition: Definition | undefined;
  readonly loadPath: LoadPath | undefined;
  readonly problems: readonly Problem[];
  /** Undefined where nothing can be solved; there are no columns then. */
  readonly travel: Travel | undefined;
  readonly columns: readonly Column[];
}

/** Never throws, whatever the text. */
export function solveMotion(text: string): Motion {
  return motionOf(readText(text));
}

/** A text, read and not solved yet. */
interface Read extends Pick<Motion, 'definition' | 'loadPath' | 'problems'> {
  /** Whether its load path is longer than is solved. */
  readonly isTooLong: boolean;
}

function readText(text: string): Read {
  const reading = readDefinition(text);
  const { definition } = reading;
  const problems = [...reading.problems];
  const loadPath = definition && findLoadPath(definition).path;
  const excess = loadPath?.steps[MOST_JOINTS];
  if (definition !== undefined && excess !== undefined) problems.push(tooManyJoints(definition, excess));
  return { definition, loadPath, problems, isTooLong: excess !== undefined };
}

function motionOf({ isTooLong, ...read }: Read): Motion {
  const { definition, loadPath } = read;
  const mechanism = definition && loadPath && !isTooLong ? compileMechanism(definition, loadPath) : undefined;
  const travel = mechanism && solveTravelAgain(mechanism);
  return { ...read, travel, columns: travel === undefined ? [] : columnsOf(travel) };
}

/** Never throws, whatever the text. */
export function solve(text: string): Answers {
  const read = readText(text);
  const { definition, loadPath, problems } = read;
  // Not solved before it is needed: a linkage that stands as it did has its findings already.
  const motion = later(() => motionOf(read));
  const study = later(() => {
    const { travel, columns } = motion();
    if (definition === undefined || travel === undefined) return undefined;
    const made: Study = { ...createStudy(definition, travel, columns), untold: later(() => untoldDimensions(made)) };
    return made;
  });
  const findings = definition && findAgain(definition, study);
  if (definition === undefined || findings === undefined) return unsolved(text, read);
  // What was found was found of a travel: here it is.
  const solved = (): Study => study()!;
  // While a person types only problems, findings and the drawing are wanted; the rest is worked out for those who ask.
  const facts = later(() => findFacts(solved()));
  const requirements = later(() => {
    const { travel, columns } = motion();
    return decideRequirements({ text, definition, problems, ...(travel && { travel }), columns });
  });
  const notChecked = later(() => findNotChecked(definition, solved()));
  const parts = later(() => pathParts(solved()));
  const failures = later(() => findFailures(solved()));
  const table: Answers['table'] = (stations, names) => {
    const { columns } = motion();
    return tabulate(solved().travel, names === undefined ? columns : columns.filter(({ name }) => names.includes(name)), stations);
  };
  return askedAnswers(
    { text, definition, loadPath, problems, failures, table },
    { columns: () => motion().columns, findings, facts, requirements, notChecked, parts, study },
  );
}

const askedAnswers = askedFor<Pick<Answers, 'columns' | 'findings' | 'facts' | 'requirements' | 'notChecked' | 'parts' | 'study'>>(
  'columns',
  'findings',
  'facts',
  'requirements',
  'notChecked',
  'parts',
  'study',
);

function unsolved(text: string, { definition, loadPath, problems }: Read): Answers {
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
