/** What acts in random linkages with springs, by free-body statics instead of virtual work. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closureOf } from '../support/closure.ts';
import { balance, leastSine, type Figure } from './support/freeBody.ts';
import { anySprung } from './support/randomSprung.ts';
import { springMoments } from './support/springForces.ts';
import { solveSprung, type SprungSketch } from './support/sprung.ts';
import { standAt } from './support/standing.ts';

const STATIONS = [0, 0.17, 0.41, 0.73, 1];
/** Relative to the sum of the magnitudes of what makes a figure up. */
const SAME = 1e-9;
/** Sine of the angle from a dead centre: nearer to it the engine's root of a difference has lost too many digits to hold to `SAME`. */
const CLEAR = 1e-3;

interface Report {
  readonly faults: string[];
  /** Stations. */
  compared: number;
  figures: number;
  /** Figures that neither method can tell. */
  untold: number;
  nearDeadCentre: number;
  /** Efforts told, by what the foot or hand is on. */
  readonly efforts: Record<EffortKind, number>;
  /** Cables past an open stop. */
  stretched: number;
  loose: number;
}

type EffortKind = 'pad' | 'cable' | 'cable with a lever ratio';

function effortKind({ pedal, leverRatio }: SprungSketch): EffortKind {
  return pedal.kind === 'lever' ? 'pad' : leverRatio === undefined ? 'cable' : 'cable with a lever ratio';
}

function compare(sketches: readonly SprungSketch[]): Report {
  const efforts = { pad: 0, cable: 0, 'cable with a lever ratio': 0 };
  const report: Report = { faults: [], compared: 0, figures: 0, untold: 0, nearDeadCentre: 0, efforts, stretched: 0, loose: 0 };
  sketches.forEach((sketch, index) => {
    const solved = solveSprung(sketch);
    const closure = closureOf(sketch, solved.senses);
    for (const travel of STATIONS) {
      const stand = standAt(closure, sketch, solved, travel);
      if (stand === undefined) continue;
      const row = solved.rowAt(travel);
      const same = (name: string, { value, scale }: Figure): void => {
        const off = Math.abs(row(name) - value) / scale;
        report[Number.isNaN(value) ? 'untold' : 'figures']++;
        const agrees = Number.isNaN(value) ? Number.isNaN(row(name)) : scale === 0 ? row(name) === 0 : off <= SAME;
        if (!agrees) report.faults.push(`#${index} at ${travel}: ${name} is ${row(name)} and should be ${value}, of ${scale}`);
      };
      for (const spring of sketch.springs) {
        const [first] = springMoments(closure, solved.senses, spring, stand.rotations);
        const { lever, moment, most } = first!;
        same(`${spring.name}.torque`, { value: -solved.senses[lever]! * moment, scale: most });
      }
      // Levers that do not stand are compared too: what hangs on them has no figure.
      if (leastSine(closure, sketch, stand.rotations) < CLEAR) {
        report.nearDeadCentre++;
        continue;
      }
      const found = balance(closure, sketch, stand);
      report.compared++;
      for (const { name } of sketch.levers) same(`${name}.closing`, found.closing[name]!);
      if (found.effort !== undefined) {
        same('pedal.effort', found.effort);
        if (!Number.isNaN(found.effort.value)) report.efforts[effortKind(sketch)]++;
      }
      for (const joint of sketch.joints) {
        if (joint.kind !== 'cable') continue;
        const stands = stand.cable(joint);
        if (stands === 'loose') report.loose++;
        else if (stands.stretch > 0) report.stretched++;
      }
    }
  });
  return report;
}

describe('closing torques, spring torques and pedal effort are those of free-body statics', () => {
  it.each([
    { what: 'in planar linkages', choice: { only: 'planar' }, seed: 31, leastStretched: 0 },
    { what: 'in spatial linkages', choice: { only: 'spatial' }, seed: 32, leastStretched: 0 },
    { what: 'in linkages with stops, past which cables stretch', choice: { stops: true }, seed: 33, leastStretched: 130 },
    { what: 'in linkages with many cables', choice: { joints: ['cable', 'rod'], stops: true, levers: 4 }, seed: 34, leastStretched: 130 },
  ] as const)('$what', { timeout: 240_000 }, ({ choice, seed, leastStretched }) => {
    const { faults, compared, figures, untold, efforts, loose, stretched } = compare(fc.sample(anySprung(choice), { numRuns: 400, seed }));
    expect(faults).toEqual([]);
    expect(compared).toBeGreaterThan(1650);
    expect(figures).toBeGreaterThan(8_000);
    expect(untold).toBeLessThan(figures);
    expect(efforts.pad).toBeGreaterThan(460);
    expect(efforts.cable).toBeGreaterThan(25);
    expect(efforts['cable with a lever ratio']).toBeGreaterThan(25);
    expect(loose).toBeGreaterThan(200);
    expect(stretched).toBeGreaterThanOrEqual(leastStretched);
  });
});
