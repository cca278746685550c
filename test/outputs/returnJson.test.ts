import { readFileSync } from 'node:fs';
import Ajv from 'ajv';
import { expect, it } from 'vitest';
import type { JsonReturn } from '../../src/outputs/json/returnDocument.ts';
import { returnJson } from '../../src/outputs/returnJson.ts';
import { solve } from '../../src/solve.ts';
import { CRANK, SHAFT, textOf, torsion } from '../failures/throttles.ts';
import { BROKEN_FILE, EMPTY_FILE, HOSTILE_FILE, wholeFiles } from './support/checked.ts';

const ajv = new Ajv({ allErrors: true });
const validate = ajv.compile(JSON.parse(readFileSync(new URL('../../schema/return.schema.json', import.meta.url), 'utf8')) as object);

/** The document, held to the schema. */
function documentOf(text: string): JsonReturn {
  const document: unknown = JSON.parse(returnJson(solve(text), 'a'));
  expect(validate(document), ajv.errorsText(validate.errors)).toBe(true);
  return document as JsonReturn;
}

it('holds to its schema for whole linkages, broken, empty and hostile files', () => {
  const whole = wholeFiles().map(({ answers }) => answers.text);
  for (const text of [...whole, BROKEN_FILE, EMPTY_FILE, HOSTILE_FILE, '', textOf(CRANK), textOf(SHAFT)]) documentOf(text);
});

it('refuses a key more, a key less, or a value of another kind', () => {
  const document = documentOf(textOf(SHAFT));
  for (const wrong of [
    { ...document, extra: 1 },
    { ...document, caution: undefined },
    { ...document, failures: [{ ...document.whole, outcome: 'fine' }] },
  ])
    expect(validate(wrong)).toBe(false);
});

it('gives figures in the unit of the table, with the place of the part that fails', () => {
  const text = textOf(SHAFT, { springs: { second: torsion('shaft', 120) } });
  const { failures, whole, verdict } = documentOf(text);
  const [first] = failures;
  // Nothing stays open, but the pedal is given as a cable alone, and its own return is not checked.
  expect(verdict.outcome).toBe('wrong');
  expect(whole).toMatchObject({ outcome: 'not-checked', plates: [{ why: expect.stringContaining('plates close') as string }] });
  expect(documentOf(textOf(CRANK)).verdict.outcome).toBe('sound');
  expect(first?.failure).toMatchObject({ kind: 'spring-lost', part: 'first', place: { offset: text.indexOf('first:') } });
  expect(first?.plates[0]?.weakest?.torque.unit).toBe('N·mm');
  expect(first?.plates[0]?.weakest?.torque.value).toBeCloseTo(120, 9);
  expect(whole?.plates[0]?.weakest?.torque.value).toBeCloseTo(420, 9);
  expect(failures.at(-1)?.plates[0]?.heldAt).toMatchObject({ unit: 'deg' });
  const met = whole?.plates[0]?.time?.stop;
  expect(met?.speed.unit).toBe('deg/s');
  expect((met!.speed.value! * Math.PI) / 180).toBeCloseTo(solve(text).failures()!.whole.plates[0]!.time!.stop!.speed, 9);
  expect(met?.bounces).toBe(solve(text).failures()!.whole.plates[0]!.time!.stop!.bounces);
});
