/** The studies of tolerances with a cable, an open stop, two shafts, a sensor and springs; each figure by another way. */
import { describe, expect, test } from 'vitest';
import { createStatics } from '../../../src/forces/closing.ts';
import { createBuild, putDimensions } from '../../../src/kinematics/createBuild.ts';
import { quantile } from '../../../src/numeric/quantile.ts';
import { solve } from '../../../src/solve.ts';
import { randomOf } from '../../../src/numeric/random.ts';
import { settings, tightenings } from '../../../src/studies/tolerance/advice.ts';
import { distributionsOf, yieldOf } from '../../../src/studies/tolerance/distribution.ts';
import { randomBuilds } from '../../../src/studies/tolerance/monteCarlo.ts';
import { createGauge } from '../../../src/studies/tolerance/gauge.ts';
import { createSettle } from '../../../src/studies/tolerance/quickSettle.ts';
import { effectsOn } from '../../../src/studies/tolerance/sensitivity.ts';
import { corners, stackOf } from '../../../src/studies/tolerance/stack.ts';
import { middleValues } from '../../../src/kinematics/toleranced.ts';
import { settleStops } from '../../../src/travel/stops.ts';
import { finished } from '../../../src/studies/finished.ts';
import { caseOf, textbookLinkage, twoShafts } from './cases.ts';

const text = twoShafts('± 0.1 mm');
const own = caseOf(text);
const { mechanism, outcomes, toleranced } = own;
const effects = finished(effectsOn(mechanism, outcomes, toleranced));

describe('outcomes', () => {
  test('are what the table of the file says at rest and at full pedal', () => {
    const answers = solve(text);
    const [first, second, signal] = answers
      .table([0, 1], ['first.opening', 'second.opening', 'tps.signal'])
      .columns.map(({ values }) => values as number[]) as [number[], number[], number[]];
    const figure = (name: string): number => effects[own.outcome(name)]!.middle;
    const degrees = (name: string): number => (figure(name) * 180) / Math.PI;
    expect(degrees('opening of first at full pedal')).toBeCloseTo(first[1]!, 9);
    expect(first[1]).toBeCloseTo(68, 9);
    expect(degrees('opening of second at full pedal')).toBeCloseTo(second[1]!, 9);
    expect(degrees('opening of first less that of second at rest')).toBeCloseTo(first[0]! - second[0]!, 9);
    expect(figure('signal of tps at rest')).toBeCloseTo(signal[0]!, 9);
    expect(figure('signal of tps at full pedal')).toBeCloseTo(signal[1]!, 9);
    const stations = Array.from({ length: 101 }, (_, i) => i / 100);
    const angles = answers.table(stations, ['link.transmission']).columns[0]!.values as number[];
    expect(degrees('least transmission angle of link')).toBeCloseTo(Math.min(...angles), 9);
    // No friction in the file: the column is without it too.
    const [effort] = answers.table([0.5], ['pedal.effort']).columns[0]!.values as number[];
    expect(figure('effort at half pedal, without friction')).toBeCloseTo(effort!, 9);
  });

  test('of a file without plates, springs and sensors are the angles of its parts alone', () => {
    const bare = caseOf(textbookLinkage('± 0.05 mm').replace(/plates:[^]*$/, ''));
    expect(bare.outcomes.map(({ name }) => name)).toEqual(['least transmission angle of coupler', 'least drive angle of coupler']);
  });
});

describe('effects', () => {
  test('an open stop alone decides how far its lever opens', () => {
    const full = effects[own.outcome('opening of first at full pedal')]!;
    expect(full.effects[0]!.of.path).toBe('levers.first.stops.open');
    expect(full.effects[0]!.rate).toBeCloseTo(1, 9);
    for (const { rate } of full.effects.slice(1)) expect(Math.abs(rate)).toBeLessThan(1e-9);
  });

  test('closed forms and differences tell the same of an opening and of the signal that follows from it', () => {
    const opening = effects[own.outcome('opening of second at full pedal')]!.effects;
    const signal = effects[own.outcome('signal of tps at full pedal')]!.effects;
    // 4 V over 110°.
    const perRadian = 4 / ((110 * Math.PI) / 180);
    for (const { of, rate } of opening) {
      if (of.path === 'sensors.tps.at_closed') continue;
      const other = signal.find((each) => each.of.path === of.path)!;
      expect(Math.abs(other.rate - perRadian * rate)).toBeLessThan(1e-4 * Math.max(1, Math.abs(other.rate)));
    }
  });

  test('where two closed stops meet at once both sides are told, and the ends bound every corner', () => {
    const at = own.outcome('opening of first at rest');
    const stack = stackOf(effects[at]!.effects);
    expect(stack.kinked).toBe(true);
    const range = finished(corners(mechanism, outcomes, toleranced))![at]!;
    expect(Math.abs(stack.lowest)).toBeLessThan(1e-12);
    expect(Math.abs(range.least)).toBeLessThan(1e-12);
    expect(Math.abs(range.most / stack.highest - 1)).toBeLessThan(0.02);
  });

  test('corners of more than twelve dimensions are not gone through', () => {
    const many = Array.from({ length: 13 }, () => toleranced[0]!);
    expect(finished(corners(mechanism, outcomes, many))).toBeUndefined();
  });
});

