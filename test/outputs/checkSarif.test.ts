import { describe, expect, it } from 'vitest';
import { PROBLEM_CODES } from '../../src/definition/codes.ts';
import { FINDING_CODES } from '../../src/findings/codes.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import type { CheckedFile } from '../../src/outputs/checkedFile.ts';
import { checkSarif } from '../../src/outputs/checkSarif.ts';
import { codeDoc } from '../../src/outputs/codeDoc.ts';
import type { SarifLog, SarifRegion, SarifResult, SarifRun } from '../../src/outputs/sarif/log.ts';
import { sarifMessage, sarifText } from '../../src/outputs/sarif/message.ts';
import { solve, type Answers } from '../../src/solve.ts';
import {
  BROKEN_FILE,
  checked,
  DEMANDING_FILE,
  EMPTY_FILE,
  fromStandardInput,
  HOSTILE_FILE,
  HOSTILE_WORDS,
  MISSING,
  SOUND_FILE,
  wholeFiles,
} from './support/checked.ts';
import { objectionsTo } from './support/sarifValidator.ts';

const logOf = (...files: CheckedFile[]): string => checkSarif(files, { version: '1.2.3', exitCode: 1 });

function runOf(...files: CheckedFile[]): SarifRun {
  const { version, runs } = JSON.parse(logOf(...files)) as SarifLog;
  expect(version).toBe('2.1.0');
  expect(runs).toHaveLength(1);
  return runs[0]!;
}

const told = (changes: Partial<Answers>, text = SOUND_FILE): CheckedFile => ({
  ...checked(text),
  answers: { ...solve(text), problems: [], findings: [], notChecked: [], requirements: [], ...changes },
});

function regionOf({ locations }: SarifResult): SarifRegion {
  const region = locations[0]?.physicalLocation.region;
  expect(region).toBeDefined();
  return region!;
}

/** The text of a region, by its lines and columns, and by its offset. */
function textsAt(text: string, { startLine, startColumn, endLine, endColumn, charOffset, charLength }: SarifRegion): string[] {
  const starts = [0, ...[...text.matchAll(/\r\n|\n|\r/g)].map(({ index, 0: ending }) => index + ending.length)];
  const at = (line: number, column: number): number => (starts[line - 1] ?? NaN) + column - 1;
  return [text.slice(at(startLine, startColumn), at(endLine, endColumn)), text.slice(charOffset, charOffset + charLength)];
}

/** Every linkage and every kind of trouble. */
const EVERYTHING: readonly CheckedFile[] = [
  ...wholeFiles(),
  checked(HOSTILE_FILE, `${HOSTILE_WORDS}.yaml`, 'hostile%20name.throttle.yaml'),
  checked(DEMANDING_FILE, 'demanding.throttle.yaml'),
  checked(BROKEN_FILE, 'broken.throttle.yaml'),
  checked(EMPTY_FILE, 'empty.throttle.yaml'),
  checked('', 'nothing.throttle.yaml'),
  checked(`\ufeff${BROKEN_FILE.replaceAll('\n', '\r\n')}`, 'crlf.throttle.yaml'),
  fromStandardInput(`${SOUND_FILE}rods:\n`),
  MISSING,
];

describe('the validator', () => {
  // Without the address of the schema, which the validator would fetch.
  const offline = (log: string): string => log.replace(/^ *"\$schema": .*\n/m, '');
  /** That there is none is known: no address of this program, and none of the schema in what the validator is shown. */
  const KNOWN = /^warning SARIF(?:2005.*nformationUri|2008)/;
  const unknown = (log: string): string[] => objectionsTo(offline(log)).filter((objection) => !KNOWN.test(objection));

  it('objects to nothing in a log of every linkage and every kind of trouble, or of a single file', () => {
    expect(unknown(logOf(...EVERYTHING))).toEqual([]);
    expect(unknown(logOf(fromStandardInput(EMPTY_FILE)))).toEqual([]);
    expect(unknown(logOf(MISSING))).toEqual([]);
  });

  it('objects where a log is wrong', () => {
    const log = logOf(checked(DEMANDING_FILE));
    expect(unknown(log.replace(/"ruleIndex": \d+/, '"ruleIndex": 99'))).toEqual([expect.stringContaining('error SARIF1009')]);
    expect(unknown(log.replace(/"level": "error",\n\s*"message"/, '"colour": "red", $&'))).toEqual([expect.stringContaining('error JSON')]);
    expect(unknown(log.replace('"car.throttle.yaml"', '"a b.yaml"'))).toEqual([expect.stringContaining('error SARIF1002')]);
  });
});

