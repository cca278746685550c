/** Facts against closed forms and against the law of cosines at 20 001 stations. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/findings/finding.ts';
import { solve } from '../../src/solve.ts';
import { bisect, degrees, fourBarAt, radians, scan, type FourBarByHand } from './handGeometry.ts';

const SLACK = 1.2;
const PULL = 32;
const DRUM = 22;
const OPEN = 60;

const text = (length = '', extra = ''): string => `format: 1
let: {rod: 100 mm}
levers:
  crank: {pivot: [0, 0], arms: {out: {radius: 34, angle: 165}}, drums: {wheel: {radius: ${DRUM}, wraps: clockwise}}}
  shaft: {pivot: [95, 14], arms: {arm: {radius: 32, angle: 140}}, stops: {closed: 0 deg, open: ${OPEN} deg}}
pedal: {cable: main, pull: ${PULL} mm}
cables:
  main: {enters: [-70, 34], to: crank.wheel, slack: ${SLACK} mm}
rods:
  link: {from: crank.out, to: shaft.arm${length}, adjust: {pitch: 0.8 mm}}
plates: {bank: {lever: shaft, bore: 40 mm}}
${extra}`;

const bar: FourBarByHand = { from: [0, 0], driving: 34, start: 165, to: [95, 14], driven: 32, end: 140 };
const drawnLength = Math.hypot(
  95 + 32 * Math.cos(radians(140)) - 34 * Math.cos(radians(165)),
  14 + 32 * Math.sin(radians(140)) - 34 * Math.sin(radians(165)),
);

/** Crank and shaft turn clockwise. */
const crankAt = (travel: number): number => Math.max(0, degrees((PULL * travel - SLACK) / DRUM));
const free = (travel: number, of = bar): number => -(fourBarAt(of, -crankAt(travel))?.turned ?? NaN);
const opening = (travel: number): number => Math.min(OPEN, free(travel));
const tight = SLACK / PULL;
const stopped = bisect((travel) => free(travel) - OPEN, tight, 1);

const facts = solve(text()).facts;
const fact = (key: string, of: readonly Fact[] = facts): Fact => {
  const found = of.filter((each) => each.key === key);
  const [first] = found;
  if (first === undefined || found.length > 1) throw new Error(`${found.length} facts ${key}`);
  return first;
};

describe('how the throttle follows the pedal', () => {
  it.each([10, 25, 50, 90])('reaches %d %% of its opening where the law of cosines says', (share) => {
    const travel = bisect((t) => free(t) - (OPEN * share) / 100, tight, 1);
    expect(fact(`travel-at-${share}`).figure?.value).toBeCloseTo(travel, 12);
    expect(fact(`travel-at-${share}`).part).toBe('shaft');
  });

  it('says that an opening is never reached, or passed already at rest', () => {
    const short = solve(text().replace(`pull: ${PULL}`, 'pull: 12')).facts;
    expect(fact('travel-at-90', short)).toMatchObject({ why: 'never reached' });
    expect(fact('travel-at-90', short).figure).toBeUndefined();
    const wide = solve(text().replace(`open: ${OPEN}`, 'open: 20').replace('closed: 0', 'closed: 6')).facts;
    expect(fact('travel-at-10', wide)).toMatchObject({ why: 'open that far at rest' });
  });

  /** Differences over a ten-thousandth, one-sided at the ends of the movement. */
  const slope = (travel: number): number => {
    const step = 1e-6;
    const low = Math.max(travel - step, tight);
    const high = Math.min(travel + step, stopped);
    return (free(high) - free(low)) / (high - low) / PULL;
  };

  it('quickens at tip-in against the mean from where it starts to where it stops', () => {
    const mean = OPEN / (stopped - tight) / PULL;
    expect(fact('tip-in').figure?.value).toBeCloseTo(slope(tight) / mean, 5);
    expect(fact('tip-in').travel).toBeCloseTo(tight, 12);
  });

  it('has its greatest and least ratio where 20 001 stations have them', () => {
    const within = (travel: number): number => (travel < tight || travel > stopped ? NaN : slope(travel));
    const greatest = scan(within, -1);
    const least = scan(within, 1);
    const perMillimetre = (key: string): number => degrees(fact(key).figure?.value ?? NaN) / 1000;
    expect(perMillimetre('greatest-ratio')).toBeCloseTo(greatest.value, 4);
    expect(fact('greatest-ratio').travel).toBeCloseTo(greatest.travel, 3);
    expect(perMillimetre('least-ratio')).toBeCloseTo(least.value, 4);
    expect(fact('least-ratio').travel).toBeCloseTo(least.travel, 3);
    expect(fact('least-ratio').figure?.dimension).toBe('angle-per-length');
  });

  it('has no greatest ratio at a dead centre', () => {
    const found = fact(
      'greatest-ratio',
      solve(text().replace('radius: 32, angle: 140', 'radius: 30, angle: 66').replace(`open: ${OPEN}`, 'open: 82')).facts,
    );
    expect(found.figure).toBeUndefined();
    expect(found.why).toContain('dead centre');
  });
});

describe('one turn of an adjuster', () => {
  const longer = { ...bar, length: drawnLength + 0.8 };
  // With the rod one turn longer the crank rests where the shaft meets its closed stop, and has so much more or less slack.
  const rest = bisect((rotation) => fourBarAt(longer, -rotation)?.turned ?? NaN, -4, 4);
  const turned = (travel: number): number => {
    const crank = Math.max(rest, degrees((PULL * travel - SLACK) / DRUM));
    return Math.min(OPEN, -(fourBarAt(longer, -crank)?.turned ?? NaN));
  };

  it('turns the shaft by what the longer rod gives at the same pedal', () => {
    const value = fact('adjuster-at-50').figure?.value ?? NaN;
    expect(Math.abs(degrees(value))).toBeGreaterThan(0.5);
    expect(degrees(value)).toBeCloseTo(turned(0.5) - opening(0.5), 9);
    expect(fact('adjuster-at-50').part).toBe('link');
  });

  it('tells nothing of full pedal where the stop holds the shaft either way', () => {
    expect(facts.filter(({ key }) => key === 'adjuster-at-100')).toEqual([]);
  });

  it('is found though the length follows from a formula', () => {
    const formula = solve(text(', length: rod * 1').replace('rod: 100 mm', `rod: ${drawnLength} mm`)).facts;
    expect(fact('adjuster-at-50', formula).figure?.value).toBeCloseTo(fact('adjuster-at-50').figure?.value ?? NaN, 10);
  });
});

it('says nothing of levers without plates', () => {
  const { facts } = solve(text().replace('plates: {bank: {lever: shaft, bore: 40 mm}}\n', ''));
  expect(facts.map(({ part, key }) => `${part} ${key}`)).toEqual(['main slack-at-rest']);
});