test.each([
  ['one open stop', text],
  // In some builds the one is met first, in some the other.
  [
    'two in one group',
    text.replace('    arms: {link: {radius: 30 mm ± 0.1 mm, angle: 60 deg}}', '$&\n    stops: {open: 68 deg ± 0.5 deg}'),
  ],
  ['two in two groups', text.replace('angle: 100 deg}}}', 'angle: 100 deg}}, stops: {open: 44 deg ± 0.5 deg}}')],
])('builds with %s settled the quick way stand as those settled the long way', (_, own) => {
  const { mechanism, outcomes, toleranced } = caseOf(own);
  const settle = createSettle(mechanism, middleValues(mechanism));
  const [quick, long] = [createBuild(mechanism), createBuild(mechanism)];
  const [one, other] = [new Float64Array(outcomes.length), new Float64Array(outcomes.length)];
  const gauges = [createGauge(quick, outcomes), createGauge(long, outcomes)];
  const random = randomOf(3);
  const situations = new Set<string>();
  for (let k = 0; k < 300; k++) {
    const values = middleValues(mechanism);
    // Far wider than the tolerances, so that some never come to their stop.
    toleranced.forEach(({ index, middle, half }, j) => (values[index] = middle + 6 * half * random.normal(k, j)));
    settle(quick, values);
    putDimensions(long, values);
    situations.add(
      settleStops(long)
        .map(({ lever }) => lever)
        .join(),
    );
    gauges[0]!.read(one);
    gauges[1]!.read(other);
    one.forEach((value, i) => {
      if (Number.isNaN(value) || Number.isNaN(other[i])) expect(value).toEqual(other[i]);
      else expect(Math.abs(value - other[i]!)).toBeLessThan(1e-9 * Math.max(1, Math.abs(value)));
    });
  }
  // Now the one stop holds, now another or none.
  expect(situations.size).toBeGreaterThan(1);
});

test('one instance of statics serves a build that is given other dimensions', () => {
  const build = createBuild(mechanism);
  const [kept, figure] = [createStatics(build), new Float64Array(outcomes.length)];
  expect(kept.each).toHaveLength(1);
  const gauge = createGauge(build, outcomes);
  const at = own.outcome('effort at half pedal, without friction');
  gauge.read(figure);
  const before = figure[at]!;
  const values = middleValues(mechanism);
  values[mechanism.dimensions.find(({ path }) => path === 'springs.close.preload')!.index]! *= 2;
  putDimensions(build, values);
  settleStops(build);
  gauge.read(figure);
  const anew = createBuild(mechanism, values);
  settleStops(anew);
  const fresh = new Float64Array(outcomes.length);
  createGauge(anew, outcomes).read(fresh);
  expect(figure[at]).toBeCloseTo(fresh[at]!, 12);
  expect(figure[at]).not.toBeCloseTo(before, 3);
});

describe('builds', () => {
  const builds = finished(randomBuilds(mechanism, outcomes, toleranced, { seed: 5, law: 'normal', from: 0, to: 2000 }));
  const { outcomes: each, kept } = finished(distributionsOf(outcomes, [builds]));

  test('a yield counts what keeps its limits, and nothing is kept where nothing judges', () => {
    const difference = own.outcome('opening of first less that of second at rest');
    const within = builds.values[difference]!.filter((value) => Math.abs(value) <= (0.1 * Math.PI) / 180).length;
    expect(each[difference]!.kept!.share).toBe(within / 2000);
    expect(within).toBeGreaterThan(0);
    expect(within).toBeLessThan(2000);
    expect(each[own.outcome('signal of tps at rest')]!.kept).toBeUndefined();
    expect(kept!.share).toBeLessThanOrEqual(within / 2000);
  });

  test('a build that cannot be assembled is counted, and is not kept', () => {
    const torn = caseOf(textbookLinkage('± 30 mm'));
    const some = finished(randomBuilds(torn.mechanism, torn.outcomes, torn.toleranced, { seed: 5, law: 'uniform', from: 0, to: 500 }));
    const at = torn.outcome('opening of driven at full pedal');
    const found = finished(distributionsOf(torn.outcomes, [some]));
    expect(found.outcomes[at]!.missing).toBeGreaterThan(0);
    const without = some.values[at]!.reduce((count, value) => count + (Number.isNaN(value) ? 1 : 0), 0);
    expect(found.outcomes[at]!.missing).toBe(without);
    expect(found.kept!.share).toBeLessThanOrEqual(1 - without / 500);
  });
});

