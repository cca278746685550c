/** What single failures leave, as one JSON document: every figure in the unit of the table with every digit. */
import type { FailureRow, PlatesLeft } from '../failures/failure.ts';
import type { Statement } from '../failures/statements.ts';
import type { Span } from '../definition/span.ts';
import type { Answers } from '../solve.ts';
import { CAUTION } from './caution.ts';
import { findingOf, problemOf } from './checkJson.ts';
import { failuresVerdict } from './failureWords.ts';
import { jsonFigure } from './json/figures.ts';
import type { JsonFailureRow, JsonPlatesLeft, JsonReturn, JsonStatement } from './json/returnDocument.ts';
import { jsonText } from './json/text.ts';
import { placesIn, type Place } from './place.ts';
import { returnOutcome } from './returnOutcome.ts';

/** With a line ending. @param file its name, as the person gave it */
export function returnJson(answers: Answers, file: string): string {
  const failures = answers.failures();
  const placeOf = placesIn(answers.text);
  const looked = failures?.notChecked === undefined ? failures : undefined;
  const document: JsonReturn = {
    format: 1,
    file,
    title: answers.definition?.title ?? null,
    verdict: { outcome: returnOutcome(answers), text: failures === undefined ? null : failuresVerdict(failures) },
    problems: answers.problems.map((problem) => problemOf(problem, placeOf)),
    whole: looked === undefined ? null : rowOf(looked.whole, placeOf),
    failures: (failures?.rows ?? []).map((row) => rowOf(row, placeOf)),
    findings: (failures?.findings ?? []).map((finding) => findingOf(finding, answers, placeOf)),
    statements: (failures?.statements ?? []).map(statementOf),
    assumptions: failures?.assumptions ?? [],
    notChecked: failures === undefined ? 'nothing in it can be solved' : (failures.notChecked ?? null),
    caution: CAUTION,
  };
  return jsonText(document);
}

function rowOf({ failure, outcome, plates, freed }: FailureRow, placeOf: (span: Span) => Place): JsonFailureRow {
  return {
    failure: failure === undefined ? null : { kind: failure.kind, part: failure.part, place: placeOf(failure.span) },
    outcome,
    plates: plates.map(platesOf),
    freed: freed === undefined ? null : { ...freed, stop: freed.stop ?? null },
  };
}

function platesOf({ levers, outcome, why, weakest, heldAt, time }: PlatesLeft): JsonPlatesLeft {
  return {
    levers,
    outcome,
    why: why ?? null,
    weakest:
      weakest === undefined
        ? null
        : {
            lever: weakest.lever,
            torque: jsonFigure({ value: weakest.torque, dimension: 'torque' }),
            friction:
              weakest.friction === undefined || !Number.isFinite(weakest.friction)
                ? null
                : jsonFigure({ value: weakest.friction, dimension: 'torque' }),
            margin: weakest.margin === undefined || !Number.isFinite(weakest.margin) ? null : weakest.margin,
            opening: jsonFigure({ value: weakest.opening + 0, dimension: 'angle' }),
          },
    heldAt: heldAt === undefined ? null : jsonFigure({ value: heldAt, dimension: 'angle' }),
    time:
      time === undefined
        ? null
        : {
            seconds: time.seconds ?? null,
            why: time.why ?? null,
            leftOut: time.leftOut ?? null,
            stop:
              time.stop === undefined
                ? null
                : { speed: jsonFigure({ value: time.stop.speed, dimension: 'angular-speed' }), bounces: time.stop.bounces },
          },
  };
}

function statementOf({ figure: { key, asks, source, status, readIn, note }, standing, why }: Statement): JsonStatement {
  const notes = [...(readIn === undefined ? [] : [`read in ${readIn}`]), ...(note === undefined ? [] : [note])];
  return { figure: key, asks, source, status, note: notes.length === 0 ? null : notes.join('; '), standing, why: why ?? null };
}
