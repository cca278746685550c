/** Fixes of the text: each does what its title says, the problem is gone, and nothing else has changed. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import { PROBLEM_DOCS } from '../../src/definition/problemDocs.ts';
import { fixOfAll, textFixes } from '../../src/language/fixes.ts';
import { solve } from '../../src/solve.ts';
import { atCursor, checkFix } from '../support/checkFix.ts';
import { takeApart } from '../support/marks.ts';

const file = (levers: string): string => `format: 1
levers:
  shaft: ${levers}
pedal: {cable: main, pull: 33.2 mm}
cables:
  main: {enters: [40, 24], to: shaft.wheel, slack: 1 mm}
`;

const SOUND = file('{pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}}');
const spoiled = (from: string, to: string): string => SOUND.replace(from, () => to);

describe('a fix of the text', () => {
  it('writes the nearest key, and is preferred where only one is near', () => {
    const fix = checkFix(spoiled('drums', 'dru$0mms'), SOUND, 'Write `drums`');
    expect(fix.preferred).toBe(true);
    expect(checkFix(spoiled('pivot', 'pi$0vit'), SOUND, 'Write `pivot`').preferred).toBe(true);
  });

  it('is not preferred where another word is as near', () => {
    const text = SOUND.replace('wheel: {', 'wheat: {radius: 20 mm, wraps: clockwise}, wheel: {').replace('shaft.wheel', 'shaft.wheet$0');
    const { answers, cursor } = atCursor(text);
    const fixes = textFixes(answers, cursor);
    expect(fixes.map(({ title }) => title)).toEqual(['Write `wheat`']);
    expect(fixes[0]?.preferred).toBe(false);
  });

  it('writes the nearest name and word of a choice', () => {
    expect(checkFix(spoiled('shaft.wheel', 'shaft.wh$0eal'), SOUND, 'Write `wheel`').preferred).toBe(true);
    checkFix(spoiled('counterclockwise', 'countrclockwise$0'), SOUND, 'Write `counterclockwise`');
    checkFix(spoiled('counterclockwise', '$0ccw'), SOUND, 'Write `counterclockwise`');
  });

  it('takes a unit for the one that it was meant for', () => {
    checkFix(spoiled('24 mm', '24 mil$0limeters'), SOUND, 'Write `mm`');
    checkFix(spoiled('24 mm', '$01 ± 0.01 inch'), spoiled('24 mm', '1 inch ± 0.01 inch'), 'Write `1 inch`');
  });

  it('puts a point for a decimal comma, and a slash into a tolerance that could be a sum, which it does not prefer', () => {
    expect(checkFix(spoiled('pull: 33.2', 'pull: 33,2$0'), SOUND, 'Write `33.2 mm`').preferred).toBe(true);
    const fix = checkFix(
      spoiled('33.2 mm}', '33.2 mm $0+0.2 -0.1 mm}'),
      spoiled('33.2 mm}', '33.2 mm +0.2/-0.1 mm}'),
      'Write `+0.2/-0.1 mm`',
    );
    expect(fix.preferred).toBe(false);
  });

  it('quotes a formula in a flow block, and keeps the comment behind it', () => {
    const lets = (radius: string): string =>
      `${SOUND.replace('levers:', 'let: {reach: 20 mm}\nlevers:').replace('24 mm', () => radius)}# end\n`;
    checkFix(lets('max(reach,$0 24 mm)'), lets('"max(reach, 24 mm)"'), 'Write `"max(reach, 24 mm)"`');
  });

  it('keeps CRLF, a byte order mark, comments and quotes', () => {
    const dressed = (text: string): string => `\ufeff# head\n${text}# tail\n`.replaceAll('\n', '\r\n');
    checkFix(dressed(spoiled('pivot', 'pivit$0')), dressed(SOUND), 'Write `pivot`');
    checkFix(dressed(spoiled('24 mm', `'24,5$0 mm'`)), dressed(spoiled('24 mm', `'24.5 mm'`)), 'Write `24.5`');
    const headed = `format: 1\r\n${dressed(spoiled('format: 1\n', '')).slice(1)}`;
    checkFix(dressed(spoiled('format: 1\n', '')).replace('levers:', 'levers$0:'), `\ufeff${headed}`, 'Write `format: 1`');
  });

  it('indents with spaces what is indented with tabs', () => {
    checkFix(SOUND.replace('  main:', '\t$0main:'), SOUND, 'Indent with spaces');
  });

  it('turns a joint round in both places, and does not prefer it', () => {
    const text = (from: string, to: string): string => `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 40 mm, angle: 60 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 40 mm, angle: 60 deg}}}
pedal: {lever: pedal, opens: counterclockwise, travel: 60 deg}
rods:
  link: {from: ${from}, to: ${to}}
`;
    const fix = checkFix(text('shaft.arm', '$0pedal.out'), text('pedal.out', 'shaft.arm'), 'Exchange `shaft.arm` and `pedal.out`');
    expect(fix.preferred).toBe(false);
  });

  it('is there at either end of what is wrong and nowhere else', () => {
    const text = spoiled('pivot', 'pivit');
    const at = text.indexOf('pivit');
    const answers = solve(text);
    const counts = [at - 1, at, at + 5, at + 6].map((place) => textFixes(answers, { start: place, end: place }).length);
    expect(counts).toEqual([0, 1, 1, 0]);
    expect(textFixes(answers, { start: 0, end: text.length })).toHaveLength(1);
  });
});

describe('a fix of all problems of a kind', () => {
  const both = SOUND.replace('24 mm', '24,5 mm').replace('33.2', '33,2');

  it('makes them all at once where each has one right answer', () => {
    const after = SOUND.replace('24 mm', '24.5 mm');
    checkFix(both.replace('24,5', '24$0,5'), after, 'Do so for all 2 figures that cannot be read in this file');
  });

  it('is not offered for a single one, nor where one of them is a guess or has no fix', () => {
    expect(fixOfAll(solve(SOUND.replace('24 mm', '24,5 mm')), 'bad-quantity')).toBeUndefined();
    expect(fixOfAll(solve(both.replace('slack: 1 mm', 'slack: 1,000 mm')), 'bad-quantity')).toBeUndefined();
    const sums = SOUND.replace('24 mm', '24 mm +0.2 -0.1 mm').replace('33.2 mm', '33.2 mm +0.2 -0.1 mm');
    expect(solve(sums).problems).toHaveLength(2);
    expect(fixOfAll(solve(sums), 'bad-tolerance')).toBeUndefined();
  });
});

describe('every documented problem that has a fix', () => {
  const examples = Object.entries(PROBLEM_DOCS).flatMap(([code, doc]) =>
    'example' in doc ? [[code, takeApart(doc.example).text] as const] : [],
  );

  it.each(examples)('%s is gone once it is fixed', (_code, text) => {
    const answers = solve(text);
    for (const problem of answers.problems) {
      const fixes = textFixes(answers, problem.span).filter(({ problems }) => problems.length === 1 && problems[0] === problem);
      expect(fixes.length).toBe(problem.replacements === undefined ? 0 : 1);
      for (const { edits } of fixes) {
        const after = solve(applyEdits(text, edits));
        expect(after.problems.filter(({ code }) => code === problem.code).length).toBeLessThan(answers.problems.length);
      }
    }
  });
});

describe('fixes of any text', () => {
  const SAMPLES = ['four-barrel', 'two-banks', 'binding-broken'].map((name) =>
    readFileSync(new URL(`../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8'),
  );

  it('never throw, and leave all other text as it was', () => {
    const scrap = fc.constantFrom(
      '',
      '\t',
      ': ',
      '{',
      ']',
      '"',
      '\ud83d\ude00',
      ',',
      ' +0.1 -0.2',
      '\r\n',
      '*a',
      '12,5',
      'max(a, b)',
      '\u0000',
    );
    fc.assert(
      fc.property(fc.constantFrom(...SAMPLES), fc.nat(), fc.nat(12), scrap, (sample, where, gone, put) => {
        const at = where % sample.length;
        const text = sample.slice(0, at) + put + sample.slice(at + gone);
        const answers = solve(text);
        for (const { edits, title } of textFixes(answers, { start: 0, end: text.length })) {
          expect(title).not.toBe('');
          expect(title).not.toMatch(/[\r\n]/);
          const sorted = [...edits].sort((a, b) => a.span.start - b.span.start);
          sorted.forEach(({ span }, i) => {
            expect(span.start >= 0 && span.end <= text.length && span.start <= span.end).toBe(true);
            expect(span.start).toBeGreaterThanOrEqual(sorted[i - 1]?.span.end ?? 0);
          });
          expect(kept(text, sorted)).toBe(kept(applyEdits(text, edits), moved(sorted)));
        }
      }),
      { numRuns: 120 },
    );
  });
});

type Edits = readonly { readonly span: { readonly start: number; readonly end: number }; readonly text: string }[];

/** The text without what the edits, in rising order, replace. */
function kept(text: string, edits: Edits): string {
  return edits.reduceRight((rest, { span }) => rest.slice(0, span.start) + rest.slice(span.end), text);
}

/** Where the new text of each edit stands afterwards. */
function moved(edits: Edits): Edits {
  let shift = 0;
  return edits.map(({ span, text }) => {
    const start = span.start + shift;
    shift += text.length - (span.end - span.start);
    return { span: { start, end: start + text.length }, text };
  });
}
