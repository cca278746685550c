/**
 * `npm run generate`: writes the files that follow from the reader's own tables, so that they cannot disagree with it.
 * With `--check` it writes nothing, names the files that are not current and exits 1.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { forNode } from './build.mjs';
import { root } from './setUp.mjs';

const BUNDLE = 'build/generators.mjs';

await build({
  ...forNode,
  stdin: {
    contents: `
      export { generateJsonSchema } from './src/definition/jsonSchema.ts';
      export { generateReferencePage } from './src/definition/referencePage.ts';
    `,
    resolveDir: root,
  },
  outfile: BUNDLE,
});
const generators = await import(pathToFileURL(root + BUNDLE).href);

const files = {
  'schema/throttle.schema.json': `${JSON.stringify(generators.generateJsonSchema(), undefined, 2)}\n`,
  'docs/reference.md': generators.generateReferencePage(),
};

const stale = Object.keys(files).filter((path) => read(path) !== files[path]);
if (!process.argv.includes('--check')) {
  for (const path of stale) {
    mkdirSync(dirname(root + path), { recursive: true });
    writeFileSync(root + path, files[path]);
    console.log(`wrote ${path}`);
  }
} else if (stale.length > 0) {
  console.error(`Not current: ${stale.join(', ')}. Run \`npm run generate\`.`);
  process.exitCode = 1;
} else {
  console.log(`${Object.keys(files).join(' and ')} are current`);
}

function read(path) {
  try {
    return readFileSync(root + path, 'utf8');
  } catch {
    return undefined;
  }
}
