/** What readings say of the built car, as one JSON document: every figure in the unit of the table with every digit. */
import type { Span } from '../definition/span.ts';
import type { FitOutcome } from '../fitText.ts';
import type { Answers } from '../solve.ts';
import type { Fit } from '../studies/fit/fit.ts';
import type { FittedDimension } from '../studies/fit/fittedDimensions.ts';
import type { FitColumn, FitReading } from '../studies/fit/judgedReadings.ts';
import type { ReadingPlace } from '../studies/fit/taken.ts';
import type { Plan, Turning } from '../studies/fit/turn.ts';
import type { OffCurve } from '../studies/fit/turnTrial.ts';
import type { AsFoundCheck } from '../studies/fit/asFound.ts';
import { CAUTION } from './caution.ts';
import { problemOf } from './checkJson.ts';
import { correlatedWords, fitNotChecked, fitVerdict, isSoundFit, untoldWords } from './fitWords.ts';
import { notMetText } from './notMetWords.ts';
import { shortWords } from './tunedText.ts';
import type {
  JsonFit,
  JsonFitColumn,
  JsonFitReading,
  JsonFittedDimension,
  JsonReadingPlace,
  JsonTurning,
  JsonTurningPlan,
} from './json/fitDocument.ts';
import { jsonFigure, jsonShare, jsonTravel, type JsonFigure } from './json/figures.ts';
import { jsonText } from './json/text.ts';
import { placesIn, type Place } from './place.ts';

/** With a line ending. @param file its name, as the person gave it */
export function fitJson(answers: Answers, outcome: FitOutcome, file: string): string {
  const placeOf = placesIn(answers.text);
  const fit = outcome.kind === 'fitted' ? outcome : undefined;
  const problems = [...answers.problems, ...outcome.problems];
  const isSound = fit !== undefined && isSoundFit(fit) && !problems.some(({ severity }) => severity === 'error');
  const figureOf = figuresOf(answers);
  const document: JsonFit = {
    format: 1,
    file,
    title: answers.definition?.title ?? null,
    verdict:
      outcome.kind === 'fitted'
        ? { outcome: isSound ? 'sound' : 'wrong', text: fitVerdict(outcome) }
        : { outcome: 'unusable', text: outcome.why },
    problems: problems.map((problem) => problemOf(problem, placeOf)),
    dimensions: fit?.dimensions.map((each) => dimensionOf(each, placeOf)) ?? [],
    correlations: fit === undefined ? [] : correlationsOf(fit),
    rank: fit === undefined ? null : { dimensions: fit.dimensions.length, told: fit.rank, narrowed: fit.narrowed },
    untold: fit === undefined ? [] : untoldOf(fit),
    correlated:
      fit?.correlated.map((each) => ({
        dimensions: [fit.dimensions[each.first]!.name, fit.dimensions[each.second]!.name] as const,
        correlation: each.correlation,
        text: correlatedWords(fit, each),
      })) ?? [],
    columns: fit?.columns.map((each) => columnOf(each, figureOf)) ?? [],
    readings: fit?.readings.map((each) => readingOf(each, placeOf, figureOf)) ?? [],
    leftOut: fit?.leftOut.map((each) => ({ ...readingPlaceOf(each, placeOf), why: each.why })) ?? [],
    asFound: fit === undefined ? null : asFoundOf(fit.asFound),
    turning: fit === undefined ? null : turningOf(fit.turning, figureOf),
    notChecked: fit === undefined ? [outcome.kind === 'fitted' ? '' : outcome.why] : fitNotChecked(fit),
    caution: CAUTION,
  };
  return jsonText(document);
}

function asFoundOf(check: AsFoundCheck): NonNullable<JsonFit['asFound']> {
  if (check.kind === 'not-checked') return { notChecked: check.why, notMet: [] };
  const notMet = check.notMet.map((each) => ({
    code: each.kind === 'error' ? each.finding.code : null,
    requirement: each.kind === 'requirement' ? each.answer.requirement.name : null,
    metAsDrawn: !each.isDrawn,
    text: notMetText(each),
  }));
  return { notChecked: null, notMet };
}

/** A figure of a column, in the unit of the table. */
type FigureOf = (column: string, value: number) => JsonFigure;

function figuresOf({ columns }: Answers): FigureOf {
  return (name, value) => {
    const column = columns.find((each) => each.name === name);
    return column?.unit === '%' ? jsonShare(value) : jsonFigure({ value, dimension: column?.dimension ?? 'number' });
  };
}

