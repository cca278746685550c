/**
 * What turning the built car does to all that its file demands beside the curve: the file with the car's dimensions and the turns written in
 * is solved, and each demand held against it, as `tune` does with its answers.
 */
import type { Answered } from '../../findings/answered.ts';
import type { Study } from '../../findings/study.ts';
import type { Build } from '../../kinematics/build.ts';
import type { RequirementAnswer } from '../../requirements/requirement.ts';
import { demandsOf, judge, type Judgement } from '../tune/demands.ts';
import type { Turnable } from './adjusters.ts';

/** A figure of the file with another value, SI: a path as of the mechanism's dimensions; of a rod's length as drawn what is added to it. */
export interface FigureAs {
  readonly path: string;
  readonly value: number;
}

/** The file with these figures written in, solved; undefined where they cannot be written. */
export type SolveAs = (figures: readonly FigureAs[]) => Answered | undefined;

/** A demand that does not hold, or could not be checked. */
export interface Unmet {
  /** As the file names it. */
  readonly name: string;
  /** What is in the way, or why it was not checked. */
  readonly words: string;
  /** Of a line of `require` that is not met, with its figures. */
  readonly answer?: RequirementAnswer;
  /** Whether it held on the car as found, and holds in the file as drawn; what could not be checked does not. */
  readonly wasMet: boolean;
  readonly isDrawn: boolean;
  /** Whether it holds less than both on the car as found and in the file as drawn, or falls further short. */
  readonly isLess: boolean;
}

export interface Weighed {
  /** Whether all holds that holds in the file as drawn. */
  readonly keepsAll: boolean;
  /** Whether no demand holds less than on the car as found and than in the file as drawn. */
  readonly givesNothingUp: boolean;
  readonly unmet: readonly Unmet[];
}

export interface Scale {
  /** Names of all demands. */
  readonly demands: readonly string[];
  /** Yields once the file is solved. @param change of each adjuster, SI; undefined where it cannot be told */
  weigh(change: Float64Array): Generator<undefined, Weighed | undefined>;
}

/** Undefined where it cannot be told how the car as found stands. Yields after each file solved. @param build as the car is @param indices of the dimensions that were found */
export function* createScale(
  study: Study,
  build: Build,
  indices: readonly number[],
  adjusters: readonly Turnable[],
  solveAs: SolveAs,
): Generator<undefined, Scale | undefined> {
  const { dimensions } = study.travel.mechanism;
  const demands = demandsOf(study);
  type Judged = Generator<undefined, readonly Judgement[] | undefined>;
  const judged = function* (figures: readonly FigureAs[]): Judged {
    const answered = solveAs(figures);
    yield undefined;
    return answered && judge(answered, demands);
  };
  const turned = function* (change: Float64Array): Judged {
    const values = new Map(indices.map((index) => [index, build.values[index]!]));
    adjusters.forEach(({ index, rate }, k) => {
      if (change[k] !== 0) values.set(index, build.values[index]! + change[k]! / rate);
    });
    return yield* judged([...values].map(([index, value]) => ({ path: dimensions[index]!.path, value })));
  };
  const drawn = yield* judged([]);
  yield undefined;
  const found = yield* turned(new Float64Array(adjusters.length));
  if (drawn === undefined || found === undefined) return undefined;
  return {
    demands: demands.map(({ name }) => name),
    *weigh(change) {
      const judgements = yield* turned(change);
      return judgements && weighed(judgements, found, drawn);
    },
  };
}

function weighed(judgements: readonly Judgement[], found: readonly Judgement[], drawn: readonly Judgement[]): Weighed {
  const less = judgements.map((each, i) => isLess(each, found[i]!) && isLess(each, drawn[i]!));
  return {
    keepsAll: judgements.every(({ shortfall }, i) => shortfall === 0 || drawn[i]!.shortfall !== 0),
    givesNothingUp: !less.includes(true),
    unmet: judgements.flatMap(({ demand, shortfall, words, answer }, i): Unmet[] => {
      const stood = { wasMet: found[i]!.shortfall === 0, isDrawn: drawn[i]!.shortfall === 0, isLess: less[i]! };
      return shortfall === 0 ? [] : [{ name: demand.name, words, ...(answer !== undefined && { answer }), ...stood }];
    }),
  };
}

function isLess({ shortfall }: Judgement, { shortfall: before }: Judgement): boolean {
  if (Number.isNaN(shortfall)) return !Number.isNaN(before);
  return before === 0 ? shortfall > 0 : shortfall > before + NOTICED;
}

/** Of a limit: what does not hold already may fall short by as much more before it counts as given up. Common practice, no source. */
const NOTICED = 0.01;
