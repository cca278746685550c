/** Which levers stand at the engine: those with plates, and what drives them from there on; the pedal is left out. */
import type { Picture } from '../../src/protocol/picture.ts';

/**
 * Rods, slots and couplings are followed both ways, so that what hangs on such a lever besides is there too; a cable is followed from its
 * driven end to its driving one, and the pedal's lever is the end.
 *
 * @returns indices; empty where there are no plates, or where nothing is left out
 */
export function engineSide(picture: Picture): ReadonlySet<number> {
  const next = new Map<number, number[]>();
  const follow = (from: number, to: number) => next.set(from, [...(next.get(from) ?? []), to]);
  const both = (a: number, b: number) => {
    follow(a, b);
    follow(b, a);
  };
  for (const { from, to } of picture.rods) both(from.lever, to.lever);
  for (const { pin, fork } of picture.slots) both(pin.lever, fork.lever);
  for (const { from, to } of picture.couplings) both(from, to);
  for (const { leaves, enters } of picture.cables) if (leaves !== undefined) follow(enters.inner.lever, leaves.inner.lever);
  const reached = new Set<number>();
  const open = picture.plates.map(({ lever }) => lever);
  for (let lever = open.pop(); lever !== undefined; lever = open.pop()) {
    if (lever === picture.pedal.lever || reached.has(lever)) continue;
    reached.add(lever);
    open.push(...(next.get(lever) ?? []));
  }
  return reached.size === picture.levers.length ? new Set() : reached;
}
