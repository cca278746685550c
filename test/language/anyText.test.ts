/** Whatever stands in the file, names, rename, outline, folding and tokens answer, soon, with places that lie in the text. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { indexLines, type Span } from '../../src/definition/span.ts';
import { findDefinition } from '../../src/language/definition.ts';
import { foldingRanges } from '../../src/language/folding.ts';
import { findHighlights } from '../../src/language/highlights.ts';
import { indexNames, type NameIndex } from '../../src/language/names.ts';
import { findReferences } from '../../src/language/references.ts';
import { prepareRename, renameAt } from '../../src/language/rename.ts';
import { selectionSpans } from '../../src/language/selectionRanges.ts';
import { outline, type OutlineEntry } from '../../src/language/symbols.ts';
import { semanticTokens } from '../../src/language/tokens.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { cutPlaces } from '../support/cutPlaces.ts';
import { withoutStacks } from '../support/withoutStacks.ts';
import { EVERY_NAME } from './support/everyName.ts';

const SAMPLE = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8');

/** ms at work; far above what all of it takes. */
const TIME_BOUND = 3_000;

/** Characters of a text that are shown where it fails; longer ones repeat themselves. */
const MOST_SHOWN = 4_000;

/** Cheaper than an expectation, of which there would be thousands a text. */
function hold(stands: boolean, what: string, text: string): void {
  if (!stands) throw new Error(`${what} in ${JSON.stringify(text.slice(0, MOST_SHOWN))}`);
}

function checkAll(text: string, cursors: readonly number[], bound = TIME_BOUND): void {
  withoutStacks(() => checkAnswers(text, cursors, bound));
}

function checkAnswers(text: string, cursors: readonly number[], bound: number): void {
  const began = cpuTime();
  const inText = ({ start, end }: Span): void => hold(start >= 0 && end >= start && end <= text.length, `a place ${start}-${end}`, text);
  const index = indexNames(text);
  for (const spans of [index.places, semanticTokens(index)]) {
    let end = 0;
    for (const { span } of spans) {
      inText(span);
      hold(span.start >= end, `an overlap at ${span.start}`, text);
      end = span.end;
    }
  }
  const checkOutline = (entries: readonly OutlineEntry[], parent: Span): void => {
    for (const { span, selection, name, children } of entries) {
      hold(name !== '', 'an entry without a name', text);
      hold(span.start >= parent.start && span.end <= parent.end, `${name} outside its parent`, text);
      hold(selection.start >= span.start && selection.end <= span.end, `${name} with its key outside`, text);
      checkOutline(children, span);
    }
  };
  checkOutline(outline(index), { start: 0, end: text.length });
  const lines = indexLines(text).lineCount;
  for (const { startLine, endLine } of foldingRanges(index)) hold(endLine > startLine && endLine < lines, `a fold of ${startLine}`, text);
  for (const cursor of cursors) checkAt(index, cursor, inText);
  hold(cpuTime() - began < bound, 'too slow', text);
}

function checkAt(index: NameIndex, cursor: number, inText: (span: Span) => void): void {
  const { text } = index;
  const found = findDefinition(index, cursor);
  if (found !== undefined) inText(found.target);
  for (const span of findReferences(index, cursor, true)) inText(span);
  for (const { span } of findHighlights(index, cursor)) inText(span);
  let inner: Span | undefined;
  for (const span of selectionSpans(index, cursor)) {
    inText(span);
    const length = span.end - span.start;
    const grows = inner === undefined || (span.start <= inner.start && span.end >= inner.end && length > inner.end - inner.start);
    hold(grows, `a selection that does not grow at ${span.start}`, text);
    inner = span;
  }
  const prepared = prepareRename(index, cursor);
  const renamed = renameAt(index, cursor, 'fresh');
  if (prepared.kind === 'refused') expect(renamed).toEqual(prepared);
  if (renamed.kind === 'edits') for (const { span } of renamed.edits) inText(span);
}

