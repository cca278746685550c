/** What commands that search a file for long have in common: the file is read, its problems go to standard error, the page to standard output. */
import { problemsText } from '../src/outputs/checkText.ts';
import { printable, type Paint } from '../src/outputs/paint.ts';
import { solve, type Answers } from '../src/solve.ts';
import type { SolveRequest, StudyRequest } from './arguments.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from './io.ts';
import { readSource } from './source.ts';
import { pageWidth, painterFor } from './terminal.ts';

/** How the page is to look. */
export interface PageOptions {
  /** As the person gave it. */
  readonly file: string;
  readonly paint: Paint;
  readonly width?: number;
}

/** @returns the page and whether all is well; a sentence without a full stop where the file has nothing to study */
export type Study = (answers: Answers, options: PageOptions) => string | { readonly page: string; readonly isSound: boolean };

export async function studyFile(request: StudyRequest | SolveRequest, io: Io, study: Study): Promise<number> {
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
  const paint = painterFor(request.color, io.outIsTerminal, io.environment);
  const studied = study(answers, { file: source.label, paint, ...pageWidth(io) });
  if (typeof studied === 'string') return unusable(studied);
  io.writeOut(studied.page);
  return studied.isSound ? SOUND : WRONG;
}
