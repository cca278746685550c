import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { CAUTION } from '../../src/outputs/caution.ts';
import type { CheckedFile } from '../../src/outputs/checkedFile.ts';
import { checkJson } from '../../src/outputs/checkJson.ts';
import type { JsonDocument, JsonFile } from '../../src/outputs/json/document.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { LINKED } from '../support/linkage.ts';
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

const ajv = new Ajv({ allErrors: true });
const validate = ajv.compile(JSON.parse(readFileSync(new URL('../../schema/check.schema.json', import.meta.url), 'utf8')) as object);

/** The document, held to the schema. */
function documentOf(...files: CheckedFile[]): JsonDocument {
  const text = checkJson(files);
  const document: unknown = JSON.parse(text);
  expect(validate(document), ajv.errorsText(validate.errors)).toBe(true);
  expect(text.endsWith('\n')).toBe(true);
  return document as JsonDocument;
}

function fileOf(file: CheckedFile): JsonFile {
  const { files } = documentOf(file);
  expect(files).toHaveLength(1);
  return files[0]!;
}

const told = (changes: Partial<Answers>, text = LINKED): CheckedFile => ({
  ...checked(text),
  answers: { ...solve(text), problems: [], findings: [], facts: [], notChecked: [], parts: [], requirements: [], ...changes },
});

const finding: Finding = {
  code: 'transmission-angle',
  severity: 'warning',
  part: 'link',
  span: { start: LINKED.indexOf('link:'), end: LINKED.indexOf('link:') + 4 },
  message: 'The rod link has 31.2°',
};

describe('the schema', () => {
  it('holds for whole linkages, broken, empty, hostile and missing files and standard input, alone and together', () => {
    const files = [
      ...wholeFiles(),
      checked(BROKEN_FILE),
      checked(EMPTY_FILE),
      checked(''),
      checked(HOSTILE_FILE),
      checked(DEMANDING_FILE),
      MISSING,
      fromStandardInput(LINKED),
    ];
    for (const file of files) documentOf(file);
    expect(documentOf(...files).files.map(({ file }) => file)).toEqual(files.map(({ name }) => name));
  });

  it('refuses a document with a key more, a key less, or a value of another kind', () => {
    const whole = documentOf(checked(LINKED));
    const [file] = whole.files;
    const wrong: unknown[] = [
      { ...whole, extra: 1 },
      { ...whole, format: 2 },
      { ...whole, caution: undefined },
      { ...whole, files: [{ ...file, parts: null }] },
      { ...whole, files: [{ ...file, verdict: { ...file?.verdict, outcome: 'fine' } }] },
    ];
    for (const document of wrong) expect(validate(JSON.parse(JSON.stringify(document)))).toBe(false);
  });
});

it('carries the caution, and the same text twice gives the same document', () => {
  expect(documentOf(checked(LINKED)).caution).toBe(CAUTION);
  expect(checkJson([checked(LINKED)])).toBe(checkJson([checked(LINKED)]));
});

describe('a verdict', () => {
  it('counts what is told, and says whether the file is sound', () => {
    const { verdict, findings, problems, notChecked } = fileOf(checked(DEMANDING_FILE));
    const marks = [...findings, ...problems];
    expect(verdict).toEqual({
      outcome: 'wrong',
      reason: null,
      errors: marks.filter(({ severity }) => severity === 'error').length,
      warnings: marks.filter(({ severity }) => severity === 'warning').length,
      notes: marks.filter(({ severity }) => severity === 'note').length,
      requirements: { passed: 1, failed: 2, undecided: 1 },
      notChecked: notChecked.length,
    });
    expect(fileOf(told({})).verdict.outcome).toBe('sound');
    expect(fileOf(told({ findings: [finding] })).verdict).toMatchObject({ outcome: 'sound', warnings: 1 });
    expect(fileOf(told({ findings: [{ ...finding, severity: 'error' }] })).verdict).toMatchObject({ outcome: 'wrong', errors: 1 });
  });

  it('of a file that cannot be read or understood says so, and has nothing else to tell', () => {
    expect(fileOf(MISSING)).toMatchObject({
      file: 'gone.throttle.yaml',
      title: null,
      verdict: { outcome: 'unusable', reason: 'there is no such file' },
      problems: [],
      parts: [],
    });
    const empty = fileOf(checked(EMPTY_FILE));
    expect(empty.verdict).toMatchObject({ outcome: 'unusable', reason: null, errors: 1 });
    expect(empty.problems[0]?.code).toBe('file-empty');
  });
});

