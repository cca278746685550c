/** Function generators by Freudenstein's equation. Angles in degrees, lengths in units of the ground. */
import type { BarkerType, FourBar } from '../../../src/kinematics/fourBar/index.ts';
import type { Provenance } from './provenance.ts';

export interface ChebyshevRow extends Provenance {
  readonly range: readonly [number, number];
  readonly points: readonly number[];
  readonly decimals: number;
}

const spacing: Provenance = {
  source: 'form of the spacing read at expertsmind.com, topic 98606, and transtutors.com, 13147577; values ours',
  status: 'found',
  answers: 'ours',
};

export const chebyshevRows: readonly ChebyshevRow[] = [
  { range: [1, 2], points: [1.0669873, 1.5, 1.9330127], decimals: 7, ...spacing },
  { range: [1, 4], points: [1.2009619, 2.5, 3.7990381], decimals: 7, ...spacing },
  { range: [0, 90], points: [6.0288568, 45, 83.9711432], decimals: 7, ...spacing },
  { range: [0, 1], points: [0.0669873, 0.5, 0.9330127], decimals: 7, ...spacing },
  { range: [1, 3], points: [1.1339746, 2, 2.8660254], decimals: 7, ...spacing },
  { range: [1, 9], points: [1.5358984, 5, 8.4641016], decimals: 7, ...spacing },
];

/** Angles given outright. */
export interface TripleRow extends Provenance {
  readonly name: string;
  readonly phi: readonly number[];
  readonly psi: readonly number[];
  readonly k: readonly [number, number, number];
  readonly links: Omit<FourBar, 'd'>;
  /** Digits after the point of k and of the links. */
  readonly decimals: number;
  /** Digits of k, where other than those of the links. */
  readonly kDecimals?: number;
}

const reciprocalSource =
  'Uicker, Pennock and Shigley, Theory of Machines and Mechanisms, function generation, 1/x, from memory; problem read in exam paper 5355-565 Q6 (scribd.com 438442273)';

/** Chebyshev's three points of 1 to 9. */
const squareRootPoints = [5 - 2 * Math.sqrt(3), 5, 5 + 2 * Math.sqrt(3)] as const;

export const tripleRows: readonly TripleRow[] = [
  {
    name: '1/x, with the rounded angles printed in the book',
    phi: [36.03, 75, 113.97],
    psi: [251.34, 300, 326.94],
    k: [0.40329369, -0.40326492, -1.01312627],
    links: { a: 2.47958258, b: 0.91573975, c: -2.47975946 },
    decimals: 8,
    source: reciprocalSource,
    status: 'from memory',
    answers: 'ours',
  },
  {
    name: '30, 50, 80 to 0, 30, 60',
    phi: [30, 50, 80],
    psi: [0, 30, 60],
    k: [1.83266043, 1.42985268, 0.27165372],
    links: { a: 0.54565482, b: 1.25679217, c: 0.69937275 },
    decimals: 8,
    source: 'problem at askfilo.com, question 3432353730363838; its answer could not be read',
    status: 'found',
    answers: 'ours',
  },
  {
    name: '15, 30, 45 to 30, 40, 55',
    phi: [15, 30, 45],
    psi: [30, 40, 55],
    k: [0.89873338, 1.0884654, 1.23897673],
    links: { a: 1.11267704, b: 0.74096731, c: 0.91872465 },
    decimals: 8,
    source: 'in the manner of an example in Rattan, Theory of Machines, from memory, inputs only',
    status: 'from memory',
    answers: 'ours',
  },
  {
    name: 'square root over 1 to 9, 12 degrees a unit',
    // Unrounded from the scale; they round to 60, 101.569219, 143.138439 and 60, 71.961052, 80.039991.
    phi: squareRootPoints.map((x) => 60 + 12 * (x - squareRootPoints[0])),
    psi: squareRootPoints.map((x) => 60 + 12 * (Math.sqrt(x) - Math.sqrt(squareRootPoints[0]))),
    k: [-11.6547466, -3.35292911, 5.15090875],
    links: { a: -0.08580195, b: 0.91251741, c: -0.29824669 },
    decimals: 8,
    kDecimals: 7,
    source: 'problem at transtutors.com, 13147577; its scale is printed in cm and read here as degrees a unit',
    status: 'found',
    answers: 'ours',
  },
];

