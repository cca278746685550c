/** The levers that the pedal moves, and what hangs on them, in load-path order. */
import type { Mechanism } from '../../kinematics/model.ts';

export function movedLevers({ drive, joints }: Mechanism): readonly number[] {
  return [...(drive.kind === 'lever' ? [drive.lever] : []), ...joints.map(({ driven }) => driven)];
}

/** Parts of moved levers, those of one lever in file order; the others are left out. */
export function alongLoadPath<Part extends { readonly lever: number }>(mechanism: Mechanism, parts: readonly Part[]): readonly Part[] {
  const place = new Map(movedLevers(mechanism).map((lever, i) => [lever, i]));
  return parts.filter(({ lever }) => place.has(lever)).sort((a, b) => place.get(a.lever)! - place.get(b.lever)!);
}
