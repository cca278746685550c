/** Positions, velocities and accelerations of given four-bars. Angles in degrees, ω in rad/s, α in rad/s², lengths in the source's unit. */
import type { BarkerType, FourBar } from '../../../src/kinematics/fourBar/index.ts';
import type { Provenance } from './provenance.ts';

/** What a circuit should give; what is left out is not given. */
export interface CircuitValues {
  readonly theta3: number;
  readonly theta4: number;
  readonly omega3?: number;
  readonly omega4?: number;
  readonly alpha3?: number;
  readonly alpha4?: number;
}

export interface PositionRow extends Provenance {
  readonly name: string;
  readonly links: FourBar;
  readonly theta2: number;
  readonly omega2?: number;
  readonly alpha2?: number;
  readonly open?: CircuitValues;
  readonly crossed?: CircuitValues;
  /** Digits after the point: of angles, of ω, of α. */
  readonly decimals: { readonly theta: number; readonly omega: number; readonly alpha: number };
  /** Degrees the angles may be off, where more than half a unit of the last digit; `note` says why. */
  readonly thetaWithin?: number;
  readonly type?: BarkerType;
}

const exampleSource = 'Norton, Design of Machinery, examples 4-1 (position), 6-7 (velocity) and 7-1 (acceleration), from memory';
const example = { links: { a: 40, b: 120, c: 80, d: 100 }, theta2: 40, omega2: 25, alpha2: 15 } as const;

/** The constants of the textbook's half-tangent method for the example. */
export const exampleConstants: Provenance & { readonly values: Readonly<Record<string, readonly [number, number]>> } = {
  source: exampleSource,
  status: 'from memory',
  answers: 'ours',
  note: 'each value with its digits after the point',
  values: {
    K1: [2.5, 7],
    K2: [1.25, 7],
    K3: [0.5625, 7],
    K4: [0.8333333, 7],
    K5: [-2.0416667, 7],
    A: [-2.1290111, 7],
    B: [-1.2855752, 7],
    C: [1.3389, 7],
    D: [-3.1372519, 7],
    E: [-1.2855752, 7],
    F: [0.3306593, 7],
  },
};

