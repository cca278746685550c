/** `return FILE`: what every single failure leaves to close the plates. */
import { printable } from '../../src/outputs/paint.ts';
import type { FileOutcome } from '../../src/outputs/checkedFile.ts';
import { returnJson } from '../../src/outputs/returnJson.ts';
import { returnOutcome } from '../../src/outputs/returnOutcome.ts';
import { returnText } from '../../src/outputs/returnText.ts';
import { solve, type Answers } from '../../src/solve.ts';
import type { ReturnRequest } from '../arguments.ts';
import { SOUND, UNUSABLE, WRONG, type Io } from '../io.ts';
import { readSource } from '../source.ts';
import { pageWidth, painterFor } from '../terminal.ts';

export async function returns(request: ReturnRequest, io: Io): Promise<number> {
  const source = await readSource(request.file, io);
  if (source.kind === 'unusable') {
    const paint = painterFor(request.color, io.errorIsTerminal, io.environment);
    io.writeError(`${paint('error', 'error:')} ${printable(source.message)}\n`);
    return UNUSABLE;
  }
  const answers = solve(source.text);
  io.writeOut(write(answers, source.label, request, io));
  return EXIT_CODES[returnOutcome(answers)];
}

const EXIT_CODES: Readonly<Record<FileOutcome, number>> = { sound: SOUND, wrong: WRONG, unusable: UNUSABLE };

function write(answers: Answers, file: string, { format, color }: ReturnRequest, io: Io): string {
  switch (format) {
    case 'text': {
      const paint = painterFor(color, io.outIsTerminal, io.environment);
      const width = pageWidth(io);
      return returnText(answers, { file, paint, ...width });
    }
    case 'json':
      return returnJson(answers, file);
  }
}
