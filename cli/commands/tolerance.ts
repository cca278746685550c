/** `tolerance FILE`: what the file's tolerances do to openings, signals, angles and effort. */
import { printable } from '../../src/outputs/paint.ts';
import { problemsText } from '../../src/outputs/checkText.ts';
import { toleranceText } from '../../src/outputs/toleranceText.ts';
import { solve } from '../../src/solve.ts';
import { TOLERANCE_DEFAULTS, tolerances, whyNoTolerance } from '../../src/studies/tolerance/tolerance.ts';
import type { ToleranceRequest } from '../arguments.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from '../io.ts';
import { readSource } from '../source.ts';
import { painterFor } from '../terminal.ts';

export async function tolerance(request: ToleranceRequest, io: Io): Promise<number> {
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
  if (answers.study === undefined) return unusable('Nothing in the file can be solved');
  const why = whyNoTolerance(answers.study);
  if (why !== undefined) return unusable(why);
  const steps = tolerances(answers.study, { ...TOLERANCE_DEFAULTS, ...(request.seed !== undefined && { seed: request.seed }) });
  let step = steps.next();
  while (step.done !== true) step = steps.next();
  const paint = painterFor(request.color, io.outIsTerminal, io.environment);
  const width = io.columns === undefined ? {} : { width: Math.max(NARROWEST, io.columns) };
  io.writeOut(toleranceText(step.value, { file: source.label, paint, ...width }));
  const isUnread = answers.problems.some(({ severity }) => severity === 'error');
  return step.value.kept?.share === 1 && !isUnread ? SOUND : WRONG;
}

/** Narrower terminals wrap by themselves. */
const NARROWEST = 60;
