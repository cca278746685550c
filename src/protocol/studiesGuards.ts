/** Guards of what is said about studies. */
import { and, isCount, isFiniteNumber, isFraction, isSeries, isText, isYesOrNo, listOf, oneOf, optional, shape, tagged } from './guard.ts';
import { isBand, isCurve, isPlace } from './reportGuards.ts';
import { isSource } from './sourceGuard.ts';
import {
  STUDY_KINDS,
  type ChangedLine,
  type SpreadColumn,
  type Standing,
  type StudyBlock,
  type StudyChart,
  type StudyFound,
  type StudyLine,
  type StudyProgress,
  type StudyRow,
  type StudySpread,
  type StudyStage,
  type StudyWrite,
  type ToldStudy,
  type WriteAnswer,
} from './studies.ts';

export const isStudyKind = oneOf(...STUDY_KINDS);

const isStanding = oneOf<Standing>('passed', 'failed', 'undecided');

const isLine = shape<StudyLine>({
  text: isText,
  sign: oneOf('passed', 'failed', 'undecided', 'warning', 'note', undefined),
  place: optional(isPlace),
});

const isRow = shape<StudyRow>({ name: isText, place: optional(isPlace), cells: listOf(isText), share: optional(isFraction) });

const isChart = shape<StudyChart>({
  id: isText,
  title: isText,
  unit: isText,
  curves: listOf(isCurve, 1),
  bands: listOf(isBand),
  straight: isYesOrNo,
  upTo: optional(isFiniteNumber),
});

/** Travels from the least to the greatest, two at least. */
const isStations = and(
  isSeries,
  (stations) => stations.length >= 2 && stations.every((at, i) => isFraction(at) && (i === 0 || at > stations[i - 1]!)),
);

const isWrite = shape<StudyWrite>({ path: isText, value: isFiniteNumber });

const isChangedLine = shape<ChangedLine>({ line: isCount, was: isText, is: isText });

const isBlock = tagged<StudyBlock, 'kind'>('kind', {
  lines: shape({ title: isText, lines: listOf(isLine) }),
  table: and(
    shape<{ title: string; hint: string; columns: readonly string[]; rows: readonly StudyRow[] }>({
      title: isText,
      hint: isText,
      columns: listOf(isText, 1),
      rows: listOf(isRow),
    }),
    ({ columns, rows }) => rows.every(({ cells }) => cells.length === columns.length - 1),
  ),
  charts: and(
    shape<{ stations: Float64Array; charts: readonly StudyChart[] }>({ stations: isStations, charts: listOf(isChart) }),
    ({ stations, charts }) => charts.every(({ curves }) => curves.every(({ values }) => values.length === stations.length)),
  ),
  answer: shape({ title: isText, standing: isStanding, lines: listOf(isLine), diff: listOf(isChangedLine), writes: listOf(isWrite) }),
});

const isSpread = and(
  shape<StudySpread>({
    words: isText,
    stations: isStations,
    columns: listOf(shape<SpreadColumn>({ column: isText, low: isSeries, high: isSeries })),
  }),
  ({ stations, columns }) => columns.every(({ low, high }) => low.length === stations.length && high.length === stations.length),
);

export const isFound = shape<StudyFound>({
  kind: isStudyKind,
  verdict: isText,
  standing: isStanding,
  blocks: listOf(isBlock),
  spread: optional(isSpread),
  caution: isText,
});

export const isProgress = shape<StudyProgress>({ share: isFraction, note: isText });

const isStage = tagged<StudyStage, 'stage'>('stage', {
  running: shape({ progress: optional(isProgress), left: optional(and(isFiniteNumber, (seconds) => seconds >= 0)) }),
  found: shape({ found: isFound }),
  refused: shape({ why: isText }),
  cancelled: shape({}),
});

export const isToldStudy = and(
  shape<ToldStudy>({ kind: isStudyKind, source: isSource, now: isStage, isOutrun: isYesOrNo, show: isYesOrNo }),
  ({ kind, now }) => now.stage !== 'found' || now.found.kind === kind,
);

export const isWriteAnswer = shape<WriteAnswer>({ kind: isStudyKind, source: isSource, block: isCount });
