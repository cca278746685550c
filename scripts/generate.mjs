/**
 * `npm run generate`: writes the files that follow from the reader's own tables, from the rules' doc comments, from the bundled examples, from the
 * texts of the extension and its view and from the tables of the textbook tests, so that they cannot disagree with them.
 * With `--check` it writes nothing, names the files that are not current and exits 1.
 */
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import process from 'node:process';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { forNode } from './build.mjs';
import { checksPage } from './checksPage.mjs';
import { codeIndex, codePage } from './codePages.mjs';
import { exampleFiles } from './exampleFiles.mjs';
import { findingDocs } from './findingDocs.mjs';
import { l10nBundle } from './l10nBundle.mjs';
import { ruleNameOf, takeDocApart } from './ruleDocs.mjs';
import { root } from './setUp.mjs';

const BUNDLE = 'build/generators.mjs';
const CODES = 'docs/codes';
const FINDING_DOCS = 'src/outputs/findingDocs.ts';
const EXAMPLE_FILES = 'extension/exampleFiles.ts';
const VALUES = 'test/textbook/values';

const values = readdirSync(root + VALUES)
  .filter((name) => name !== 'provenance.ts')
  .sort();

await build({
  ...forNode,
  stdin: {
    contents: `
      export { generateJsonSchema } from './src/definition/jsonSchema.ts';
      export { generateReferencePage } from './src/definition/referencePage.ts';
      export { PROBLEM_CODES } from './src/definition/codes.ts';
      export { PROBLEM_DOCS } from './src/definition/problemDocs.ts';
      export { FINDING_CODES } from './src/findings/codes.ts';
      export { ENGLISH } from './webview/words/english.ts';
      ${values.map((name, i) => `export * as values${i} from './${VALUES}/${name}';`).join('\n')}
    `,
    resolveDir: root,
  },
  outfile: BUNDLE,
});
const generators = await import(pathToFileURL(root + BUNDLE).href);

const findings = generators.FINDING_CODES.map((code) => {
  const from = `src/findings/rules/${ruleNameOf(code)}.ts`;
  return { code, from, ...takeDocApart(read(from) ?? '') };
});
const problems = generators.PROBLEM_CODES.map((code) => {
  const { what, cure, example = '' } = generators.PROBLEM_DOCS[code];
  return { code, from: 'src/definition/problemDocs', title: what, text: '', example, cure };
});

const examples = readdirSync(`${root}examples`)
  .filter((name) => name.endsWith('.throttle.yaml'))
  .sort();
const exampleTexts = Object.fromEntries(examples.map((name) => [name, read(`examples/${name}`) ?? '']));

const checks = values.map((file, i) => ({ file, doc: leadComment(read(`${VALUES}/${file}`) ?? ''), exports: generators[`values${i}`] }));

const files = {
  'schema/throttle.schema.json': `${JSON.stringify(generators.generateJsonSchema(), undefined, 2)}\n`,
  'docs/reference.md': generators.generateReferencePage(),
  'docs/checks.md': checksPage(checks),
  [EXAMPLE_FILES]: await exampleFiles(exampleTexts, EXAMPLE_FILES),
  [FINDING_DOCS]: await findingDocs(findings, FINDING_DOCS),
  'l10n/bundle.l10n.json': l10nBundle(sourcesIn('extension'), generators.ENGLISH),
  'package.json': manifestWith(generators.FINDING_CODES),
  [`${CODES}/README.md`]: codeIndex(findings, problems),
  ...Object.fromEntries([...findings, ...problems].map((page) => [`${CODES}/${page.code}.md`, codePage(page)])),
};

const stale = Object.keys(files).filter((path) => read(path) !== files[path]);
/** Pages of codes that are no more. */
const left = listed(CODES).filter((path) => files[path] === undefined);
if (!process.argv.includes('--check')) {
  for (const path of stale) {
    mkdirSync(dirname(root + path), { recursive: true });
    writeFileSync(root + path, files[path]);
    console.log(`wrote ${path}`);
  }
  for (const path of left) {
    rmSync(root + path);
    console.log(`removed ${path}`);
  }
} else if (stale.length + left.length > 0) {
  console.error(`Not current: ${[...stale, ...left].join(', ')}. Run \`npm run generate\`.`);
  process.exitCode = 1;
} else {
  console.log(`All ${Object.keys(files).length} generated files are current`);
}

function listed(folder) {
  return existsSync(root + folder) ? readdirSync(root + folder).map((name) => `${folder}/${name}`) : [];
}

/** What stands in each TypeScript file of a folder and those below it, by path. */
function sourcesIn(folder) {
  const names = readdirSync(root + folder, { recursive: true }).filter((name) => /(?<!\.d)\.ts$/.test(name));
  return Object.fromEntries(names.sort().map((name) => [`${folder}/${name}`, read(`${folder}/${name}`) ?? '']));
}

function read(path) {
  try {
    return readFileSync(root + path, 'utf8');
  } catch {
    return undefined;
  }
}

/** The words of the comment with which a file begins. */
function leadComment(source) {
  const comment = /^\/\*\*([\s\S]*?)\*\//.exec(source)?.[1] ?? '';
  return comment.replace(/\n \* ?/g, '\n').trim();
}

/** The manifest with the codes that its setting of severities offers. */
function manifestWith(codes) {
  const manifest = JSON.parse(read('package.json') ?? '{}');
  manifest.contributes.configuration.properties['pedalToPlate.severity'].propertyNames = { enum: codes };
  return `${JSON.stringify(manifest, undefined, 2)}\n`;
}