describe('figures', () => {
  it('stand in the unit of the table with every digit, travels in %', () => {
    const { findings } = fileOf(
      told({
        findings: [
          {
            ...finding,
            ranges: [{ from: 0.25, to: 0.5 }],
            worst: { value: Math.PI / 7, dimension: 'angle', travel: 1 / 3 },
            limit: { value: 0.123456789012, dimension: 'length', from: 'textbook' },
          },
        ],
      }),
    );
    expect(findings[0]?.ranges).toEqual([{ from: 25, to: 50 }]);
    expect(findings[0]?.worst?.unit).toBe('deg');
    expect(findings[0]?.worst?.value).toBeCloseTo(180 / 7, 12);
    expect(findings[0]?.worst?.travel).toBeCloseTo(100 / 3, 12);
    expect(findings[0]?.limit).toEqual({ value: 123.456789012, unit: 'mm', from: 'textbook' });
  });

  it('are null where there is none, and where the computation gives none', () => {
    const { findings, facts } = fileOf(
      told({
        findings: [finding, { ...finding, worst: { value: NaN, dimension: 'angle', travel: 0 } }],
        facts: [{ key: 'k', part: 'shaft', label: 'l', why: 'never reached' }],
      }),
    );
    expect(findings[0]).toMatchObject({ cure: null, ranges: null, worst: null, limit: null, mend: null, related: [] });
    expect(findings[1]?.worst).toEqual({ value: null, unit: 'deg', travel: 0 });
    expect(facts).toEqual([{ key: 'k', part: 'shaft', label: 'l', figure: null, travel: null, why: 'never reached', guidance: null }]);
  });

  it('of facts that are pedal travels stand in %', () => {
    const figure = { value: 0.555, dimension: 'number' } as const;
    const { facts } = fileOf(
      told({
        facts: [
          { key: 'a', part: 'shaft', label: 'travel', figure, travel: 0.555 },
          { key: 'b', part: 'shaft', label: 'ratio', figure, travel: 0.5 },
        ],
      }),
    );
    expect(facts.map((fact) => fact.figure?.unit)).toEqual(['%', '']);
    expect(facts[0]?.figure?.value).toBeCloseTo(55.5, 12);
    expect(facts[1]?.figure?.value).toBe(0.555);
  });

  it('are those of the solved table', () => {
    const file = checked(SOUND_FILE);
    const [opening] = file.answers.table([1], ['shaft.opening']).columns;
    const part = fileOf(file).parts.find(({ name }) => name === 'shaft');
    expect(part?.figures[0]).toMatchObject({ label: 'opens', figure: { unit: 'deg' } });
    expect(part?.figures[0]?.figure?.value).toBeCloseTo(opening?.values[0] ?? NaN, 9);
  });

  it('of a mend stand in the unit of what they are written to', () => {
    const mends = fileOf(
      told({
        findings: [
          { ...finding, mend: { unknown: 'levers.shaft.arms.arm.radius', outcome: { kind: 'itself' }, target: 0.031 } },
          {
            ...finding,
            mend: { unknown: 'rods.link.length', outcome: { kind: 'least', column: 'link.transmission' }, target: Math.PI / 4 },
          },
          { ...finding, mend: { unknown: 'rods.link.length', outcome: { kind: 'at', column: 'pedal.travel', travel: 0.5 }, target: 0.5 } },
        ],
      }),
    ).findings.map(({ mend }) => mend);
    expect(mends[0]).toEqual({
      unknown: 'levers.shaft.arms.arm.radius',
      outcome: { kind: 'itself', column: null, travel: null },
      target: { value: 31, unit: 'mm' },
    });
    expect(mends[1]).toMatchObject({ outcome: { kind: 'least', column: 'link.transmission', travel: null }, target: { unit: 'deg' } });
    expect(mends[1]?.target.value).toBeCloseTo(45, 12);
    expect(mends[2]).toMatchObject({ outcome: { kind: 'at', travel: 50 }, target: { value: 50, unit: '%' } });
  });
});

