/**
 * Open area of a butterfly plate and the flow through it. Diameters in mm, angles in degrees from square to the bore, areas in mm² and
 * as fractions of the bore's area.
 */
import type { Provenance } from './provenance.ts';

export interface PlateRow extends Provenance {
  readonly name: string;
  readonly bore: number;
  readonly shaft: number;
  readonly seat: number;
  /** Decimals of the areas and of the fractions. */
  readonly decimals: { readonly area: number; readonly fraction: number; readonly shadow: number };
  /** Angle, area, fraction. */
  readonly rows: readonly (readonly [angle: number, area: number, fraction: number])[];
  /** The angle from which the shaft hides the plate. */
  readonly shadow: number;
}

const areas = {
  source:
    'formula: Heywood, Internal Combustion Engine Fundamentals, 1st edition, equations 7.18 and 7.19, from memory; the figures follow from it and were reproduced by quadrature of bore less projected plate and shaft',
  status: 'ours',
  answers: 'ours',
} as const;

export const plateRows: readonly PlateRow[] = [
  {
    name: 'bore 57, shaft 10.4, seat 10°',
    bore: 57,
    shaft: 10.4,
    seat: 10,
    decimals: { area: 4, fraction: 6, shadow: 6 },
    rows: [
      [10, 0, 0],
      [15, 48.7942, 0.019122],
      [20, 116.572, 0.045683],
      [25, 202.8021, 0.079475],
      [30, 306.8044, 0.120233],
      [40, 564.6668, 0.221285],
      [45, 716.4202, 0.280755],
      [50, 881.7086, 0.34553],
      [60, 1246.4836, 0.48848],
      [70, 1640.3205, 0.64282],
      [75, 1832.5826, 0.718165],
      [80, 1962.2643, 0.768985],
      [90, 1962.2643, 0.768985],
    ],
    shadow: 79.648633,
    ...areas,
  },
  {
    name: 'bore 57, no shaft, seat 10°',
    bore: 57,
    shaft: 0,
    seat: 10,
    decimals: { area: 4, fraction: 6, shadow: 6 },
    rows: [
      [10, 0, 0],
      [15, 48.9254, 0.019173],
      [20, 116.8989, 0.045811],
      [25, 203.4031, 0.079711],
      [30, 307.7798, 0.120615],
      [40, 566.8428, 0.222138],
      [45, 719.5575, 0.281985],
      [50, 886.2165, 0.347296],
      [60, 1256.1968, 0.492287],
      [70, 1665.5422, 0.652704],
      [75, 1881.1265, 0.737188],
      [80, 2101.8147, 0.823673],
      [90, 2551.7586, 1],
    ],
    shadow: 90,
    ...areas,
  },
];

const flow = 'formula: Heywood, Internal Combustion Engine Fundamentals, 1st edition, equations 7.20, 7.21 and appendix C, from memory';

export const nozzleRow = {
  name: 'critical pressure ratio and choked coefficient for γ = 1.4',
  heatRatio: 1.4,
  criticalRatio: 0.5282818,
  chokedCoefficient: 0.6847315,
  decimals: 7,
  source: `${flow}; figures checked against the form in Mach number`,
  status: 'ours',
  answers: 'ours',
} as const satisfies Provenance & Record<string, unknown>;

export const flowRow = {
  name: 'air through a plate at 20°',
  bore: 57,
  shaft: 10.4,
  seat: 10,
  angle: 20,
  area: 116.572029,
  areaDecimals: 6,
  discharge: 0.8,
  /** Pa, K. */
  upstreamPressure: 101_325,
  upstreamTemperature: 298.15,
  gas: { constant: 287, heatRatio: 1.4 },
  /** Pressure behind the plate, kPa, and flow, g/s. */
  rows: [
    [95, 11.025512],
    [90, 14.329343],
    [80, 18.44597],
    [70, 20.780885],
    [60, 21.918959],
    [50, 22.118867],
    [20, 22.118867],
  ],
  /** Pressure at and below which the flow no longer changes, kPa. */
  chokedFrom: 53.528,
  chokedDecimals: 3,
  decimals: 6,
  note: 'the coefficient of discharge only illustrates: a real one changes with angle and pressure ratio',
  source: `${flow}; case and figures ours`,
  status: 'ours',
  answers: 'ours',
} as const satisfies Provenance & Record<string, unknown>;
