import { describe, expect, it } from 'vitest';
import {
  classify,
  couplerPointPlace,
  deadCentres,
  freudensteinConstants,
  inputLimits,
  outputSwing,
  pinMotions,
  solveAcceleration,
  solvePosition,
  solveVelocity,
  transmissionAngle,
  transmissionExtremes,
} from '../../src/kinematics/fourBar/index.ts';
import type { Acceleration, Circuit, FourBar, Position, Velocity } from '../../src/kinematics/fourBar/index.ts';
import { DEG, expectAngle, expectFigure } from './support/check.ts';
import { halfTangentAngles, halfTangentConstants } from './support/halfTangent.ts';
import { couplerPointRow, exampleConstants, exampleLimits, examplePins, positionRows, tableRows } from './values/positions.ts';
import type { PinQuantity } from './values/positions.ts';

describe('positions, velocities and accelerations of the textbook four-bars', () => {
  it.each(positionRows)('$name', (row) => {
    for (const circuit of ['open', 'crossed'] as const) {
      const values = row[circuit];
      if (values === undefined) continue;
      const { position, velocity, acceleration } = motionOf(row.links, row.theta2, circuit, row.omega2 ?? 1, row.alpha2 ?? 0);
      expectAngle(position.theta3, values.theta3, row.decimals.theta, `${circuit} θ3`, row.thetaWithin);
      expectAngle(position.theta4, values.theta4, row.decimals.theta, `${circuit} θ4`, row.thetaWithin);
      if (values.omega3 !== undefined) expectFigure(velocity.omega3, values.omega3, row.decimals.omega, `${circuit} ω3`);
      if (values.omega4 !== undefined) expectFigure(velocity.omega4, values.omega4, row.decimals.omega, `${circuit} ω4`);
      if (values.alpha3 !== undefined) expectFigure(acceleration.alpha3, values.alpha3, row.decimals.alpha, `${circuit} α3`);
      if (values.alpha4 !== undefined) expectFigure(acceleration.alpha4, values.alpha4, row.decimals.alpha, `${circuit} α4`);
    }
    if (row.type !== undefined) expect(classify(row.links)).toMatchObject({ type: row.type });
  });

  it.each(tableRows)('table row $row: both circuits, type and toggle angles', ({ links, theta2, circuits, type, toggles }) => {
    const found = (['open', 'crossed'] as const).map((circuit) => motionOf(links, theta2, circuit, 1, 0).position);
    const firstIsOpen = Math.abs(found[0]!.theta4 / DEG - circuits[0][1]) < 1;
    circuits.forEach(([theta3, theta4], i) => {
      const position = found[firstIsOpen ? i : 1 - i];
      expectAngle(position?.theta3, theta3, 4, 'θ3');
      expectAngle(position?.theta4, theta4, 4, 'θ4');
    });
    expect(classify(links)).toMatchObject({ type });
    const upper = (inputLimits(links)?.toggles ?? []).filter(({ angle }) => angle >= 0);
    expect(upper).toHaveLength(toggles.length);
    toggles.forEach((degrees, i) => expectAngle(upper[i]?.angle, degrees, 4, 'toggle'));
  });

  it('has the constants of the half-tangent method, which gives the same angles', () => {
    const { links, theta2 } = examplePins;
    const constants = halfTangentConstants(links, theta2 * DEG);
    for (const [name, [figure, decimals]] of Object.entries(exampleConstants.values)) {
      expectFigure(constants[name as keyof typeof constants], figure, decimals, name);
    }
    const { k1, k2, k3 } = freudensteinConstants(links);
    expect([k1, k2, k3]).toEqual([constants.K1, constants.K2, constants.K3]);
    for (const [circuit, sign] of [
      ['open', -1],
      ['crossed', 1],
    ] as const) {
      const position = motionOf(links, theta2, circuit, 1, 0).position;
      const second = halfTangentAngles(links, theta2 * DEG, sign);
      expectAngle(position.theta3, second.theta3 / DEG, 12, 'θ3', 1e-12);
      expectAngle(position.theta4, second.theta4 / DEG, 12, 'θ4', 1e-12);
    }
  });

  it.each(['open', 'crossed'] as const)('velocities and accelerations of the pins of the example, %s', (circuit) => {
    const { links, theta2, omega2, alpha2, decimals } = examplePins;
    const { position, velocity, acceleration } = motionOf(links, theta2, circuit, omega2, alpha2);
    const pins = pinMotions(links, position, velocity, acceleration);
    const found: Record<PinQuantity, { readonly x: number; readonly y: number }> = {
      VA: pins.a.velocity,
      VBA: pins.bRelativeToA.velocity,
      VB: pins.b.velocity,
      AA: pins.a.acceleration,
      ABA: pins.bRelativeToA.acceleration,
      AB: pins.b.acceleration,
    };
    for (const name of Object.keys(found) as PinQuantity[]) {
      expectFigure(found[name].x, examplePins[circuit][name][0], decimals, `${name} x`);
      expectFigure(found[name].y, examplePins[circuit][name][1], decimals, `${name} y`);
    }
  });

  it('a point of the coupler, on both circuits', () => {
    const { links, theta2, fromB, circuits, decimals } = couplerPointRow;
    const found = (['open', 'crossed'] as const).map((circuit) => motionOf(links, theta2, circuit, 1, 0).position);
    // P seen from A: the coupler, and from its end the line of BP, clockwise by the angle from BA, which points back along the coupler.
    const turn = Math.PI - fromB.angle * DEG;
    const x = links.b + fromB.radius * Math.cos(turn);
    const y = fromB.radius * Math.sin(turn);
    const point = { radius: Math.hypot(x, y), angle: Math.atan2(y, x) };
    for (const values of circuits) {
      const position = found.find(({ theta4 }) => Math.abs(Math.sin((theta4 - values.theta4 * DEG) / 2)) < 0.01);
      expectAngle(position?.theta3, values.theta3, decimals, 'θ3');
      expectAngle(position?.theta4, values.theta4, decimals, 'θ4');
      const place = position && couplerPointPlace(links, position, point);
      expectFigure(place?.x, values.x, decimals, 'Px');
      expectFigure(place?.y, values.y, decimals, 'Py');
    }
  });
});

