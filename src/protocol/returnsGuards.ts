/** Guards of what a person asks about the way back. */
import { and, isCount, isFiniteNumber, isFraction, isSeries, isText, isYesOrNo, listOf, oneOf, optional, shape } from './guard.ts';
import { isMark, isPart } from './reportGuards.ts';
import {
  MOST_MOMENTS,
  type FailureKey,
  type ReturnOutcome,
  type ReturnPlates,
  type ReturnRow,
  type Returns,
  type ReturnStatement,
  type ReturnTrace,
  type ReturnWeakest,
} from './returns.ts';

export const isFailure = shape<FailureKey>({
  kind: oneOf('spring-lost', 'rod-lost', 'cable-lost', 'slot-lost', 'coupling-lost', 'cable-seized'),
  part: isText,
});

const isOutcome = oneOf<ReturnOutcome>('closes', 'stays-open', 'not-checked');

const isWeakest = shape<ReturnWeakest>({ text: isText, travel: optional(isFraction) });

const isPlates = shape<ReturnPlates>({
  levers: isText,
  outcome: isOutcome,
  outcomeText: isText,
  weakest: optional(isWeakest),
  why: listOf(isText),
  time: optional(isText),
  isEstimated: isYesOrNo,
  timeNote: optional(isText),
  stop: optional(isText),
});

const isRow = shape<ReturnRow>({
  failure: optional(isFailure),
  name: isText,
  part: optional(isPart),
  outcome: isOutcome,
  plates: listOf(isPlates),
  freed: optional(isText),
});

const isStatement = shape<ReturnStatement>({
  standing: oneOf('meets', 'does-not-meet', 'not-checked'),
  text: isText,
  note: optional(isText),
});

export const isReturns = shape<Returns>({
  verdict: isText,
  rows: listOf(isRow),
  marks: listOf(isMark),
  statements: listOf(isStatement),
  assumptions: listOf(isText),
});

const isMotion = and(isSeries, (figures) => figures.length >= 2 && figures.length <= MOST_MOMENTS && figures.every(isFiniteNumber));

const isRising = (times: Float64Array): boolean => times[0] === 0 && times.every((time, i) => i === 0 || time > times[i - 1]!);

/** Every lever has a figure for each time, and what is to close is among them. */
export const isReturnTrace = and(
  shape<ReturnTrace>({
    times: and(isMotion, isRising),
    rotations: listOf(isMotion),
    shafts: listOf(isCount),
    closed: optional(isFiniteNumber),
    outcome: isText,
  }),
  ({ times, rotations, shafts }) =>
    rotations.every(({ length }) => length === times.length) && shafts.every((shaft) => shaft < rotations.length),
);
