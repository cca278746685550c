import { describe, expect, it } from 'vitest';
import { compareTexts } from '../../src/compareTexts.ts';
import { solve } from '../../src/solve.ts';
import type { Comparison } from '../../src/studies/compare/comparison.ts';
import { judgeOf } from '../../src/studies/compare/judged.ts';
import { BASE, CLOSED_BY_TWO, SPRUNG_PEDAL, edited, without } from './compareFiles.ts';

const unjudged = ({ verdict }: Comparison): readonly string[] => verdict.unjudged.map(({ part, message }) => `${part}: ${message}`);
/** A spring without a free length, whose torque is not known; it hangs on an arm that `withTail` gives the shaft. */
const ENDLESS = '{from: [60, 0], to: shaft.tail, rate: 0.5 N/mm}';
const withTail = (text: string): string => text.replace('    drums:', '    arms: {tail: {radius: 20 mm, angle: 120 deg}}\n    drums:');
const goneUnchecked = ({ notChecked }: Comparison): readonly unknown[] => notChecked.gone.map(({ part, elsewhere }) => [part, elsewhere]);

describe('a shaft with plates', () => {
  it.each([
    ['loses all springs of the file', without(CLOSED_BY_TWO, 'springs'), 'since the file describes no springs any more'],
    [
      'loses the last spring that reaches it',
      CLOSED_BY_TWO.replaceAll('{lever: shaft, rate', '{lever: other, rate').replace(
        'levers:\n',
        'levers:\n  other: {pivot: [200, 0], arms: {a: {radius: 10 mm, angle: 0 deg}}}\n',
      ),
      'since no spring reaches it any more',
    ],
    [
      'has a spring that is not understood',
      CLOSED_BY_TWO.replace('180 N*mm', '180 N*mmm'),
      'since its closing torque is not known any more',
    ],
    ['loses its plates, the only ones', without(CLOSED_BY_TWO, 'plates'), 'since the pedal moves no plates any more'],
  ])('that %s can no longer be judged, which is worse', (_, text, why) => {
    const comparison = compareTexts(CLOSED_BY_TWO, text);
    expect(comparison.is).toBe('solved');
    expect(unjudged(comparison)).toContain(`shaft: what closes shaft, ${why}`);
    expect(comparison.verdict.worse).toBe(true);
    expect(compareTexts(text, CLOSED_BY_TWO).verdict).toMatchObject({ unjudged: [] });
  });

  it.each([
    ['keeps one of its springs', without(CLOSED_BY_TWO, 'springs', 'b')],
    [
      'is renamed',
      CLOSED_BY_TWO.replace('  shaft:', '  spindle:').replaceAll('shaft.', 'spindle.').replaceAll('lever: shaft', 'lever: spindle'),
    ],
    ['has its springs and plates renamed', CLOSED_BY_TWO.replace('  a:', '  c:').replace('  b:', '  d:').replace('bank:', 'row:')],
  ])('that %s is judged as before', (_, text) => {
    expect(unjudged(compareTexts(CLOSED_BY_TWO, text))).toEqual([]);
  });

  it('that was never closed by a spring loses nothing with springs that do not reach it, but its error stays open', () => {
    expect(unjudged(compareTexts(SPRUNG_PEDAL, SPRUNG_PEDAL.replace('2000 N*mm', '2000 N*mmm')))).toEqual([
      expect.stringMatching(/^shaft: was \[no-return-spring\]/),
    ]);
  });
});

