/** Desktop VS Code that the machine has already: the program itself, not the command that only asks it to open something. */
import { existsSync, realpathSync, statSync } from 'node:fs';
import { delimiter, dirname, join, resolve } from 'node:path';
import process from 'node:process';
import { HostError } from './cache.mjs';

/**
 * The program that the variable `VSCODE_EXECUTABLE` names, else that of the command `code` on the path, which lies beside it in every
 * package of VS Code (from memory): Linux `bin/code` and `code`, macOS `Contents/Resources/app/bin/code` and `Contents/MacOS/Electron`,
 * Windows `bin\code.cmd` and `Code.exe`.
 *
 * @param {NodeJS.ProcessEnv} [env]
 * @returns {string | undefined} undefined where there is neither
 * @throws HostError where the variable names no file
 */
export function localCode(env = process.env) {
  const named = env.VSCODE_EXECUTABLE;
  if (named) {
    if (!isFile(named)) throw new HostError(`No test was run: VSCODE_EXECUTABLE names “${named}”, which is no file`);
    return resolve(named);
  }
  const command = (env.PATH ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => ['code', 'code.cmd'].map((name) => join(folder, name)))
    .find(isFile);
  if (command === undefined) return undefined;
  const folder = dirname(realpathSync(command));
  return ['../code', '../Code.exe', '../../../MacOS/Electron'].map((path) => resolve(folder, path)).find(isFile);
}

function isFile(path) {
  return existsSync(path) && statSync(path).isFile();
}