function dimensionOf(
  { name, span, dimension, nominal, prior, value, length, error, left, beyond }: FittedDimension,
  placeOf: (span: Span) => Place,
): JsonFittedDimension {
  return {
    name,
    place: placeOf(span),
    nominal: jsonFigure({ value: nominal, dimension }),
    tolerance: prior === undefined ? null : jsonFigure({ value: prior.half, dimension }),
    value: jsonFigure({ value, dimension }),
    length: length === undefined ? null : jsonFigure({ value: length, dimension }),
    error: jsonFigure({ value: error, dimension }),
    left: left === undefined || !Number.isFinite(left) ? null : left,
    beyondTolerance: beyond ?? null,
  };
}

function correlationsOf({ dimensions, covariance }: Fit): JsonFit['correlations'] {
  const n = dimensions.length;
  return dimensions.map((one, i) =>
    dimensions.map((other, j) => {
      const value = covariance[i * n + j]! / (one.error * other.error);
      return Number.isFinite(one.error) && Number.isFinite(other.error) && Number.isFinite(value) ? value : null;
    }),
  );
}

function untoldOf(fit: Fit): JsonFit['untold'] {
  const groups = fit.untold.map((each) => ({
    dimensions: each.unknowns.map((i) => fit.dimensions[i]!.name),
    shown: each.shown,
    text: untoldWords(fit, each),
  }));
  const idle = fit.idle.map((name) => ({ dimensions: [name], shown: 0, text: `nothing in the table rests on ${name}` }));
  return [...groups, ...idle];
}

function columnOf(
  { run, column, noise, noiseGiven, common, count, scatter, isNoisy, isAstray, closedForm }: FitColumn,
  figureOf: FigureOf,
): JsonFitColumn {
  return {
    run,
    column: column.name,
    noise: figureOf(column.name, noise),
    noiseFrom: noiseGiven ? 'file' : noise > common ? 'own scatter' : 'common practice, no source',
    count,
    scatter: Number.isFinite(scatter) ? scatter : null,
    noisy: isNoisy,
    astray: isAstray,
    derivatives: closedForm ? 'closed form' : 'differences',
  };
}

function readingPlaceOf({ run, row, column, span, line }: ReadingPlace, placeOf: (span: Span) => Place): JsonReadingPlace {
  return { run, row, column, place: placeOf(span), csvLine: line ?? null };
}

function readingOf(reading: FitReading, placeOf: (span: Span) => Place, figureOf: FigureOf): JsonFitReading {
  const { column, travel, value, fitted, drawn, standardised, leverage, verdict } = reading;
  return {
    ...readingPlaceOf(reading, placeOf),
    travel: jsonTravel(travel),
    read: figureOf(column, value),
    fitted: figureOf(column, fitted),
    drawn: figureOf(column, drawn),
    standardised: Number.isFinite(standardised) ? standardised : null,
    leverage,
    verdict,
  };
}

function turningOf(turning: Turning, figureOf: FigureOf): JsonTurning {
  const none = { wanted: null, turns: [], before: [], known: [], after: [], demands: null, unmet: [], nearer: null };
  if (turning.kind === 'not-checked') return { notChecked: turning.why, ...none };
  const off = ({ column, error, at }: OffCurve) => ({ column, error: figureOf(column, error), travel: jsonTravel(at) });
  const planOf = ({ turns, after, unmet }: Plan): JsonTurningPlan => ({
    turns: turns.map(({ kind, part, change, turns: times, error, atEnd }) => ({
      kind,
      part,
      change: jsonFigure({ value: change, dimension: kind === 'rod' || kind === 'cable' ? 'length' : 'angle' }),
      turns: times ?? null,
      error: error === undefined ? null : jsonFigure({ value: error, dimension: kind === 'rod' || kind === 'cable' ? 'length' : 'angle' }),
      atEnd,
    })),
    after: after.map(off),
    unmet: unmet.map((each) => ({ name: each.name, metAsFound: each.wasMet, metAsDrawn: each.isDrawn, text: shortWords(each) })),
  });
  const { wanted, before, known, demands, nearer } = turning;
  return {
    notChecked: null,
    wanted,
    before: before.map(off),
    known: known.map(({ error }, i) => figureOf(before[i]!.column, error)),
    ...planOf(turning),
    demands: demands ?? null,
    nearer: nearer === undefined ? null : planOf(nearer),
  };
}
