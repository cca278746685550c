/** The values of a figure at which what a fix is after has its target. */
import { bracketedRoot } from '../numeric/roots.ts';
import type { Solutions } from '../studies/solveFor.ts';
import type { SearchBounds } from './fixBounds.ts';
import { formulaAlong, letBehind } from './letBehind.ts';
import type { Plan } from './offeredFixes.ts';
import type { Solvers } from './solvedFix.ts';

/** @param present value of the figure now, SI */
export function rootsOf(
  { offer, aim, study, value }: Plan,
  present: number,
  bounds: SearchBounds & { readonly starts?: number },
  search: Solvers['solveFor'],
): Solutions {
  const target = aim.target();
  if (aim.outcome.kind !== 'itself')
    return search(study.travel.mechanism, { ...bounds, unknown: offer.writes, outcome: aim.outcome, target });
  if (offer.writes === offer.figure) return { kind: 'solved', roots: [{ value: target, outcome: target }], nearest: undefined };
  const changed = value && letBehind(study.definition, value);
  if (value === undefined || changed === undefined) return { kind: 'unknown-dimension' };
  return formulaRoots(formulaAlong(study.definition, value, changed), target, present, bounds);
}

/** Steps in which a formula is searched. */
const STEPS = 256;

/** Where a formula of one `let` has a wanted value: wherever it passes it between two steps. */
function formulaRoots(formula: (nominal: number) => number, target: number, present: number, { from, to }: SearchBounds): Solutions {
  const miss = (value: number): number => formula(value) - target;
  const values = [...Array.from({ length: STEPS + 1 }, (_, i) => from + ((to - from) * i) / STEPS), present].sort((a, b) => a - b);
  const roots: number[] = [];
  let nearest: number | undefined;
  values.forEach((value, i) => {
    const at = miss(value);
    if (nearest === undefined || Math.abs(at) < Math.abs(miss(nearest))) nearest = value;
    const before = values[i - 1];
    if (before === undefined || !(miss(before) * at <= 0)) return;
    roots.push(bracketedRoot(miss, before, miss(before), value, at, CLOSE * (to - from)));
  });
  return {
    kind: 'solved',
    roots: roots.map((value) => ({ value, outcome: formula(value) })),
    nearest: nearest === undefined ? undefined : { value: nearest, outcome: formula(nearest) },
  };
}

/** Relative to the bounds. */
const CLOSE = 1e-14;
