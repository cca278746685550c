/** The options of `solve`: what may be changed, for what, within which bounds, in what form. */
import type { FigureQuestion } from '../src/solveFigure.ts';
import { readFormat } from './format.ts';
import { STUDY_FORMATS, type StudyFormat } from './studyOptions.ts';

export interface SolveOptions {
  readonly question: FigureQuestion;
  readonly format: StudyFormat;
}

/** The options, or a sentence on what is wrong with them, without a full stop. */
export function readSolveOptions(given: ReadonlyMap<string, string>): SolveOptions | string {
  const chosen = readFormat(given.get('format'), STUDY_FORMATS);
  if (typeof chosen === 'string') return chosen;
  const [change, demand] = [given.get('change')?.trim(), given.get('for')?.trim()];
  if (change === undefined || change === '')
    return 'What may be changed is missing: `--change NAME`, a name of `let` or a path such as `rods.link.length`';
  if (demand === undefined || demand === '')
    return "What it is for is missing: `--for 'at(25%, shaft.opening) == 8 deg'`, or the name of a line of `require`";
  const [from, to] = [given.get('from'), given.get('to')];
  return { question: { change, demand, ...(from !== undefined && { from }), ...(to !== undefined && { to }) }, ...chosen };
}
