/**
 * Parts that hang on parts which could not be read.
 */
import type { Definition, Moved, PartReference, SpringAnchor } from './definition.ts';
import type { Suspects } from './loadPath.ts';
import { child, textOf, type SourceNode } from './source/tree.ts';

/** The definition without the parts that refer to something absent. Nothing is said of them: the absent part has its problem. */
export function prune(definition: Definition): Definition {
  const levers = new Map(definition.levers.map((lever) => [lever.name, new Set([...lever.arms, ...lever.drums].map((part) => part.name))]));
  const isLever = (name: string): boolean => levers.has(name);
  const isPart = (part: PartReference | undefined): boolean => part === undefined || levers.get(part.lever)?.has(part.part) === true;
  const isAnchor = (anchor: SpringAnchor): boolean => anchor.kind === 'place' || isPart(anchor.pin);
  const cables = definition.cables.filter((cable) => isPart(cable.from) && isPart(cable.to));
  const springs = definition.springs.filter((spring) =>
    spring.kind === 'torsion' ? isLever(spring.lever.name) : isAnchor(spring.from) && isPart(spring.to),
  );
  const cableNames = new Set(cables.map((cable) => cable.name));
  const springNames = new Set(springs.map((spring) => spring.name));
  const isMoved = (moved: Moved): boolean => {
    if (moved.kind === 'lever') return isLever(moved.lever);
    return moved.kind === 'cable-end' ? cableNames.has(moved.cable) : springNames.has(moved.spring);
  };
  const { pedal, ...rest } = definition;
  const pedalStands = pedal !== undefined && (pedal.kind === 'lever' ? isLever(pedal.lever.name) : cableNames.has(pedal.cable.name));
  return {
    ...rest,
    ...(pedalStands ? { pedal: withoutLostPad(pedal, levers) } : {}),
    cables,
    springs,
    rods: definition.rods.filter((rod) => isPart(rod.from) && isPart(rod.to)),
    slots: definition.slots.filter((slot) => isPart(slot.pin) && isLever(slot.fork.name)),
    couplings: definition.couplings.filter((coupling) => isLever(coupling.from.name) && isLever(coupling.to.name)),
    plates: definition.plates.filter((plates) => isLever(plates.lever.name)),
    sensors: definition.sensors.filter((sensor) => isLever(sensor.lever.name)),
    movements: definition.movements.filter((movement) => movement.moves.every(isMoved)),
  };
}

/** Levers that a joint which is in the text and not in the definition may drive. */
export function suspectsOf(root: SourceNode | undefined, definition: Definition): Suspects {
  const suspects = new Set<string>();
  const blocks = [
    ['cables', definition.cables],
    ['rods', definition.rods],
    ['slots', definition.slots],
    ['couplings', definition.couplings],
  ] as const;
  for (const [key, parts] of blocks) {
    const block = child(root, key);
    if (block === undefined) continue;
    if (block.kind !== 'map' || block.damaged) return 'any';
    const read = new Set<string>(parts.map((part) => part.name));
    for (const entry of block.entries) {
      if (read.has(entry.key)) continue;
      const driven = textOf(child(entry.value, key === 'slots' ? 'fork' : 'to'))?.split('.')[0];
      // Of a slot that cannot be read, either end may be the driven one.
      const end = textOf(child(entry.value, key === 'slots' ? 'pin' : 'from'))?.split('.')[0];
      const other = key === 'slots' ? end : undefined;
      // With both ends on one lever, one of them is meant to be on another.
      if (driven === undefined || driven === end || !definition.levers.some((lever) => lever.name === driven)) return 'any';
      suspects.add(driven);
      if (other !== undefined) suspects.add(other);
    }
  }
  return suspects;
}

function withoutLostPad(
  pedal: NonNullable<Definition['pedal']>,
  levers: ReadonlyMap<string, ReadonlySet<string>>,
): NonNullable<Definition['pedal']> {
  if (pedal.kind === 'cable' || pedal.pad === undefined || levers.get(pedal.lever.name)?.has(pedal.pad.name) === true) return pedal;
  const { pad: _lost, ...rest } = pedal;
  return rest;
}
