/**
 * Readings beside a kink: the slack is just about taken up at the first, and the sum has a least to either side. The least of all, and the car
 * that was read, are of another model of the same parts: a four-bar and a cable written by hand, fitted by Gauss and Newton from near the truth.
 */
import { expect, test } from 'vitest';
import type { Fit } from '../../../src/studies/fit/fit.ts';
import { fitted } from './bench.ts';
import { otherCar } from './otherCar.ts';

const FIT = ['link.length', 'main.slack', 'tps.at_closed'];

function squares({ readings, columns, dimensions }: Fit): number {
  const known = dimensions.reduce(
    (sum, { prior, value }) => sum + (prior === undefined ? 0 : ((value - prior.middle) / prior.deviation) ** 2),
    0,
  );
  return readings.reduce((sum, { of, value, fitted: found }) => sum + ((found - value) / columns[of]!.noise) ** 2, known);
}

test.each([
  [
    'stands still',
    [
      [5, 0.9305059883933865, 0.01829129837419585],
      [35, 1.69038591350906, 21.028747903223675],
      [65, 2.6133229588366524, 46.234853475229436],
      [95, 3.6449766464017825, 74.85922226238704],
    ],
    { sum: 1.01, length: 0.110317, slack: 2.185e-3 },
  ],
  [
    'has begun to move',
    [
      [5, 0.9537897263270465, 0.24397139466020323],
      [35, 1.7373985844111683, 21.676862675650842],
      [65, 2.6820108384408616, 47.54166995680555],
      [95, 3.7231414575599437, 75.90141084404839],
    ],
    { sum: 5.44, length: 0.109396, slack: 1.161e-3 },
  ],
  [
    'stands just on the kink',
    [
      [5, 0.9627238074064397, 0.23826129256533618],
      [35, 1.7738783666241609, 21.8239779134183],
      [65, 2.7062586416751095, 47.351832150821274],
      [95, 3.7443110235613233, 76.1299222492837],
    ],
    { sum: 11.41, length: 0.110116, slack: 1.5839e-3 },
  ],
] as const)('the least sum is found where the shaft %s at the first', (_, rows, truth) => {
  const found = fitted(otherCar({}, FIT, rows));
  expect(found.settled).toBe(true);
  expect(squares(found)).toBeLessThan(truth.sum + 0.005);
  const [length, slack] = found.dimensions;
  expect(Math.abs(length!.value - truth.length)).toBeLessThan(2 * length!.error);
  expect(Math.abs(slack!.value - truth.slack)).toBeLessThan(2 * slack!.error);
});

test('a reading that would be wild on one side of the kink is not left out where it goes with the others on the other', () => {
  const rows = [
    [5, 1.014713593342712, 0.3882892855398397],
    [35, 1.7847066575305364, 21.372900457146997],
    [65, 2.7334711237555007, 47.04738486704],
    [95, 3.760728771044014, 76.1340607842986],
  ] as const;
  const found = fitted(otherCar({}, FIT, rows));
  expect(found.readings.map(({ verdict }) => verdict)).not.toContain('off');
});

test('a least that lies on the kink itself is one', () => {
  const rows = [
    [0, 0.8984720947032204, 0.41076279067598337],
    [6.78571, 0.8958481608543837, -0.11461475992869422],
    [13.5714, 1.0761360527905235, 4.967057314566389],
    [20.3571, 1.2608468037206446, 10.090710842329035],
    [27.1429, 1.4597351876496847, 15.548225822638196],
    [33.9286, 1.666489949397366, 20.733300932605836],
    [40.7143, 1.871062228862897, 26.588077675218774],
    [47.5, 2.0863879245260177, 32.77981379817947],
    [54.2857, 2.297125522078642, 38.52658594887152],
    [61.0714, 2.5190873966389224, 45.17832685405839],
    [67.8571, 2.755759242245354, 50.609909915885446],
    [74.6429, 2.9778177120740916, 57.51565161306661],
    [81.4286, 3.2184511091284835, 63.383005331438284],
    [88.2143, 3.461717559919861, 70.54661313345666],
    [95, 3.7253092456201067, 77.51079164352801],
  ] as const;
  const written = {
    reach: '38 mm ± 0.6 mm',
    shaftReach: '32 mm ± 0.6 mm',
    drum: '22 mm ± 0.3 mm',
    length: '110 mm ± 1.5 mm',
    closed: '12 deg ± 3 deg',
  };
  const found = fitted(
    otherCar(
      written,
      ['crank_reach', 'shaft_reach', 'bellcrank.quadrant.radius', 'tps.at_closed', 'link.length', 'main.slack'],
      rows,
      '5 mV',
    ),
  );
  expect(found.settled).toBe(true);
  // What is come to from either side.
  expect(squares(found)).toBeLessThan(36.71);
});
