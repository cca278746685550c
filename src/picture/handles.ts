/** The places of the file that a person can drag. */
import type { Lever, Place, Value } from '../definition/definition.ts';
import { letsBehind } from '../language/letBehind.ts';
import type { Handle, PinPlace, Triple } from '../protocol/picture.ts';
import type { Drawable } from './drawable.ts';
import { pinPlace, tripleOf } from './turning.ts';

/** In the order of levers, cables, springs; a place that several parts take from `points` is one handle where the first of them is. */
export function findHandles(drawable: Drawable): readonly Handle[] {
  const grips = [...leverGrips(drawable), ...cableGrips(drawable), ...springGrips(drawable)];
  const shared = new Map<string, Grip[]>();
  const handles: (() => Handle)[] = [];
  for (const grip of grips) {
    const point = grip.place?.point?.name;
    if (point === undefined) {
      handles.push(() => handleOf(drawable, grip, grip.path, grip.label));
      continue;
    }
    const known = shared.get(point);
    known?.push(grip);
    if (known !== undefined) continue;
    const users = [grip];
    shared.set(point, users);
    handles.push(() => {
      const [foremost = grip] = [...users].sort((a, b) => RANK[a.kind] - RANK[b.kind]);
      return handleOf(drawable, foremost, `points.${point}`, `${point}: ${users.map(({ label }) => label).join(', ')}`);
    });
  }
  return handles.map((make) => make());
}

/** A place that one part gives. */
interface Grip {
  readonly path: string;
  readonly label: string;
  readonly kind: Handle['kind'];
  readonly at: Triple | PinPlace;
  /** As written; undefined for an arm by radius and angle. */
  readonly place: Place | undefined;
  readonly values: readonly Value[];
}

/** What stands still goes before what turns, for a place that both have. */
const RANK: Readonly<Record<Handle['kind'], number>> = { pivot: 0, housing: 1, anchor: 2, pin: 3 };

function handleOf({ definition }: Drawable, { kind, at, values }: Grip, path: string, label: string): Handle {
  const lets = new Set(values.flatMap((value) => letsBehind(definition, value).map(({ name }) => name)));
  return { path, label, kind, at, lets: [...lets] };
}

function placed(path: string, label: string, kind: Handle['kind'], place: Place, at: Triple | PinPlace = tripleOf(place)): Grip {
  return { path, label, kind, at, place, values: [place.x, place.y, ...(place.z === undefined ? [] : [place.z])] };
}

function leverGrips(drawable: Drawable): readonly Grip[] {
  const { mechanism, levers } = drawable;
  return levers.flatMap((index) => {
    const { name, source } = mechanism.levers[index]!;
    return [placed(`levers.${name}.pivot`, `pivot of ${name}`, 'pivot', source.pivot), ...armGrips(drawable, index, source)];
  });
}

function armGrips(drawable: Drawable, index: number, { name: lever, arms }: Lever): readonly Grip[] {
  const { mechanism, build } = drawable;
  return arms.flatMap(({ name, position }): Grip[] => {
    const pin = mechanism.levers[index]!.pins.get(name);
    const at = pin === undefined ? undefined : pinPlace(drawable, build, index, pin);
    if (at === undefined) return [];
    const path = `levers.${lever}.arms.${name}`;
    const label = `pin ${name} of ${lever}`;
    if (position.kind === 'place') return [placed(path, label, 'pin', position.place, at)];
    const { radius, angle, offset } = position;
    return [{ path, label, kind: 'pin', at, place: undefined, values: [radius, angle, ...(offset === undefined ? [] : [offset])] }];
  });
}

function cableGrips({ definition }: Drawable): readonly Grip[] {
  return definition.cables.flatMap(({ name, leaves, enters }) => [
    ...(leaves === undefined ? [] : [placed(`cables.${name}.leaves`, `housing end of ${name} at the pedal`, 'housing', leaves)]),
    placed(`cables.${name}.enters`, `housing end of ${name} at the engine`, 'housing', enters),
  ]);
}

function springGrips({ definition }: Drawable): readonly Grip[] {
  return definition.springs.flatMap((spring): Grip[] =>
    spring.kind === 'torsion' || spring.from.kind === 'pin'
      ? []
      : [placed(`springs.${spring.name}.from`, `anchor of ${spring.name}`, 'anchor', spring.from.place)],
  );
}
