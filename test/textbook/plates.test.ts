/** Open area and flow against the tables of values: by the functions, and off the table of a throttle file. */
import { describe, expect, it } from 'vitest';
import { chokedCoefficient, criticalRatio, orificeFlow } from '../../src/plates/orifice.ts';
import { greatestOpenArea, openArea, shadowAngle, type PlateShape } from '../../src/plates/openArea.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { DEG, expectFigure } from './support/check.ts';
import { readColumn } from './support/offTheTable.ts';
import { flowRow, nozzleRow, plateRows } from './values/plates.ts';

interface Millimetres {
  readonly bore: number;
  readonly shaft: number;
  readonly seat: number;
}

function shapeOf({ bore, shaft, seat }: Millimetres): PlateShape {
  return { bore: bore * 1e-3, shaft: shaft * 1e-3, seat: seat * DEG };
}

describe.each(plateRows)('$name', (plate) => {
  const shape = shapeOf(plate);
  const { decimals } = plate;

  it.each(plate.rows)('opens at %d° by %d mm², %d of the bore', (angle, area, fraction) => {
    const found = openArea(shape, angle * DEG) * 1e6;
    expectFigure(found, area, decimals.area, 'area');
    expectFigure(found / ((Math.PI / 4) * plate.bore ** 2), fraction, decimals.fraction, 'fraction of the bore');
  });

  it('is hidden by its shaft from the angle given, where it is open as far as it can be', () => {
    expectFigure(shadowAngle(shape) / DEG, plate.shadow, decimals.shadow, 'angle');
    expectFigure(greatestOpenArea(shape) * 1e6, plate.rows.at(-1)![1], decimals.area, 'greatest area');
    expect(openArea(shape, (plate.shadow - 0.01) * DEG)).toBeLessThan(greatestOpenArea(shape));
  });

  // A shaft that the pedal turns itself, drawn at its seat or held off it by the idle stop, on over 90° and down again.
  it.each([0, 5])('has these areas in the table of a file with an idle stop of %d°', (idle) => {
    const travel = 160 - idle;
    const answers = answersOf(plate, idle, travel);
    const station = (angle: number): number => (angle - plate.seat - idle) / travel;
    const most = plate.rows.at(-1)![1];
    let read = 0;
    for (const [angle, area] of plate.rows) {
      if (angle < plate.seat + idle) continue;
      for (const at of [angle, 180 - angle]) {
        if (station(at) > 1 + 1e-12) continue;
        expectFigure(readColumn(answers, 'bank.area', Math.min(1, station(at))) ?? NaN, area, decimals.area, `area at ${at}°`);
        const share = readColumn(answers, 'bank.fraction', Math.min(1, station(at))) ?? NaN;
        // The quotient of two figures given to half a unit of their last digit.
        expect(Math.abs(share - (100 * area) / most), `fraction at ${at}°`).toBeLessThan((100 * 10 ** -decimals.area) / most);
        read++;
      }
    }
    expect(read).toBe(idle === 0 ? 26 : 24);
  });
});

it('chokes at the ratio and with the coefficient given', () => {
  const gas = { constant: 287, heatRatio: nozzleRow.heatRatio };
  expectFigure(criticalRatio(gas), nozzleRow.criticalRatio, nozzleRow.decimals, 'ratio');
  expectFigure(chokedCoefficient(gas), nozzleRow.chokedCoefficient, nozzleRow.decimals, 'coefficient');
});

describe(flowRow.name, () => {
  const { discharge, upstreamPressure, upstreamTemperature, gas } = flowRow;
  const area = openArea(shapeOf(flowRow), flowRow.angle * DEG);

  it('has the area given', () => {
    expectFigure(area * 1e6, flowRow.area, flowRow.areaDecimals, 'area');
  });

  it.each(flowRow.rows)('with %d kPa behind it passes %d g/s', (pressure, flow) => {
    const found = orificeFlow(area, { discharge, upstreamPressure, upstreamTemperature, downstreamPressure: pressure * 1e3 }, gas);
    expectFigure(found * 1e3, flow, flowRow.decimals, 'flow');
  });

  it('no longer changes below the pressure given', () => {
    expectFigure((criticalRatio(gas) * upstreamPressure) / 1e3, flowRow.chokedFrom, flowRow.chokedDecimals, 'kPa');
  });
});

function answersOf({ bore, shaft, seat }: Millimetres, idle: number, travel: number): Answers {
  const answers = solve(`format: 1
levers:
  shaft: {pivot: [0, 0]}
pedal: {lever: shaft, opens: clockwise, travel: ${travel} deg}
plates:
  bank: {lever: shaft, bore: ${bore} mm, shaft: ${shaft} mm, seat: ${seat} deg, idle: ${idle} deg}
`);
  if (answers.problems.length > 0) throw new Error(JSON.stringify(answers.problems));
  return answers;
}
