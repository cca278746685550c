/** Reading a text of which much was read before gives what reading it anew gives, and takes less time. */
import { readdirSync, readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.ts';
import { parseSource, parseWhole } from '../../src/definition/source/parse.ts';
import { parseSections } from '../../src/definition/source/parseSections.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { readAnew } from '../support/freshReader.ts';
import { timesAsLarge } from '../support/timesAsLarge.ts';

const FOLDER = new URL('../../examples/', import.meta.url);
const examples = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => readFileSync(new URL(name, FOLDER), 'utf8'));
const sample = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8');
const twoBanks = readFileSync(new URL('two-banks.throttle.yaml', FOLDER), 'utf8');

/** Holds the tree and its problems against those of the same text, all of it parsed anew. @returns whether it was read by its sections */
function checkSameTree(text: string): boolean {
  const [kept, anew] = [parseSource(text), parseWhole(text)];
  if (!isDeepStrictEqual(kept, anew)) expect(kept, JSON.stringify(text)).toStrictEqual(anew);
  return parseSections(text.replace(/\r(?!\n)/g, '\n')) !== undefined;
}

describe('reading by sections', () => {
  it('is not to be told from reading anew in a storm of edits', () => {
    const draw = generator(40_961);
    const bases = [...examples, sample, timesAsLarge(twoBanks, 2)];
    let bySections = 0;
    for (let base = 0; base < 2 * bases.length; base++) {
      const original = bases[base % bases.length]!;
      let text = original;
      for (let edit = 0; edit < EDITS; edit++) {
        // Half of the time one slip in a sound file, else one more mistake beside those that are there.
        text = edited(draw() < 0.5 ? original : text, draw);
        if (checkSameTree(text)) bySections++;
      }
    }
    // Neither way is there in vain.
    expect(bySections).toBeGreaterThan(EDITS * bases.length * 0.4);
    expect(bySections).toBeLessThan(EDITS * bases.length * 1.6);
  }, 60_000);

  it('is not to be told from reading anew with words that are being typed', () => {
    const draw = generator(52_433);
    const bases = [...examples, sample];
    let slips = 0;
    for (let edit = 0; edit < 12 * bases.length; edit++) {
      const lines = bases[edit % bases.length]!.split('\n');
      // Now and then a second slip beside the first, which is then left to reading the whole.
      for (let words = draw() < 0.8 ? 1 : 2; words > 0; words--) {
        const line = Math.floor(draw() * (lines.length + 1));
        const beside = /^ */.exec(lines[line] ?? '')![0];
        lines.splice(line, 0, (draw() < 0.8 ? beside : ' '.repeat(Math.floor(draw() * 8))) + pick(WORDS, draw));
      }
      const text = lines.join(draw() < 0.1 ? '\r\n' : '\n');
      checkSameTree(text);
      if (parseSections(text)?.problems[0]?.code === 'yaml-syntax') slips++;
    }
    expect(slips).toBeGreaterThan(3 * bases.length);
  }, 60_000);

  it.each([
    ['a quote that is closed in another section', 'title: "a\nlet:\n  b: 1\npoints: c"\n'],
    ['a bracket that is closed in another entry', 'let:\n  a: [1,\n  b: 2]\n  c: 3\n'],
    ['a block scalar before a key', 'title: |\n  a: 1\n  b: 2\nlet:\n  c: 1\n'],
    ['a block scalar among entries', 'let:\n  a: >-\n    b: 2\n  c: |+\n\n  d: 1\n'],
    ['an anchor for another section', 'let: {a: &a 1}\npoints:\n  b: *a\n  c: &c [1, 2]\nlevers: {d: {pivot: *c}}\n'],
    ['an alias without an anchor', 'let:\n  a: 1\n  b: *a\n'],
    ['tags', 'let: !x\n  a: !!str 1\n  b: !y {c: 1}\n'],
    ['two documents', 'format: 1\nlet:\n  a: 1\n---\npoints:\n  b: 1\n'],
    ['a document that ends', 'format: 1\n...\nlet:\n  a: 1\n'],
    ['a mark of a document first', '---\nformat: 1\nlet:\n  a: 1\n'],
    ['a directive', '%YAML 1.2\n---\nformat: 1\n'],
    ['a directive after keys', 'format: 1\n%YAML 1.2\nlet:\n  a: 1\n'],
    ['a byte order mark', '\ufeffformat: 1\nlet:\n  a: 1\n'],
    ['tabs', 'let:\n\ta: 1\n\tb: 2\n'],
    ['a tab in an empty line', 'let:\n  a: 1\n\t\n  b: 2\n'],
    ['lone CR', 'format: 1\rlet:\r  a: 1\r  b: 1\r'],
    ['CRLF', 'format: 1\r\nlet: # c\r\n\r\n  a: 1\r\n# d\r\n  b: 1\r\n'],
    ['explicit keys', '? format\n: 1\nlet:\n  ? a\n  : 1\n  b: 2\n'],
    ['a list in the column of its key', 'levers:\n- a: 1\n- b\nlet:\n  c:\n  - 1\n  - 2\n  d: 1\n'],
    ['a word that goes on in the next line', 'title: a\n  b\n c\nlet:\n  a: 1\n    + 2\n  b: c\n'],
    ['a word without a colon', 'let:\n  a: 1\n  b\n  c: 2\n'],
    ['a word before the next entry', 'let:\n  a: 1\n  fri\n  b: 2\nlevers: {c: 1}\n'],
    ['a word before a key of the file', 'let:\n  a: 1\n  fri\nlevers: {c: 1}\n'],
    ['a word at the end', 'levers:\n  a:\n    b: 1\n    fri'],
    ['a word in the column of the keys', 'let:\n  a: 1\nfri\nlevers: {c: 1}\n'],
    ['a word further in than its neighbours', 'levers:\n  a:\n    b: 1\n      fri\n  c: {d: 1}\n'],
    ['a word as the whole of an entry', 'levers:\n  a:\n    fri\n  b:\n    c: 1\n    d\n'],
    ['a word that the entry behind it has as its name', 'let:\n  a: 1\n  q\n  q: 2\n'],
    ['two words', 'let:\n  a: 1\n  fri\n  b: 2\nlevers:\n  c: {d: 1}\n  fri\n'],
    ['lines that stand further out', 'let:\n    a: 1\n    b: 2\n  c: 3\n d: 4\ne: 5\n'],
    ['entries further in', 'let:\n  a: 1\n   b: 2\n  c:\n      d: 1\n     e: 2\n  f: 3\n'],
    ['keys that stand twice', 'let:\n  a: 1\n  b: {c: 1, c: 2}\n  a: 3\nlet:\n  d: 1\nlet: {e: 1}\n'],
    ['a quoted key that stands twice', 'let: 1\n"let": 2\n"format": 1\nformat: 2\n'],
    ['formulas that fall apart', 'let:\n  a: 1\n  b: 2\nlevers:\n  c: {radius: max(a, b), angle: 1,5}\n  d: {x: 1,500 mm}\n'],
    ['escapes', "require:\n  a b: \"x \\u0041 y\"\n  c, d: 'it''s'\n"],
    ['empty values', 'format:\nlet:\npoints:\n  a:\n  b: ~\n  c: null\n  d:\nrods: # none\n'],
    ['keys of one letter before a blank', 'let:\n    a:\n      b : 1\n    c : 2\n    d: 3\ne : 4\nf:\n  g: 1\n'],
    ['a bracket at the start', '{let:\n  {a: 1}\n}\n'],
    ['something before the first key', '- a\nlet:\n  b: 1\n'],
    ['nothing but comments', '# a\n\n# b'],
    ['no line end', 'format: 1\nlet:\n  a: 1'],
  ])('is the same with %s', (_, text) => {
    checkSameTree(text);
    // What was kept of the first is used, elsewhere in the file.
    checkSameTree(`# moved\n${text}`);
    checkSameTree(`format: 1\n${text}title: last\n`);
  });

  it('gives the definition of a reading without anything kept', () => {
    const draw = generator(771);
    const texts = Array.from({ length: 6 }, (_, i) => edited([...examples, sample][i % (examples.length + 1)]!, draw));
    const kept = texts.map((text) => written(readDefinition(`# moved\n${text}`)));
    for (const [i, text] of texts.entries()) {
      expect(kept[i]).toBe(written(readAnew(`# moved\n${text}`)));
    }
  }, 60_000);

  it('takes a fraction of the time after one more letter', () => {
    const large = timesAsLarge(twoBanks, 10);
    const texts = Array.from({ length: 15 }, (_, i) => large.replace('pad: {radius: 230 mm', `pad: {radius: 230.${i} mm`));
    const median = (run: (text: string) => unknown): number => {
      const times = texts.map((text) => {
        const began = cpuTime();
        run(text);
        return cpuTime() - began;
      });
      return times.sort((a, b) => a - b)[7] ?? NaN;
    };
    parseSource(large);
    expect(median(parseSource)).toBeLessThan(median(parseWhole) / 3);
  });
});