export const positionRows: readonly PositionRow[] = [
  {
    name: 'the textbook example, to the digits printed there',
    ...example,
    open: { theta3: 20.3, theta4: 57.33, omega3: -4.121, omega4: 6.998, alpha3: 296.089, alpha4: 470.134 },
    crossed: { theta3: -60.98, theta4: -98.01 },
    decimals: { theta: 2, omega: 3, alpha: 3 },
    thetaWithin: 0.01,
    type: 'GCRR',
    source: exampleSource,
    status: 'from memory',
    note: 'the book goes on from rounded figures: unrounded, θ4 is 57.3249 and -98.00496, so the angles are held to one unit of the last digit',
  },
  {
    name: 'the textbook example, more digits',
    ...example,
    open: { theta3: 20.297883, theta4: 57.32488, omega3: -4.120914, omega4: 6.997985, alpha3: 296.089193, alpha4: 470.13353 },
    crossed: { theta3: -60.977967, theta4: -98.004964, omega3: -9.258772, omega4: -20.377672, alpha3: 597.6224, alpha4: 423.578063 },
    decimals: { theta: 6, omega: 6, alpha: 6 },
    type: 'GCRR',
    source: exampleSource,
    status: 'from memory',
    answers: 'ours',
  },
  {
    name: 'table row a',
    links: { a: 2, b: 7, c: 9, d: 6 },
    theta2: 30,
    omega2: 10,
    alpha2: 0,
    open: { theta3: 88.8372, theta4: 117.2861, omega3: -5.990966, omega4: -3.991735, alpha3: 26.080017, alpha4: 53.330588 },
    crossed: { theta3: -115.2108, theta4: -143.6596, omega3: -0.662352, omega4: -2.661583 },
    decimals: { theta: 4, omega: 6, alpha: 6 },
    type: 'GCRR',
    source: 'Norton, Design of Machinery, table P4-1 row a; lengths, θ2 and ω2 read on a student page at numerade.com',
    status: 'found',
    answers: 'ours',
  },
  {
    name: "table row a, to the digits of the book's appendix",
    links: { a: 2, b: 7, c: 9, d: 6 },
    theta2: 30,
    omega2: 10,
    open: { theta3: 88.8, theta4: 117.3, omega3: -6, omega4: -4 },
    crossed: { theta3: -115.2, theta4: -143.7 },
    decimals: { theta: 1, omega: 1, alpha: 1 },
    source: 'Norton, Design of Machinery, appendix of answers to problems 4-6 and 6-4, from memory',
    status: 'from memory',
  },
  {
    name: 'a student page',
    links: { a: 2.7, b: 5.6, c: 4.9, d: 5.3 },
    theta2: 220,
    omega2: -84,
    alpha2: 0,
    open: { theta3: 53.561628, theta4: 145.58138, omega3: -39.035873, omega4: -10.860336, alpha3: 757.36247, alpha4: -2035.21829 },
    crossed: { theta3: -27.054002, theta4: -119.073754, omega3: -14.474211, omega4: -42.649748, alpha3: -1579.57908, alpha4: 1213.00167 },
    decimals: { theta: 6, omega: 6, alpha: 5 },
    type: 'GCRR',
    source: 'numerade.com student profile page 3382, inputs only',
    status: 'found',
    answers: 'ours',
  },
  {
    name: 'assignment (a)',
    links: { a: 1, b: 4, c: 3, d: 5 },
    theta2: 30,
    omega2: 30,
    alpha2: 0,
    open: { theta3: 36.163382, theta4: 107.550206, omega3: -7.727844, omega4: -1.132896, alpha3: 70.280995, alpha4: 398.316309 },
    decimals: { theta: 6, omega: 6, alpha: 6 },
    source: 'assignment at expertsmind.com, question 5863211 (a), inputs only',
    status: 'found',
    answers: 'ours',
  },
  {
    name: 'assignment (b)',
    links: { a: 2, b: 5, c: 4, d: 8 },
    theta2: 60,
    omega2: 45,
    open: { theta3: 18.33171, theta4: 124.293724, omega3: -16.868926, omega4: 15.558243 },
    decimals: { theta: 6, omega: 6, alpha: 6 },
    source: 'assignment at expertsmind.com, question 5863211 (b), inputs only',
    status: 'found',
    answers: 'ours',
  },
  {
    name: 'assignment (d)',
    links: { a: 1, b: 6, c: 4, d: 5 },
    theta2: 210,
    omega2: 100,
    alpha2: -40,
    open: { theta3: 44.184291, theta4: 113.007634, omega3: 17.740718, omega4: 6.569683, alpha3: -133.613168, alpha4: -2112.369912 },
    decimals: { theta: 6, omega: 6, alpha: 6 },
    source: 'assignment at expertsmind.com, question 5863211 (d), inputs only',
    status: 'found',
    answers: 'ours',
  },
];

/** Velocities (length/s) and accelerations (length/s²) of the pins of the example: x, y on the open and on the crossed circuit. */
export const examplePins: Provenance & {
  readonly links: FourBar;
  readonly theta2: number;
  readonly omega2: number;
  readonly alpha2: number;
  readonly decimals: number;
  readonly open: Readonly<Record<PinQuantity, readonly [number, number]>>;
  readonly crossed: Readonly<Record<PinQuantity, readonly [number, number]>>;
} = {
  ...example,
  decimals: 4,
  open: {
    VA: [-642.7876, 766.0444],
    VBA: [171.5459, -463.8015],
    VB: [-471.2417, 302.2429],
    AA: [-19536.7836, -15610.0636],
    ABA: [-14236.9227, 32617.3828],
    AB: [-33773.7064, 17007.3192],
  },
  crossed: {
    VA: [-642.7876, 766.0444],
    VBA: [-971.5414, -539.0227],
    VB: [-1614.329, 227.0218],
    AA: [-19536.7836, -15610.0636],
    ABA: [57719.0165, 43787.3686],
    AB: [38182.2329, 28177.305],
  },
  source: exampleSource,
  status: 'from memory',
  answers: 'ours',
};

export type PinQuantity = 'VA' | 'VBA' | 'VB' | 'AA' | 'ABA' | 'AB';

