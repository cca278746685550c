/**
 * Mass flow of a gas through an opening, as through an ideal nozzle times a coefficient of discharge. With p₀ and T₀ before it, p
 * behind it, r = p/p₀, R the gas constant and γ the ratio of specific heats:
 *
 *     ṁ = C A p₀/√(R T₀) · r^(1/γ) √( 2γ/(γ−1) [1 − r^((γ−1)/γ)] )          while r > r* = (2/(γ+1))^(γ/(γ−1))
 *     ṁ = C A p₀/√(R T₀) · √γ (2/(γ+1))^((γ+1)/(2(γ−1)))                    below: the flow is choked and p no longer matters
 *
 * J. B. Heywood, Internal Combustion Engine Fundamentals, 1st edition, equations 7.20, 7.21 and appendix C, from memory. The
 * coefficient of a real throttle changes with its angle and with r.
 */

export interface Gas {
  /** J/(kg·K). */
  readonly constant: number;
  /** γ. */
  readonly heatRatio: number;
}

/** Dry air, rounded as textbooks have it; from memory. */
export const AIR: Gas = { constant: 287, heatRatio: 1.4 };

export interface OrificeState {
  /** C, a plain number. */
  readonly discharge: number;
  /** Absolute, before the opening, Pa. */
  readonly upstreamPressure: number;
  /** Before the opening, K. */
  readonly upstreamTemperature: number;
  /** Absolute, behind the opening, Pa. */
  readonly downstreamPressure: number;
}

/** @param area m² @returns kg/s; 0 where nothing drives it forward, the pressure behind being no less than before */
export function orificeFlow(area: number, state: OrificeState, gas: Gas = AIR): number {
  const { discharge, upstreamPressure, upstreamTemperature, downstreamPressure } = state;
  const g = gas.heatRatio;
  const ratio = downstreamPressure / upstreamPressure;
  const common = (discharge * area * upstreamPressure) / Math.sqrt(gas.constant * upstreamTemperature);
  if (ratio >= 1) return 0;
  if (ratio <= criticalRatio(gas)) return common * chokedCoefficient(gas);
  // 1 − r^k to all digits also for a pressure difference that is next to nothing.
  const drop = -Math.expm1(((g - 1) / g) * Math.log(ratio));
  return common * ratio ** (1 / g) * Math.sqrt(((2 * g) / (g - 1)) * drop);
}

/** r*: the pressure ratio at and below which the flow is choked. */
export function criticalRatio({ heatRatio: g }: Gas): number {
  return (2 / (g + 1)) ** (g / (g - 1));
}

/** What multiplies C A p₀/√(R T₀) where the flow is choked. */
export function chokedCoefficient({ heatRatio: g }: Gas): number {
  return Math.sqrt(g) * (2 / (g + 1)) ** ((g + 1) / (2 * (g - 1)));
}
