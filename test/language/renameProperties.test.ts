/** Every name of every whole file, renamed: the linkage stays what it was. */
import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COLUMNS } from '../../src/definition/columns.ts';
import { applyEdits } from '../../src/definition/edit.ts';
import { RESERVED } from '../../src/definition/names.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { indexNames, placesOf, type DeclaredName, type NameIndex } from '../../src/language/names.ts';
import { renameAt } from '../../src/language/rename.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { EVERY_NAME } from './support/everyName.ts';

const FRESH = 'fresh_name_1';
const STATIONS = Array.from({ length: 41 }, (_, k) => k / 40);

const folder = new URL('../../examples/', import.meta.url);
const FILES = new Map([
  ['the sample', readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8')],
  ['a file with every kind of name', EVERY_NAME],
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.throttle.yaml'))
    .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const),
]);

/** What the answers say, with the old name in place of the new one. */
function toldBy(answers: Answers, renamed?: DeclaredName) {
  const inColumn = (column: string): string => {
    const [owner, key = ''] = column.split('.', 2);
    if (renamed === undefined || owner !== FRESH) return column;
    return `${renamed.name}.${key}`;
  };
  const inPart = (part: string): string => (part === FRESH && renamed !== undefined ? renamed.name : part);
  const { columns } = answers.table(STATIONS);
  return {
    problems: answers.problems.map(({ code }) => code),
    columns: new Map(columns.map(({ name, values }) => [inColumn(name), [...values]])),
    findings: answers.findings.map(({ code, part, worst, ranges }) => ({ code, part: inPart(part), worst, ranges })),
    parts: answers.parts.map(({ kind, name, figures }) => ({ kind, name: inPart(name), figures })),
    requirements: answers.requirements.map(({ requirement, outcome, comparisons }) => ({
      name: inPart(requirement.name),
      outcome,
      margins: comparisons.map(({ margin }) => margin),
    })),
  };
}

describe('after a rename the answers are the same but for the name', () => {
  for (const [title, text] of FILES) {
    it(`in ${title}`, () => {
      const index = indexNames(text);
      const before = toldBy(solve(text));
      expect(before.columns.size).toBeGreaterThan(5);
      let renamed = 0;
      for (const declared of index.names) {
        if (declared.kind === 'drive') continue;
        // From its last place as well as from its declaration.
        const at = placesOf(index, declared).at(-1)?.span.start ?? NaN;
        const answer = renameAt(index, at, FRESH);
        if (answer.kind === 'refused') throw new Error(`${declared.name}: ${answer.reason}`);
        expect(answer).toEqual(renameAt(index, declared.span.end, FRESH));
        const after = applyEdits(text, answer.edits);
        expect(toldBy(solve(after), declared), declared.name).toEqual(before);
        const again = indexNames(after);
        const back = renameAt(again, again.names.find(({ name }) => name === FRESH)?.span.start ?? NaN, declared.name);
        expect(back.kind === 'edits' ? applyEdits(after, back.edits) : back.reason).toBe(text);
        renamed++;
      }
      expect(renamed).toBeGreaterThan(5);
    }, 120_000);
  }

  it('and the same edits are made with CRLF and a byte order mark', () => {
    const inWindows = (text: string): string => `\ufeff${text.replaceAll('\n', '\r\n')}`;
    for (const text of [EVERY_NAME, FILES.get('two-banks.throttle.yaml') ?? '']) {
      const [plain, windows] = [indexNames(text), indexNames(inWindows(text))];
      expect(windows.names.map(({ name }) => name)).toEqual(plain.names.map(({ name }) => name));
      for (const [i, { kind, span }] of plain.names.entries()) {
        if (kind === 'drive') continue;
        const answer = renameAt(plain, span.start, FRESH);
        const other = renameAt(windows, windows.names[i]?.span.start ?? NaN, FRESH);
        if (answer.kind === 'refused' || other.kind === 'refused') throw new Error(JSON.stringify([answer, other]));
        expect(applyEdits(windows.text, other.edits)).toBe(inWindows(applyEdits(text, answer.edits)));
      }
    }
  }, 60_000);

  it('and no name is taken that brings a mistake or another meaning', () => {
    const index = indexNames(EVERY_NAME);
    const names = index.names.filter(({ kind }) => kind !== 'drive');
    const words = [...RESERVED, ...names.map(({ name }) => name), 'pedal', 'a', 'e', 'e3', 'x_1', 'opening', 'clockwise', 'y', 'no'];
    const uses = (of: NameIndex): readonly number[] => of.names.map((name) => placesOf(of, name).length);
    let taken = 0;
    fc.assert(
      fc.property(fc.constantFrom(...names), fc.constantFrom(...words), (declared, word) => {
        const answer = renameAt(index, declared.span.start, word);
        if (answer.kind === 'refused') return;
        taken++;
        const after = applyEdits(EVERY_NAME, answer.edits);
        expect(readDefinition(after).problems).toEqual([]);
        expect(uses(indexNames(after))).toEqual(uses(index));
      }),
      { numRuns: 400, seed: 23 },
    );
    expect(taken).toBeGreaterThan(20);
  }, 60_000);

  it('and the columns of the drive keep theirs', () => {
    const { names } = indexNames(EVERY_NAME);
    const lever = names.find(({ kind, name }) => kind === 'lever' && name === 'pedal');
    const answer = renameAt(indexNames(EVERY_NAME), lever?.span.start ?? NaN, FRESH);
    if (answer.kind === 'refused') throw new Error(answer.reason);
    const columnsOf = (text: string): readonly string[] => solve(text).columns.map(({ name }) => name);
    const columns = columnsOf(applyEdits(EVERY_NAME, answer.edits));
    const ofDrive = columnsOf(EVERY_NAME).filter((name) => Object.keys(COLUMNS.pedal).some((key) => name === `pedal.${key}`));
    expect(ofDrive).toContain('pedal.travel');
    expect(columns).toEqual(expect.arrayContaining([...ofDrive]));
    expect(columns).toContain(`${FRESH}.rotation`);
    expect(columns).not.toContain('pedal.rotation');
  });
});