describe('a run', () => {
  it('names the program, its version and the caution, and counts columns in UTF-16 code units', () => {
    const { tool, columnKind } = runOf(checked(SOUND_FILE));
    expect(tool.driver).toMatchObject({ name: 'pedal-to-plate', version: '1.2.3', fullDescription: { text: CAUTION } });
    expect(columnKind).toBe('utf16CodeUnits');
  });

  it('is one for all files, each an artifact, one that is named twice once', () => {
    const { artifacts } = runOf(checked(SOUND_FILE, 'a', 'a'), checked(DEMANDING_FILE, 'b', 'b'), checked(SOUND_FILE, './a', 'a'));
    expect(artifacts.map(({ location }) => location)).toEqual([
      { uri: 'a', index: 0 },
      { uri: 'b', index: 1 },
    ]);
  });

  it('has each code that occurs once among its rules, with its docs as text, and no other', () => {
    const { tool, results } = runOf(...EVERYTHING);
    const ids = tool.driver.rules.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(new Set(ids)).toEqual(new Set(results.map(({ ruleId }) => ruleId)));
    for (const { ruleId, ruleIndex } of results) expect(ids[ruleIndex]).toBe(ruleId);
    for (const { shortDescription, help } of tool.driver.rules) {
      expect(shortDescription.text).toMatch(/^[A-Z].*\.$/);
      expect(help?.text).toContain('Cure: ');
      expect(help?.markdown).toContain(shortDescription.text);
    }
  });

  it('takes standard input along with its text, since it has no address', () => {
    const [artifact] = runOf(fromStandardInput(SOUND_FILE)).artifacts;
    expect(artifact).toMatchObject({ contents: { text: SOUND_FILE }, location: { description: { text: 'standard input' } } });
  });

  it('tells what was not checked as notes about the run', () => {
    const file = checked(SOUND_FILE);
    const [invocation] = runOf(file).invocations;
    expect(invocation?.executionSuccessful).toBe(true);
    expect(invocation?.exitCode).toBe(1);
    const notes = invocation?.toolExecutionNotifications ?? [];
    expect(notes).toHaveLength(file.answers.notChecked.length);
    expect(notes.length).toBeGreaterThan(0);
    for (const { level, descriptor, message } of notes) {
      expect([level, descriptor.id]).toEqual(['note', 'not-checked']);
      expect(message.text).toMatch(/: not checked: .*\.$/);
    }
  });

  it('did not succeed where a file could not be read', () => {
    const { invocations, results } = runOf(MISSING);
    expect(results).toEqual([]);
    expect(invocations[0]).toMatchObject({
      executionSuccessful: false,
      toolExecutionNotifications: [
        { level: 'error', descriptor: { id: 'not-read' }, message: { text: 'gone.throttle.yaml: there is no such file.' } },
      ],
    });
  });
});

describe('a result', () => {
  const start = SOUND_FILE.indexOf('link:');
  const finding = {
    code: 'transmission-angle',
    severity: 'warning',
    part: 'link',
    span: { start, end: start + 4 },
    message: 'The rod link has 31.2°',
    cure: 'Turn the arm',
    ranges: [{ from: 0.25, to: 0.5 }],
    worst: { value: Math.PI / 6, dimension: 'angle', travel: 0.5 },
    limit: { value: 1, dimension: 'number', from: 'textbook' },
    related: [{ span: { start: 0, end: 6 }, message: 'the file' }],
  } as const;

  it('tells message and cure, level, part, related place, and the figures in table units', () => {
    const [result] = runOf(told({ findings: [finding] })).results;
    expect(result).toMatchObject({
      ruleId: 'transmission-angle',
      level: 'warning',
      message: { text: 'The rod link has 31.2°. Turn the arm.' },
      locations: [{ physicalLocation: { artifactLocation: { uri: 'car.throttle.yaml', index: 0 } }, logicalLocations: [{ name: 'link' }] }],
      relatedLocations: [{ id: 0, message: { text: 'the file.' }, physicalLocation: { region: { charOffset: 0, charLength: 6 } } }],
      properties: {
        part: 'link',
        pedalRanges: [{ from: 25, to: 50 }],
        worst: { unit: 'deg', travel: 50 },
        limit: { value: 1, from: 'textbook' },
      },
    });
    expect((result?.properties?.worst as { value: number }).value).toBeCloseTo(30, 12);
  });

  it('stands at its place by lines and by offset alike', () => {
    for (const text of [BROKEN_FILE, BROKEN_FILE.replaceAll('\n', '\r\n'), BROKEN_FILE.replaceAll('\n', '\r'), `# 🚗 é\n${BROKEN_FILE}`]) {
      const { problems } = solve(text);
      const { results } = runOf(checked(text));
      const expected = problems.map(({ span }) => text.slice(span.start, span.end));
      expect(results.map((result) => textsAt(text, regionOf(result))[0]).sort()).toEqual([...expected].sort());
      for (const result of results) expect(new Set(textsAt(text, regionOf(result))).size).toBe(1);
    }
  });

  it('stands at the same place with and without a byte order mark', () => {
    const regions = (text: string): unknown => runOf(checked(text)).results.map(regionOf);
    expect(regions(`\ufeff${BROKEN_FILE}`)).toEqual(regions(BROKEN_FILE));
  });

  it('at the very end of a file stands on its last line, not behind it', () => {
    const at = (text: string): SarifRegion =>
      regionOf(runOf(told({ findings: [{ ...finding, span: { start: text.length, end: text.length } }] }, text)).results[0]!);
    const lines = SOUND_FILE.split('\n');
    expect(at(SOUND_FILE)).toMatchObject({
      startLine: lines.length - 1,
      startColumn: (lines.at(-2)?.length ?? 0) + 2,
      charOffset: SOUND_FILE.length,
      charLength: 0,
    });
    expect(at(SOUND_FILE.trimEnd())).toMatchObject({ startLine: lines.length - 1, startColumn: (lines.at(-2)?.length ?? 0) + 1 });
    expect(at('')).toMatchObject({ startLine: 1, startColumn: 1, endColumn: 1, charOffset: 0 });
  });

  it('of a problem that can be mended without asking carries the edit', () => {
    const result = runOf(checked(BROKEN_FILE)).results.find(({ ruleId }) => ruleId === 'unknown-key');
    const [change] = result?.fixes?.[0]?.artifactChanges ?? [];
    expect(change?.replacements.map(({ insertedContent }) => insertedContent)).toEqual([{ text: 'stops' }]);
    expect(textsAt(BROKEN_FILE, change!.replacements[0]!.deletedRegion)).toEqual(['stop', 'stop']);
  });
});

