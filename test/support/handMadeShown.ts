/** A message for the view as no solver made it: every kind of part is there, the figures are invented and smooth. */
import type { Chart, ChartCurve } from '../../src/protocol/charts.ts';
import type { Shown, ToView } from '../../src/protocol/messages.ts';
import type { PinPlace, TurningPoint } from '../../src/protocol/picture.ts';
import type { Report, ReportedMark, ReportedPart } from '../../src/protocol/report.ts';

const STATIONS = 101;
const series = (figure: (at: number) => number) => Float64Array.from({ length: STATIONS }, (_, index) => figure(index / (STATIONS - 1)));

/** About z: a point of a lever by its pivot, radius and drawn angle, mm and degrees. */
const turning = ([x, y]: readonly [number, number], radius: number, angle: number): TurningPoint => {
  const [cx, cy] = [radius * Math.cos((angle * Math.PI) / 180), radius * Math.sin((angle * Math.PI) / 180)];
  return [x, y, 0, cx, cy, 0, -cy, cx, 0].map((mm) => mm / 1000);
};

const pin = (lever: number, at: TurningPoint): PinPlace => ({ lever, at });

/** What a change of it looks like is up to the test. */
export function handMadeShown(): Shown {
  const crankOut = turning([0, 0], 38, 120);
  const shaftArm = turning([90, 10], 34, 110);
  const curve = (column: string, label: string, part: string, digits: number, figure: (at: number) => number): ChartCurve => ({
    column,
    label,
    part,
    digits,
    values: series(figure),
  });
  const charts: readonly Chart[] = [
    {
      id: 'progression',
      title: 'Progression',
      unit: '%',
      curves: [
        curve('shaft.opening', 'shaft', 'shaft', 1, (at) => 100 * at ** 1.4),
        curve('bank.fraction', 'bank area', 'bank', 1, (at) => 100 * at ** 2),
      ],
      bands: [],
      straight: true,
    },
    {
      id: 'angles',
      title: 'Transmission and drive angles',
      unit: '°',
      curves: [
        curve('link.transmission', 'link', 'link', 1, (at) => 70 - 45 * at),
        curve('link.drive', 'link drive', 'link', 1, (at) => (at > 0.8 ? Number.NaN : 30 + 40 * at)),
      ],
      bands: [
        { severity: 'warning', from: undefined, to: 40, label: 'transmission below 40°' },
        { severity: 'error', from: undefined, to: 25, label: 'transmission below 25°' },
      ],
      straight: false,
    },
  ];
  return {
    picture: {
      stations: series((at) => at),
      pedal: { padTravel: 0.09, padIs: 'pad', lever: 0, pad: turning([-150, -40], 180, 250), lastSolved: undefined },
      isPlanar: true,
      levers: [
        {
          name: 'pedal',
          pivot: [-0.15, -0.04, 0],
          axis: [0, 0, 1],
          rotation: series((at) => -0.4 * at),
          sense: -1,
          isDriven: true,
          arms: [{ name: 'clevis', at: turning([-150, -40], 40, 80) }],
          drums: [],
          outline: [],
          width: undefined,
          stops: { closed: 0, open: undefined },
        },
        {
          name: 'crank',
          pivot: [0, 0, 0],
          axis: [0, 0, 1],
          rotation: series((at) => -1.2 * at),
          sense: -1,
          isDriven: true,
          arms: [{ name: 'out', at: crankOut }],
          drums: [
            { name: 'quadrant', form: { kind: 'round', radius: 0.025 }, mark: turning([0, 0], 25, 200) },
            {
              name: 'snail',
              form: { kind: 'profile', rim: [turning([0, 0], 20, 150), turning([0, 0], 24, 190)] },
              mark: turning([0, 0], 20, 150),
            },
          ],
          outline: [turning([0, 0], 42, 110), turning([0, 0], 42, 130), turning([0, 0], 12, 300)],
          width: 0.012,
          stops: { closed: undefined, open: undefined },
        },
        {
          name: 'shaft',
          pivot: [0.09, 0.01, 0],
          axis: [0, 0, 1],
          rotation: series((at) => -1.4 * at ** 1.4),
          sense: -1,
          isDriven: true,
          arms: [{ name: 'arm', at: shaftArm }],
          drums: [],
          outline: [],
          width: undefined,
          stops: { closed: 0, open: 1.43 },
        },
      ],
      rods: [{ name: 'link', from: pin(1, crankOut), to: pin(2, shaftArm), width: 0.008 }],
      cables: [
        {
          name: 'main',
          leaves: { housing: [-0.12, 0.05, 0], along: [-1, -0.1, 0], inner: { kind: 'pin', ...pin(0, turning([-150, -40], 40, 80)) } },
          enters: {
            housing: [-0.07, 0.034, 0],
            along: undefined,
            inner: {
              kind: 'drum',
              lever: 1,
              drum: 'quadrant',
              rim: Float64Array.from({ length: 3 * STATIONS }, (_, i) => [0, 0.025, 0][i % 3]!),
            },
          },
          slack: series((at) => Math.max(0, 0.001 - at / 30)),
          stretch: series(() => 0),
        },
      ],
      slots: [
        { name: 'fork', pin: pin(1, crankOut), fork: { lever: 2, from: turning([90, 10], 12, 200), to: turning([90, 10], 30, 200) } },
      ],
      couplings: [{ name: 'drive', from: 1, to: 2, ratio: -1 }],
      plates: [{ name: 'bank', lever: 2, count: 2, bore: 0.04, shaft: 0.008, drawnAngle: 0.13, seat: 0.1 }],
      sensors: [{ name: 'tps', lever: 2, angle: series((at) => 0.24 + 1.4 * at ** 1.4), range: [0, 1.92] }],
      springs: [
        { name: 'first', form: { kind: 'torsion', lever: 2 } },
        { name: 'second', form: { kind: 'extension', from: [0.15, -0.05, 0], to: pin(2, turning([90, 10], 20, 20)) } },
      ],
      keepOuts: [
        { name: 'rail', shape: { kind: 'circle', centre: [0.05, 0.08, 0], radius: 0.011 }, clearance: 0.003 },
        {
          name: 'bonnet',
          shape: {
            kind: 'polygon',
            corners: [
              [-0.2, 0.1, 0],
              [0.2, 0.1, 0],
              [0.2, 0.11, 0],
            ],
          },
          clearance: 0.008,
        },
      ],
      gaps: [
        {
          between: [
            { kind: 'lever', name: 'crank' },
            { kind: 'keep-out', name: 'rail' },
          ],
          from: [0.03, 0.05, 0],
          to: [0.042, 0.071, 0],
          gap: 0.0242,
          text: '24.2 mm',
          clearance: 0.003,
          travel: 0.4,
        },
      ],
      handles: [
        { path: 'levers.crank.pivot', label: 'pivot of crank', kind: 'pivot', at: [0, 0, 0], lets: [] },
        { path: 'levers.crank.arms.out', label: 'out of crank', kind: 'pin', at: pin(1, crankOut), lets: ['reach'] },
      ],
    },
    charts,
    report: handMadeReport(),
    dials,
  };
}

