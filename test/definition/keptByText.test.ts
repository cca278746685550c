/** What is kept of the figures and formulas of a text is, for the next text, what reading it with nothing kept gives. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { keptByText } from '../../src/definition/formula/keptByText.ts';
import { readDefinition, type DefinitionReading } from '../../src/definition/read.ts';
import { readAnew } from '../support/freshReader.ts';

const FOLDER = new URL('../../examples/', import.meta.url);
const examples = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.throttle.yaml'))
  .map((name) => readFileSync(new URL(name, FOLDER), 'utf8'));
const sample = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8');

describe('figures and formulas that stood in a text before', () => {
  it('are not to be told from those of a first reading, in a storm of edits', () => {
    const draw = drawing(60_607);
    const bases = [sample, ...examples];
    const texts = bases.flatMap((base) => [base, ...Array.from({ length: EDITS }, () => edited(base, draw))]);
    // Each also where everything stands elsewhere.
    const all = texts.flatMap((text) => [text, `# moved\n${text}`]);
    const kept = all.map((text) => written(readDefinition(text)));
    for (const [i, text] of all.entries()) {
      expect(kept[i], text).toBe(written(readAnew(text)));
    }
  }, 240_000);

  it.each([
    ['a word after a figure becomes a name', '2 reach', 'rise'],
    ['a unit has the name of a figure', '2 mm + reach', 'reach'],
    ['a name is called', 'reach(2)', 'reach'],
  ])('are read anew where %s', (_, formula, name) => {
    const of = (names: string, figure: string): string => `format: 1\nlet:\n  ${names}: 3 mm\n  figure: ${figure}\n`;
    const [one, other] = [of(name, formula), of(name === 'reach' ? 'rise' : 'reach', formula)];
    const first = [one, other].map((text) => written(readDefinition(text)));
    expect(first[0]).not.toBe(first[1]);
    expect([one, other].map((text) => written(readDefinition(text)))).toEqual(first);
  });

  it('are kept for as long as the words that were asked for are what they were', () => {
    const read = vi.fn((text: string, names: { has(word: string): boolean }) => ({ text, isName: names.has(text) }));
    const reader = keptByText(read);
    const answer = reader('a', new Set(['a']));
    expect(reader('a', new Set(['a', 'b']))).toBe(answer);
    expect(read).toHaveBeenCalledTimes(1);
    expect(reader('a', new Set(['b']))).toEqual({ text: 'a', isName: false });
    expect(read).toHaveBeenCalledTimes(2);
  });
});

/** Of each text. */
const EDITS = 5;

/** All of it, formulas by what they compute. */
function written({ definition, problems }: DefinitionReading): string {
  const lets = Float64Array.from(definition?.lets ?? [], ({ value }) => value.nominal);
  return JSON.stringify({ definition, problems }, (_, value: unknown) => {
    if (typeof value === 'number') return Object.is(value, -0) || !Number.isFinite(value) ? `number ${value}` : value;
    if (typeof value !== 'object' || value === null || !('evaluate' in value)) return value;
    const { text, uses, evaluate, gradient } = value as {
      text: string;
      uses: readonly number[];
      evaluate(lets: Float64Array): number;
      gradient(lets: Float64Array, into: number[]): void;
    };
    const into: number[] = [];
    gradient(lets, into);
    return { text, uses, value: evaluate(lets), into };
  });
}

/** A digit, a name in one place or everywhere, a unit, a tolerance, a line. */
function edited(text: string, draw: () => number): string {
  const pick = <T>(list: readonly T[]): T => list[Math.floor(draw() * list.length)]!;
  const kind = draw();
  if (kind < 0.25) {
    const at = pick([...text.matchAll(/\d/g)]).index;
    return text.slice(0, at) + String(Math.floor(draw() * 10)) + text.slice(at + 1);
  }
  const names = [...text.matchAll(/^ {2}([a-z_]+):/gm)].map((match) => match[1]!);
  if (kind < 0.4) return text.replace(new RegExp(`\\b${pick(names)}\\b`), `${pick(names)}_`);
  if (kind < 0.5) return text.replaceAll(new RegExp(`\\b${pick(names)}\\b`, 'g'), pick(['mm', 'reach', 'a', pick(names)]));
  if (kind < 0.75) return text.replace(pick([' mm', ' deg', ' N']), pick([' cm', ' rad', ' mm ± 0.1', ' deg +0.2/-0.1', ' q', '']));
  const lines = text.split('\n');
  const at = Math.floor(draw() * lines.length);
  return (draw() < 0.5 ? lines.toSpliced(at, 1) : lines.toSpliced(at, 0, lines[at]!)).join('\n');
}

/** Numbers from 0 to below 1, the same for the same seed. */
function drawing(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}
