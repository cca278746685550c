/** Whatever stands in the file, showing it returns, soon, with what the page takes. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { showAnswers } from '../../src/picture/showAnswers.ts';
import { solve } from '../../src/solve.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { checkShown, FILES } from './shown.ts';

/** ms; far above what it takes, for a machine under load. */
const TIME_BOUND = 1_000;

/** @returns whether anything is shown */
function checkText(text: string): boolean {
  const answers = solve(text);
  const began = cpuTime();
  const shown = showAnswers(answers);
  expect(cpuTime() - began, text).toBeLessThan(TIME_BOUND);
  if (shown === undefined) return false;
  checkShown(shown, text);
  return true;
}

describe('showing anything', () => {
  it('survives files cut anywhere', () => {
    let shown = 0;
    for (const { text } of FILES) for (let k = 0; k <= 40; k++) if (checkText(text.slice(0, Math.round((text.length * k) / 40)))) shown++;
    expect(shown).toBeGreaterThan(60);
  });

  it('survives a line taken out', () => {
    for (const { text } of FILES) {
      const lines = text.split('\n');
      lines.forEach((line, k) => {
        if (!line.trim().startsWith('#')) checkText(lines.filter((_, other) => other !== k).join('\n'));
      });
    }
  });

  it('survives figures changed to anything', () => {
    const figure = fc.constantFrom('0', '-1', '1e9', '-1e300', '1e-300', '360 deg', '0 mm', '90', 'reach', '[1, 2]', '""', 'null', '7 kPa');
    const change = fc.record({ file: fc.nat(FILES.length - 1), at: fc.nat(10_000), to: figure });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        let { text } = FILES[changes[0]!.file]!;
        for (const { at, to } of changes) {
          const figures = [...text.matchAll(/-?\d+(?:\.\d+)?/g)].slice(1);
          const found = figures[at % figures.length]!;
          text = text.slice(0, found.index) + to + text.slice(found.index + found[0].length);
        }
        checkText(text);
      }),
      { numRuns: 150 },
    );
  });

  it('survives pieces of files put together', () => {
    const piece = fc.tuple(
      fc.nat(FILES.length - 1),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 3 }), (pieces) => {
        checkText(
          pieces
            .map(([file, from, to]) => {
              const { text } = FILES[file]!;
              return text.slice(Math.floor(Math.min(from, to) * text.length), Math.ceil(Math.max(from, to) * text.length));
            })
            .join('\n'),
        );
      }),
      { numRuns: 60 },
    );
  });
});
