/** What each end checks before it believes a message; nothing that fails here goes any further. */
import { CHART_IDS } from './charts.ts';
import type { Chart } from './charts.ts';
import {
  and,
  either,
  isCount,
  isFiniteNumber,
  isLongText,
  isText,
  isTextTable,
  isTriple,
  isYesOrNo,
  listOf,
  oneOf,
  optional,
  shape,
  tagged,
} from './guard.ts';
import type { Guard } from './guard.ts';
import type {
  Change,
  ChangedValue,
  Coming,
  Compared,
  Drawn,
  Followed,
  Missing,
  Requests,
  Source,
  ToEditor,
  ToView,
  Translated,
} from './messages.ts';
import type { Picture } from './picture.ts';
import { isPicture } from './pictureGuards.ts';
import { isChartId, isCharts, isDial, isFigure, isPart, isPlace, isReport } from './reportGuards.ts';
import type { Working } from './returns.ts';
import { isFailure, isReturns, isReturnTrace } from './returnsGuards.ts';
import { isSource } from './sourceGuard.ts';
import { isStudyKind, isToldStudy, isWriteAnswer } from './studiesGuards.ts';

/** Longest file that the page may have saved, in characters or bytes: a table of a very large linkage. */
const LARGEST_FILE = 64_000_000;

const isChange = tagged<Change, 'kind'>('kind', {
  value: shape({ path: isText, value: isFiniteNumber }),
  place: shape({ path: isText, to: isTriple, fine: isYesOrNo, through: optional(isText) }),
});
const isTrial = listOf(isChange);

const isComing = listOf(oneOf<Coming>(...CHART_IDS, 'report', 'facts'));

const isMissingPart = shape<Missing>({ message: isText, place: isPlace });

/** Every curve has a figure for each station of the picture. */
const agree = ({ picture, charts }: { readonly picture: Picture; readonly charts: readonly Chart[] }) =>
  charts.every(({ curves }) => curves.every(({ values }) => values.length === picture.stations.length));

const isOther = and(shape<NonNullable<Compared['other']>>({ picture: isPicture, charts: isCharts }), agree);

const isChangedValue = shape<ChangedValue>({
  path: isText,
  was: optional(isText),
  is: optional(isText),
  effects: listOf(isText),
  place: optional(isPlace),
});

const isWorking = and(
  shape<Working>({ source: isSource, trial: isTrial, done: isCount, all: isCount }),
  ({ done, all }) => all > 0 && done <= all,
);

/** What the editor tells the page. */
export const isToView = tagged<ToView, 'type'>('type', {
  words: shape<Translated>({ language: isText, texts: isTextTable }),
  show: and(
    shape<Drawn & { source: Source; fileName: string; trial: readonly Change[] }>({
      source: isSource,
      fileName: isText,
      trial: isTrial,
      coming: isComing,
      picture: isPicture,
      charts: isCharts,
      report: optional(isReport),
      dials: listOf(isDial),
    }),
    agree,
  ),
  follows: shape<Followed>({
    source: isSource,
    trial: isTrial,
    charts: isCharts,
    without: listOf(isChartId),
    report: optional(isReport),
    facts: optional(listOf(isFigure)),
  }),
  broken: shape({ source: isSource, fileName: isText, missing: listOf(isMissingPart) }),
  refused: shape({ source: isSource, trial: isTrial, reason: isText }),
  select: shape({ source: isSource, part: optional(isPart), step: isYesOrNo, dial: optional(isDial) }),
  compare: shape({ source: isSource, label: isText, other: optional(isOther), changes: listOf(isChangedValue), effects: listOf(isText) }),
  'compare-ended': shape({ reason: optional(isText) }),
  working: isWorking,
  study: isToldStudy,
  gone: shape({ reason: isText }),
});

/** What the page tells the editor. */
export const isToEditor = tagged<ToEditor, 'type'>('type', {
  ready: shape({}),
  reveal: shape({ source: isSource, place: isPlace }),
  mend: shape({ source: isSource, place: isPlace }),
  undo: shape({}),
  redo: shape({}),
  'reveal-part': shape({ source: isSource, part: isPart }),
  try: shape({ source: isSource, trial: isTrial }),
  'in-sight': shape({ charts: listOf(isChartId) }),
  follow: shape({ source: isSource, trial: isTrial, coming: isComing }),
  step: shape({ way: oneOf(1, -1) }),
  'compare-with': shape({ other: oneOf('head', 'revision', 'file', 'nothing') }),
  'run-study': shape({ kind: isStudyKind }),
  'cancel-study': shape({ kind: isStudyKind }),
});

const isBytes: Guard<Uint8Array> = (value): value is Uint8Array => value instanceof Uint8Array && value.length <= LARGEST_FILE;

/** Of each request that the page makes: whether what it carries can be read. */
export const isAsked: { readonly [Name in keyof Requests]: Guard<Requests[Name]['asks']> } = {
  write: shape({ source: isSource, trial: isTrial }),
  save: shape({ name: isText, kind: oneOf('svg', 'png', 'csv'), content: either(isLongText(LARGEST_FILE), isBytes) }),
  table: shape({ source: isSource, trial: isTrial }),
  returns: shape({ source: isSource, trial: isTrial }),
  trace: shape({ source: isSource, trial: isTrial, failure: optional(isFailure) }),
  answer: isWriteAnswer,
};

/** Of each request that the page makes: whether what comes back is its answer. */
export const isAnswered: { readonly [Name in keyof Requests]: Guard<Requests[Name]['answers']> } = {
  write: shape({ version: isFiniteNumber }),
  save: shape({ saved: isYesOrNo }),
  table: shape({ csv: isLongText(LARGEST_FILE) }),
  returns: isReturns,
  trace: isReturnTrace,
  answer: shape({ version: isFiniteNumber }),
};
