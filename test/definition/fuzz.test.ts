/**
 * Whatever stands in the file, reading it returns, soon, with problems whose places lie in the text.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readDefinition } from '../../src/definition/read.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { cutPlaces } from '../support/cutPlaces.ts';
import { withoutStacks } from '../support/withoutStacks.ts';

const SAMPLE = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8');

/** ms; far above what a read takes, for a machine under load. */
const TIME_BOUND = 2_000;

let slowest = 0;

function checkRead(text: string): void {
  const began = cpuTime();
  const { problems } = withoutStacks(() => readDefinition(text));
  const took = cpuTime() - began;
  slowest = Math.max(slowest, took);
  hold(took < TIME_BOUND, `${took} ms`, text);
  for (const { span, replacements, message } of problems) {
    hold(message !== '', 'a problem without a message', text);
    for (const { start, end } of [span, ...(replacements ?? []).map((edit) => edit.span)]) {
      hold(start >= 0 && end >= start && end <= text.length, `a place ${start}-${end}`, text);
    }
  }
}

/** Cheaper than an expectation, of which there would be hundreds of thousands. */
function hold(stands: boolean, what: string, text: string): void {
  if (!stands) throw new Error(`${what} in ${JSON.stringify(text)}`);
}

describe('reading anything', () => {
  it('survives the sample cut at every place', () => {
    for (const end of cutPlaces(SAMPLE)) checkRead(SAMPLE.slice(0, end));
    console.log(`slowest read of a cut file: ${slowest.toFixed(1)} ms`);
  }, 120_000);

  it('survives lines taken out, doubled or indented', () => {
    const lines = SAMPLE.split('\n');
    for (let k = 0; k < lines.length; k++) {
      const line = lines[k] ?? '';
      for (const instead of [[], [line, line], [`  ${line}`], [line.trimStart()], [`\t${line}`], [`${line}:`], [`- ${line}`]]) {
        checkRead([...lines.slice(0, k), ...instead, ...lines.slice(k + 1)].join('\n'));
      }
    }
  }, 120_000);

  it('survives changed characters', () => {
    const odd = Array.from('{}[]:,#&*!|>\'"%@`-?~ \n\r\t\\()+./0aé±°·\u0000\ufeff\u2028\ud800');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(SAMPLE.length), fc.nat(3), fc.constantFrom(...odd)), { minLength: 1, maxLength: 6 }),
        (changes) => {
          let text = SAMPLE;
          for (const [at, taken, put] of changes) text = text.slice(0, at) + put + text.slice(at + taken);
          checkRead(text);
        },
      ),
      { numRuns: 1_500, seed: 11 },
    );
  }, 120_000);

  it('survives arbitrary text', () => {
    const word = fc.constantFrom(
      'format: 1\n',
      'levers:\n',
      '  a: ',
      '{',
      '}',
      '[',
      ']',
      '- ',
      '? ',
      ': ',
      ', ',
      '&a ',
      '*a',
      '"',
      "'",
      '|\n',
      '>\n',
      '\n',
      '  ',
      '\t',
      '#',
      '---\n',
      '...\n',
      '!x ',
      '%',
      'pivot: [0, 0]',
      'max(',
      ')',
      '3 mm',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 200 }),
          fc.array(word, { maxLength: 80 }).map((words) => words.join('')),
        ),
        checkRead,
      ),
      { numRuns: 3_000, seed: 13 },
    );
  }, 120_000);

  it('survives 256 kB of each thing that could be made slow', () => {
    const size = 255 * 1024;
    const fill = (piece: string, head = ''): string => head + piece.repeat(Math.floor((size - head.length) / piece.length));
    const heads = ['format: 1\nlet: {a: '];
    const pieces = ['[', '{', '(', '"', '- ', ': ', 'a:\n', ' ', '&a ', '!a ', ',', 'f(,', '|\n', '\n---\n', '\na', '\n  a: b: c', '\n}'];
    for (const head of heads) {
      for (const piece of pieces) {
        const text = fill(piece, head);
        const began = cpuTime();
        withoutStacks(() => readDefinition(text));
        const took = cpuTime() - began;
        if (took > 1_000) console.log(`${JSON.stringify(head + piece)}: ${took.toFixed(0)} ms`);
        expect(took, JSON.stringify(head + piece)).toBeLessThan(10_000);
      }
    }
  }, 400_000);

  it('takes time in proportion to the file', () => {
    const body = SAMPLE.replace('format: 1\n', '');
    const lever = (k: number): string =>
      `  l${k}:\n    pivot: [${k}, 0]\n    arms:\n      p: {radius: 30 mm, angle: 20 deg}\n      q: {radius: reach, angle: 20 deg}\n    stops: {closed: 0 deg, open: 80 deg}\n    friction: 10 N*mm\n`;
    const file = (count: number): string =>
      `format: 1\n${body.replace('levers:\n', `levers:\n${Array.from({ length: count }, (_, k) => lever(k)).join('')}`)}`;
    const median = (text: string): number => {
      const times = Array.from({ length: 21 }, () => {
        const began = cpuTime();
        readDefinition(text);
        return cpuTime() - began;
      });
      return times.sort((a, b) => a - b)[10] ?? NaN;
    };
    const [small, large] = [file(12), file(204)];
    const [quick, slow] = [median(small), median(large)];
    console.log(`${small.split('\n').length} lines: ${quick.toFixed(1)} ms; ${large.split('\n').length} lines: ${slow.toFixed(1)} ms`);
    expect(slow / quick).toBeLessThan((large.length / small.length) * 3);
  }, 60_000);
});
