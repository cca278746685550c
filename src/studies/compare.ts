/**
 * What has changed between two throttle files, and what it did: of the text, of the solved linkage, of what was found, and of what is
 * required.
 */
import type { Comparison, MarkChanges, RequirementChange, SideState, Verdict } from './compare/comparison.ts';
import { closingFalls } from './compare/closing.ts';
import { curvesOf } from './compare/curves.ts';
import { fileChanges, NO_FILE_CHANGES } from './compare/fileChanges.ts';
import { judgeOf, unjudgedNow } from './compare/judged.ts';
import { findingChanges, problemChanges, uncheckedChanges } from './compare/marks.ts';
import { createRenames } from './compare/names.ts';
import { outcomeChanges } from './compare/outcomes.ts';
import { isLost, requiredColumns, requirementChanges } from './compare/requirements.ts';
import type { Answered } from '../findings/answered.ts';
import { workOutFacts } from '../findings/facts.ts';
import { finished } from './finished.ts';
import { solvedSide } from './compare/solved.ts';

export interface CompareOptions {
  /**
   * Columns whose curves are wanted, by name in either file; a part's name means all of its columns, and one that neither file has
   * nothing. Where absent, opening, open area, effort and signal where they differ.
   */
  readonly columns?: readonly string[];
}

/** @param was answers about the first text; @param is about the second */
export function compareAnswers(was: Answered, is: Answered, options: CompareOptions = {}): Comparison {
  return finished(comparing(was, is, options));
}

/** The same in steps: yields as what is compared is worked out, which the answers leave until it is asked for. */
export function* comparing(was: Answered, is: Answered, { columns }: CompareOptions = {}): Generator<undefined, Comparison> {
  for (const side of [was, is]) {
    if (side.study !== undefined) yield* workOutFacts(side.study);
    for (const ask of LEFT_UNTIL_ASKED) {
      ask(side);
      yield undefined;
    }
  }
  const { file, renames } =
    was.definition === undefined || is.definition === undefined
      ? { file: NO_FILE_CHANGES, renames: createRenames(undefined) }
      : fileChanges({ text: was.text, definition: was.definition }, { text: is.text, definition: is.definition });
  const [before, after] = [solvedSide(was), solvedSide(is)];
  const oldColumns = new Set(before?.columns.map(({ name }) => renames.part(name)));
  const newColumns = new Set(after?.columns.map(({ name }) => name));
  const bothSolved = before !== undefined && after !== undefined;
  const marked = <Mark>({ text, definition }: Answered, marks: readonly Mark[]) => ({ text, marks, placed: definition !== undefined });
  const judges = { was: judgeOf(was, renames, file.gone), is: judgeOf(is, undefined, file.added) };
  const findings = findingChanges(marked(was, was.findings), marked(is, is.findings), renames, judges);
  const problems = problemChanges(marked(was, was.problems), marked(is, is.problems), renames);
  const named = new Map(file.renamed.filter(({ block }) => block === 'require').map((each) => [each.was, each.is]));
  const requirements = requirementChanges(was.requirements, is.requirements, (name) => named.get(name) ?? name);
  const states = { was: stateOf(was), is: stateOf(is) };
  const required = requiredColumns(was.requirements, is.requirements, renames);
  const outcomes = bothSolved ? yield* outcomeChanges(before, after, renames, required) : [];
  yield undefined;
  const closing = {
    unjudged: unjudgedNow(judges.was, judges.is, bothSolved, findings.gone, renames),
    closesLess: closingFalls(outcomes),
  };
  return {
    ...states,
    file,
    outcomes,
    columns: bothSolved ? { added: without(newColumns, oldColumns), gone: without(oldColumns, newColumns) } : { added: [], gone: [] },
    findings,
    problems,
    notChecked: uncheckedChanges(was.notChecked, is.notChecked, renames, judges),
    requirements,
    curves: curvesOf(before, after, renames, columns),
    verdict: verdictOf(states, findings, problems, requirements, closing),
  };
}

/** What the answers about a text leave until somebody asks, facts aside: all of it is compared, and each takes its time. */
const LEFT_UNTIL_ASKED: readonly ((of: Answered) => unknown)[] = [
  ({ parts }) => parts,
  ({ requirements }) => requirements,
  ({ notChecked }) => notChecked,
];

/** Whether nothing differs that a person could notice; curves are not looked at, since those asked for are there in any case. */
export function isSame({ was, is, file, outcomes, columns, findings, problems, notChecked, requirements }: Comparison): boolean {
  const { rewritten: _, ...changes } = file;
  const lists: readonly (readonly unknown[])[] = [
    ...Object.values(changes),
    outcomes,
    columns.added,
    columns.gone,
    ...[findings, problems].flatMap((marks) => [marks.added, marks.gone, marks.kept]),
    notChecked.added,
    notChecked.gone,
    requirements,
  ];
  return was === is && lists.every((list) => list.length === 0);
}

function stateOf({ definition, columns }: Answered): SideState {
  if (definition === undefined) return 'unusable';
  return columns.length === 0 ? 'unsolved' : 'solved';
}

interface Mark {
  readonly severity: string;
}

function verdictOf(
  states: { readonly was: SideState; readonly is: SideState },
  findings: MarkChanges<Mark>,
  problems: MarkChanges<Mark>,
  requirements: readonly RequirementChange[],
  closing: Pick<Verdict, 'unjudged' | 'closesLess'>,
): Verdict {
  const newErrors = [findings, problems]
    .flatMap(({ added, kept }) => [...added, ...kept.filter(({ was }) => was.severity !== 'error').map(({ is }) => is)])
    .filter(({ severity }) => severity === 'error').length;
  const lostRequirements = requirements.filter(isLost).length;
  const lostSolution = states.was === 'solved' && states.is !== 'solved';
  const closesWorse = closing.unjudged.length > 0 || closing.closesLess.length > 0;
  const worse = newErrors > 0 || lostRequirements > 0 || lostSolution || closesWorse;
  return { worse, newErrors, lostRequirements, lostSolution, ...closing };
}

function without(names: ReadonlySet<string>, others: ReadonlySet<string>): readonly string[] {
  return [...names].filter((name) => !others.has(name));
}
