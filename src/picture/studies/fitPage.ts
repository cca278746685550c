/** What readings say of the built car, for the view: the dimensions as found, what cannot be told, readings that are off, misses drawn, what to turn. */
import { PLACE_UNIT } from '../../definition/dimensions.ts';
import type { Problem } from '../../definition/problem.ts';
import { fromSi, parseUnit, toSi } from '../../definition/quantity/units.ts';
import type { Study } from '../../findings/study.ts';
import { unknownAt } from '../../language/fixUnknown.ts';
import { asFoundLines } from '../../outputs/notMetWords.ts';
import { turningLines } from '../../outputs/turningWords.ts';
import { CAUTION } from '../../outputs/caution.ts';
import { decimal, figureAsWritten, figureText, listWords, percentText } from '../../outputs/figure.ts';
import {
  astrayWords,
  columnWords,
  correlatedWords,
  fitNotChecked,
  fitTitle,
  fitVerdict,
  isHardlyNarrower,
  isSoundFit,
  knownTo,
  toleranceWords,
  untoldWords,
  withError,
} from '../../outputs/fitWords.ts';
import type { StudyAnswer, StudyFound, StudyLine, StudyLines, StudyRow, StudyTable, StudyWrite } from '../../protocol/studies.ts';
import type { Fit } from '../../studies/fit/fit.ts';
import type { FittedDimension } from '../../studies/fit/fittedDimensions.ts';
import type { FitReading } from '../../studies/fit/judgedReadings.ts';
import type { ReadingPlace } from '../../studies/fit/taken.ts';
import type { Column } from '../../table/column.ts';
import { placeIn } from '../place.ts';
import { diffOf, line, lines, standingOf } from './blocks.ts';
import { columnCharts } from './fitCharts.ts';

/** @param text that was studied @param study of it @param problems of the text and of the CSV files */
export function fitPage(text: string, study: Study, fit: Fit, problems: readonly Problem[]): StudyFound {
  const off = fit.readings.filter(({ verdict }) => verdict === 'off');
  const unheld = fit.readings.filter(({ verdict }) => verdict === 'unheld');
  const untold = [
    ...fit.untold.map((each) => untoldWords(fit, each)),
    ...fit.correlated.map((each) => correlatedWords(fit, each)),
    ...fit.idle.map((name) => `no reading can tell ${name}: nothing in the table rests on it`),
  ];
  return {
    kind: 'fit',
    verdict: fitVerdict(fit),
    standing: !fit.settled ? 'undecided' : standingOf(isSoundFit(fit) && problems.every(({ severity }) => severity !== 'error')),
    blocks: [
      dimensionTable(text, fit),
      ...lines(
        'What these readings cannot tell',
        untold.map((words) => line(words, 'undecided')),
      ),
      ...lines(
        'Readings that do not go with the others',
        off.map((each) => line(offWords(fit, each), 'warning', placeIn(text, each.span))),
      ),
      ...lines(
        'Readings that nothing can be held against',
        unheld
          .slice(0, MOST_TOLD)
          .map((each) =>
            line(`${placeWords(each)}: it alone tells something, so a mistake in it cannot show`, 'note', placeIn(text, each.span)),
          ),
      ),
      ...lines(
        'Readings left out',
        fit.leftOut.slice(0, MOST_TOLD).map((each) => line(`${placeWords(each)}: ${each.why}`, 'note', placeIn(text, each.span))),
      ),
      ...lines(
        'As found, the car does not meet',
        asFoundLines(fit.asFound).map(({ words, sign }) => line(words, sign)),
      ),
      ...lines(
        'What to turn',
        turningLines(fit.turning).map(({ words, sign }) => line(words, sign)),
      ),
      ...answer(text, study, fit),
      ...fit.columns.flatMap((column, of) => columnCharts(fit, column, of)),
      ...lines('Readings', [
        ...fit.columns.map((each): StudyLine => line(columnWords(each), each.isNoisy || each.likeNext > 0 ? 'warning' : undefined)),
        ...astrayWords(fit).map((words) => line(words, 'warning')),
      ]),
      ...lines(
        'Not checked',
        fitNotChecked(fit).map((words) => line(words, 'undecided')),
      ),
    ],
    spread: undefined,
    caution: CAUTION,
  };
}

const MOST_TOLD = 10;

function dimensionTable(text: string, fit: Fit): StudyTable {
  return {
    kind: 'table',
    title: fitTitle(fit),
    hint: 'Known to: three standard errors, as a tolerance counts.',
    columns: ['Dimension', 'Found', 'In the file', 'Known to'],
    rows: fit.dimensions.map((each): StudyRow => {
      const { name, span, dimension, value, error, nominal, length, unit } = each;
      const half = toleranceWords(each);
      return {
        name,
        place: placeIn(text, span),
        cells: [
          Number.isFinite(error) ? withError(value, error, dimension, unit) : 'not told',
          length !== undefined
            ? `as drawn${half}; found is what comes on top, ${figureText({ value: length, dimension }, 1)} long with it`
            : `${figureAsWritten({ value: nominal, dimension }, unit)}${half}`,
          knownCell(each),
        ],
        share: undefined,
      };
    }),
  };
}

