/** What the pedal does where it stands, in words, held against the charts, which the core works out of its own columns. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { valueAt } from '../../../webview/charts/curve.ts';
import { figureText } from '../../../webview/charts/figures.ts';
import { atPedalText } from '../../../webview/page/atPedal.ts';
import { percentIn } from '../../../webview/page/percentIn.ts';
import { BINDING, EXAMPLE, showOf } from '../../support/viewForAll.ts';
import { handMadeShown } from '../../support/handMadeShown.ts';

const exampleText = (name: string) => readFileSync(new URL(`../../../examples/${name}.throttle.yaml`, import.meta.url), 'utf8');

const effortOf = ({ picture, charts }: Pick<ReturnType<typeof showOf>, 'picture' | 'charts'>) => {
  const chart = charts.find(({ id }) => id === 'effort');
  return chart && { chart, picture };
};
const textOf = (text: string, at: number | undefined) => {
  const show = showOf(text);
  return plain(atPedalText(show.picture, effortOf(show), at));
};
/** With spaces that break. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

describe('the words at the pedal', () => {
  test('say the opening in percent and degrees, and what the foot feels each way, as the charts do', () => {
    const show = showOf(EXAMPLE);
    const figureOf = (id: string, column: string, at: number) => {
      const curve = show.charts.find((chart) => chart.id === id)!.curves.find((each) => each.column === column)!;
      return figureText(valueAt(show.picture.stations, curve.values, at), 1);
    };
    for (const at of [0.1, 0.4, 0.735, 1]) {
      const [, percent, effort, release] = /^throttle (\S+) % open \(\S+°\), effort (\S+) N, coming back (\S+) N$/.exec(
        textOf(EXAMPLE, at),
      )!;
      expect([percent, effort, release]).toEqual([
        figureOf('progression', 'shaft.opening', at),
        figureOf('effort', 'pedal.effort', at),
        figureOf('effort', 'pedal.release', at),
      ]);
    }
    expect(textOf(EXAMPLE, 0)).toMatch(/^throttle closed, effort /);
  });

  test('tell two shafts by their names, more than two by the least and the most open, and one without a position', () => {
    expect(textOf(exampleText('two-banks'), 0.4)).toMatch(/^front \S+ % open \(\S+°\), rear \S+ % open \(\S+°\), effort /);
    const { picture } = handMadeShown();
    const [plates] = picture.plates;
    const shaft = picture.levers[2]!;
    const many = (last: typeof shaft) => ({
      ...picture,
      levers: [...picture.levers.slice(0, 2), shaft, shaft, last],
      plates: [2, 3, 4].map((lever) => ({ ...plates!, lever })),
    });
    const later = { ...shaft, rotation: shaft.rotation.map((rotation) => rotation / 2) };
    // Of 1.43 rad the first two stand 1.4 rad open at full pedal, the last half as far.
    expect(plain(atPedalText(many(later), undefined, 1))).toBe('3 throttle shafts 49.0 to 97.9 % open');
    const lost = { ...shaft, rotation: shaft.rotation.map(() => Number.NaN) };
    expect(plain(atPedalText(many(lost), undefined, 1))).toBe('1 of 3 throttle shafts has no position');
  });

  test('say where the last position is beyond it', () => {
    expect(textOf(BINDING, 0.8)).toBe('no position here: the last that could be solved is at 54.6 %');
    expect(textOf(BINDING, 0.5)).toMatch(/^throttle /);
  });

  test('are never longer than those that stand behind them', () => {
    for (const text of [EXAMPLE, BINDING, exampleText('two-banks'), exampleText('firm-pedal')]) {
      const show = showOf(text);
      const lengthAt = (at: number | undefined) => plain(atPedalText(show.picture, effortOf(show), at)).length;
      for (let at = 0; at <= 1; at += 0.01) expect(lengthAt(at)).toBeLessThanOrEqual(lengthAt(undefined));
    }
  });
});

test.each([
  ['40', 40],
  [' 62.5 % ', 62.5],
  ['62,5', 62.5],
  ['0', 0],
  ['100', 100],
  ['100.1', undefined],
  ['-1', undefined],
  ['', undefined],
  ['half', undefined],
  ['1,5,2', undefined],
  ['40 mm', undefined],
])('a typed travel of “%s” is %s', (typed, percent) => {
  expect(percentIn(typed)).toBe(percent);
});