describe('answers to any text', () => {
  it('survive files cut off anywhere', () => {
    // Every second of the places: reading is cut at every one, of another file, in `test/definition/fuzz.test.ts`.
    for (const end of cutPlaces(EVERY_NAME).filter((_, k) => k % 2 === 0)) checkAll(EVERY_NAME.slice(0, end), [end - (end % 7)]);
    const sample = SAMPLE.replaceAll('\n', '\r\n');
    for (let end = 0; end <= sample.length; end += 7) checkAll(sample.slice(0, end), [end]);
  }, 240_000);

  it('survive lines taken out, doubled, indented or turned into something else', () => {
    const lines = EVERY_NAME.split('\n');
    for (let k = 0; k < lines.length; k++) {
      const line = lines[k] ?? '';
      for (const instead of [
        [],
        [line, line],
        [`  ${line}`],
        [line.trimStart()],
        [`\t${line}`],
        [`${line}:`],
        [`- ${line}`],
        [`${line} {[`],
      ]) {
        const text = [...lines.slice(0, k), ...instead, ...lines.slice(k + 1)].join('\n');
        checkAll(text, [Math.floor((text.length * (k % 9)) / 9)]);
      }
    }
  }, 240_000);

  it('survive changed characters', () => {
    const odd = Array.from('{}[]:,#&*!|>\'"%@`-?~ \n\r\t\\()+./0aé±°·\u0000\ufeff\u2028\ud800');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(EVERY_NAME.length), fc.nat(3), fc.constantFrom(...odd)), { minLength: 1, maxLength: 6 }),
        fc.nat(EVERY_NAME.length),
        (changes, cursor) => {
          let text = EVERY_NAME;
          for (const [at, taken, put] of changes) text = text.slice(0, at) + put + text.slice(at + taken);
          checkAll(text, [Math.min(cursor, text.length)]);
        },
      ),
      // Reading has six times as many of its own.
      { numRuns: 250, seed: 17 },
    );
  }, 240_000);

  it('survive arbitrary text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), fc.nat(200), (text, cursor) => checkAll(text, [cursor])),
      { numRuns: 1_000, seed: 19 },
    );
  }, 120_000);

  it('take time in proportion to the file', () => {
    const body = EVERY_NAME.slice(EVERY_NAME.indexOf('levers:\n') + 8);
    const lever = (k: number): string =>
      `  l${k}:\n    pivot: anchor\n    arms:\n      p: {radius: reach, angle: 20 deg}\n    friction: 10 N*mm\n`;
    const file = (count: number): string =>
      `${EVERY_NAME.slice(0, -body.length)}${Array.from({ length: count }, (_, k) => lever(k)).join('')}${body}`;
    const median = (text: string): number => {
      const times = Array.from({ length: 15 }, () => {
        const began = cpuTime();
        const index = indexNames(text);
        semanticTokens(index);
        outline(index);
        foldingRanges(index);
        return cpuTime() - began;
      });
      return times.sort((a, b) => a - b)[7] ?? NaN;
    };
    const [small, large] = [file(16), file(300)];
    const [quick, slow] = [median(small), median(large)];
    console.log(`${small.split('\n').length} lines: ${quick.toFixed(1)} ms; ${large.split('\n').length} lines: ${slow.toFixed(1)} ms`);
    expect(slow / quick).toBeLessThan((large.length / small.length) * 3);
  }, 60_000);

  it('survive 250 kB of things that could be made slow', () => {
    const fill = (piece: string, head = ''): string => head + piece.repeat(Math.floor((250_000 - head.length) / piece.length));
    const texts = [
      fill('a.', 'require: {a: '),
      fill('reach+', 'let: {reach: 3 mm, a: '),
      fill('  a: &a *a\n', 'let:\n'),
      fill('# \n'),
      fill('[', 'let: '),
      fill('  x: [0, 0]\n', 'points:\n'),
      fill('  x: y\n', 'let:\n'),
      fill(' word\n', 'require:\n  a: '),
      fill('\\"', 'let: {a: "'),
    ];
    for (const text of texts) checkAll(text, [9, 200], 20_000);
  }, 240_000);
});
