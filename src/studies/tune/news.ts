/** What an answer brings that the file as it stands does not have, beside the demands that it was held against. */
import type { Problem } from '../../definition/problem.ts';
import type { Answered } from '../../findings/answered.ts';
import { withFollowing } from '../../findings/consequences.ts';
import type { FindingCode } from '../../findings/codes.ts';
import type { Finding } from '../../findings/finding.ts';
import type { RequirementAnswer } from '../../requirements/requirement.ts';
import { partsOff, type Judgement } from './demands.ts';

export interface News {
  /** Errors and warnings of the linkage, and what was a warning and is an error. Without those that a demand given up tells of. */
  readonly findings: readonly Finding[];
  /** Of the text. */
  readonly problems: readonly Problem[];
  /** Lines of `require` that were met, and that the answer was not held against. */
  readonly lost: readonly RequirementAnswer[];
  /** How far the worst error is beyond its limit, in parts of it; 0 where none counts. */
  readonly excess: number;
}

/** @param standing answers about the file as it stands @param judgements of the answer */
export function newsOf(answered: Answered, standing: Answered, judgements: readonly Judgement[]): News {
  const told = new Set(judgements.map(({ words }) => words));
  const held = new Set(judgements.flatMap(({ demand: { kept } }) => (kept.kind === 'requirement' ? [kept.name] : [])));
  const passed = new Set(
    standing.requirements.flatMap(({ outcome, requirement: { name } }) => (outcome === 'passed' && !held.has(name) ? [name] : [])),
  );
  return {
    findings: newFindings(answered, standing).filter(({ message }) => !told.has(message)),
    problems: answered.problems.filter(
      ({ code, severity }) =>
        !standing.problems.some((each) => each.code === code && (each.severity === 'error' || each.severity === severity)),
    ),
    // Worked out when asked for, which takes its time.
    lost:
      passed.size === 0
        ? []
        : answered.requirements.filter(({ requirement, outcome }) => outcome !== 'passed' && passed.has(requirement.name)),
    excess: errorShortfall(answered, standing),
  };
}

function newFindings(answered: Answered, standing: Answered): readonly Finding[] {
  const had = withFollowing(standing.findings);
  const errors = new Set(had.filter(({ severity }) => severity === 'error').map(keyOf));
  const any = new Set(had.filter(({ severity }) => severity !== 'note').map(keyOf));
  return answered.findings.filter((finding) => {
    return finding.severity === 'error' ? !errors.has(keyOf(finding)) : finding.severity === 'warning' && !any.has(keyOf(finding));
  });
}

function keyOf({ code, part, without = '' }: Finding): string {
  return JSON.stringify([code, part, without]);
}

/** Errors among them, without those that pass a limit which `keep` could name and does not: these are told and count for nothing. */
export function errorsOf({ findings, problems }: News): number {
  return findings.filter(isError).length + problems.filter(({ severity }) => severity === 'error').length;
}

function isError({ severity, code }: Finding): boolean {
  return severity === 'error' && !AT_CHOICE.has(code);
}

/** Not those of closing, which no throttle may lack. */
const AT_CHOICE: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'transmission-angle',
  'drive-angle',
  'rod-end-tilt',
  'cable-lead',
  'out-of-step',
]);

/** How far the worst new error is beyond its limit, in parts of it; 0 where there is none. */
export function errorShortfall(answered: Answered, standing: Answered): number {
  return Math.max(0, ...newErrors(answered, standing).values());
}

/** How far each new error is beyond its limit, in parts of it; the names are this module's own. */
export function newErrors(answered: Answered, standing: Answered): ReadonlyMap<string, number> {
  return new Map(
    newFindings(answered, standing)
      .filter(isError)
      .map((finding) => [keyOf(finding), partsOff(finding)]),
  );
}
