/** `solve FILE`: the values of one figure at which something that is demanded is just met. */
import { solvedFigureJson } from '../../src/outputs/solvedFigureJson.ts';
import { solvedFigureText } from '../../src/outputs/solvedFigureText.ts';
import { solveFigure } from '../../src/solveFigure.ts';
import { finished } from '../../src/studies/finished.ts';
import type { SolveRequest } from '../arguments.ts';
import type { Io } from '../io.ts';
import { studyFile } from '../studyFile.ts';

export function solveFor(request: SolveRequest, io: Io): Promise<number> {
  return studyFile(request, io, (answers, options) => {
    const outcome = finished(solveFigure(answers.text, request.question));
    if (outcome.kind === 'refused') return outcome.cure === undefined ? outcome.why : `${outcome.why}. ${outcome.cure}`;
    const page = request.format === 'json' ? solvedFigureJson(answers, outcome, options.file) : solvedFigureText(outcome, options);
    return { page, isSound: outcome.choices.length > 0 };
  });
}