/** The book's own rounded answers for 1/x in the form where link 4 points the other way: K1' = -K2, K2' = K1, K3' = K3. */
export const reciprocalBook: Provenance & {
  readonly k: readonly [number, number, number];
  readonly links: number;
  readonly kTolerance: number;
} = {
  k: [0.4032, 0.4032, -1.013],
  links: 2.48,
  kTolerance: 2e-4,
  source: reciprocalSource,
  status: 'from memory',
  note: 'K to 2e-4, which the rounding of the angles explains; the sign of K3 was not recalled',
};

export interface GeneratorRow extends Provenance {
  readonly name: string;
  /** y = f(x); x in the unit of the range. */
  readonly f: (x: number) => number;
  readonly range: readonly [number, number];
  readonly phi: readonly [start: number, change: number];
  readonly psi: readonly [start: number, change: number];
  /** Number of points of Chebyshev's spacing. */
  readonly count: number;
  readonly k: readonly [number, number, number];
  readonly links: Omit<FourBar, 'd'>;
  /** Greatest structural error and the digits it is given with. */
  readonly error?: readonly [value: number, decimals: number];
  /** Least and greatest transmission angle over the range, two digits or `transmissionDecimals`. */
  readonly transmission?: readonly [number, number];
  readonly transmissionDecimals?: number;
  /** Least acute transmission angle seen at 2001 stations, one digit. */
  readonly leastTransmission?: number;
  readonly type?: BarkerType;
  /** Defects that must be reported, by kind; those not listed must not be. */
  readonly defects: readonly string[];
}

const sine = (degrees: number): number => Math.sin((degrees * Math.PI) / 180);
const oursSound = 'ours: a function of the textbooks, with start angles chosen so that the design has no branch and no order defect';
const oursDefective = 'ours: a design made to show a defect';