function knownCell(of: FittedDimension): string {
  const { error, prior, beyond } = of;
  if (!Number.isFinite(error)) return 'not told';
  if (of.isAtBound) return `${knownTo(of)}, and less than 0 cannot be`;
  if (of.isContradicted) return `${knownTo(of)}, and beyond its tolerance: what the readings alone want`;
  if (beyond === true) return `${knownTo(of)}, and beyond its tolerance`;
  if (prior === undefined) return knownTo(of);
  return `${knownTo(of)}, ${isHardlyNarrower(of) ? 'hardly closer' : 'closer'} than its tolerance`;
}

function placeWords({ run, row, column, line: at }: ReadingPlace): string {
  return `${column} of ${run}, ${at === undefined ? `row ${row}` : `line ${at} of its CSV file`}`;
}

function offWords({ columns }: Fit, reading: FitReading): string {
  const { column } = columns[reading.of]!;
  const by = decimal(Math.abs(reading.standardised), 1);
  return `${placeWords(reading)}: ${figureIn(column, reading.value)}, where the others want ${figureIn(column, reading.fitted)}; ${by} times what is common: left out`;
}

function figureIn({ unit, dimension }: Column, value: number): string {
  return unit === '%' ? percentText(value, 2) : figureText({ value, dimension }, 1);
}

/** All that was fitted, written as found: what fits belongs together, and a part of it would be another car. */
function answer(text: string, study: Study, fit: Fit): readonly (StudyAnswer | StudyLines)[] {
  const title = 'The file as the car is';
  const why = whyNotWritten(fit);
  if (why !== undefined) return lines(title, [line(`not written: ${why}`, 'undecided')]);
  const { dimensions, untold, correlated } = fit;
  const shared = new Set([...untold.flatMap(({ unknowns }) => unknowns), ...correlated.flatMap(({ first, second }) => [first, second])]);
  const untoldNames = dimensions.flatMap(({ name }, i) => (untold.some(({ unknowns }) => unknowns.includes(i)) ? [name] : []));
  const writes = dimensions.flatMap((each, i): StudyWrite[] =>
    each.value === each.nominal ? [] : [writeOf(study, each, shared.has(i) ? SHARED_DIGITS : DIGITS)],
  );
  if (writes.length === 0) return [];
  return [
    {
      kind: 'answer',
      title,
      standing: 'undecided',
      lines: [
        line('to see what the car does as it stands: the drawing is then that of this car; check the file again after'),
        ...(untoldNames.length > 0
          ? [
              line(
                `not told each by itself: ${listWords(untoldNames)}; written at what is likeliest, which goes with the rest`,
                'undecided',
              ),
            ]
          : []),
      ],
      diff: diffOf(text, study, writes),
      writes,
    },
  ];
}

/** A sentence without a full stop; undefined where what was found is that of a car. */
function whyNotWritten({ settled, columns, dimensions }: Fit): string | undefined {
  if (!settled) return 'the fit did not settle';
  if (columns.some(({ isAstray }) => isAstray)) return 'the readings do not go with the linkage';
  const odd = dimensions.filter(({ cannotBe }) => cannotBe !== undefined).map(({ name }) => name);
  if (odd.length > 0) return `no car has what was found of ${listWords(odd)}`;
  const beyond = dimensions.filter(({ isContradicted }) => isContradicted).map(({ name }) => name);
  return beyond.length < 2 ? undefined : `the readings contradict the tolerances of ${listWords(beyond)}: measure these first`;
}

/** Beyond what a standard error gives sense to, so that rounding changes no reading by what is seen. */
const DIGITS = 1;
/** Of what is known together more closely than each by itself, so that rounding each leaves it. */
const SHARED_DIGITS = 3;
/** Digits after the point of one that nothing tells. */
const UNTOLD_DIGITS = 6;

/** With a digit more than its standard error gives sense to. @param more digits on top of that */
function writeOf(study: Study, { index, value, error, length }: FittedDimension, more: number): StudyWrite {
  const { path } = study.travel.mechanism.dimensions[index]!;
  const { unit, dimension } = unknownAt(study, path);
  const whole = length ?? value;
  const written = parseUnit(unit === '' ? PLACE_UNIT[dimension] : unit);
  if (written === undefined || !(error > 0)) return { path, value: whole };
  // In the unit in which it stands there.
  const scale = toSi(1, written) - toSi(0, written);
  const digits = Number.isFinite(error) ? Math.min(12, Math.max(0, Math.ceil(-Math.log10(error / scale / 3)) + more)) : UNTOLD_DIGITS;
  return { path, value: toSi(Number(fromSi(whole, written).toFixed(digits)), written) };
}
