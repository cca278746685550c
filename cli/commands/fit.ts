/** `fit FILE`: what readings of the built car say of its dimensions, and what to turn. */
import { fitText } from '../../src/fitText.ts';
import { marksText } from '../../src/outputs/checkText.ts';
import { fitJson } from '../../src/outputs/fitJson.ts';
import { fittedText } from '../../src/outputs/fitText.ts';
import { isSoundFit } from '../../src/outputs/fitWords.ts';
import { printable } from '../../src/outputs/paint.ts';
import { solve } from '../../src/solve.ts';
import { finished } from '../../src/studies/finished.ts';
import { csvNames } from '../../src/studies/fit/gather.ts';
import type { FitRequest } from '../arguments.ts';
import { readFilesBeside } from '../beside.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from '../io.ts';
import { readSource } from '../source.ts';
import { pageWidth, painterFor } from '../terminal.ts';

export async function fit({ file, format, color }: FitRequest, io: Io): Promise<number> {
  const paintError = painterFor(color, io.errorIsTerminal, io.environment);
  const complain = (message: string): void => io.writeError(`${paintError('error', 'error:')} ${printable(message)}\n`);
  const source = await readSource(file, io);
  if (source.kind === 'unusable') {
    complain(source.message);
    return UNUSABLE;
  }
  const answers = solve(source.text);
  const { definition } = answers;
  const beside = await readFilesBeside(file, definition === undefined ? [] : csvNames(definition), io);
  const outcome = finished(fitText(source.text, beside));
  const problems = [...answers.problems, ...outcome.problems];
  const told = marksText(source.text, problems, { file: source.label, paint: paintError });
  if (told !== '') io.writeError(`${told}\n`);
  if (format === 'json') io.writeOut(fitJson(answers, outcome, source.label));
  if (outcome.kind === 'not-fitted') {
    // What stands at a place of the text has been told there.
    if (format === 'text' && problems.every(({ message }) => message !== outcome.why)) complain(outcome.why);
    return UNUSABLE;
  }
  const paint = painterFor(color, io.outIsTerminal, io.environment);
  if (format === 'text') io.writeOut(fittedText(answers, outcome, { file: source.label, paint, ...pageWidth(io) }));
  return isSoundFit(outcome) && problems.every(({ severity }) => severity !== 'error') ? SOUND : WRONG;
}