describe('a fault that is gone', () => {
  it.each([
    ['the springs', without(SPRUNG_PEDAL, 'springs')],
    ['the plates', without(SPRUNG_PEDAL, 'plates')],
  ])('only with %s is worse, and told as no longer judged', (_, text) => {
    const comparison = compareTexts(SPRUNG_PEDAL, text);
    expect(unjudged(comparison)).toContainEqual(expect.stringMatching(/^shaft: was \[no-return-spring\] No return spring closes shaft/));
    expect(comparison.verdict).toMatchObject({ worse: true, newErrors: 0 });
    expect(comparison.findings.gone.map(({ code, elsewhere }) => [code, elsewhere])).toContainEqual(['no-return-spring', 'not-judged']);
  });

  it('because a spring now closes the shaft is mended', () => {
    const mended = SPRUNG_PEDAL.replaceAll('{lever: pedal, rate', '{lever: shaft, rate');
    const { findings, verdict } = compareTexts(SPRUNG_PEDAL, mended);
    expect(findings.gone.map(({ code, elsewhere }) => [code, elsewhere])).toContainEqual(['no-return-spring', 'judged']);
    expect(verdict.unjudged).toEqual([]);
  });

  it('of a single spring is mended by a second one, though its torque is not known', () => {
    const single = withTail(without(CLOSED_BY_TWO, 'springs', 'b'));
    const second = `  b: ${ENDLESS}\n`;
    const comparison = compareTexts(single, single.replace('sensors:\n', `${second}sensors:\n`));
    expect(comparison.findings.gone.map(({ code, elsewhere }) => [code, elsewhere])).toContainEqual(['single-return-spring', 'judged']);
    expect(unjudged(comparison)).toEqual(['shaft: what closes shaft, since its closing torque is not known any more']);
    expect(unjudged(compareTexts(single, withTail(without(CLOSED_BY_TWO, 'springs'))))).toContainEqual(
      expect.stringMatching(/^a: was \[single-return-spring\]/),
    );
  });

  it('only with the sensor is worse, and not where another sensor stands in its place or its range is mended', () => {
    const past = edited(['[0 deg, 110 deg]', '[0 deg, 60 deg]']);
    expect(compareTexts(BASE, past).findings.added.map(({ code }) => code)).toContain('sensor-past-range');
    const of = (text: string): readonly string[] => unjudged(compareTexts(past, text));
    expect(of(without(past, 'sensors'))).toEqual([expect.stringMatching(/^position: was \[sensor-past-range\]/)]);
    expect(of(BASE)).toEqual([]);
    const other = '  other: {lever: shaft, at_closed: 10 deg, range: [0 deg, 130 deg], signal: [0 V, 5 V]}\n';
    expect(of(without(past, 'sensors').replace('springs:\n', `sensors:\n${other}springs:\n`))).toEqual([]);
  });

  it('with a rod that is taken out is told so, and is not worse by itself', () => {
    const short = edited(['max: 100 mm', 'max: 90 mm']);
    const other = edited(['  link: {from', '  bar: {length: 97 mm, from'], ['adjust: {min: 85 mm, max: 100 mm, pitch: 1 mm}, ', '']);
    const { findings, file } = compareTexts(short, other);
    expect(file.gone).toContainEqual({ block: 'rods', name: 'link' });
    expect(findings.gone.find(({ code }) => code === 'rod-out-of-adjustment')?.elsewhere).toBe('no-part');
  });

  it('with the whole solution is not called mended', () => {
    const short = edited(['max: 100 mm', 'max: 90 mm']);
    const { findings, verdict } = compareTexts(short, without(short, 'pedal'));
    expect(findings.gone.map(({ elsewhere }) => elsewhere)).not.toContain('judged');
    expect(verdict).toMatchObject({ worse: true, lostSolution: true, unjudged: [] });
  });
});

describe('what was not checked', () => {
  it.each([
    ['its spring was taken out', CLOSED_BY_TWO, without(CLOSED_BY_TWO, 'springs'), 'a', 'not-looked-at'],
    ['its plates were taken out', CLOSED_BY_TWO, without(CLOSED_BY_TWO, 'plates'), 'bank', 'not-looked-at'],
    ['springs were put in', without(CLOSED_BY_TWO, 'springs'), CLOSED_BY_TWO, 'bank', 'checked'],
    ['springs were put in, for the foot', without(CLOSED_BY_TWO, 'springs'), CLOSED_BY_TWO, 'pedal', 'checked'],
    ['what was wanted was put in', CLOSED_BY_TWO.replace(', groove: 90 deg', ''), CLOSED_BY_TWO, 'shaft.wheel', 'checked'],
    ['the part without it is gone', BASE.replace(', groove: 120 deg', ''), without(BASE, 'levers'), 'bellcrank.quadrant', 'not-looked-at'],
    ['the sensor was taken out', CLOSED_BY_TWO, without(CLOSED_BY_TWO, 'sensors'), 'position', 'not-looked-at'],
    [
      'the sensor was given its stops',
      CLOSED_BY_TWO,
      CLOSED_BY_TWO.replace('bits: 10', 'bits: 10, mechanical: [-5 deg, 115 deg]'),
      'position',
      'checked',
    ],
    [
      'a vacuum was taken out',
      CLOSED_BY_TWO.replace('idle: 1.5 deg', 'idle: 1.5 deg, vacuum: 70 kPa'),
      CLOSED_BY_TWO,
      'bank',
      'not-looked-at',
    ],
    ['a keep-out was taken out', BASE, without(BASE, 'keep_out'), 'rail', 'not-looked-at'],
    ['the linkage is solved now', edited(['slack: 1 mm', 'slack: 1 mmm']), BASE, 'bank', 'checked'],
  ])('and is not told any more: %s', (_, was, is, part, elsewhere) => {
    expect(goneUnchecked(compareTexts(was, is))).toContainEqual([part, elsewhere]);
  });
});

