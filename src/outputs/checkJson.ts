/** What a check has to say, as one JSON document for all files: every figure in the unit of the table with every digit. */
import type { Problem } from '../definition/problem.ts';
import type { Span } from '../definition/span.ts';
import type { Fact, Finding, FindingSeverity, NotChecked } from '../findings/finding.ts';
import type { PathPart } from '../findings/part.ts';
import type { Comparison, RequirementAnswer, RequirementOutcome } from '../requirements/requirement.ts';
import type { Answers } from '../solve.ts';
import { CAUTION } from './caution.ts';
import { outcomeOf, type CheckedFile } from './checkedFile.ts';
import { docsPage } from './docsPage.ts';
import { isTravel } from './factText.ts';
import type {
  JsonComparison,
  JsonDocument,
  JsonFact,
  JsonFile,
  JsonFinding,
  JsonNotChecked,
  JsonPart,
  JsonProblem,
  JsonRequirement,
  JsonVerdict,
} from './json/document.ts';
import { jsonCompared, jsonFigure, jsonMend, jsonRange, jsonShare, jsonTravel } from './json/figures.ts';
import { jsonText } from './json/text.ts';
import { notCheckedText } from './marks.ts';
import { placesIn, type Place } from './place.ts';

/** With a line ending. */
export function checkJson(files: readonly CheckedFile[]): string {
  const document: JsonDocument = { format: 1, files: files.map(fileOf), caution: CAUTION };
  return jsonText(document);
}

type PlaceOf = (span: Span) => Place;

function fileOf(file: CheckedFile): JsonFile {
  const { answers } = file;
  const placeOf = placesIn(answers?.text ?? '');
  return {
    file: file.name,
    title: answers?.definition?.title ?? null,
    verdict: verdictOf(file),
    problems: (answers?.problems ?? []).map((problem) => problemOf(problem, placeOf)),
    findings: answers === undefined ? [] : answers.findings.map((finding) => findingOf(finding, answers, placeOf)),
    requirements: (answers?.requirements ?? []).map((answer) => requirementOf(answer, placeOf)),
    facts: (answers?.facts ?? []).map(factOf),
    parts: (answers?.parts ?? []).map((part) => partOf(part, placeOf)),
    notChecked: (answers?.notChecked ?? []).map((each) => openOf(each, placeOf)),
  };
}

function verdictOf(file: CheckedFile): JsonVerdict {
  const { answers } = file;
  const marks = answers === undefined ? [] : [...answers.problems, ...answers.findings];
  const count = (severity: FindingSeverity): number => marks.filter((mark) => mark.severity === severity).length;
  const decided = (outcome: RequirementOutcome): number => (answers?.requirements ?? []).filter((each) => each.outcome === outcome).length;
  return {
    outcome: outcomeOf(file),
    reason: file.answers === undefined ? file.reason : null,
    errors: count('error'),
    warnings: count('warning'),
    notes: count('note'),
    requirements: { passed: decided('passed'), failed: decided('failed'), undecided: decided('undecided') },
    notChecked: answers?.notChecked.length ?? 0,
  };
}

/** A problem as every document tells it. */
export function problemOf(problem: Problem, placeOf: PlaceOf): JsonProblem {
  return {
    ...markOf(problem, placeOf),
    replacements: (problem.replacements ?? []).map(({ span, text }) => ({ place: placeOf(span), text })),
  };
}

/** A finding as every document tells it. @param answers that it is one of */
export function findingOf(finding: Finding, answers: Answers, placeOf: PlaceOf): JsonFinding {
  const { part, ranges, worst, limit, mend } = finding;
  return {
    ...markOf(finding, placeOf),
    part,
    ranges: ranges?.map(jsonRange) ?? null,
    worst: worst === undefined ? null : { ...jsonFigure(worst), travel: jsonTravel(worst.travel) },
    limit: limit === undefined ? null : { ...jsonFigure(limit), from: limit.from },
    mend: mend === undefined ? null : jsonMend(mend, answers),
  };
}

function markOf(mark: Problem | Finding, placeOf: PlaceOf): Omit<JsonProblem, 'replacements'> {
  return {
    code: mark.code,
    severity: mark.severity,
    place: placeOf(mark.span),
    message: mark.message,
    cure: mark.cure ?? null,
    related: (mark.related ?? []).map(({ span, message }) => ({ place: placeOf(span), message })),
    docs: docsPage(mark.code),
  };
}

function requirementOf({ requirement, outcome, reason, comparisons }: RequirementAnswer, placeOf: PlaceOf): JsonRequirement {
  return {
    name: requirement.name,
    place: placeOf(requirement.span),
    expression: requirement.text,
    outcome,
    reason: reason ?? null,
    comparisons: comparisons.map((comparison) => comparisonOf(comparison, placeOf)),
  };
}

/** A comparison as every document tells it. */
export function comparisonOf(
  { text, span, operator, actual, demanded, margin, holds, reason, travel }: Comparison,
  placeOf: PlaceOf,
): JsonComparison {
  return {
    text,
    place: placeOf(span),
    operator,
    actual: actual === undefined ? null : jsonCompared(actual),
    demanded: demanded === undefined ? null : jsonCompared(demanded),
    margin: margin === undefined ? null : jsonCompared(margin),
    holds: holds ?? null,
    reason: reason ?? null,
    travel: jsonTravel(travel),
  };
}

function factOf(fact: Fact): JsonFact {
  const { key, part, label, figure, travel, why, guidance } = fact;
  const shown = figure === undefined ? null : isTravel(fact) ? jsonShare(figure.value) : jsonFigure(figure);
  return { key, part, label, figure: shown, travel: jsonTravel(travel), why: why ?? null, guidance: guidance ?? null };
}

function partOf({ kind, name, span, depth, figures }: PathPart, placeOf: PlaceOf): JsonPart {
  return {
    kind,
    name,
    place: placeOf(span),
    depth,
    figures: figures.map(({ label, figure, text, travel }) => ({
      label,
      figure: figure === undefined ? null : jsonFigure(figure),
      text: text ?? null,
      travel: jsonTravel(travel),
    })),
  };
}

function openOf({ part, span, message }: NotChecked, placeOf: PlaceOf): JsonNotChecked {
  return { part, place: placeOf(span), message: notCheckedText(message) };
}