export const generatorRows: readonly GeneratorRow[] = [
  {
    name: '1/x, unrounded angles',
    f: (x) => 1 / x,
    range: [1, 2],
    phi: [30, 90],
    psi: [240, 90],
    count: 3,
    k: [0.40404208, -0.40415006, -1.01372955],
    links: { a: 2.47498973, b: 0.91205404, c: -2.47432847 },
    error: [0.1061, 4],
    transmission: [24.24, 125.9],
    type: 'GRCR',
    defects: ['poorTransmission'],
    source: reciprocalSource,
    status: 'from memory',
    answers: 'ours',
  },
  {
    name: 'log10 x, outputs from 90',
    f: Math.log10,
    range: [1, 2],
    phi: [45, 60],
    psi: [90, 60],
    count: 3,
    k: [0.37702398, 0.33807947, 0.94575982],
    links: { a: 2.6523512, b: 1.39442348, c: 2.95788444 },
    error: [0.07025, 5],
    transmission: [39.01, 81.03],
    type: 'GCCC',
    defects: ['poorTransmission'],
    source: oursSound,
    status: 'ours',
  },
  {
    name: 'x² over 0 to 1',
    f: (x) => x * x,
    range: [0, 1],
    phi: [150, 90],
    psi: [240, 60],
    count: 3,
    k: [1.2403171, 2.02313547, -1.13318112],
    links: { a: 0.80624543, b: 1.67257917, c: 0.49428227 },
    error: [0.07784, 5],
    transmission: [69.26, 97.67],
    type: 'RRR3',
    defects: ['turnsBack'],
    source: oursSound,
    status: 'ours',
  },
  {
    name: 'sin x, outputs from 75',
    f: sine,
    range: [0, 90],
    phi: [105, 90],
    psi: [75, 60],
    count: 3,
    k: [2.64876526, 3.14464177, -0.66059414],
    links: { a: 0.3775344, b: 1.18417656, c: 0.31800125 },
    error: [0.50896, 5],
    transmission: [77.31, 121.56],
    type: 'RRR3',
    defects: [],
    source: oursSound,
    status: 'ours',
  },
  {
    name: '1/x, outputs from 105',
    f: (x) => 1 / x,
    range: [1, 2],
    phi: [30, 90],
    psi: [105, 60],
    count: 3,
    k: [0.46935937, 0.56967186, 0.87393876],
    links: { a: 2.13056362, b: 1.44349728, c: 1.75539652 },
    error: [0.1711, 5],
    transmission: [49.13, 119.62],
    type: 'GCCC',
    defects: [],
    source: oursSound,
    status: 'ours',
  },
  {
    name: 'sin x, outputs from 60, which cannot be assembled everywhere',
    f: sine,
    range: [0, 90],
    phi: [30, 90],
    psi: [60, 90],
    count: 3,
    k: [0.46165465, 0.44362037, 1.03135209],
    links: { a: 2.16612134, b: 0.83760411, c: 2.25417963 },
    leastTransmission: 1.7,
    defects: ['assemblyGap', 'poorTransmission'],
    source: oursDefective,
    status: 'ours',
  },
  {
    name: 'log10 x, outputs from 0, a common choice of ranges with a large error',
    f: Math.log10,
    range: [1, 2],
    phi: [45, 60],
    psi: [0, 90],
    count: 3,
    k: [1.53236569, 1.89354253, 0.48520972],
    links: { a: 0.65258574, b: 1.17060929, c: 0.52811066 },
    error: [2.36, 2],
    leastTransmission: 22.0,
    defects: ['poorTransmission'],
    source: oursDefective,
    status: 'ours',
  },
  {
    name: 'x² over 1 to 2, with two reversed links',
    f: (x) => x * x,
    range: [1, 2],
    phi: [30, 90],
    psi: [90, 90],
    count: 3,
    k: [-0.66791221, -0.50468174, 0.07154099],
    links: { a: -1.49720274, b: 2.59678192, c: -1.98144675 },
    error: [0.8539, 4],
    transmission: [29.9, 62.0],
    transmissionDecimals: 1,
    defects: ['poorTransmission'],
    source: oursDefective,
    status: 'ours',
  },
  {
    name: 'a straight line, three points',
    f: (x) => 65 + 0.43 * x,
    range: [15, 165],
    phi: [15, 150],
    psi: [65 + 0.43 * 15, 0.43 * 150],
    count: 3,
    k: [-7.10033346, -3.40905521, -0.71008069],
    links: { a: -0.14083846, b: 1.07914453, c: -0.2933364 },
    error: [2.8442, 4],
    transmission: [37.42, 93.74],
    defects: ['poorTransmission'],
    source: 'θ4 = 65 + 0.43 θ2 over 15 to 165: read in a public repository of laboratory exercises; answers ours',
    status: 'found',
    answers: 'ours',
    note: 'transmission by two methods here; with these lengths it can reach 94.6° at most over a full turn',
  },
  {
    name: 'a straight line, least squares over five points',
    f: (x) => 65 + 0.43 * x,
    range: [15, 165],
    phi: [15, 150],
    psi: [65 + 0.43 * 15, 0.43 * 150],
    count: 5,
    k: [-1.72930283, -0.70609071, 0.46320273],
    links: { a: -0.57826772, b: 1.60669059, c: -1.41624863 },
    error: [11.47, 2],
    defects: ['turnsBack', 'poorTransmission'],
    source: 'the same, answers ours',
    status: 'found',
    answers: 'ours',
    note: 'the least residual of the equation is not the least error of the angle',
  },
];

/** Points of the straight line's three-point design, six digits. */
export const straightLinePoints: Provenance & { readonly points: readonly number[]; readonly decimals: number } = {
  points: [25.048095, 90, 154.951905],
  decimals: 6,
  source: 'ours, by the spacing above',
  status: 'ours',
};

/** A square-law generator from an encyclopaedia, and how well it does. */
export const squareLaw: Provenance & {
  readonly links: FourBar;
  readonly start: number;
  readonly turn: number;
  readonly wantedSwing: number;
  readonly swing: readonly [value: number, decimals: number];
  readonly departure: readonly [value: number, decimals: number];
  readonly departureInY: readonly [value: number, decimals: number];
} = {
  links: { a: 92, b: 83, c: 98, d: 140 },
  start: 49.5,
  turn: -60,
  wantedSwing: 70,
  swing: [69.97807, 5],
  departure: [1.8352, 4],
  departureInY: [0.92, 2],
  source:
    'Encyclopaedia Britannica 1973, p. 11-241, as cited by a note on sensitivity analysis in a public text collection (Nemotron-CC-Math)',
  status: 'found',
  answers: 'ours',
  note: 'the start angle was not readable: 49.5° falling to -10.5° on the crossed circuit is our fit',
};
