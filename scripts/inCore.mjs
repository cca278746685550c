/** Places in what `coreForTests.mjs` made as places in the core itself, for whoever reads of a failure. */
import { existsSync, readFileSync } from 'node:fs';
import { SourceMap } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const PLACE = /((?:file:\/\/)?[^\s()]*[\\/]build[\\/]coreForTests[\\/][^\s():]+\.js):(\d+):(\d+)/g;

/**
 * A line of a trace; places whose map is gone stay as they are.
 *
 * @param {string} line
 */
export function inCore(line) {
  return line.replace(PLACE, (place, named, row, column) => {
    const file = named.startsWith('file:') ? fileURLToPath(named) : named;
    if (!existsSync(`${file}.map`)) return place;
    const entry = new SourceMap(JSON.parse(readFileSync(`${file}.map`, 'utf8'))).findEntry(row - 1, column - 1);
    if (entry.originalSource === undefined) return place;
    return `${join(dirname(file), entry.originalSource)}:${entry.originalLine + 1}:${entry.originalColumn + 1}`;
  });
}
