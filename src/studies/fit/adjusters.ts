/**
 * What can be turned on a built car. A rod says by `adjust` that it can, how far, and by `pitch` how much a turn is. Of cables and stops the
 * file says nothing: a cable's adjuster is taken to change its slack, and a stop to move; in mm and degrees, since their threads are not
 * known.
 */
import type { Build } from '../../kinematics/build.ts';
import type { Parameter } from '../../kinematics/model.ts';
import { differentiateParameters } from '../../kinematics/parameters.ts';

/** Something that can be turned on the car. */
export interface Adjuster {
  readonly kind: 'rod' | 'cable' | 'closed-stop' | 'open-stop';
  /** Name of the rod or cable, or of the stop's lever. */
  readonly part: string;
  /** m a turn; undefined where the file does not say. */
  readonly pitch: number | undefined;
  /** As the car has it, SI: length, slack, or opening. */
  readonly now: number;
  /** How far it can go, SI. */
  readonly from: number;
  readonly to: number;
}

export interface Turnable {
  readonly adjuster: Adjuster;
  /** Index into the mechanism's dimensions, and by how much its parameter changes with that. */
  readonly index: number;
  readonly rate: number;
}

/** In load-path order, stops last. @param build as the car is */
export function adjustersOf(build: Build): readonly Turnable[] {
  const { mechanism, parameters: p } = build;
  const found: Turnable[] = [];
  const add = (adjuster: Adjuster, parameter: Parameter, path: string, along: readonly Parameter[] = []): void => {
    const turned = dimensionOf(build, parameter, path, along);
    if (turned !== undefined && adjuster.from < adjuster.to) found.push({ adjuster, ...turned });
  };
  for (const joint of mechanism.joints) {
    if (joint.kind === 'rod' && joint.source.adjust !== undefined) {
      const { min, max, pitch } = joint.source.adjust;
      const now = p[joint.length]!;
      const [from, to] = [min?.nominal ?? now - ROD_REACH, max?.nominal ?? now + ROD_REACH];
      add({ kind: 'rod', part: joint.name, pitch: pitch?.nominal, now, from, to }, joint.length, `rods.${joint.name}.length`);
    }
    if (joint.kind === 'cable') {
      const now = p[joint.slack]!;
      // Never to less slack than the drawing has: a cable without any holds the throttle open.
      const from = Math.min(now, joint.source.slack?.nominal ?? 0);
      const to = now + CABLE_REACH;
      add({ kind: 'cable', part: joint.name, pitch: undefined, now, from, to }, joint.slack, `cables.${joint.name}.slack`);
    }
  }
  for (const { index, name, source, closedStop, openStop, fullOpening } of mechanism.levers) {
    const stop = (kind: 'closed-stop' | 'open-stop', parameter: Parameter, key: string): void => {
      const now = p[parameter]!;
      // Plates that stand below their idle seat jam in the bore.
      const idles = mechanism.attached.plates.filter(({ lever }) => lever === index).map(({ idle }) => -p[idle]!);
      const from = Math.max(now - STOP_REACH, ...idles);
      const adjuster: Adjuster = { kind, part: name, pitch: undefined, now, from, to: now + STOP_REACH };
      add(adjuster, parameter, `levers.${name}.stops.${key}`, fullOpening === undefined ? [] : [fullOpening]);
    };
    if (source.stops?.closed !== undefined && closedStop !== undefined) stop('closed-stop', closedStop.parameter, 'closed');
    if (source.stops?.open !== undefined && openStop !== undefined) stop('open-stop', openStop.parameter, 'open');
  }
  return found;
}

/** m, either way, of a rod whose ends the file does not give. */
const ROD_REACH = 5e-3;
/** m; what a cable's adjuster commonly does, no source. */
const CABLE_REACH = 10e-3;
/** rad, either way; what a stop screw commonly does, no source. */
const STOP_REACH = (5 * Math.PI) / 180;

/** The dimension that moves a parameter, and no other but those `along`; undefined where others would move with it. */
function dimensionOf(
  build: Build,
  parameter: Parameter,
  path: string,
  along: readonly Parameter[],
): { readonly index: number; readonly rate: number } | undefined {
  const { mechanism } = build;
  const direction = new Float64Array(mechanism.dimensions.length);
  const rates = new Float64Array(mechanism.parameterCount);
  const scratch = new Float64Array(mechanism.tape.slotCount);
  const candidates = mechanism.dimensions.filter((each) => each.path === path || each.path.startsWith('let.'));
  for (const { index } of candidates.sort((a, b) => Number(b.path === path) - Number(a.path === path))) {
    direction.fill(0);
    direction[index] = 1;
    rates.fill(0);
    differentiateParameters(build, direction, scratch, rates);
    const rate = rates[parameter]!;
    if (rate !== 0 && rates.every((each, i) => each === 0 || i === parameter || along.includes(i))) return { index, rate };
  }
  return undefined;
}
