/** `check FILE…`: the verdict on each file in turn. */
import { checkText, hasError } from '../../src/outputs/checkText.ts';
import { countText } from '../../src/outputs/figure.ts';
import { solve } from '../../src/solve.ts';
import type { CheckRequest } from '../arguments.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from '../io.ts';
import { readSource } from '../source.ts';
import { painterFor } from '../terminal.ts';

/** @returns the worst exit code of all files */
export async function check({ files, color }: CheckRequest, io: Io): Promise<number> {
  const counts = [0, 0, 0];
  for (const [index, file] of files.entries()) {
    if (index > 0) io.writeOut('\n');
    const code = await checkOne(file, color, io);
    counts[code] = (counts[code] ?? 0) + 1;
  }
  const [sound = 0, wrong = 0, unusable = 0] = counts;
  if (files.length > 1) {
    io.writeOut(`\n${countText(files.length, 'file')}: ${sound} without error, ${wrong} with errors, ${unusable} that cannot be used\n`);
  }
  return unusable > 0 ? UNUSABLE : wrong > 0 ? WRONG : SOUND;
}

async function checkOne(file: string, color: boolean | undefined, io: Io): Promise<number> {
  const source = await readSource(file, io);
  if (source.kind === 'unusable') {
    const paint = painterFor(color, io.errorIsTerminal, io.environment);
    io.writeError(`${paint('error', 'error:')} ${source.message}\n`);
    return UNUSABLE;
  }
  const answers = solve(source.text);
  const paint = painterFor(color, io.outIsTerminal, io.environment);
  const width = io.columns === undefined ? {} : { width: Math.max(NARROWEST, io.columns) };
  io.writeOut(checkText(answers, { file: source.label, paint, ...width }));
  if (answers.definition === undefined) return UNUSABLE;
  return hasError(answers) ? WRONG : SOUND;
}

/** Narrower terminals wrap by themselves. */
const NARROWEST = 60;
