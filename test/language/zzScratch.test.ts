import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { test } from 'vitest';
import { hoverAt } from '../../src/language/hover.ts';
import { completionsAt } from '../../src/language/completion.ts';
import { inlayHints, INLAY_KINDS } from '../../src/language/inlayHints.ts';
import { lensesOf } from '../../src/language/lenses.ts';
import { outline } from '../../src/language/symbols.ts';
import { indexNames } from '../../src/language/names.ts';
import { statusLine } from '../../src/language/statusLine.ts';
import { requirementTests } from '../../src/language/requirementTests.ts';
import { textFixes } from '../../src/language/fixes.ts';
import { offeredFixes } from '../../src/language/offeredFixes.ts';
import { dialAt } from '../../src/picture/dialAt.ts';
import { partAt } from '../../src/language/partAt.ts';
import { solve } from '../../src/solve.ts';
import { EVERY_NAME } from './support/everyName.ts';
const F = readFileSync('examples/firm-pedal.throttle.yaml', 'utf8');
const T = readFileSync('examples/tune-a-bellcrank.throttle.yaml', 'utf8');
const odd = [...Array.from('{}[]:,#&*!|>\'"%@`-?~ \n\r\t\\()+./0aé±°·\u0000\ufeff\u2028\ud800'), '&a ', '*a', '!!str ', '\r\n', '<<: *a\n', '\t', '😀', '\u0301', '1e999', '-', 'null', '? ', '---\n', '...\n', '"', "'"];
test('fuzz', () => {
  let n = 0; let worst = 0;
  fc.assert(fc.property(fc.constantFrom(EVERY_NAME, F, T), fc.array(fc.tuple(fc.nat(4000), fc.nat(3), fc.constantFrom(...odd)), { minLength: 1, maxLength: 3 }), fc.boolean(), (base, changes, crlf) => {
    let text = crlf ? base.replaceAll('\n', '\r\n') : base;
    for (const [at, taken, put] of changes) { const k = at % text.length; text = text.slice(0, k) + put + text.slice(k + taken); }
    const a = solve(text);
    const ix = indexNames(text);
    const spots = changes.flatMap(([at]) => [at % text.length, (at + 2) % text.length, (at * 7) % text.length]);
    for (const s of spots) {
      const t0 = performance.now();
      const h = hoverAt(a, s, ix);
      worst = Math.max(worst, performance.now() - t0);
      if (h && !(h.span.start <= s && s <= h.span.end && h.span.end <= text.length)) throw new Error(`hover span at ${s} ${JSON.stringify(h)}`);
      if (h && /undefined|NaN|\[object/.test(h.markdown)) throw new Error(`odd words ${h.markdown}`);
      for (const c of completionsAt(text, s, a)) if (!(c.replace.start <= s && s <= c.replace.end && c.replace.end <= text.length)) throw new Error(`completion ${JSON.stringify(c)}`);
      textFixes(a, { start: s, end: s }); offeredFixes(a, { start: s, end: s }); dialAt(a, s); partAt(ix, s);
      n++;
    }
    for (const h of inlayHints(a, { start: 0, end: text.length }, INLAY_KINDS)) if (/undefined|NaN/.test(h.label + h.tooltip)) throw new Error(JSON.stringify(h));
    for (const l of lensesOf(a)) if (/undefined|NaN/.test(l.title)) throw new Error(JSON.stringify(l));
    for (const o of outline(ix, a)) if (/undefined|NaN/.test(JSON.stringify(o))) throw new Error(JSON.stringify(o));
    statusLine(a); requirementTests(a);
  }), { numRuns: 250, seed: 5, interruptAfterTimeLimit: 120000 });
  console.log('spots', n, 'worst hover ms', worst.toFixed(0));
}, 200000);
