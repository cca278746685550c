import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { lensesOf, lensPlaces } from '../../src/language/lenses.ts';
import { indexNames } from '../../src/language/names.ts';
import { partFigureText } from '../../src/outputs/factText.ts';
import { figureText, percentText } from '../../src/outputs/figure.ts';
import { solve } from '../../src/solve.ts';

const EXAMPLE = readFileSync('examples/four-barrel.throttle.yaml', 'utf8');

/** `what it stands at: title`. */
function told(text: string): readonly string[] {
  return lensesOf(solve(text)).map(({ span, title }) => `${text.slice(span.start, span.end)}: ${title}`);
}

describe('lenses', () => {
  test('stand at the name of each part that the pedal moves, in the order of the text', () => {
    const lenses = lensesOf(solve(EXAMPLE));
    expect(lenses.map(({ action }) => `${action.part} ${action.name}`)).toEqual([
      'lever bellcrank',
      'lever shaft',
      'pedal pedal',
      'cable main',
      'rod link',
      'plates bank',
      'sensor position',
      'spring return_front',
      'spring return_rear',
    ]);
    for (const { span, action } of lenses) expect(EXAMPLE.slice(span.start, span.end)).toBe(action.name);
    expect(lenses.map(({ span }) => span.start)).toEqual(lenses.map(({ span }) => span.start).sort((a, b) => a - b));
  });

  test('say the figure that matters first', () => {
    const answers = solve(EXAMPLE);
    for (const { title, action } of lensesOf(answers)) {
      // How far the pedal goes stands in its line.
      if (action.part === 'pedal') continue;
      const part = answers.parts.find(({ kind, name }) => kind === action.part && name === action.name);
      expect(title.replace(' of pedal travel', '')).toBe(partFigureText(part!.figures[0]!));
    }
    expect(told(EXAMPLE)).toContain('shaft: opens 82° at 98.1 % of pedal travel');
  });

  test('stand at the pedal where its block is written in lines', () => {
    const lines = EXAMPLE.replace(/^pedal: \{(.*)\}$/m, (_, keys: string) => `pedal:\n  ${keys.replaceAll(', ', '\n  ')}`);
    expect(lines).not.toBe(EXAMPLE);
    expect(told(lines).filter((line) => line.startsWith('pedal: '))).toHaveLength(1);
  });

  test('say of the pedal what it takes, and how far it goes where that is not known', () => {
    const answers = solve(EXAMPLE);
    const effort = answers.facts.find(({ key }) => key === 'effort-greatest');
    if (effort?.figure === undefined || effort.travel === undefined) throw new Error('no effort is told');
    const words = `greatest effort ${figureText(effort.figure)} at ${percentText(effort.travel)} of pedal travel`;
    expect(told(EXAMPLE)).toContain(`pedal: ${words}`);
    expect(told(EXAMPLE.replace(', pad: pad', ''))).toContain('pedal: travel 27°');
    expect(told(EXAMPLE.replace(/rate: [^,}]*/, 'rate: ?'))).toContain('pedal: travel 27°');
  });

  test('of a linkage that cannot be assembled say so', () => {
    expect(
      told(EXAMPLE.replace('to: shaft.arm', 'to: shaft.arm\n    length: 20 mm')).some((line) => /none|cannot be assembled/.test(line)),
    ).toBe(true);
  });

  test('there are none of a text that cannot be solved', () => {
    for (const text of ['', '\ufeff', 'a', 'format: 1\nlevers: {', '- - -']) expect(told(text)).toEqual([]);
  });

  test('of any cut of an example each part has one at most', () => {
    for (const name of readdirSync('examples').filter((each) => each.endsWith('.throttle.yaml'))) {
      const whole = readFileSync(`examples/${name}`, 'utf8');
      for (let part = 0; part <= 20; part++) {
        const starts = lensesOf(solve(whole.slice(0, Math.round((whole.length * part) / 20)))).map(({ span }) => span.start);
        expect(new Set(starts).size).toBe(starts.length);
      }
    }
  });

  test('of every whole example have the places that are known without solving', () => {
    for (const name of readdirSync('examples').filter((each) => each.endsWith('.throttle.yaml'))) {
      const text = readFileSync(`examples/${name}`, 'utf8');
      const places = lensesOf(solve(text)).map(({ span, action: { part, name } }) => ({ span, part, name }));
      expect(lensPlaces(indexNames(text))).toEqual(places);
    }
  });
});
