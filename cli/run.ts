/** The command line as a function: arguments and a world in, exit code out. */
import { readArguments } from './arguments.ts';
import { check } from './commands/check.ts';
import { compare } from './commands/compare.ts';
import { fit } from './commands/fit.ts';
import { returns } from './commands/return.ts';
import { solveFor } from './commands/solve.ts';
import { table } from './commands/table.ts';
import { tolerance } from './commands/tolerance.ts';
import { tune } from './commands/tune.ts';
import { helpFor } from './help.ts';
import { SOUND, UNUSABLE, type Io } from './io.ts';
import { painterFor } from './terminal.ts';

/** @param argv arguments after the program's own name */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  const request = readArguments(argv);
  switch (request.kind) {
    case 'mistake': {
      const paint = painterFor(undefined, io.errorIsTerminal, io.environment);
      io.writeError(`${paint('error', 'error:')} ${request.message}\n${request.usage}\n`);
      return UNUSABLE;
    }
    case 'version':
      io.writeOut(`${io.version}\n`);
      return SOUND;
    case 'help':
      io.writeOut(helpFor(request.topic));
      return SOUND;
    case 'check':
      return check(request, io);
    case 'table':
      return table(request, io);
    case 'compare':
      return compare(request, io);
    case 'return':
      return returns(request, io);
    case 'tune':
      return tune(request, io);
    case 'solve':
      return solveFor(request, io);
    case 'tolerance':
      return tolerance(request, io);
    case 'fit':
      return fit(request, io);
  }
}