describe('advice', () => {
  test('shares of the variance make up the whole, and half of a tolerance wins what a stack of it says', () => {
    const at = effects[own.outcome('signal of tps at full pedal')]!;
    const advice = tightenings(at);
    expect(advice.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    const halved = finished(
      effectsOn(
        mechanism,
        outcomes,
        toleranced.map((each) => (each.path === advice[0]!.of.path ? { ...each, half: each.half / 2 } : each)),
      ),
    )[own.outcome('signal of tps at full pedal')]!;
    expect(stackOf(halved.effects).rootSumSquare / stackOf(at.effects).rootSumSquare).toBeCloseTo(1 - advice[0]!.wonByHalf, 9);
  });

  test('a rod set by one outcome leaves of the others what builds set so have left', () => {
    // Without plates nothing stops the linkage at rest, where the angle would have a kink.
    const written = textbookLinkage('± 0.01 mm');
    const stopped = caseOf(written);
    const bare = caseOf(written.replace(/plates:[^]*$/, ''));
    const narrow = { ...bare, outcomes: [stopped.outcomes[stopped.outcome('opening of driven at full pedal')]!, ...bare.outcomes] };
    const of = finished(effectsOn(narrow.mechanism, narrow.outcomes, narrow.toleranced));
    const [full, least] = [0, 1];
    const setting = finished(settings(narrow.mechanism, of, narrow.toleranced)).find(({ by }) => by === narrow.outcomes[full])!;
    expect(setting).toMatchObject({ rod: 'coupler', adjustable: true, beyondRange: false });
    expect(setting.spreads[full]).toMatchObject({ after: 0, won: 1 });
    // Set by the secant method, in 400 builds, until the opening stands at its middle.
    const rod = narrow.mechanism.dimensions.find(({ path }) => path === 'rods.coupler.length')!.index;
    const build = createBuild(narrow.mechanism);
    const gauge = createGauge(build, narrow.outcomes);
    const found = new Float64Array(narrow.outcomes.length);
    const random = randomOf(9);
    const [lengths, left]: [number[], number[]] = [[], []];
    for (let k = 0; k < 400; k++) {
      const values = middleValues(narrow.mechanism);
      narrow.toleranced.forEach(({ index, middle, half }, j) => (values[index] = middle + (half / 3) * random.normal(k, j)));
      const cut = values[rod]!;
      const off = (length: number): number => {
        values[rod] = length;
        putDimensions(build, values);
        gauge.read(found);
        return found[full]! - of[full]!.middle;
      };
      let [a, b] = [cut, cut + 1e-5];
      let [atA, atB] = [off(a), off(b)];
      for (let i = 0; i < 5 && Math.abs(atB) > 1e-13; i++) {
        [a, b, atA] = [b, b - (atB * (b - a)) / (atB - atA), atB];
        atB = off(b);
      }
      lengths.push(b - cut);
      left.push(found[least]! - of[least]!.middle);
    }
    const threeDeviations = (all: readonly number[]): number => 3 * Math.sqrt(all.reduce((sum, each) => sum + each * each, 0) / all.length);
    // A standard deviation of 400 is known to one part in √800, 3.5 %.
    expect(Math.abs(threeDeviations(lengths) / setting.takes - 1)).toBeLessThan(0.12);
    expect(setting.spreads[least]!.kinked).toBe(false);
    expect(Math.abs(threeDeviations(left) / setting.spreads[least]!.after - 1)).toBeLessThan(0.12);
  });
});

test('quantiles, of definition 7', () => {
  // 1, 2, 3, 4: at (n − 1) × share, so 1.75, 2.5 and 3.25 by hand.
  const sample = Float64Array.from([1, 2, 3, 4]);
  expect([0, 0.25, 0.5, 0.75, 1].map((share) => quantile(sample, share))).toEqual([1, 1.75, 2.5, 3.25, 4]);
  expect(quantile(new Float64Array(0), 0.5)).toBeNaN();
});

test('the interval of a share', () => {
  // By hand from the formula: 0 of 10 has (z²/10) / (1 + z²/10) above it.
  const z2 = 1.959963984540054 ** 2;
  const { low, high } = yieldOf(0, 10);
  expect(low).toBe(0);
  expect(high).toBeCloseTo(z2 / 10 / (1 + z2 / 10), 12);
});
