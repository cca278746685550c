/** How near friction comes to holding a shaft, and what closes it with each spring off, as facts: by hand. */
import { describe, expect, it } from 'vitest';
import { solve } from '../../src/solve.ts';

const file = (friction: string, second = 'rate: 1 N*mm/deg, preload: 100 N*mm'): string => `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {radius: 24 mm, wraps: counterclockwise}}, stops: {closed: 0 deg, open: 80 deg}${friction}}
pedal: {cable: main, pull: 30 mm}
cables: {main: {enters: [40, 24], to: shaft.wheel}}
plates: {bank: {lever: shaft, bore: 40 mm, seat: 6 deg, idle: 4 deg}}
springs:
  first: {lever: shaft, rate: 2 N*mm/deg, preload: 150 N*mm}
  second: {lever: shaft, ${second}}
`;

const told = (text: string): ReadonlyMap<string, number | string | undefined> =>
  new Map(
    solve(text)
      .facts.filter(({ part }) => part === 'shaft')
      .map(({ key, figure, why }) => [key, figure?.value ?? why]),
  );

describe('what closes a shaft', () => {
  it('is told whole and with each return spring off, over a drag of 40 N·mm', () => {
    const facts = told(file(', friction: 40 N*mm'));
    expect(facts.get('margin-least')).toBeCloseTo(250 / 40, 9);
    expect(facts.get('margin-least-off-first')).toBeCloseTo(100 / 40, 9);
    expect(facts.get('margin-least-off-second')).toBeCloseTo(150 / 40, 9);
    expect(facts.get('closing-least-off-first')).toBeCloseTo(0.1, 12);
    expect(facts.get('closing-least-off-second')).toBeCloseTo(0.15, 12);
  });

  it('has no margin told without friction, and none of a spring that does not count', () => {
    expect([...told(file('')).keys()].filter((key) => key.startsWith('margin'))).toEqual([]);
    const facts = told(file(', friction: 40 N*mm', 'rate: 1 N*mm/deg, preload: 100 N*mm, counts_as_return: false'));
    expect([...facts.keys()].filter((key) => key.includes('-off-'))).toEqual(['closing-least-off-first', 'margin-least-off-first']);
  });
});
