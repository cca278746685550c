/** What full travel of the pedal is, and how far it gets. */
import { pathOfForce } from '../findings/facts/pad.ts';
import { lastWithValue } from '../numeric/roots.ts';
import type { PedalScale } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';
import { turningPoint } from './turning.ts';

export function scalePedal(drawable: Drawable): PedalScale {
  const { definition, mechanism, build, placeOf } = drawable;
  const { pedal } = definition;
  const { pad } = mechanism.attached;
  const lastSolved = lastSolvedOf(drawable);
  const path = finite(pathOfForce(definition, build));
  if (pedal?.kind === 'cable') {
    const ratio = pedal.leverRatio?.nominal;
    return { padTravel: path, padIs: ratio === undefined ? 'cable' : 'pad', lever: undefined, pad: undefined, lastSolved };
  }
  const index = pedal && mechanism.leverIndex.get(pedal.lever.name);
  if (pedal === undefined || index === undefined) {
    return { padTravel: undefined, padIs: 'pad', lever: undefined, pad: undefined, lastSolved };
  }
  const pin = pad?.kind === 'arm' ? pad.pin : undefined;
  return {
    padTravel: path,
    padIs: 'pad',
    lever: placeOf(index),
    pad: pin === undefined ? undefined : turningPoint(build, pin),
    lastSolved,
  };
}

function finite(length: number | undefined): number | undefined {
  return length !== undefined && Number.isFinite(length) ? length : undefined;
}

/** Where the first of the moved levers loses the place that it has had, or the pedal its travel: there all of it binds. */
function lastSolvedOf({ travel, mechanism, stations, poses }: Drawable): number | undefined {
  if (travel === undefined) return undefined;
  const has = (lever: number, i: number): boolean => !Number.isNaN(poses[i]!.rotation[lever]!);
  const moved = mechanism.levers.filter(({ group }) => group >= 0);
  let first: { readonly lever: number; readonly before: number } | undefined;
  for (const { index } of moved) {
    const after = poses.findIndex((_, i) => i > 0 && has(index, i - 1) && !has(index, i));
    if (after > 0 && (first === undefined || after - 1 < first.before)) first = { lever: index, before: after - 1 };
  }
  if (first === undefined) return undefined;
  const { lever, before } = first;
  return lastWithValue((at) => travel.poseAt(at).rotation[lever]!, stations[before]!, stations[before + 1]!);
}
