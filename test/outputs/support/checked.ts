/** Checked files to make outputs from. */
import { readdirSync, readFileSync } from 'node:fs';
import type { CheckedFile, ReadFile } from '../../../src/outputs/checkedFile.ts';
import { solve } from '../../../src/solve.ts';
import { SOUND_FILE } from '../../support/soundFile.ts';

export { SOUND_FILE };

export function checked(text: string, name = 'car.throttle.yaml', uri: string | undefined = name): ReadFile {
  return { name, uri, answers: solve(text) };
}

export function fromStandardInput(text: string): ReadFile {
  return { name: '<stdin>', uri: undefined, answers: solve(text) };
}

export const MISSING: CheckedFile = { name: 'gone.throttle.yaml', uri: 'gone.throttle.yaml', reason: 'there is no such file' };

/** Words that Markdown, HTML, a mention, a link, a message's placeholder or a terminal could take for more than words. */
export const HOSTILE_WORDS =
  '<img src=x onerror=alert(1)> | `tick` ``` **b** _i_ ~~s~~ [x](javascript:alert(1)) ![p](http://e.example/p.png) @someone #12 www.e.example $x$ {0} [k](9) \u001b[31m \u202e </code></details> &lt; \\| :smile: mailto:a@b.example';

/** A linkage that solves, with hostile words wherever a file may have words of its own, and problems that quote some. */
export const HOSTILE_FILE = `${SOUND_FILE.replace('levers:', `title: ${JSON.stringify(HOSTILE_WORDS)}\nlevers:`)}require:
  ${JSON.stringify(HOSTILE_WORDS)}: max(shaft.opening) >= 500 deg
  "second | line": max(shaft.opening) >= 1 deg
  third: max(shaft.opning | \`x\`) >= 1 deg
${JSON.stringify(HOSTILE_WORDS)}: 1
points: {p: ["<b>|@x\`", 2]}
`;

/** Of each kind: requirements that pass, fail and cannot be decided, one of them on two figures. */
export const DEMANDING_FILE = `${SOUND_FILE}require:
  opens: max(shaft.opening) >= 10 deg
  fails: max(shaft.opening) >= 500 deg and at(50%, shaft.opening) > 1 deg
  never: where(shaft.opening >= 500 deg) < 90%
  nowhere: shaft.opening > 3 deg
`;

/** Nothing of it can be understood. */
export const EMPTY_FILE = '# nothing yet\n';

/** A key that there is not, which can be mended without asking, and YAML that breaks off. */
export const BROKEN_FILE = `format: 1
levers:
  shaft: {pivot: [0, 0], stop: {open: 40 deg}}
  other: [1
`;

const EXAMPLES = new URL('../../../examples/', import.meta.url);
const SAMPLE = new URL('../../support/sample.throttle.yaml', import.meta.url);

/** Whole linkages: every example and the sample. */
export function wholeFiles(): ReadFile[] {
  const files = readdirSync(EXAMPLES).filter((name) => name.endsWith('.throttle.yaml'));
  return [
    ...files.sort().map((name) => checked(readFileSync(new URL(name, EXAMPLES), 'utf8'), `examples/${name}`)),
    checked(readFileSync(SAMPLE, 'utf8'), 'test/support/sample.throttle.yaml'),
  ];
}
