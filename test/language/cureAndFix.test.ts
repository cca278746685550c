/** What a finding says to write and what its fix writes is one figure: round, in the unit of the file, and on the side that passes. */
import { describe, expect, it } from 'vitest';
import { applyEdits } from '../../src/definition/edit.ts';
import type { FindingCode } from '../../src/findings/codes.ts';
import { offeredFixes } from '../../src/language/offeredFixes.ts';
import { solveFix } from '../../src/language/solvedFix.ts';
import { solve } from '../../src/solve.ts';
import { bank, banks, held, levered, tight, wound } from '../editor/fixCases/linkages.ts';
import { EXAMPLE } from '../support/viewForAll.ts';

const withLink = (length: string): string => EXAMPLE.replace('    to: shaft.arm\n', `    to: shaft.arm\n    length: ${length}\n`);
const inches = (text: string): string =>
  text.replace(
    /link: \{([^}]*)length: (\d+) mm/,
    (_, before: string, mm: string) => `link: {${before}length: ${(Number(mm) / 25.4).toFixed(4)} inch`,
  );

describe('a cure with a figure and the fix beside it', () => {
  it.each<[FindingCode, string, string, RegExp]>([
    ['opening-missed', withLink('108 mm'), 'rods.link.length', /^Set link to (\S+ \S+) \(/],
    ['opening-missed', withLink('4.25 inch'), 'rods.link.length', /^Set link to (\S+ inch) \(/],
    ['slack-used-up', withLink('112.19 mm'), 'rods.link.length', /^Set link to (\S+ \S+) \(/],
    ['slack-used-up', tight('1 mm'), 'cables.main.slack', /^Give it (\S+ \S+) of slack or more$/],
    ['slack-used-up', tight('0.0221 inch'), 'cables.main.slack', /^Give it (\S+ inch) of slack or more$/],
    ['held-open', held('101 mm'), 'rods.link.length', /^Set link to (\S+ \S+), at which/],
    ['held-open', inches(held('101 mm')), 'rods.link.length', /^Set link to (\S+ inch), at which/],
    ['held-open', banks.replace('[-100, 0]', '[-100, 3]'), 'rods.rear_link.length', /^Set rear_link to (\S+ \S+), at which/],
    [
      'not-assembled',
      levered({ link: ', length: 15 mm', shaft: '  shaft: {pivot: [100, 3], arms: {arm: {radius: 40 mm, angle: 60 deg}}}' }),
      'rods.link.length',
      /: set it to (\S+ \S+), its length/,
    ],
    [
      'rod-out-of-adjustment',
      withLink('115 mm').replace('length: 115 mm', 'length: 115 mm\n    adjust: {min: 108 mm, max: 112 mm}'),
      'rods.link.length',
      /^Set it to (\S+ \S+), its length/,
    ],
    [
      'groove-left',
      wound({ drum: ', groove: 60 deg', stops: '{open: 90 deg}', pull: '34.517 mm' }),
      'levers.shaft.drums.wheel.groove',
      /^Carry the groove on to (\S+°) or more$/,
    ],
    [
      'plate-past-square',
      wound({ stops: '{open: 90 deg}', pull: '36 mm', rest: bank('1.5042 deg') }),
      'levers.shaft.stops.open',
      /^Set the open stop at (\S+°), where/,
    ],
  ])('%s in %#: one figure, with which the finding goes', (code, text, writes, cured) => {
    const answers = solve(text);
    const found = answers.findings.find((each) => each.code === code);
    const [, figure] = cured.exec(found?.cure ?? '') ?? [undefined, `no figure in “${found?.cure}”`];
    const offer = offeredFixes(answers, { start: 0, end: text.length }).find((each) => each.code === code && each.writes === writes);
    const solved = offer && solveFix(answers, offer);
    if (solved?.kind !== 'solved') throw new Error(`No fix: ${solved?.reason ?? found?.message ?? 'nothing found'}`);
    expect(solved.title).toContain(` to ${figure.replace('°', ' deg')}:`);
    // As round as a workshop works to, 0.01 mm or 0.01°, or a decade finer where only that passes.
    expect(figure).toMatch(/^\d+(\.\d{1,3})?( mm|°)$|^\d+(\.\d{1,4})? inch$/);
    const left = solve(applyEdits(text, solved.edits)).findings.filter((each) => each.code === code && each.part === found?.part);
    expect(left).toEqual([]);
  });
});