describe('limits of the textbook example', () => {
  const { links, theta2, decimals } = exampleLimits;

  it('transmission angle: least, greatest and at the drawn angle', () => {
    const extremes = transmissionExtremes(links);
    expectAngle(extremes?.least.angle, exampleLimits.leastTransmission.angle, decimals, 'least');
    expectAngle(extremes?.least.theta2, exampleLimits.leastTransmission.theta2, decimals, 'where it is least');
    expectAngle(extremes?.greatest.angle, exampleLimits.greatestTransmission.angle, decimals, 'greatest');
    expectAngle(extremes?.greatest.theta2, exampleLimits.greatestTransmission.theta2, decimals, 'where it is greatest');
    expectAngle(transmissionAngle(links, theta2 * DEG), exampleLimits.transmissionAtTheta2, decimals, 'at θ2');
  });

  it('dead centres and swing of the output on the open circuit', () => {
    const centres = deadCentres(links).filter(({ circuit }) => circuit === 'open');
    expect(centres).toHaveLength(2);
    for (const inLine of ['extended', 'overlapped'] as const) {
      const centre = centres.find((candidate) => candidate.inLine === inLine);
      expectAngle(centre?.theta2, exampleLimits[inLine].theta2, decimals, `${inLine} θ2`);
      expectAngle(centre?.theta4, exampleLimits[inLine].theta4, decimals, `${inLine} θ4`);
    }
    expectAngle(outputSwing(links), exampleLimits.swing, decimals, 'swing');
  });

  it('torque ratio without friction', () => {
    expectFigure(motionOf(links, theta2, 'open', 1, 0).velocity.omega4, exampleLimits.torqueRatio, decimals, 'T_in/T_out');
  });
});

function motionOf(
  links: FourBar,
  theta2: number,
  circuit: Circuit,
  omega2: number,
  alpha2: number,
): { readonly position: Position; readonly velocity: Velocity; readonly acceleration: Acceleration } {
  const position = solvePosition(links, theta2 * DEG, circuit);
  const velocity = position && solveVelocity(links, position, omega2);
  const acceleration = position && velocity && solveAcceleration(links, position, velocity, alpha2);
  if (!position || !velocity || !acceleration) throw new Error('not solved');
  return { position, velocity, acceleration };
}
