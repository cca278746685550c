import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { PROBLEM_CODES } from '../../src/definition/codes.ts';
import { generateJsonSchema } from '../../src/definition/jsonSchema.ts';
import { generateReferencePage } from '../../src/definition/referencePage.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { file } from '../../src/definition/schema/file.ts';
import type { About, KeyAbout } from '../../src/definition/schema/shape.ts';
import { LEVERS, LINKED } from '../support/linkage.ts';

const SAMPLE = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8');
const ajv = new Ajv({ allErrors: true });
const validate = ajv.compile(generateJsonSchema());
const accepts = (text: string): boolean => validate(parse(text)) === true;

function everyKey(about: About, path = ''): { path: string; key: KeyAbout }[] {
  switch (about.kind) {
    case 'record':
      return Object.entries(about.keys).flatMap(([name, key]) => [
        { path: `${path}.${name}`, key },
        ...everyKey(key.shape, `${path}.${name}`),
      ]);
    case 'map':
      return everyKey(about.of, `${path}.*`);
    case 'list':
      return everyKey(about.of, `${path}.*`);
    case 'either':
      return about.forms.flatMap((form) => everyKey(form, path));
    default:
      return [];
  }
}

describe('the JSON Schema', () => {
  it('accepts what the reader accepts', () => {
    expect(accepts(SAMPLE)).toBe(true);
    expect(accepts(LINKED)).toBe(true);
    expect(accepts(`${LINKED}cables:\nslots: {}\n`)).toBe(true);
  });

  it('refuses what the reader refuses by shape', () => {
    const wrong = [
      LINKED.replace('format: 1', 'format: 2'),
      LINKED.replace('pivot: [0, 0]', 'pivot: [0]'),
      LINKED.replace('pivot: [0, 0]', 'pivt: [0, 0]'),
      LINKED.replace('radius: 220', 'radius: -220'),
      LINKED.replace('radius: 220', 'at: [1, 2], radius: 220'),
      LINKED.replace('opens: counterclockwise', 'opens: left'),
      LINKED.replace('to: shaft.arm', 'to: shaft'),
      `${LINKED}springs: {a: {lever: shaft}}\n`,
      `${LINKED}springs: {a: {lever: shaft, rate: 3, from: [1, 2]}}\n`,
      `${LINKED}keep_out: {A: {circle: [1, 2], radius: 3}}\n`,
      `${LEVERS}cams: {}\n`,
    ];
    for (const text of wrong) {
      expect(readDefinition(text).problems.some((problem) => problem.severity === 'error')).toBe(true);
      expect(accepts(text)).toBe(false);
    }
  });
});

describe('the reference page', () => {
  const page = generateReferencePage();

  it('names every key with its meaning', () => {
    const keys = everyKey(file.about);
    expect(keys.length).toBeGreaterThan(100);
    for (const { path, key } of keys) {
      expect(key.doc, path).toMatch(/^[A-Z`].*[.]$/s);
      expect(page, path).toContain(key.doc.replaceAll('|', '\\|'));
    }
  });

  it('names every problem', () => {
    for (const code of PROBLEM_CODES) expect(page).toContain(`### ${code}\n`);
  });

  it('has examples that the reader accepts', () => {
    const examples = everyKey(file.about).filter(({ key }) => key.example !== undefined);
    for (const { path, key } of examples) {
      expect(() => parse(`x: ${key.example ?? ''}`) as unknown, path).not.toThrow();
      expect(
        ajv.validate(schemaAt(path), (parse(`x: ${key.example ?? ''}`) as { x: unknown }).x),
        `${path}: ${key.example ?? ''} ${ajv.errorsText()}`,
      ).toBe(true);
    }
  });
});

/** The part of the schema for one key, found by the key's path; where several forms have it, any of them. */
function schemaAt(path: string): object {
  let candidates: Json[] = [generateJsonSchema()];
  for (const step of path.split('.').slice(1)) {
    candidates = candidates.flatMap(formsOf).flatMap((schema) => {
      const next = step === '*' ? (schema.additionalProperties ?? schema.items) : schema.properties?.[step];
      return typeof next === 'object' ? [next] : [];
    });
  }
  return { anyOf: candidates };
}

interface Json {
  readonly properties?: Readonly<Record<string, Json>>;
  readonly additionalProperties?: Json | boolean;
  readonly items?: Json;
  readonly anyOf?: readonly Json[];
}

function formsOf(schema: Json): readonly Json[] {
  return schema.anyOf ?? [schema];
}
