/** The reader with nothing kept from any text before. */
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';
import { runInThisContext } from 'node:vm';
import { buildSync } from 'esbuild';
import type * as reader from '../../src/definition/read.ts';

/** Its modules in one function, so that to evaluate them anew takes milliseconds. */
const bundle = buildSync({
  entryPoints: [fileURLToPath(new URL('../../src/definition/read.ts', import.meta.url))],
  bundle: true,
  format: 'cjs',
  packages: 'external',
  platform: 'neutral',
  target: 'es2022',
  write: false,
}).outputFiles[0]!.text;
const evaluate = runInThisContext(`(require, module) => {${bundle}\n}`) as (require: NodeJS.Require, module: { exports: unknown }) => void;
const require = createRequire(import.meta.url);

/** Reads a text as the first of all. */
export function readAnew(text: string): reader.DefinitionReading {
  const module = { exports: {} as typeof reader };
  evaluate(require, module);
  return module.exports.readDefinition(text);
}