/** Transmission angle, dead centres, swing and torque ratio of the example; degrees. */
export const exampleLimits = {
  ...example,
  decimals: 6,
  leastTransmission: { angle: 26.38433, theta2: 0 },
  greatestTransmission: { angle: 86.416678, theta2: 180 },
  extended: { theta2: 24.146848, theta4: 54.900368 },
  overlapped: { theta2: 231.317813, theta4: 128.682187 },
  swing: 73.78182,
  transmissionAtTheta2: 37.026997,
  /** T_in/T_out without friction, which is ω4/ω2. */
  torqueRatio: 0.279919,
  source: exampleSource,
  status: 'from memory',
  answers: 'ours',
} as const satisfies Provenance & Record<string, unknown>;

export interface TableRow extends Provenance {
  readonly row: string;
  readonly links: FourBar;
  readonly theta2: number;
  /** θ3, θ4 of the two circuits, degrees to 4 digits. */
  readonly circuits: readonly [readonly [number, number], readonly [number, number]];
  readonly type: BarkerType;
  /** Angles ± at which the input stands at a limit, degrees to 4 digits. */
  readonly toggles: readonly number[];
}

const tableNote = 'circuits compared as an unordered pair: which is called open differs between sources';
const toggleSource = 'toggle angles by Norton, Design of Machinery, eq. 4.37, from memory';

export const tableRows: readonly TableRow[] = [
  {
    row: 'a',
    links: { a: 2, b: 7, c: 9, d: 6 },
    theta2: 30,
    circuits: [
      [88.8372, 117.2861],
      [-115.2108, -143.6596],
    ],
    type: 'GCRR',
    toggles: [],
    source: `Norton, Design of Machinery, table P4-1 row a; inputs read on a student page at numerade.com; ${toggleSource}`,
    status: 'found',
    answers: 'ours',
    note: tableNote,
  },
  {
    row: 'b',
    links: { a: 9, b: 3, c: 8, d: 7 },
    theta2: 85,
    circuits: [
      [-43.232, 120.2471],
      [-67.3039, 129.217],
    ],
    type: 'GRCR',
    toggles: [33.5573, 85.904],
    source: `Norton, Design of Machinery, table P4-1 row b, from memory; ${toggleSource}`,
    status: 'from memory',
    answers: 'ours',
    note: tableNote,
  },
  {
    row: 'c',
    links: { a: 10, b: 6, c: 8, d: 3 },
    theta2: 45,
    circuits: [
      [-53.132, 16.4912],
      [173.2709, 103.6476],
    ],
    type: 'GCCC',
    toggles: [],
    source: `Norton, Design of Machinery, table P4-1 row c, from memory; ${toggleSource}`,
    status: 'from memory',
    answers: 'ours',
    note: tableNote,
  },
  {
    row: 'd',
    links: { a: 5, b: 7, c: 6, d: 8 },
    theta2: 25,
    circuits: [
      [27.4016, 62.7617],
      [-90.1037, -125.4637],
    ],
    type: 'SCRR',
    toggles: [180],
    source: `Norton, Design of Machinery, table P4-1 row d, from memory; ${toggleSource}`,
    status: 'from memory',
    answers: 'ours',
    note: tableNote,
  },
];

/** A point of the coupler on both circuits; four digits, all printed at the source. */
export const couplerPointRow: Provenance & {
  readonly links: FourBar;
  readonly theta2: number;
  /** Distance of P from B, and angle at B between BA and BP, degrees. */
  readonly fromB: { readonly radius: number; readonly angle: number };
  readonly circuits: readonly { readonly theta3: number; readonly theta4: number; readonly x: number; readonly y: number }[];
  readonly decimals: number;
} = {
  links: { a: 35, b: 25, c: 15, d: 10 },
  theta2: 30,
  fromB: { radius: 10, angle: 70 },
  circuits: [
    { theta3: 254.1745, theta4: 334.0983, x: 33.4666, y: -5.8245 },
    { theta3: 187.3223, theta4: 107.3985, x: 10.1047, y: 5.4293 },
  ],
  decimals: 4,
  source: 'assignment at transtutors.com, question 13676847, inputs and answers',
  status: 'found',
  note: 'that the 70° lie clockwise from BA, P = B + BP at θ3 + 180° − 70°, is our reading and reproduces the answers; circuits as an unordered pair',
};
