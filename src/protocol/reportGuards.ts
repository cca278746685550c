/** Guards of the charts and of the report. */
import { CHART_IDS } from './charts.ts';
import type { Chart, ChartCurve, ChartId, LimitBand } from './charts.ts';
import { and, isCount, isFiniteNumber, isFraction, isSeries, isText, isYesOrNo, listOf, oneOf, optional, shape } from './guard.ts';
import type {
  Dial,
  PartKey,
  PartKind,
  Report,
  ReportedFigure,
  ReportedMark,
  ReportedPart,
  ReportedRequirement,
  Severity,
  TextPlace,
} from './report.ts';

const isSeverity = oneOf<Severity>('error', 'warning', 'note');

export const isPlace = and(shape<TextPlace>({ start: isCount, end: isCount }), ({ start, end }) => start <= end);

const isKind = oneOf<PartKind>('pedal', 'cable', 'rod', 'slot', 'coupling', 'lever', 'plates', 'sensor', 'spring', 'keep-out');
export const isPart = shape<PartKey>({ kind: isKind, name: isText });

export const isDial = and(
  shape<Dial>({
    path: isText,
    label: isText,
    value: isFiniteNumber,
    unit: isText,
    step: isFiniteNumber,
    least: isFiniteNumber,
    greatest: isFiniteNumber,
    place: isPlace,
  }),
  ({ step, least, greatest }) => step > 0 && least <= greatest,
);

export const isFigure = shape<ReportedFigure>({
  label: isText,
  text: isText,
  travel: optional(isFraction),
  limit: optional(isText),
});

const isReportedPart = shape<ReportedPart>({
  kind: isKind,
  name: isText,
  place: isPlace,
  depth: isCount,
  takes: isText,
  gives: isText,
  figures: listOf(isFigure),
  limits: listOf(isText),
  dimensions: listOf(isText),
  notChecked: listOf(isText),
});

export const isMark = shape<ReportedMark>({
  severity: isSeverity,
  code: isText,
  part: optional(isText),
  message: isText,
  following: listOf(shape({ part: isText, message: isText })),
  cure: optional(isText),
  isMendable: isYesOrNo,
  place: isPlace,
  ranges: listOf(shape({ from: isFraction, to: isFraction })),
  worst: optional(isFraction),
});

const isRequirement = shape<ReportedRequirement>({
  name: isText,
  outcome: oneOf('passed', 'failed', 'undecided'),
  text: isText,
  place: isPlace,
  travel: optional(isFraction),
});

export const isReport = shape<Report>({
  title: optional(isText),
  verdict: isText,
  severity: optional(isSeverity),
  caution: isText,
  parts: listOf(isReportedPart),
  marks: listOf(isMark),
  requirements: listOf(isRequirement),
  facts: listOf(isFigure),
  notChecked: listOf(isText),
});

/** Digits behind the point that a number can be written with. */
const isDigits = and(isCount, (digits) => digits <= 20);

export const isCurve = shape<ChartCurve>({ column: isText, label: isText, part: isText, values: isSeries, digits: isDigits });

export const isBand = shape<LimitBand>({
  severity: oneOf('error', 'warning'),
  from: optional(isFiniteNumber),
  to: optional(isFiniteNumber),
  label: isText,
});

export const isChartId = oneOf<ChartId>(...CHART_IDS);

const isChart = shape<Chart>({
  id: isChartId,
  title: isText,
  unit: isText,
  curves: listOf(isCurve, 1),
  bands: listOf(isBand),
  straight: isYesOrNo,
  upTo: optional(isFiniteNumber),
});

export const isCharts = listOf(isChart);
