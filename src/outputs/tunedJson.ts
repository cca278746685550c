/** What a search for dimensions found, as one JSON document: every figure in the unit of the table with every digit. */
import type { Definition } from '../definition/definition.ts';
import type { Answers } from '../solve.ts';
import { keepsAll, type TunedAnswer, type TunedValue } from '../studies/tune/answers.ts';
import type { Tuned } from '../studies/tune/tune.ts';
import { editsOfValues } from '../tuneText.ts';
import { shortWords } from './tunedText.ts';
import { CAUTION } from './caution.ts';
import { problemOf } from './checkJson.ts';
import { jsonFigure, jsonTravel, type JsonFigure } from './json/figures.ts';
import { jsonText } from './json/text.ts';
import type { JsonTuned, JsonTunedAnswer } from './json/tunedDocument.ts';
import { placesIn } from './place.ts';

/** With a line ending. @param answers of the file as it stands @param seed of the search */
export function tunedJson(answers: Answers, definition: Definition, tuned: Tuned, seed: number, file: string): string {
  const placeOf = placesIn(answers.text);
  const column = answers.columns.find(({ name }) => name === tuned.column);
  const far = (value: number): JsonFigure => ({
    value: Number.isFinite(value) ? value * (column?.scale ?? 1) : null,
    unit: column?.unit ?? '',
  });
  const document: JsonTuned = {
    format: 1,
    file,
    title: definition.title ?? null,
    problems: answers.problems.map((problem) => problemOf(problem, placeOf)),
    seed,
    column: tuned.column,
    enough: far(tuned.enough),
    before: tuned.before === undefined ? null : { error: far(tuned.before.error), travel: jsonTravel(tuned.before.at) },
    answers: tuned.answers.map((answer) => answerOf(answer)),
    obstacles: tuned.obstacles.map(({ demand, error }) => ({ demand: demand.name, error: far(error) })),
    caution: CAUTION,
  };
  return jsonText(document);

  function answerOf(answer: TunedAnswer): JsonTunedAnswer {
    const { values, error, at, judgements, news } = answer;
    return {
      error: far(error),
      travel: jsonTravel(at),
      isOnCurve: error <= tuned.enough,
      keepsAll: keepsAll(answer),
      values: values.map((each) => valueOf(each, definition)),
      demands: judgements.map((judgement) => ({
        name: judgement.demand.name,
        shortfall: Number.isFinite(judgement.shortfall) ? judgement.shortfall : null,
        words: (shortWords(judgement) || judgement.without) ?? null,
      })),
      brings: [...news.problems.map((each) => ({ ...each, part: null })), ...news.findings].map(({ severity, code, part, message }) => ({
        severity,
        code,
        part,
        message,
      })),
      lost: news.lost.map(({ requirement }) => requirement.name),
      edits: editsOfValues(
        answers.text,
        definition,
        values.map(({ value }) => value),
      ).map(({ span, text }) => ({ place: placeOf(span), text })),
    };
  }
}

function valueOf({ name, value, was, bound }: TunedValue, { lets }: Definition): JsonTunedAnswer['values'][number] {
  const { dimension } = lets.find((each) => each.name === name)!.value;
  const figure = (of: number): JsonFigure => jsonFigure({ value: of, dimension });
  return { name, value: figure(value), was: figure(was), bound: bound ?? null };
}