function handMadeReport(): Report {
  const part = (kind: ReportedPart['kind'], name: string, depth: number, figures: ReportedPart['figures']): ReportedPart => ({
    kind,
    name,
    place: { start: 10 * depth, end: 10 * depth + 5 },
    depth,
    takes: depth === 0 ? '' : `${name} is moved`,
    gives: `${name} moves on`,
    figures,
    limits: kind === 'rod' ? ['transmission angle: warning below 40°, error below 25°'] : [],
    dimensions: kind === 'rod' ? ['length 93.1 mm'] : [],
    notChecked: kind === 'cable' ? ['its stretch: its stiffness is not given'] : [],
  });
  const mark: ReportedMark = {
    severity: 'error',
    code: 'transmission-angle',
    part: 'link',
    message: 'transmission angle of link is under 40° from 66.7 % to 100 % of pedal travel; 25.0° at full pedal',
    following: [{ part: 'shaft', message: 'shaft opens 62.0° at most' }],
    isMendable: true,
    cure: 'clock the arm of shaft back',
    place: { start: 40, end: 44 },
    ranges: [{ from: 0.667, to: 1 }],
    worst: 1,
  };
  return {
    title: 'Hand-made linkage',
    verdict: '1 error, 1 warning, 1 note; 1 of 3 requirements passed',
    severity: 'error',
    caution: 'A throttle that does not close kills. These are calculations on the dimensions given.',
    parts: [
      part('pedal', 'pedal', 0, [{ label: 'travel', text: '22°', travel: undefined }]),
      part('cable', 'main', 1, []),
      part('lever', 'crank', 2, [{ label: 'turns', text: '68.8°', travel: 1 }]),
      part('rod', 'link', 3, [{ label: 'least transmission angle', text: '25.0° at full pedal', travel: 1 }]),
      part('lever', 'shaft', 4, [{ label: 'opens', text: '80.2°', travel: 1 }]),
    ],
    marks: [
      mark,
      {
        ...mark,
        severity: 'warning',
        code: 'single-return-spring',
        message: 'one return spring alone',
        following: [],
        isMendable: false,
        cure: undefined,
        ranges: [],
        worst: undefined,
      },
      {
        ...mark,
        severity: 'note',
        code: 'change-point',
        part: undefined,
        message: 'turns back at 40 %',
        following: [],
        isMendable: false,
        ranges: [{ from: 0.4, to: 0.4 }],
        worst: 0.4,
      },
    ],
    requirements: [
      { name: 'opens fully', outcome: 'passed', text: 'expected ≥ 80°, is 80.2°', place: { start: 60, end: 70 }, travel: 1 },
      { name: 'soft tip-in', outcome: 'failed', text: 'expected ≤ 12 %, is 14.4 %', place: { start: 70, end: 80 }, travel: 0.25 },
      { name: 'quick', outcome: 'undecided', text: 'never reached', place: { start: 80, end: 90 }, travel: undefined },
    ],
    facts: [{ label: 'pedal for half opening', text: '61.0 %', travel: 0.61 }],
    notChecked: ['stretch of main: its stiffness is not given'],
  };
}

const dials: Shown['dials'] = [
  { path: 'let.reach', label: 'reach', value: 38, unit: 'mm', step: 0.1, least: 19, greatest: 57, place: { start: 5, end: 10 } },
];

/** The same as the editor would send it. */
export const handMadeShow = (version = 1): ToView & { type: 'show'; report: Report } => ({
  type: 'show',
  source: { uri: 'file:///hand-made.throttle.yaml', version },
  fileName: 'hand-made.throttle.yaml',
  trial: [],
  coming: [],
  ...handMadeShown(),
});
