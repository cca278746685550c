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
      expect.stringMatching(/^What this alone does cannot be told: it needs others of the changes \(.*`?longer`?/),
    ]);
  });

  test('is nothing where nothing that was found differs', () => {
    const is = FOUR_BARREL.replace('title: ', 'title: My ');
    expect(told(FOUR_BARREL, is)).toEqual([['title', ['Alone it changes nothing that was found']]]);
  });

  test('is told of a whole part that is gone or new, in the text that has it', () => {
    const without = FOUR_BARREL.replace(/ {2}return_rear: [^\n]*\n/, '');
    const [[gonePath, asGone] = ['', []]] = told(FOUR_BARREL, without);
    const [[newPath, asNew] = ['', []]] = told(without, FOUR_BARREL);
    expect([gonePath, newPath]).toEqual(['springs.return_rear', 'springs.return_rear']);
    // A second way: the whole of both files, compared.
    const whole = effectLines(compareAnswers(solve(FOUR_BARREL), solve(without)));
    expect(whole).toEqual(expect.arrayContaining(asGone.filter((line) => !line.startsWith('and '))));
    expect(asGone.join('\n')).toMatch(/closing torque/);
    expect(asNew.join('\n')).toMatch(/closing torque/);
  });

  test('of a part that is new beside other changes leaves them out', () => {
    const was = FOUR_BARREL.replace(/ {2}return_rear: [^\n]*\n/, '').replace('open: 82 deg', 'open: 70 deg');
    const effects = new Map(told(was, FOUR_BARREL));
    expect(effects.get('springs.return_rear')?.join('\n')).toMatch(/closing torque/);
    expect(effects.get('springs.return_rear')?.join('\n')).not.toMatch(/full opening/);
    expect(effects.get('levers.shaft.stops.open')?.join('\n')).toMatch(/shaft full opening 70° → 82°/);
  });

  test('of a part that others lean on is not told, and says what is then missing', () => {
    const is = FOUR_BARREL.replace('levers:\n', 'levers:\n  relay: {pivot: [400, 0], arms: {in: {radius: 30, angle: 10}}}\n').replace(
      /^rods:\n/m,
      'rods:\n  far: {from: shaft.arm, to: relay.in}\n',
    );
    const effects = new Map(told(FOUR_BARREL, is));
    expect(effects.get('levers.relay')).toEqual([
      expect.stringMatching(/^What this alone does cannot be told: it needs others of the changes \(.*relay/),
    ]);
    expect(effects.get('rods.far')?.[0]).not.toMatch(/cannot be told/);
  });

  test('of a name is none', () => {
    const renamed = FOUR_BARREL.replaceAll('return_rear', 'rear_return');
    expect(told(FOUR_BARREL, renamed)).toEqual([['springs.rear_return', ['A name alone changes nothing that is worked out']]]);
  });
});

test('what all changes do together tells no figure twice', () => {
  const is = FOUR_BARREL.replace('crank_reach: 38 mm', 'crank_reach: 41 mm');
  const lines = effectLines(compareAnswers(solve(FOUR_BARREL), solve(is)));
  expect(lines.filter((line) => line.includes('pedal greatest effort'))).toEqual([expect.stringMatching(/^rose: pedal greatest effort /)]);
});
