/** The process: its arguments in, its exit code out. */
import process from 'node:process';
import { processIo } from './processIo.ts';
import { run } from './run.ts';

process.exitCode = await run(process.argv.slice(2), processIo());
