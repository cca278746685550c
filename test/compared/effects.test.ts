import { describe, expect, test } from 'vitest';
import { listChanges } from '../../src/compared/changes.ts';
import { effectLines, effectsAlone } from '../../src/compared/effects.ts';
import { solve } from '../../src/solve.ts';
import { compareAnswers } from '../../src/studies/compare.ts';
import { FOUR_BARREL } from '../support/editorRequests.ts';

/** Each change with what it does alone. */
function told(was: string, is: string): readonly (readonly [string, readonly string[]])[] {
  const [before, after] = [solve(was), solve(is)];
  const { file } = compareAnswers(before, after);
  return listChanges(file, was, is).map((change) => [
    change.changed.path,
    change.alone === undefined ? [] : effectsAlone(change, before, after, solve),
  ]);
}

describe('what a change does alone', () => {
  test('is not what the others do', () => {
    const is = FOUR_BARREL.replace('preload: 240 N*mm', 'preload: 20 N*mm').replace('open: 82 deg', 'open: 70 deg');
    const effects = new Map(told(FOUR_BARREL, is));
    expect(effects.get('levers.shaft.stops.open')?.join('\n')).toMatch(/opens fully/);
    expect(effects.get('springs.return_front.preload')?.join('\n')).toMatch(/closing torque/);
    expect(effects.get('springs.return_front.preload')?.join('\n')).not.toMatch(/opens fully/);
  });

  test('is told of what is new or gone within a part, in the text that lacks it', () => {
    const without = FOUR_BARREL.replace('stops: {closed: 0 deg, open: 82 deg}', 'stops: {closed: 0 deg}');
    const [[newPath, asNew] = ['', []]] = told(without, FOUR_BARREL);
    const [[gonePath, asGone] = ['', []]] = told(FOUR_BARREL, without);
    expect([newPath, gonePath]).toEqual(['levers.shaft.stops.open', 'levers.shaft.stops.open']);
    expect(asNew[0]).not.toMatch(/cannot be told/);
    expect(asGone[0]).not.toMatch(/cannot be told/);
  });

  test('is not told where it needs another change, and says so', () => {
    const is = FOUR_BARREL.replace('let:\n', 'let:\n  longer: 40 mm\n').replace('{radius: crank_reach,', '{radius: longer,');
    const effects = new Map(told(FOUR_BARREL, is));
    expect(effects.get('levers.bellcrank.arms.out.radius')).toEqual([
      'What this alone does cannot be told: it needs others of the changes',
    ]);
  });

  test('is nothing where nothing that was found differs', () => {
    const is = FOUR_BARREL.replace('title: ', 'title: My ');
    expect(told(FOUR_BARREL, is)).toEqual([['title', ['Alone it changes nothing that was found']]]);
  });

  test('of whole parts is not asked: they are listed', () => {
    const is = FOUR_BARREL.replace(/ {2}return_rear: [^\n]*\n/, '');
    expect(told(FOUR_BARREL, is)).toEqual([['springs.return_rear', []]]);
  });
});

test('what all changes do together tells no figure twice', () => {
  const is = FOUR_BARREL.replace('crank_reach: 38 mm', 'crank_reach: 41 mm');
  const lines = effectLines(compareAnswers(solve(FOUR_BARREL), solve(is)));
  expect(lines.filter((line) => line.includes('greatest effort'))).toEqual([expect.stringMatching(/^rose: pedal greatest effort /)]);
});