it('is still not checked where only the reason is another', () => {
  const unknown = (name: string): string =>
    withTail(CLOSED_BY_TWO).replace(`  ${name}: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}`, `  ${name}: ${ENDLESS}`);
  const { notChecked } = compareTexts(unknown('a'), unknown('b'));
  expect(notChecked.added.map(({ part }) => part)).toEqual(['b']);
  expect(goneUnchecked(compareTexts(unknown('a'), unknown('b')))).toEqual([['a', 'checked']]);
});

it('counts as checked in part where friction goes with it, which is not computed', () => {
  const message = 'Not checked: pedal effort and release, friction, and snap-back';
  const of = (text: string): string => judgeOf(solve(text), undefined, []).unchecked({ part: 'pedal', message });
  expect([of(CLOSED_BY_TWO), of(without(CLOSED_BY_TWO, 'springs'))]).toEqual(['checked-in-part', 'not-looked-at']);
});

describe('closing torque', () => {
  const weaker = (share: number): Comparison => {
    const scaled = (figure: number): string => String(figure * share);
    return compareTexts(
      CLOSED_BY_TWO,
      CLOSED_BY_TWO.replaceAll('rate: 2.4', `rate: ${scaled(2.4)}`).replaceAll('preload: 180', `preload: ${scaled(180)}`),
    );
  };

  it('that falls by more than half is worse, by less is not', () => {
    const { verdict } = weaker(0.49);
    expect(verdict).toMatchObject({ worse: true, newErrors: 0, closesLess: [{ part: 'shaft' }] });
    expect(verdict.closesLess[0]?.was).toBeCloseTo(0.36, 9);
    expect(verdict.closesLess[0]?.is).toBeCloseTo(0.36 * 0.49, 9);
    expect(weaker(0.51).verdict).toMatchObject({ worse: false, closesLess: [] });
    expect(weaker(3).verdict).toMatchObject({ worse: false, closesLess: [] });
  });

  it('that falls to nothing is worse', () => {
    const { verdict } = compareTexts(CLOSED_BY_TWO, CLOSED_BY_TWO.replaceAll('preload: 180', 'preload: 0'));
    expect(verdict.closesLess.map(({ part, is }) => [part, is])).toEqual([['shaft', 0]]);
  });
});

describe('figures', () => {
  it('are told in the order of what matters', () => {
    const { outcomes } = compareTexts(
      BASE,
      edited(
        ['open: 68 deg', 'open: 60 deg'],
        ['rate: 2.4', 'rate: 3'],
        ['reach: 30 mm', 'reach: 31 mm'],
        ['light: max(pedal.effort) <= 200 N', 'far: max(main.pull) <= 60 mm'],
      ),
    );
    const abouts = outcomes.map(({ about }) => about);
    expect(abouts.filter((about, index) => about !== abouts[index - 1])).toEqual([
      'opening',
      'closing',
      'effort',
      'signal',
      ...(abouts.includes('required') ? ['required'] : []),
      'angle',
      'rest',
    ]);
    const about = (part: string, key: string): string | undefined => outcomes.find((each) => each.part === part && each.key === key)?.about;
    expect(about('shaft', 'opening.full')).toBe('opening');
    expect(about('bank', 'open area of one plate')).toBe('opening');
    expect(about('shaft', 'closing-greatest')).toBe('closing');
    expect(about('link', 'drive.least')).toBe('angle');
  });

  it('of a column that a requirement of either file speaks of come before those of none', () => {
    const demanding = edited(['  light:', '  free: min(link.drive) >= 5 deg\n  light:']);
    const about = (was: string, is: string): string | undefined =>
      compareTexts(was, is).outcomes.find(({ part, key }) => part === 'link' && key === 'drive.least')?.about;
    const longer = (text: string): string => text.replace('reach: 30 mm', 'reach: 31 mm');
    expect(about(demanding, longer(BASE))).toBe('required');
    expect(about(BASE, longer(demanding))).toBe('required');
    expect(about(BASE, longer(BASE))).toBe('angle');
  });
});
