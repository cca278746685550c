/**
 * Cables that an open stop stretches as the foot comes off. While one is stretched, what it pulls stays on its stop; it draws the pedal
 * back with what holds that, and with stiffness times stretch. Then it is as stiff as any.
 */
import type { Pose } from '../../kinematics/pose.ts';
import type { Assumption } from './assumed.ts';
import type { Dynamics } from './dynamics.ts';
import type { GapState } from './gaps.ts';

/**
 * Puts them in, of bodies that were placed as they stand at first. @param overlaps set for their gaps @param held set for what they hold
 */
export function startStretched(dynamics: Dynamics, start: Pose, overlaps: boolean[], held: boolean[]): readonly Assumption[] {
  const { gaps, between, bodies, ways, moving } = dynamics;
  const { mechanism, parameters } = moving.build;
  const assumed: Assumption[] = [];
  gaps.forEach((gap, k) => {
    if (gap.kind !== 'cable') return;
    const { cable, name } = gap.joint;
    if (!(start.stretch[cable]! > 0)) return;
    const [driven] = between[k]!;
    const still = new Float64Array(bodies.count);
    const pressing = new Float64Array(gaps.length);
    const left = new Float64Array(bodies.count);
    ways.fill(-1);
    dynamics.leftOver(still, pressing, left);
    const alone = left[driven]!;
    pressing[k] = 1;
    dynamics.leftOver(still, pressing, left);
    const holding = alone / (alone - left[driven]!);
    const stiffness = mechanism.attached.stiffness[cable];
    if (stiffness === undefined) {
      const text = `\`${name}\` is stretched past an open stop and its stiffness is not given: what it has stored is left out`;
      assumed.push({ kind: 'cable-stiffness', part: name, value: undefined, text });
    }
    overlaps[k] = true;
    held[driven] = true;
    dynamics.stretched.push({
      gap: k,
      held: Number.isFinite(holding) ? Math.max(0, holding) : 0,
      stiffness: stiffness === undefined ? 0 : parameters[stiffness]!,
    });
  });
  return assumed;
}

/** What they still hold, J. */
export function stretchEnergy(dynamics: Dynamics): number {
  let sum = 0;
  for (const { gap, held, stiffness } of dynamics.stretched) {
    dynamics.gapState(gap, state);
    const stretch = Math.max(0, -state.g);
    sum += (held + (stiffness * stretch) / 2) * stretch;
  }
  return sum;
}

const state: GapState = { g: 0, rate: 0, change: 0 };
