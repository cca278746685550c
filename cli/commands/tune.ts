/** `tune FILE`: the dimensions that give the curve which the file asks for. */
import { printable } from '../../src/outputs/paint.ts';
import { problemsText } from '../../src/outputs/checkText.ts';
import { tunedText } from '../../src/outputs/tunedText.ts';
import { solve } from '../../src/solve.ts';
import { keepsAll, TUNE_DEFAULTS } from '../../src/studies/tune/tune.ts';
import { tuneText } from '../../src/tuneText.ts';
import type { TuneRequest } from '../arguments.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from '../io.ts';
import { readSource } from '../source.ts';
import { painterFor } from '../terminal.ts';

export async function tune(request: TuneRequest, io: Io): Promise<number> {
  const source = await readSource(request.file, io);
  const paintError = painterFor(request.color, io.errorIsTerminal, io.environment);
  const unusable = (message: string): number => {
    io.writeError(`${paintError('error', 'error:')} ${printable(message)}\n`);
    return UNUSABLE;
  };
  if (source.kind === 'unusable') return unusable(source.message);
  const answers = solve(source.text);
  const problems = problemsText(answers, { file: source.label, paint: paintError });
  if (problems !== '') io.writeError(`${problems}\n`);
  const steps = tuneText(source.text, { ...TUNE_DEFAULTS, ...(request.seed !== undefined && { seed: request.seed }) });
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  const outcome = step.value;
  if (outcome.kind === 'not-tuned') return unusable(outcome.why);
  const paint = painterFor(request.color, io.outIsTerminal, io.environment);
  const width = io.columns === undefined ? {} : { width: Math.max(NARROWEST, io.columns) };
  io.writeOut(tunedText(answers, outcome, { file: source.label, paint, ...width }));
  const [best] = outcome.answers;
  return best !== undefined && keepsAll(best) && best.error <= outcome.enough ? SOUND : WRONG;
}

/** Narrower terminals wrap by themselves. */
const NARROWEST = 60;
