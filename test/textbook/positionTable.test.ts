/** The textbook four-bars once more, as throttle files read off the solved table. */
import { describe, expect, it } from 'vitest';
import { DEG, expectAngle, expectFigure } from './support/check.ts';
import { halfTangentAngles } from './support/halfTangent.ts';
import { leadWithin, solveFourBar, type Root, type SolvedFourBar } from './support/offTheTable.ts';
import { couplerMotion, type CouplerMotion } from './support/pins.ts';
import { couplerPointRow, examplePins, positionRows, tableRows, type PinQuantity } from './values/positions.ts';
import { lastDigit } from './values/provenance.ts';
import type { PartFigure } from '../../src/findings/part.ts';
import type { FourBar } from '../../src/kinematics/fourBar/index.ts';

/** Degrees that the input turns before it comes to the published θ2, where no toggle is nearer. */
const LEAD = 20;
/** Degrees by which a file drawn at θ2 itself draws its output wrongly, so that even there the answer is not what was drawn. */
const DRAWN_OFF = 1.5;

const roots = [
  ['open', -1],
  ['crossed', 1],
] as const;

describe('textbook rows read off the table', () => {
  for (const row of positionRows) {
    for (const [circuit, root] of roots) {
      const values = row[circuit];
      if (values === undefined) continue;
      it.each(ways(row.links, root, row.theta2))(`${row.name}, ${circuit}, %s`, (_, file) => {
        const omega2 = row.omega2 ?? 1;
        const { omega4, alpha4, coupler } = motionAt(row.links, file, row.theta2, omega2, row.alpha2 ?? 0);
        expectAngle(file.theta4(row.theta2) * DEG, values.theta4, row.decimals.theta, 'θ4', row.thetaWithin);
        expectAngle(coupler.theta3 * DEG, values.theta3, row.decimals.theta, 'θ3', row.thetaWithin);
        expect(Math.abs(coupler.length / row.links.b - 1)).toBeLessThan(1e-12);
        if (values.omega4 !== undefined) expectFigure(omega4, values.omega4, row.decimals.omega, 'ω4');
        if (values.omega3 !== undefined) expectFigure(coupler.omega3, values.omega3, row.decimals.omega, 'ω3');
        if (values.alpha4 !== undefined) expectFigure(alpha4, values.alpha4, row.decimals.alpha, 'α4');
        if (values.alpha3 !== undefined) expectFigure(coupler.alpha3, values.alpha3, row.decimals.alpha, 'α3');
        expectRodAngles(file, row.theta2, values.theta3, values.theta4, 2 * (row.thetaWithin ?? lastDigit(row.decimals.theta)));
        if (row.type !== undefined) expect(fourBarWords(file)).toContain(`(${row.type},`);
      });
    }
  }

  for (const { row, links, theta2, circuits, type } of tableRows) {
    it.each(
      bothCircuits(
        links,
        theta2,
        circuits.map(([, theta4]) => theta4),
      ),
    )(`table row ${row}, θ4 %d, %s`, (theta4, _, file) => {
      const [theta3] = circuits.find((pair) => pair[1] === theta4)!;
      const { coupler } = motionAt(links, file, theta2, 1, 0);
      expectAngle(file.theta4(theta2) * DEG, theta4, 4, 'θ4');
      expectAngle(coupler.theta3 * DEG, theta3, 4, 'θ3');
      expectRodAngles(file, theta2, theta3, theta4, 2 * lastDigit(4));
      expect(fourBarWords(file)).toContain(`(${type},`);
    });
  }

  const { links, theta2, circuits, fromB, decimals } = couplerPointRow;
  it.each(
    bothCircuits(
      links,
      theta2,
      circuits.map(({ theta4 }) => theta4),
    ),
  )('a point of the coupler, θ4 %d, %s', (theta4, _, file) => {
    const values = circuits.find((each) => each.theta4 === theta4)!;
    const { coupler } = motionAt(links, file, theta2, 1, 0);
    expectAngle(file.theta4(theta2) * DEG, theta4, decimals, 'θ4');
    expectAngle(coupler.theta3 * DEG, values.theta3, decimals, 'θ3');
    const direction = (coupler.theta3 + 180 - fromB.angle) * DEG;
    expectFigure(coupler.B[0] + fromB.radius * Math.cos(direction), values.x, decimals, 'Px');
    expectFigure(coupler.B[1] + fromB.radius * Math.sin(direction), values.y, decimals, 'Py');
    expectRodAngles(file, theta2, values.theta3, theta4, 2 * lastDigit(decimals));
  });

  for (const [circuit, root] of roots) {
    it.each(ways(examplePins.links, root, examplePins.theta2))(
      `velocities and accelerations of the pins of the example, ${circuit}, %s`,
      (_, file) => {
        const { coupler } = motionAt(examplePins.links, file, examplePins.theta2, examplePins.omega2, examplePins.alpha2);
        for (const name of ['VA', 'VBA', 'VB', 'AA', 'ABA', 'AB'] as const satisfies readonly PinQuantity[]) {
          expectFigure(coupler[name][0], examplePins[circuit][name][0], examplePins.decimals, `${name} x`);
          expectFigure(coupler[name][1], examplePins[circuit][name][1], examplePins.decimals, `${name} y`);
        }
      },
    );
  }

  const pairs = [
    ...tableRows.map((each) => ({ name: `table row ${each.row}`, ...each, theta4s: each.circuits.map(([, theta4]) => theta4) })),
    { name: 'the assignment with a coupler point', ...couplerPointRow, theta4s: circuits.map(({ theta4 }) => theta4) },
  ];
  it.each(pairs)('$name: the load path names the turn from each circuit to the other', ({ links: own, theta2: at, theta4s }) => {
    for (const root of [-1, 1] as const) {
      const file = solveFourBar({ links: own, root, start: at, travel: leadWithin(own, at, 1, LEAD) });
      const here = file.theta4(at);
      const turn = rodFigure(file, 'other circuit: driven arm turned by')?.figure?.value;
      const other = Math.abs(Math.sin(((here - theta4s[0]!) * DEG) / 2)) < 1e-5 ? theta4s[1] : theta4s[0];
      expectAngle(here * DEG + (turn ?? NaN), other ?? NaN, 4, 'θ4 of the other circuit');
    }
  });

  it('the curvature behind the table is the slope of its ratio column, by differences', () => {
    for (const row of positionRows) {
      for (const [, root] of roots) {
        for (const [way, file] of ways(row.links, root, row.theta2)) {
          if (way === atOnce) continue;
          const step = Math.abs(file.travel) * 1e-4;
          const slope = (file.slope(row.theta2 + step) - file.slope(row.theta2 - step)) / (2 * step * DEG);
          expect(Math.abs(slope - file.curvature(row.theta2)), `${row.name}, ${way}`).toBeLessThan(1e-6);
        }
      }
    }
  });
});

