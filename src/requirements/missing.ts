/** Why a column that the format knows is not among those that were solved. */
import { COLUMNS } from '../definition/columns.ts';
import type { Definition } from '../definition/definition.ts';
import { hasRate } from '../forces/wire/rate.ts';
import type { Mechanism } from '../kinematics/model.ts';
import type { SpringModel } from '../kinematics/attached.ts';
import type { Travel } from '../travel/travel.ts';
import { FORCES, unreadBelow } from './unread.ts';

/** @param mechanism absent where nothing could be solved */
export function whyMissing(name: string, definition: Definition, mechanism: Mechanism | undefined): string {
  const unread = unreadBelow(name, definition);
  if (unread !== undefined) return `${name} is not known: \`${unread.path}\` is not understood`;
  if (mechanism === undefined) return `${name} is not known: the linkage could not be solved`;
  const [owner = '', key = ''] = name.split('.');
  const lever = owner === 'pedal' && OF_THE_DRIVE.has(key) ? THE_DRIVE : leverOf(owner, definition);
  if (lever === undefined) return `${name} is not known: \`${owner}\` is not understood`;
  const index = mechanism.leverIndex.get(lever);
  if (lever === THE_DRIVE || (index !== undefined && isMoved(mechanism, index))) {
    const why = whyNoForce(key, definition);
    return why === undefined ? `${name} is not computed by this version` : `${name} is not known: ${why}`;
  }
  return `${name} is not known: nothing that is understood moves \`${lever}\``;
}

/** What a force lacks at a pedal travel where everything stands somewhere; undefined where that is not known. */
export function whyNoForceAt(name: string, { mechanism, poseAt }: Travel, travel: number): string | undefined {
  if (!FORCES.has(name.slice(name.indexOf('.') + 1))) return undefined;
  const pose = poseAt(travel);
  const { springs, stiffness } = mechanism.attached;
  if (mechanism.levers.some(({ group, index }) => group >= 0 && Number.isNaN(pose.rotation[index]!))) return undefined;
  const spring = springs.find((each) => (!hasRate(each) || (each.kind !== 'torsion' && each.freeLength === undefined)) && isOf(each, name));
  if (spring !== undefined) {
    return `${spring.name} has no ${hasRate(spring) ? '`free_length`' : '`rate`'}`;
  }
  const cable = mechanism.cables.find((each) => pose.stretch[each.cable]! > 0 && stiffness[each.cable] === undefined);
  if (cable === undefined || name.endsWith('.torque')) return /\.margin(?:_off)?$/.test(name) ? 'nothing rubs there' : undefined;
  return `the cable ${cable.name} stretches there and has no \`stiffness\``;
}

/** Whether a column rests on a spring: its own torque, what all springs do together, or all but the one that is off. */
function isOf(spring: SpringModel, column: string): boolean {
  if (column.endsWith('_off')) return !column.startsWith(`${spring.name}.`);
  return !column.endsWith('.torque') || column === `${spring.name}.torque`;
}

/** What the file lacks for a column that this version has; undefined where nothing. */
function whyNoForce(key: string, { springs, pedal }: Definition): string | undefined {
  if (!FORCES.has(key) || key === 'torque') return undefined;
  if (springs.length === 0) return 'the file describes no springs';
  if (key === 'margin' || key === 'margin_off') return 'the file gives no friction';
  return /^(?:effort|release)(?:_off)?$/.test(key) && pedal?.kind === 'lever' && pedal.pad === undefined
    ? 'the pedal has no `pad`'
    : undefined;
}

/** Stands for what speaks of the drive and of no lever; no lever can be called so. */
const THE_DRIVE = '';
const OF_THE_DRIVE: ReadonlySet<string> = new Set(Object.keys(COLUMNS.pedal));

/** The lever by whose movement a part's columns come about; undefined for a part that there is not. */
function leverOf(owner: string, definition: Definition): string | undefined {
  const named = <T extends { readonly name: string }>(parts: readonly T[]): T | undefined => parts.find(({ name }) => name === owner);
  if (named(definition.levers) !== undefined) return owner;
  const joined = named(definition.rods) ?? named(definition.cables);
  if (joined !== undefined) return joined.to.lever;
  const slot = named(definition.slots);
  if (slot !== undefined) return slot.drives === 'fork' ? slot.fork.name : slot.pin.lever;
  const carried = named(definition.plates) ?? named(definition.sensors);
  if (carried !== undefined) return carried.lever.name;
  const spring = named(definition.springs);
  return spring?.kind === 'torsion' ? spring.lever.name : spring?.to.lever;
}

function isMoved({ levers, drive }: Mechanism, index: number): boolean {
  return levers[index]?.driver !== undefined || (drive.kind === 'lever' && drive.lever === index);
}
