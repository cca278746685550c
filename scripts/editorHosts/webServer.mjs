/** Process that serves the editor of `webHost.mjs`: `node webServer.mjs FOLDER OPTIONS`, the options as JSON. */
import { createRequire } from 'node:module';
import process from 'node:process';

const [folder, options] = process.argv.slice(2);
const { open } = createRequire(`${folder}package.json`)('@vscode/test-web');
await open(JSON.parse(options));