describe('requirements', () => {
  const { requirements } = fileOf(checked(DEMANDING_FILE));

  it('come in the order of the file, each with outcome, figures and margin', () => {
    expect(requirements.map(({ name, outcome }) => [name, outcome])).toEqual([
      ['opens', 'passed'],
      ['fails', 'failed'],
      ['never', 'failed'],
      ['nowhere', 'undecided'],
    ]);
    const [comparison] = requirements[0]!.comparisons;
    expect(comparison).toMatchObject({ operator: '>=', holds: true, reason: null });
    expect(comparison?.demanded?.value).toBeCloseTo(10, 12);
    expect(comparison?.margin?.value).toBeCloseTo((comparison?.actual?.value ?? NaN) - 10, 9);
    expect(requirements[1]?.comparisons.map(({ holds }) => holds)).toEqual([false, true]);
  });

  it('say why they cannot be decided', () => {
    expect(requirements[3]?.reason).toContain('every pedal position');
    expect(requirements[2]?.comparisons[0]?.reason).not.toBe(null);
  });
});

describe('places', () => {
  it('count lines and columns from 1, in UTF-16 code units, the end being the first place behind', () => {
    const text = LINKED.replace('pedal.clevis', 'pedal.clevsi');
    const place = fileOf(checked(text)).problems.find(({ code }) => code === 'unknown-name')?.place;
    const start = text.indexOf('pedal.clevsi');
    const line = text.slice(0, start).split('\n').length;
    expect(place).toMatchObject({ line, endLine: line });
    expect(text.slice(place?.offset, place?.endOffset)).toContain('clevsi');
    expect(text.split('\n')[line - 1]?.slice((place?.column ?? 0) - 1, (place?.endColumn ?? 0) - 1)).toContain('clevsi');
  });

  it('do not change with a byte order mark', () => {
    const strip = (file: JsonFile): unknown => ({ ...file, file: '' });
    expect(strip(fileOf(checked(`\ufeff${BROKEN_FILE}`)))).toEqual(strip(fileOf(checked(BROKEN_FILE))));
  });
});

it('offers the edits that carry out a cure', () => {
  const { problems } = fileOf(checked(BROKEN_FILE));
  const problem = problems.find(({ code }) => code === 'unknown-key');
  expect(problem?.replacements.map(({ text }) => text)).toEqual(['stops']);
  expect(BROKEN_FILE.slice(problem?.replacements[0]?.place.offset, problem?.replacements[0]?.place.endOffset)).toBe('stop');
});

it('passes on a person’s own words letter by letter', () => {
  const { title, requirements } = fileOf(checked(HOSTILE_FILE));
  expect(title).toBe(HOSTILE_WORDS);
  expect(HOSTILE_WORDS).toContain('\u202e');
  expect(checkJson([checked(HOSTILE_FILE)])).not.toMatch(/[^\P{Cc}\n]|\u202e/u);
  expect(requirements[0]?.name).toBe(HOSTILE_WORDS);
});

it('keeps its shape for a file that breaks off anywhere', () => {
  const text = DEMANDING_FILE;
  for (let length = 0; length < text.length; length += 41) {
    const { files } = documentOf(checked(text.slice(0, length)));
    for (const { place } of files.flatMap(({ problems, findings }) => [...problems, ...findings])) {
      expect(place.offset).toBeLessThanOrEqual(place.endOffset);
      expect(place.endOffset).toBeLessThanOrEqual(length);
    }
  }
});
