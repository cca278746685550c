/**
 * The bundled examples as a module of the extension, which has no disk to read them from in a web host. Those whose name ends in
 * `-broken` show what goes wrong and are nothing to start from, nor are those that need another file beside them.
 */
import { format, resolveConfig } from 'prettier';
import { root } from './setUp.mjs';

/**
 * @param {Readonly<Record<string, string>>} examples texts by file name
 * @param {string} path where the module will stand, from the project's root
 * @returns {Promise<string>} laid out as prettier does it
 */
export async function exampleFiles(examples, path) {
  const files = Object.entries(examples)
    .map(([file, text]) => ({ name: file.replace(/\.throttle\.yaml$/, ''), text }))
    .filter(({ name, text }) => !name.endsWith('-broken') && !NEEDS_ANOTHER.test(text))
    .map(({ name, text }) => ({ name, title: titleIn(text), about: firstParagraph(text), text }));
  const source = `/** Generated from the files of examples/. Do not edit. */
    import type { StartingFile } from './startingFile.ts';

    export const EXAMPLE_FILES: readonly StartingFile[] = ${JSON.stringify(files)};
    `;
  return format(source, { ...(await resolveConfig(root + path)), filepath: root + path });
}

/** A run of readings from a file. */
const NEEDS_ANOTHER = /^ +file: /m;

/** An example always has a title: the test of this module's outcome holds it. */
function titleIn(text) {
  return /^title: (.*)$/m.exec(text)?.[1] ?? '';
}

/** Of the comment that it begins with, as one line. */
function firstParagraph(text) {
  const [lead = ''] = text.split(/^#?\s*$/m);
  return lead
    .split('\n')
    .filter((line) => line.startsWith('#'))
    .map((line) => line.replace(/^#\s*/, ''))
    .join(' ');
}
