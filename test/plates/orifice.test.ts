/** Flow through an opening against the same in terms of the Mach number, and at its limits. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AIR, chokedCoefficient, criticalRatio, orificeFlow, type OrificeState } from '../../src/plates/orifice.ts';

const state: OrificeState = { discharge: 0.8, upstreamPressure: 101_325, upstreamTemperature: 298.15, downstreamPressure: 90_000 };

/** ṁ √(R T₀) / (A p₀) = √γ M (1 + (γ−1)/2 M²)^(−(γ+1)/(2(γ−1))) with M from p₀/p = (1 + (γ−1)/2 M²)^(γ/(γ−1)), no more than 1. */
function byMach(ratio: number, g: number): number {
  const mach = Math.min(1, Math.sqrt((2 / (g - 1)) * (ratio ** (-(g - 1) / g) - 1)));
  return Math.sqrt(g) * mach * (1 + ((g - 1) / 2) * mach * mach) ** (-(g + 1) / (2 * (g - 1)));
}

describe('flow through an opening', () => {
  it('is that of a nozzle of the same Mach number', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.9999, noNaN: true }),
        fc.double({ min: 1.1, max: 1.66, noNaN: true }),
        fc.double({ min: 1e-7, max: 1e-2, noNaN: true }),
        (ratio, heatRatio, area) => {
          const gas = { constant: 300, heatRatio };
          const flow = orificeFlow(area, { ...state, downstreamPressure: ratio * state.upstreamPressure }, gas);
          const scale = (0.8 * area * state.upstreamPressure) / Math.sqrt(300 * state.upstreamTemperature);
          expect(Math.abs(flow / (scale * byMach(ratio, heatRatio)) - 1)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('goes over into choked flow without a step', () => {
    const at = (ratio: number): number => orificeFlow(1e-4, { ...state, downstreamPressure: ratio * state.upstreamPressure });
    const critical = criticalRatio(AIR);
    expect(Math.abs(at(critical * (1 + 1e-9)) / at(critical) - 1)).toBeLessThan(1e-12);
    expect(at(critical / 2)).toBe(at(critical));
    expect(at(critical)).toBeCloseTo((0.8e-4 * 101_325 * chokedCoefficient(AIR)) / Math.sqrt(287 * 298.15), 15);
  });

  it('is nothing where the pressure behind is as great or greater, and small where it is nearly so', () => {
    expect(orificeFlow(1e-4, { ...state, downstreamPressure: state.upstreamPressure })).toBe(0);
    expect(orificeFlow(1e-4, { ...state, downstreamPressure: 2 * state.upstreamPressure })).toBe(0);
    // Next to no difference in pressure: incompressible, ṁ = C A √(2 ρ Δp).
    const drop = 1e-4;
    const slow = orificeFlow(1e-4, { ...state, downstreamPressure: state.upstreamPressure - drop });
    const density = state.upstreamPressure / (287 * 298.15);
    expect(Math.abs(slow / (0.8e-4 * Math.sqrt(2 * density * drop)) - 1)).toBeLessThan(1e-6);
  });

  it('grows with the area and is nothing through none', () => {
    expect(orificeFlow(2e-4, state)).toBeCloseTo(2 * orificeFlow(1e-4, state), 15);
    expect(orificeFlow(0, state)).toBe(0);
  });
});
