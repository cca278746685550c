/** What the newest editor loads and would have to be compiled: done by Node itself, as far as anything here needs it. */
import { mkdirSync, writeFileSync } from 'node:fs';

/**
 * The editor's git does not start without a module that copies files by cloning them. It copies for worktrees alone, which no test makes, and
 * Node's own copying can take its place.
 */
const COPYING = "exports.cp = require('node:fs/promises').cp;\n";

/**
 * Without what writes its logs, those of extensions stay empty too. Each line as the editor orders it, with time and level before it; one file
 * for each log, which lives no longer than the editor.
 */
const LOGS = `const { createWriteStream, mkdirSync } = require('node:fs');
const { dirname } = require('node:path');
const LEVELS = ['trace', 'debug', 'info', 'warning', 'error'];
exports.setFlushOn = () => undefined;
exports.createAsyncRotatingLogger = async (_name, path) => {
  mkdirSync(dirname(path), { recursive: true });
  const file = createWriteStream(path, { flags: 'a' });
  // Its folder may be gone before the editor is.
  file.on('error', () => undefined);
  let least = LEVELS.indexOf('info');
  let isPlain = false;
  const write = (level, text) => {
    if (level < least) return;
    const time = new Date().toISOString().replace('T', ' ').slice(0, -1);
    file.write(isPlain ? text : time + ' [' + LEVELS[level] + '] ' + text + '\\n');
  };
  return {
    setLevel: (level) => (least = level),
    setPattern: () => undefined,
    clearFormatters: () => (isPlain = true),
    flush: () => undefined,
    drop: () => file.end(),
    trace: (text) => write(0, text),
    debug: (text) => write(1, text),
    info: (text) => write(2, text),
    warn: (text) => write(3, text),
    error: (text) => write(4, text),
  };
};
`;

const STAND_INS = { 'fs-copyfile': COPYING, spdlog: LOGS };

/** @param {string} editor folder of the editor, with a separator at its end */
export function placeStandIns(editor) {
  for (const [name, text] of Object.entries(STAND_INS)) {
    const place = `${editor}node_modules/@vscode/${name}/`;
    mkdirSync(place, { recursive: true });
    writeFileSync(`${place}index.js`, text);
  }
}