it('has its places within the text, wherever a file breaks off', () => {
  for (let length = 0; length < DEMANDING_FILE.length; length += 41) {
    const text = DEMANDING_FILE.slice(0, length);
    const lastLine = Math.max(1, text.split('\n').length - (text.endsWith('\n') ? 1 : 0));
    for (const result of runOf(checked(text)).results) {
      const region = regionOf(result);
      expect(new Set(textsAt(text, region)).size).toBe(1);
      expect(region.endLine).toBeLessThanOrEqual(lastLine);
    }
  }
});

describe('requirements', () => {
  const { results } = runOf(checked(DEMANDING_FILE));
  const demanded = results.filter(({ ruleId }) => ruleId.startsWith('requirement-'));

  it('that fail or cannot be decided are errors at their expression; those that pass are not told', () => {
    expect(demanded.map(({ ruleId, level, properties }) => [ruleId, level, properties?.requirement])).toEqual([
      ['requirement-failed', 'error', 'fails'],
      ['requirement-failed', 'error', 'never'],
      ['requirement-undecided', 'error', 'nowhere'],
    ]);
    expect(textsAt(DEMANDING_FILE, regionOf(demanded[2]!))).toEqual(['shaft.opening > 3 deg', 'shaft.opening > 3 deg']);
  });

  it('carry what is, what is demanded and the margin', () => {
    expect(demanded[0]?.message.text).toMatch(/^Requirement `fails` fails: .* not ≥ 500°.*\.$/);
    const [comparison] = demanded[0]?.properties?.comparisons as { demanded: { value: number; unit: string } }[];
    expect(comparison?.demanded.unit).toBe('deg');
    expect(comparison?.demanded.value).toBeCloseTo(500, 9);
  });

  it('have rules whose names are no codes of problems or findings', () => {
    expect([...PROBLEM_CODES, ...FINDING_CODES].filter((code) => code.startsWith('requirement-'))).toEqual([]);
  });
});

describe('text', () => {
  it('holds no placeholder, whatever a person wrote', () => {
    expect(sarifText('a {0} b')).toBe('a {{0}} b');
    for (const { message } of runOf(checked(HOSTILE_FILE)).results) expect(message.text.replace(/\{\{|\}\}/g, '')).not.toMatch(/[{}]/);
  });

  it('holds no link: brackets that would begin one are escaped, others stay', () => {
    expect(sarifText('see [x](9)')).toBe('see \\[x\\](9)');
    expect(sarifText('pivot: [1, 2]')).toBe('pivot: [1, 2]');
  });

  it('is one line without control characters, sentences with their full stops', () => {
    expect(sarifMessage('a\n b', undefined, '', '\u001bc')).toEqual({ text: 'a b. \ufffdc.' });
  });
});

it('knows the docs of every code', () => {
  for (const code of [...PROBLEM_CODES, ...FINDING_CODES]) {
    const { title, cure } = codeDoc(code);
    expect(title).toMatch(/^[A-Z][^]*\.$/);
    expect(cure).not.toBe('');
    expect(title + cure).not.toMatch(/\]\(/);
  }
});
