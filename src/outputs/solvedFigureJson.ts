/** The values of one figure at which a demand is just met, as one JSON document: every figure in the unit of the table with every digit. */
import type { RequirementAnswer } from '../requirements/requirement.ts';
import type { Answers } from '../solve.ts';
import type { FigureChoice, FigureSolved } from '../solveFigure.ts';
import { CAUTION } from './caution.ts';
import { comparisonOf } from './checkJson.ts';
import { jsonFigure, type JsonFigure } from './json/figures.ts';
import type { JsonChoice, JsonDemand, JsonSolvedFigure } from './json/solvedFigureDocument.ts';
import { jsonText } from './json/text.ts';
import { placesIn } from './place.ts';
import { effectsText } from './solvedFigureText.ts';

/** With a line ending. @param answers of the file as it stands @param file its name, as the person gave it */
export function solvedFigureJson(answers: Answers, solved: FigureSolved, file: string): string {
  const { change, demand, bounds, search, now, choices, nearest, holding } = solved;
  const figure = (value: number): JsonFigure => jsonFigure({ value, dimension: change.dimension });
  const document: JsonSolvedFigure = {
    format: 1,
    file,
    title: answers.definition?.title ?? null,
    change: { name: change.name, path: change.path, present: figure(change.present) },
    demand: { name: demand.name ?? null, text: demand.text, now: demandOf(now) },
    bounds: { from: figure(bounds.from), to: figure(bounds.to), by: bounds.by },
    search: { places: search.places, missing: search.missing, apart: figure((bounds.to - bounds.from) / (search.places - 1)) },
    choices: choices.map((choice) => choiceOf(choice, answers, demand.name, figure)),
    nearest: nearest === undefined ? null : { value: figure(nearest.value), answer: demandOf(nearest.answer) },
    holding: holding.map(({ from, to, open }) => ({ from: figure(from), to: figure(to), openFrom: open.from, openTo: open.to })),
    caution: CAUTION,
  };
  return jsonText(document);
}

function demandOf({ outcome, reason, comparisons }: RequirementAnswer): JsonDemand {
  // The text in which the demand stands may not be the file's: it has no place there.
  const placeOf = placesIn('');
  return {
    outcome,
    reason: reason ?? null,
    comparisons: comparisons.map((comparison) => {
      const { place: _, ...figures } = comparisonOf(comparison, placeOf);
      return figures;
    }),
  };
}

function choiceOf(
  { root, value, answer, edits, effects }: FigureChoice,
  { text }: Answers,
  asked: string | undefined,
  figure: (value: number) => JsonFigure,
): JsonChoice {
  const placeOf = placesIn(text);
  const effect = ({ code, severity, part, message }: (typeof effects.findings.added)[number]) => ({ code, severity, part, message });
  return {
    root: figure(root),
    value: figure(value),
    answer: demandOf(answer),
    edits: edits.map(({ span, text: written }) => ({ place: placeOf(span), text: written })),
    effects: {
      worse: effects.verdict.worse,
      text: effectsText(effects, asked),
      requirements: effects.requirements.map(({ name, was, is }) => ({ name, was: was?.outcome ?? null, is: is?.outcome ?? null })),
      findings: { added: effects.findings.added.map(effect), gone: effects.findings.gone.map(effect) },
    },
  };
}