const atOnce = 'drawn there with its output off';

/** Three files through θ2: drawn there, drawn before it, and drawn beyond it with a pedal that turns clockwise. */
function ways(links: FourBar, root: Root, theta2: number): readonly (readonly [string, SolvedFourBar])[] {
  const before = leadWithin(links, theta2, -1, LEAD);
  const beyond = leadWithin(links, theta2, 1, LEAD);
  return [
    [atOnce, solveFourBar({ links, root, start: theta2, travel: beyond, drawnOff: DRAWN_OFF })],
    ['coming up to it', solveFourBar({ links, root, start: theta2 - before, travel: before + 0.9 * beyond })],
    ['coming down to it', solveFourBar({ links, root, start: theta2 + beyond, travel: -beyond - 0.9 * before })],
  ];
}

/** The same on both circuits, each named by the published θ4 that it is to give: sources differ in which they call open. */
function bothCircuits(links: FourBar, theta2: number, theta4s: readonly number[]): readonly (readonly [number, string, SolvedFourBar])[] {
  const off = (root: Root, theta4: number): number =>
    Math.abs(Math.sin(halfTangentAngles(links, theta2 * DEG, root).theta4 / 2 - (theta4 * DEG) / 2));
  const rootOf = (theta4: number): Root => (off(-1, theta4) < off(1, theta4) ? -1 : 1);
  if (new Set(theta4s.map(rootOf)).size !== 2) throw new Error('both answers lie on one circuit');
  return theta4s.flatMap((theta4) => ways(links, rootOf(theta4), theta2).map(([way, file]) => [theta4, way, file] as const));
}

function motionAt(
  links: FourBar,
  file: SolvedFourBar,
  theta2: number,
  omega2: number,
  alpha2: number,
): { readonly omega4: number; readonly alpha4: number; readonly coupler: CouplerMotion } {
  const omega4 = file.slope(theta2) * omega2;
  const alpha4 = file.curvature(theta2) * omega2 ** 2 + file.slope(theta2) * alpha2;
  const input = { theta: theta2, omega: omega2, alpha: alpha2 };
  return { omega4, alpha4, coupler: couplerMotion(links, input, { theta: file.theta4(theta2), omega: omega4, alpha: alpha4 }) };
}

/** The table's angles between the rod and both its arms are the acute ones between published directions. */
function expectRodAngles(file: SolvedFourBar, theta2: number, theta3: number, theta4: number, within: number): void {
  expect(Math.abs((file.read('coupler.transmission', theta2) ?? NaN) - acute(theta4 - theta3)), 'transmission').toBeLessThanOrEqual(within);
  expect(Math.abs((file.read('coupler.drive', theta2) ?? NaN) - acute(theta3 - theta2)), 'drive').toBeLessThanOrEqual(within);
}

function acute(degrees: number): number {
  return Math.asin(Math.abs(Math.sin(degrees * DEG))) / DEG;
}

function fourBarWords(file: SolvedFourBar): string | undefined {
  return rodFigure(file, 'four-bar')?.text;
}

function rodFigure(file: SolvedFourBar, label: string): PartFigure | undefined {
  const rod = file.answers.parts.find(({ kind }) => kind === 'rod');
  return rod?.figures.find((each) => each.label === label);
}
