/**
 * What a knock does to the speeds: bodies that meet a stop, or whose cable or free play comes tight, change speed at once.
 *
 *     M (v⁺ − v⁻) = Σ Jᵏ Λₖ,   Λₖ ≥ 0,   ġₖ⁺ + eₖ ġₖ⁻ ≥ 0,   one of both is none
 * for all gaps that are shut (J. J. Moreau's law of impact, from memory), solved by turns over the gaps. Stops throw back with e, cables and
 * free play with none. Of friction only that of a cable in its housing matters in so short a time: it lets a share of Λ through. A gap takes
 * −Λ (ġ⁺ + ġ⁻)/2 of the energy, ġ counted with that share.
 */
import type { Dynamics } from './dynamics.ts';

export interface Knock {
  /** Energy taken, J, by stops and by all others. */
  stops: number;
  jerks: number;
}

/**
 * @param shut which gaps are shut @param restitution e of each gap @param masses of the bodies @param v speeds, changed
 */
export function knock(
  { gaps, between, slope, passes }: Dynamics,
  shut: readonly boolean[],
  restitution: (gap: number, approach: number) => number,
  masses: Float64Array,
  v: Float64Array,
  into: Knock,
): void {
  const contacts = gaps.flatMap((gap, k) => {
    if (!shut[k]) return [];
    const [driven, driver] = between[k]!;
    const first = slope(k, driven);
    const second = driver < 0 ? 0 : slope(k, driver);
    const through = passes(k, v);
    const mobility = (first * first) / masses[driven]! + (driver < 0 ? 0 : (second * second * through) / masses[driver]!);
    const before = first * v[driven]! + (driver < 0 ? 0 : second * v[driver]!);
    const target = before < 0 ? -restitution(k, -before) * before : 0;
    const worked = first * v[driven]! + (driver < 0 ? 0 : second * through * v[driver]!);
    return mobility > 0 ? [{ gap, driven, driver, first, second, through, mobility, worked, target, impulse: 0 }] : [];
  });
  const rateOf = ({ driven, driver, first, second }: (typeof contacts)[number]): number =>
    first * v[driven]! + (driver < 0 ? 0 : second * v[driver]!);
  for (let turn = 0; turn < TURNS; turn++) {
    let changed = 0;
    for (const contact of contacts) {
      const impulse = Math.max(0, contact.impulse + (contact.target - rateOf(contact)) / contact.mobility);
      const more = impulse - contact.impulse;
      if (more === 0) continue;
      contact.impulse = impulse;
      v[contact.driven] = v[contact.driven]! + (contact.first * more) / masses[contact.driven]!;
      if (contact.driver >= 0) v[contact.driver] = v[contact.driver]! + (contact.second * contact.through * more) / masses[contact.driver]!;
      changed = Math.max(changed, Math.abs(more) / Math.max(impulse, Math.abs(more)));
    }
    if (changed <= CLOSE) break;
  }
  for (const contact of contacts) {
    const { first, second, through, driven, driver } = contact;
    const works = first * v[driven]! + (driver < 0 ? 0 : second * through * v[driver]!);
    const taken = (-contact.impulse * (contact.worked + works)) / 2;
    if (contact.gap.kind === 'stop' || contact.gap.kind === 'pedal-stop') into.stops += taken;
    else into.jerks += taken;
  }
}

const TURNS = 10_000;
/** Relative. */
const CLOSE = 1e-15;
