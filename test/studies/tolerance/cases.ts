/** Files with tolerances, and what the studies need of them. */
import type { Mechanism } from '../../../src/kinematics/model.ts';
import { solve } from '../../../src/solve.ts';
import { outcomesOf, type Outcome } from '../../../src/studies/tolerance/outcomes.ts';
import { tolerancedDimensions, type Toleranced } from '../../../src/kinematics/toleranced.ts';
import { plainNumber } from '../../textbook/support/fourBarFile.ts';
import { halfTangentAngles } from '../../textbook/support/halfTangent.ts';
import { DEG } from '../../textbook/support/check.ts';
import { toleranceCase } from '../../textbook/values/tolerance.ts';

export interface Case {
  readonly mechanism: Mechanism;
  readonly outcomes: readonly Outcome[];
  readonly toleranced: readonly Toleranced[];
  /** Number of an outcome by its name. */
  outcome(name: string): number;
}

export function caseOf(text: string): Case {
  const { study, problems } = solve(text);
  if (study === undefined || problems.length > 0) throw new Error(JSON.stringify(problems));
  const { mechanism } = study.travel;
  const outcomes = outcomesOf(study);
  return {
    mechanism,
    outcomes,
    toleranced: tolerancedDimensions(mechanism),
    outcome(name) {
      const found = outcomes.findIndex((each) => each.name === name);
      if (found < 0) throw new Error(`${name} is none of ${outcomes.map((each) => each.name).join(', ')}`);
      return found;
    },
  };
}

/** The textbook's linkage, which stands at full pedal in the position that its figures are of; each length with the tolerance given, as written. */
export function textbookLinkage(tolerance: string): string {
  const { links, theta2 } = toleranceCase;
  const { a, b, c, d } = links;
  const travel = 25;
  const theta4 = halfTangentAngles(links, (theta2 - travel) * DEG, -1).theta4 / DEG;
  return `format: 1
levers:
  foot: {pivot: [0, 0], arms: {pin: {radius: ${a} mm ${tolerance}, angle: ${theta2 - travel} deg}}}
  driven: {pivot: [${d} mm ${tolerance}, 0], arms: {pin: {radius: ${c} mm ${tolerance}, angle: ${plainNumber(theta4)} deg}}}
pedal: {lever: foot, opens: counterclockwise, travel: ${travel} deg}
rods:
  coupler: {from: foot.pin, to: driven.pin, length: ${b} mm ${tolerance}, adjust: {min: 119 mm, max: 121 mm}}
plates:
  bank: {lever: driven, bore: 40 mm, shaft: 8 mm, seat: 5 deg}
`;
}

/** A cable, two shafts, a sensor and springs: something of everything. */
export function twoShafts(tolerance: string): string {
  return `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 200 mm, angle: 100 deg}, clevis: {radius: 70 mm, angle: 100 deg}}}
  first:
    pivot: [400 mm, 60 mm]
    arms: {arm: {radius: 40 mm ${tolerance}, angle: 140 deg}, link: {radius: 30 mm ${tolerance}, angle: 60 deg ± 0.1 deg}}
    stops: {closed: 0 deg, open: 68 deg ± 0.5 deg}
  second:
    pivot: [520 mm, 60 mm]
    arms: {link: {radius: 30 mm ${tolerance}, angle: 60 deg}}
pedal: {lever: pedal, opens: counterclockwise, travel: 45 deg, pad: pad}
cables:
  main: {from: pedal.clevis, leaves: [150, 80], enters: [480, 110], to: first.arm, slack: 1 mm}
rods:
  link: {from: first.link, to: second.link, length: 120 mm ${tolerance}}
plates:
  one: {lever: first, bore: 40 mm, shaft: 8 mm, seat: 5 deg}
  two: {lever: second, bore: 40 mm, shaft: 8 mm, seat: 5 deg}
sensors:
  tps: {lever: second, at_closed: 12 deg ± 0.5 deg, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V]}
springs:
  close: {lever: first, rate: 3 N*mm/deg, preload: 300 N*mm ± 15 N*mm}
`;
}
