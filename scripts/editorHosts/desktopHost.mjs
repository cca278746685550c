/** Process that runs a module in desktop VS Code: `node desktopHost.mjs EXECUTABLE FOLDER MODULE`. */
import { dirname, join } from 'node:path';
import process from 'node:process';
import { runTests } from '@vscode/test-electron';
import { root } from '../setUp.mjs';

const [vscodeExecutablePath, folder, extensionTestsPath] = process.argv.slice(2);
const beside = (name) => join(dirname(folder), name);
const launchArgs = [folder, `--user-data-dir=${beside('data')}`, `--extensions-dir=${beside('extensions')}`];
try {
  await runTests({ vscodeExecutablePath, extensionDevelopmentPath: root, extensionTestsPath, launchArgs });
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