/** Of each text, and again. */
const EDITS = 12;

/** With what formulas compute left out, as functions cannot be compared. */
function written(reading: unknown): string {
  return JSON.stringify(reading);
}

const PIECES = Array.from('a7 :{}[],"\'#±*|>-?\n\r\t~\\\ufeff\u2028').concat(
  [' # x', '\r\n', ' mm', 'x: 1\n', '  x: 1\n', '    x: 1\n', '*a', '&a ', '!x ', ' |\n', ' >\n  ', '- ', '? ', ': ', '---\n', '...\n'],
  [
    '%YAML 1.2\n',
    '\n\t',
    '  ',
    '\n  ',
    '\n# c\n',
    'null',
    'let: {a: 1}\n',
    'max(a, b)',
    '1,5',
    '"a\\u0041"',
    "'it''s'",
    '<<: *a\n',
    '\n : 1\n',
  ],
);

/** Keys without their ends, and what a person may write instead. */
const WORDS = [
  'fr',
  'friction',
  'pivot',
  'q',
  'radius 26 mm',
  'a = 3',
  '- 3',
  '"q',
  'a:b',
  '[1',
  'a}',
  'null',
  'a # b',
  'a, b',
  'a :',
  '---',
  '"a"',
];

/** Letters put in, cut or copied; lines taken out, copied, moved, indented. */
function edited(text: string, draw: () => number): string {
  const kind = draw();
  const at = Math.floor(draw() * (text.length + 1));
  if (kind < 0.45) return text.slice(0, at) + pick(PIECES, draw) + text.slice(at + Math.max(0, Math.floor(draw() * 12) - 6));
  if (kind < 0.55) return text.slice(0, at) + text.slice(at + Math.floor(draw() * 40));
  if (kind < 0.62) {
    const from = Math.floor(draw() * text.length);
    return text.slice(0, at) + text.slice(from, from + Math.floor(draw() * 200)) + text.slice(at);
  }
  const lines = text.split('\n');
  const line = Math.floor(draw() * lines.length);
  if (kind < 0.7) return lines.toSpliced(line, 1).join('\n');
  if (kind < 0.78) return lines.toSpliced(line, 0, pick(lines, draw)).join('\n');
  if (kind < 0.84) return lines.toSpliced(line, 1, `${' '.repeat(Math.floor(draw() * 4))}${lines[line]!}`).join('\n');
  if (kind < 0.9) return lines.toSpliced(line, 1, lines[line]!.replace(/^ {1,2}/, '')).join('\n');
  if (kind < 0.93) return text.replace(/\r?\n/g, '\r\n');
  return lines
    .toSpliced(line, 1)
    .toSpliced(Math.floor(draw() * lines.length), 0, lines[line]!)
    .join('\n');
}

function pick<T>(list: readonly T[], draw: () => number): T {
  return list[Math.floor(draw() * list.length)]!;
}

/** Xorshift (Marsaglia 2003), so that each run makes the same edits. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}
