/** What the car as found does not do of what its file demands: lines of `require`, and what a check of it would tell as an error. */
import { withFollowing } from '../../findings/consequences.ts';
import type { Finding } from '../../findings/finding.ts';
import type { Study } from '../../findings/study.ts';
import type { RequirementAnswer } from '../../requirements/requirement.ts';
import type { SolveAs } from './turnWeighed.ts';
import type { Unknown } from './unknowns.ts';

/** A line of `require` by its answer, or an error. */
export type NotMet = (
  { readonly kind: 'requirement'; readonly answer: RequirementAnswer } | { readonly kind: 'error'; readonly finding: Finding }
) & {
  /** Whether the drawing does not do it either. */
  readonly isDrawn: boolean;
};

export type AsFoundCheck =
  /** Errors first, what the drawing does before what it does not either. */
  | { readonly kind: 'checked'; readonly notMet: readonly NotMet[] }
  /** A sentence without a full stop. */
  | { readonly kind: 'not-checked'; readonly why: string };

/** Yields once each file is solved. @param values of the unknowns as the car has them, SI */
export function* checkAsFound(
  study: Study,
  unknowns: readonly Unknown[],
  values: Float64Array,
  solveAs: SolveAs,
): Generator<undefined, AsFoundCheck> {
  const { dimensions } = study.travel.mechanism;
  const drawn = solveAs([]);
  yield undefined;
  const car = solveAs(unknowns.map(({ index }, j) => ({ path: dimensions[index]!.path, value: values[j]! })));
  yield undefined;
  if (drawn === undefined || car === undefined) return { kind: 'not-checked', why: 'What was found cannot be written into the file' };
  if (car.study === undefined) return { kind: 'not-checked', why: 'With what was found nothing in the file can be solved' };
  const key = ({ code, part, without = '' }: Finding): string => JSON.stringify([code, part, without]);
  const errors = ({ findings }: typeof car): readonly Finding[] => withFollowing(findings).filter(({ severity }) => severity === 'error');
  const had = new Set(errors(drawn).map(key));
  const met = new Set(drawn.requirements.flatMap(({ outcome, requirement: { name } }) => (outcome === 'passed' ? [name] : [])));
  const ofErrors = errors(car).map((finding): NotMet => ({ kind: 'error', finding, isDrawn: had.has(key(finding)) }));
  yield undefined;
  const ofRequirements = car.requirements
    .filter(({ outcome }) => outcome !== 'passed')
    .map((answer): NotMet => ({ kind: 'requirement', answer, isDrawn: !met.has(answer.requirement.name) }));
  const notMet = [...ofErrors, ...ofRequirements].sort((a, b) => Number(a.isDrawn) - Number(b.isDrawn));
  return { kind: 'checked', notMet };
}
