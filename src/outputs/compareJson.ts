/**
 * What has changed between two throttle files, as one JSON document: figures in the unit of the table with every digit, travels in % of
 * the pedal's travel, `null` for what is not there. Here alone are told figures that stand in another unit without another value.
 */
import type { Span } from '../definition/span.ts';
import type {
  ClosesLess,
  Comparison,
  FindingMark,
  MarkChanges,
  OutcomeChange,
  OutcomeSide,
  ProblemMark,
  RequirementSide,
  ValueChange,
  ValueSide,
} from '../studies/compare/comparison.ts';
import { PLACE_UNIT_SI } from '../definition/dimensions.ts';
import { CAUTION } from './caution.ts';
import { compareVerdict } from './compareEffects.ts';
import { jsonCompared, jsonFigure, jsonShare, jsonTravel, type JsonFigure } from './json/figures.ts';
import { placesIn, type Place } from './place.ts';

/** One of the two files. */
export interface NamedText {
  /** As the person gave it. */
  readonly name: string;
  readonly text: string;
}

/** With a line ending. */
export function compareJson(comparison: Comparison, files: { readonly was: NamedText; readonly is: NamedText }): string {
  const places: Places = { was: placesIn(files.was.text), is: placesIn(files.is.text) };
  const { file, outcomes, columns, findings, problems, notChecked, requirements, curves, verdict } = comparison;
  const document = {
    format: 1,
    was: { file: files.was.name, state: comparison.was },
    is: { file: files.is.name, state: comparison.is },
    verdict: { ...verdict, closesLess: verdict.closesLess.map(closesLessOf), text: compareVerdict(comparison) },
    file: {
      values: file.values.map((change) => valueOf(change, places)),
      words: file.words.map(({ block, name, path, was, is, unread }) => ({
        block,
        name,
        path,
        was: was ?? null,
        is: is ?? null,
        unread: unread ?? null,
      })),
      added: file.added,
      gone: file.gone,
      renamed: file.renamed,
      unread: file.unread,
      rewritten: file.rewritten.map(({ path, was, is }) => ({ path, was: sideOf(was, places.was), is: sideOf(is, places.is) })),
    },
    outcomes: outcomes.map(outcomeOf),
    columns,
    findings: marksOf(findings, places, findingOf),
    problems: marksOf(problems, places, problemOf),
    notChecked: {
      added: notChecked.added.map(({ span, ...mark }) => ({ ...mark, place: places.is(span) })),
      gone: notChecked.gone.map(({ span, ...mark }) => ({ ...mark, place: places.was(span) })),
    },
    requirements: requirements.map(({ name, was, is }) => ({
      name,
      was: was === undefined ? null : requirementOf(was, places.was),
      is: is === undefined ? null : requirementOf(is, places.is),
    })),
    curves: curves.map(({ stations, ...curve }) => ({ ...curve, stations: stations.map((station) => jsonTravel(station)) })),
    caution: CAUTION,
  };
  return `${JSON.stringify(document, undefined, 2)}\n`;
}

function closesLessOf({ part, was, is }: ClosesLess): object {
  return { part, was: jsonFigure({ value: was, dimension: 'torque' }), is: jsonFigure({ value: is, dimension: 'torque' }) };
}

type PlaceOf = (span: Span) => Place;

interface Places {
  readonly was: PlaceOf;
  readonly is: PlaceOf;
}

function valueOf({ block, name, path, was, is, changed, follows, unread }: ValueChange, places: Places): object {
  return {
    ...{ block, name, path, changed, follows, unread: unread ?? null },
    was: was === undefined ? null : sideOf(was, places.was),
    is: is === undefined ? null : sideOf(is, places.is),
  };
}

function sideOf({ path, span, text, nominal, dimension, unit, tolerance, formula }: ValueSide, placeOf: PlaceOf): object {
  const scaled = (value: number): number => value / PLACE_UNIT_SI[dimension];
  return {
    ...{ path, text, place: placeOf(span), writtenUnit: unit, formula: formula ?? null },
    ...jsonFigure({ value: nominal, dimension }),
    tolerance: tolerance === undefined ? null : { plus: scaled(tolerance.plus), minus: scaled(tolerance.minus) },
  };
}

function outcomeOf({ about, from, part, key, label, percent, was, is, difference }: OutcomeChange): object {
  const figure = (value: number, side: OutcomeSide | undefined): JsonFigure | null => {
    if (percent) return jsonShare(value);
    return side?.figure === undefined ? null : jsonFigure({ value, dimension: side.figure.dimension });
  };
  const json = (side: OutcomeSide | undefined): object | null =>
    side === undefined
      ? null
      : {
          figure: side.figure === undefined ? null : figure(side.figure.value, side),
          text: side.text ?? null,
          travel: jsonTravel(side.travel),
        };
  return {
    about,
    from,
    part,
    key,
    label,
    was: json(was),
    is: json(is),
    difference: difference === undefined ? null : figure(difference, is),
  };
}

function marksOf<Mark>({ added, gone, kept }: MarkChanges<Mark>, places: Places, json: (mark: Mark, placeOf: PlaceOf) => object): object {
  return {
    added: added.map((mark) => json(mark, places.is)),
    gone: gone.map((mark) => json(mark, places.was)),
    kept: kept.map(({ was, is }) => ({ was: json(was, places.was), is: json(is, places.is) })),
  };
}

function findingOf({ worst, limit, ...mark }: FindingMark, placeOf: PlaceOf): object {
  return {
    ...problemOf(mark, placeOf),
    worst: worst === undefined ? null : { ...jsonFigure(worst), travel: jsonTravel(worst.travel) },
    limit: limit === undefined ? null : jsonFigure(limit),
  };
}

function problemOf({ span, ...mark }: ProblemMark | Omit<FindingMark, 'worst' | 'limit'>, placeOf: PlaceOf): object {
  return { ...mark, place: placeOf(span) };
}

function requirementOf({ outcome, span, reason, comparisons }: RequirementSide, placeOf: PlaceOf): object {
  return {
    ...{ outcome, place: placeOf(span), reason: reason ?? null },
    comparisons: comparisons.map(({ text, span: at, operator, actual, demanded, margin, holds, reason: why, travel }) => ({
      ...{ text, place: placeOf(at), operator },
      actual: actual === undefined ? null : jsonCompared(actual),
      demanded: demanded === undefined ? null : jsonCompared(demanded),
      margin: margin === undefined ? null : jsonCompared(margin),
      ...{ holds: holds ?? null, reason: why ?? null, travel: jsonTravel(travel) },
    })),
  };
}
