/**
 * Parts of a file that no solved travel moves, put into an engine of their own, as drawn: those of a file that is half-written, and
 * those that a load path leaves out because nothing drives them or something else does.
 */
import type { Definition, Pedal } from '../definition/definition.ts';
import type { JointKind, LoadPath } from '../definition/loadPath.ts';
import { createBounds, type Build } from '../kinematics/build.ts';
import { compileMechanism } from '../kinematics/compile.ts';
import { evaluateParameters } from '../kinematics/parameters.ts';

export interface JointName {
  readonly kind: JointKind;
  readonly name: string;
}

/** Every joint of the file, driven or not. */
export function jointNames({ rods, cables, slots, couplings }: Definition): readonly JointName[] {
  const named = (kind: JointKind, parts: readonly { readonly name: string }[]): JointName[] => parts.map(({ name }) => ({ kind, name }));
  return [...named('cable', cables), ...named('rod', rods), ...named('slot', slots), ...named('coupling', couplings)];
}

/** A build in which all levers and the given joints stand as drawn; undefined where the file has no lever. */
export function standAsDrawn(definition: Definition, joints: readonly JointName[]): Build | undefined {
  const [first] = definition.levers;
  if (first === undefined) return undefined;
  const path: LoadPath = {
    root: { kind: 'lever', lever: first.name },
    steps: joints.slice(0, MOST_JOINTS).map((joint) => ({ joint, from: undefined, to: '' })),
  };
  const mechanism = compileMechanism({ ...definition, pedal: stillPedal(definition, first.name) }, path);
  if (mechanism === undefined) return undefined;
  const build: Build = {
    mechanism,
    values: mechanism.nominal,
    parameters: new Float64Array(mechanism.parameterCount),
    slots: new Float64Array(mechanism.tape.slotCount),
    bounds: createBounds(mechanism),
  };
  evaluateParameters(build);
  return build;
}

/** No throttle linkage has as many: the rest of them is not drawn. */
const MOST_JOINTS = 512;

/** The pedal of the file, or one that turns the given lever by nothing. */
function stillPedal({ pedal, levers }: Definition, lever: string): Pedal {
  if (pedal?.kind === 'lever' && levers.some(({ name }) => name === pedal.lever.name)) return pedal;
  const span = { start: 0, end: 0 };
  return {
    kind: 'lever',
    span,
    lever: { name: lever, span },
    opens: 'counterclockwise',
    travel: { span, path: '', dimension: 'angle', nominal: 0, unit: 'deg' },
  };
}
