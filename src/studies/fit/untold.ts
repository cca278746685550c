/**
 * What readings cannot tell: which dimensions they leave as the tolerances have them, and which they leave open but for a combination.
 *
 * With each unknown in its scale, the singular values σ of the readings alone say how closely each direction is told: to 1/σ scales, so
 * that of the tolerance 1/√(1 + σ²) is left. Directions of which nearly all is left are not told. Dimensions that share such directions
 * cannot be told from each other; one that has a direction to itself is not told at all.
 */
import { covarianceOf, isOpen, type Singular } from '../../numeric/singularValues.ts';
import { leastOf } from './estimate.ts';

/** Dimensions that cannot be told from each other, or one that is not told at all. */
export interface Untold {
  /** Of the unknowns, rising. */
  readonly unknowns: readonly number[];
  /** How many combinations of them the readings show; 0 for none. */
  readonly shown: number;
  /** Of two with one combination that shows: what multiplies the second beside 1 of the first, in scales of each. */
  readonly times: number | undefined;
}

/** Two that are told, but hardly from each other. */
export interface Correlated {
  readonly first: number;
  readonly second: number;
  /** −1 to 1: negative where their sum is known better than either, positive where it is their difference. */
  readonly correlation: number;
}

/** More of a tolerance left than this, and the readings do not count as telling it. Common practice, no source. */
export const LEFT = 0.9;
/** Greater in size, and two dimensions count as hardly told apart. Common practice, no source. */
export const CORRELATED = 0.95;

/** Directions that the readings alone tell at all, beyond rounding. */
export function rankOf(information: Singular): number {
  return information.values.filter((value) => value > leastOf(information)).length;
}

/** Directions that they tell more closely than what was known before. */
export function narrowedBy({ values }: Singular): number {
  return values.filter((value) => !isLeft(value)).length;
}

function isLeft(value: number): boolean {
  return 1 / Math.sqrt(1 + value * value) > LEFT;
}

export function untoldBy(information: Singular): readonly Untold[] {
  const { n, values, directions } = information;
  const left = directions.filter((_, k) => isLeft(values[k]!));
  /** Onto what is not told. */
  const part = (i: number, j: number): number => left.reduce((sum, along) => sum + along[i]! * along[j]!, 0);
  const of = Array.from({ length: n }, (_, i) => i);
  /** Onto what is not told at all: there a small part too leaves a dimension open. */
  const least = leastOf(information);
  const blank = directions.filter((_, k) => !(values[k]! > least));
  const blankPart = (i: number, j: number): number => blank.reduce((sum, along) => sum + along[i]! * along[j]!, 0);
  const open = of.filter((i) => part(i, i) > SOME || blankPart(i, i) > ANY);
  const share = (i: number, j: number): boolean => Math.abs(part(i, j)) > SOME || Math.abs(blankPart(i, j)) > ANY;
  const group = new Map(open.map((i) => [i, i]));
  for (const i of open) {
    for (const j of open) {
      if (j <= i || !share(i, j)) continue;
      const [from, to] = [group.get(j)!, group.get(i)!];
      for (const [k, at] of group) if (at === from) group.set(k, to);
    }
  }
  return [...new Set(group.values())].flatMap((id): readonly Untold[] => {
    const members = open.filter((i) => group.get(i) === id);
    const untold = Math.round(members.reduce((sum, i) => sum + part(i, i), 0));
    if (untold === 0) return [];
    const shown = members.length - untold;
    const [a, b] = members;
    // Square to the direction that is not told.
    const times = members.length === 2 && shown === 1 ? -part(a!, b!) / part(b!, b!) : undefined;
    // With nothing shown, each is untold by itself.
    if (shown === 0) return members.map((i) => ({ unknowns: [i], shown: 0, times: undefined }));
    return [{ unknowns: members, shown, times }];
  });
}

/** Of 1: a smaller part in what is not told does not count. */
const SOME = 0.05;
/** The same, of what is not told at all; as `isOpen` has it. */
const ANY = 1e-8;

/** Those that share an untold group are left out: what they share has been said. The strongest first. */
export function correlatedBy(posterior: Singular, untold: readonly Untold[]): readonly Correlated[] {
  const { n } = posterior;
  const least = leastOf(posterior);
  const covariance = covarianceOf(posterior, least);
  const found: Correlated[] = [];
  for (let first = 0; first < n; first++) {
    for (let second = first + 1; second < n; second++) {
      if (untold.some(({ unknowns }) => unknowns.includes(first) && unknowns.includes(second))) continue;
      if (isOpen(posterior, first, least) || isOpen(posterior, second, least)) continue;
      const size = Math.sqrt(covariance[first * n + first]! * covariance[second * n + second]!);
      const correlation = covariance[first * n + second]! / size;
      if (Math.abs(correlation) > CORRELATED) found.push({ first, second, correlation });
    }
  }
  return found.sort((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation));
}
