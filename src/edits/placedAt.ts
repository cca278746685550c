/** What can be moved, by its path in the file. */
import type { Arm, Definition, Lever, Place } from '../definition/definition.ts';

export type Placed =
  /** By coordinates; those of a named point where the place is given by one. */
  | { readonly kind: 'place'; readonly place: Place }
  | { readonly kind: 'polar'; readonly lever: Lever; readonly position: Extract<Arm['position'], { kind: 'polar' }> };

/** @param path e.g. `levers.crank.pivot`, `levers.crank.arms.out`, `cables.main.enters`, `springs.second.from`, `points.shaft_centre` */
export function placedAt(definition: Definition, path: string): Placed | undefined {
  const [block, name, ...rest] = path.split('.');
  const key = rest.join('.');
  switch (block) {
    case 'points':
      return at(key === '' ? definition.points.find((point) => point.name === name)?.place : undefined);
    case 'levers':
      return onLever(
        definition.levers.find((lever) => lever.name === name),
        rest,
      );
    case 'cables': {
      const cable = definition.cables.find((each) => each.name === name);
      return at(key === 'leaves' ? cable?.leaves : key === 'enters' ? cable?.enters : undefined);
    }
    case 'springs': {
      const spring = definition.springs.find((each) => each.name === name);
      return at(key === 'from' && spring?.kind !== 'torsion' && spring?.from.kind === 'place' ? spring.from.place : undefined);
    }
    default:
      return undefined;
  }
}

function onLever(lever: Lever | undefined, [key, name, ...rest]: readonly string[]): Placed | undefined {
  if (lever === undefined) return undefined;
  if (key === 'pivot') return at(lever.pivot);
  const position = key === 'arms' ? lever.arms.find((arm) => arm.name === name)?.position : undefined;
  if (position === undefined || rest.length > 1 || (rest[0] ?? 'at') !== 'at') return undefined;
  return position.kind === 'place' ? at(position.place) : { kind: 'polar', lever, position };
}

function at(place: Place | undefined): Placed | undefined {
  return place && { kind: 'place', place };
}
