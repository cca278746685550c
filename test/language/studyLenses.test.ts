import { describe, expect, test } from 'vitest';
import { askableDemands, changeableFigures, standingAt } from '../../src/language/figureQuestions.ts';
import { studyLenses } from '../../src/language/studyLenses.ts';
import { solve } from '../../src/solve.ts';
import { example, FOUR_BARREL } from '../support/editorRequests.ts';

const TUNE = example('tune-a-bellcrank');

describe('what can be studied', () => {
  test('has a line above it: the first tolerance, `tune` and `measured`', () => {
    const lenses = studyLenses(solve(TUNE)).map(({ kind, span }) => [kind, TUNE.slice(span.start, span.end)]);
    expect(lenses).toEqual([
      ['tolerance', '38 mm ± 0.1 mm'],
      ['tune', 'tune'],
      ['fit', 'measured'],
    ]);
  });

  test('has none where there is nothing to study, or nothing is solved', () => {
    expect(studyLenses(solve(TUNE.replace('lever: pedal, opens', 'lever: nowhere, opens')))).toEqual([]);
    expect(studyLenses(solve(''))).toEqual([]);
    expect(studyLenses(solve(FOUR_BARREL)).map(({ kind }) => kind)).not.toContain('tune');
  });
});

describe('what can be solved for', () => {
  test('is every plain figure of the linkage, under its name in `let` or its path', () => {
    const answers = solve(TUNE);
    const figures = changeableFigures(answers);
    expect(figures.slice(0, 2).map(({ change, written }) => [change, written])).toEqual([
      ['crank_reach', '38 mm ± 0.1 mm'],
      ['shaft_reach', '32 mm ± 0.1 mm'],
    ]);
    const names = figures.map(({ change }) => change);
    expect(names).toContain('cables.main.slack');
    // What follows from a formula, asks or tells of readings cannot be changed.
    expect(names.filter((name) => /^(?:tune|measured|require|limits)\b|bellcrank.arms.out.radius/.test(name))).toEqual([]);
    expect(standingAt(figures, TUNE.indexOf('38 mm') + 2)?.change).toBe('crank_reach');
    expect(standingAt(figures, TUNE.indexOf('let:'))).toBeUndefined();
  });

  test('is asked against the lines of `require`, those that are not met first', () => {
    const text = TUNE.replace('>= 81 deg', '>= 30 deg').replace('<= 15% * max', '<= 1% * max');
    expect(askableDemands(solve(text)).map(({ name, outcome }) => [name, outcome])).toEqual([
      ['soft tip-in', 'failed'],
      ['opens fully', 'passed'],
    ]);
  });
});
