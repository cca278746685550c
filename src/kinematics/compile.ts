/**
 * Definition → Mechanism: the load path's levers and joints in order, and the tape that turns dimensions into parameters.
 */
import type { CableEnd, Definition, Place, Value } from '../definition/definition.ts';
import type { LoadPath } from '../definition/loadPath.ts';
import { findSenses } from './senses.ts';
import type { CableEndModel, Drive, Group, Joint, LeverModel, Mechanism, Parameter } from './model.ts';
import { createRecorder, type Recorder } from './record.ts';
import { recordAttached } from './recordAttached.ts';
import { recordFriction } from './recordFriction.ts';
import { polarDirection, recordLever, type RecordedLever } from './recordLever.ts';

/** Undefined where there is no pedal, or nothing that it could move. */
export function compileMechanism(definition: Definition, loadPath: LoadPath): Mechanism | undefined {
  const { pedal } = definition;
  if (pedal === undefined) return undefined;
  const recorder = createRecorder(definition);
  const pedalLever = pedal.kind === 'lever' ? pedal.lever.name : undefined;
  const recorded = new Map<string, RecordedLever>();
  definition.levers.forEach((lever, index) => {
    const plates = definition.plates.filter((each) => each.lever.name === lever.name);
    recorded.set(lever.name, recordLever(recorder, lever, index, plates, lever.name === pedalLever));
  });
  const leverIndex = new Map(definition.levers.map((lever, index) => [lever.name, index]));
  const root = pedalLever === undefined ? undefined : leverIndex.get(pedalLever);
  if (pedal.kind === 'lever' && root === undefined) return undefined;

  const context: Context = { definition, recorder, recorded, leverIndex, reserved: [] };
  const joints: Joint[] = [];
  for (const step of loadPath.steps) {
    const joint = recordJoint(context, step, joints);
    if (joint !== undefined) joints.push(joint);
  }
  const travel = recorder.emit(recorder.value(pedal.kind === 'lever' ? pedal.travel : pedal.pull, NaN));
  const drive = driveOf(definition, joints, root, travel);
  if (drive === undefined) return undefined;

  const groups = groupLevers(joints, root, definition.levers.length);
  const levers = [...recorded.values()].map(({ model }): LeverModel => {
    const driver = joints.find((joint) => joint.driven === model.index)?.index;
    const group = groups.findIndex((each) => each.levers.includes(model.index));
    return { ...model, group, ...(driver !== undefined && { driver }) };
  });
  const directions = recordDirections(context);
  const attached = recordAttached(
    recorder,
    definition,
    recorded,
    joints.filter((joint) => joint.kind === 'cable'),
  );
  const friction = recordFriction(recorder, definition, joints, attached.plates);
  const reservedStart = recorder.outputs.length;
  context.reserved.forEach((place) => place(reservedStart));
  const mechanism: Mechanism = {
    definition,
    levers,
    leverIndex,
    joints,
    cables: joints.filter((joint) => joint.kind === 'cable'),
    groups,
    drive,
    dimensions: recorder.dimensions,
    nominal: Float64Array.from(recorder.dimensions, (dimension) => dimension.nominal),
    senses: new Int8Array(levers.length).fill(1),
    tape: recorder.tape.finish(definition.lets.length),
    outputs: Int32Array.from(recorder.outputs),
    parameterCount: reservedStart + RESERVED * joints.length,
    directions,
    attached,
    friction,
  };
  findSenses(mechanism);
  return mechanism;
}

interface Context {
  readonly definition: Definition;
  readonly recorder: Recorder;
  readonly recorded: ReadonlyMap<string, RecordedLever>;
  readonly leverIndex: ReadonlyMap<string, number>;
  /** Told where the parameters start that no tape computes. */
  readonly reserved: ((start: number) => void)[];
}

/** Parameters of each joint that no tape computes: its side, and four of winding. */
const RESERVED = 5;

type Step = LoadPath['steps'][number];

/** @param before the joints nearer to the pedal */
function recordJoint(context: Context, step: Step, before: readonly Joint[]): Joint | undefined {
  const index = before.length;
  switch (step.joint.kind) {
    case 'rod':
      return recordRod(context, step, index);
    case 'cable':
      return recordCable(context, step, index, before.filter(({ kind }) => kind === 'cable').length);
    case 'slot':
      return recordSlot(context, step, index);
    case 'coupling':
      return recordCoupling(context, step, index);
  }
}

/** Reserved parameters are numbered once all others are known. */
function reserve(context: Context, index: number): { side: Parameter; winding: Parameter } {
  const places = { side: 0, winding: 0 };
  context.reserved.push((start) => {
    places.side = start + RESERVED * index;
    places.winding = places.side + 1;
  });
  return places;
}

function recordRod(context: Context, step: Step, index: number): Joint | undefined {
  const { recorder, recorded, leverIndex, definition } = context;
  const source = definition.rods.find((rod) => rod.name === step.joint.name);
  if (source === undefined) return undefined;
  const { from, to } = source;
  const driver = leverIndex.get(from.lever);
  const driven = leverIndex.get(to.lever);
  const driverPin = recorded.get(from.lever)?.model.pins.get(from.part);
  const drivenPin = recorded.get(to.lever)?.model.pins.get(to.part);
  const start = recorded.get(from.lever)?.places.get(from.part);
  const end = recorded.get(to.lever)?.places.get(to.part);
  if (driver === undefined || driven === undefined || driverPin === undefined || drivenPin === undefined || !start || !end)
    return undefined;
  const before = recorder.dimensions.length;
  const length = source.length
    ? recorder.value(source.length, NaN)
    : recorder.tape.add(
        recorder.vectors.length(recorder.vectors.subtract(end, start)),
        recorder.implicit(`rods.${source.name}.length`, source.nameSpan, 'length', 'as-drawn', 0),
      );
  const written = recorder.dimensions.findIndex((dimension) => dimension.path === (source.length?.path ?? `rods.${source.name}.length`));
  const lost =
    source.lost !== undefined && (source.lost.nominal > 0 || source.lost.formula)
      ? recorder.emit(recorder.value(source.lost, 0))
      : undefined;
  return Object.assign(reserve(context, index), {
    kind: 'rod' as const,
    index,
    name: source.name,
    source,
    driver,
    driven,
    driverPin,
    drivenPin,
    length: recorder.emit(length),
    lost,
    lengthDimension: recorder.dimensions.length > before || written >= 0 ? written : undefined,
  });
}

function recordCable(context: Context, step: Step, index: number, cable: number): Joint | undefined {
  const { recorder, leverIndex, definition } = context;
  const source = definition.cables.find((each) => each.name === step.joint.name);
  if (source === undefined) return undefined;
  const driven = leverIndex.get(source.to.lever);
  const drivenEnd = recordCableEnd(context, source.to, source.enters);
  const driver = source.from && leverIndex.get(source.from.lever);
  const driverEnd = source.from && source.leaves && recordCableEnd(context, source.from, source.leaves);
  if (driven === undefined || drivenEnd === undefined) return undefined;
  if (source.from !== undefined && (driver === undefined || driverEnd === undefined)) return undefined;
  const slack = source.slack
    ? recorder.value(source.slack, 0)
    : recorder.implicit(`cables.${source.name}.slack`, source.nameSpan, 'length', 'default', 0);
  return Object.assign(reserve(context, index), {
    kind: 'cable' as const,
    index,
    name: source.name,
    source,
    cable,
    driver,
    driverEnd,
    driven,
    drivenEnd,
    slack: recorder.emit(slack),
  });
}

function recordCableEnd({ recorder, recorded }: Context, end: CableEnd, housing: Place): CableEndModel | undefined {
  const lever = recorded.get(end.lever);
  const at = recorder.place(housing);
  if (end.kind === 'drum') {
    const drum = lever?.model.drums.get(end.part);
    return drum && { kind: 'drum', drum, housing: recorder.emitVector(at) };
  }
  const pin = lever?.model.pins.get(end.part);
  const place = lever?.places.get(end.part);
  if (pin === undefined || place === undefined) return undefined;
  const drawn = recorder.vectors.length(recorder.vectors.subtract(place, at));
  return { kind: 'pin', pin, housing: recorder.emitVector(at), drawn: recorder.emit(drawn) };
}

function recordSlot(context: Context, step: Step, index: number): Joint | undefined {
  const { recorder, recorded, leverIndex, definition } = context;
  const source = definition.slots.find((slot) => slot.name === step.joint.name);
  if (source === undefined) return undefined;
  const pinLever = leverIndex.get(source.pin.lever);
  const fork = leverIndex.get(source.fork.name);
  const pin = recorded.get(source.pin.lever)?.model.pins.get(source.pin.part);
  const forkLever = recorded.get(source.fork.name);
  if (pinLever === undefined || fork === undefined || pin === undefined || forkLever === undefined) return undefined;
  const { frame } = forkLever;
  const direction = polarDirection(recorder, frame, recorder.value(source.angle, NaN));
  const normal = recorder.vectors.cross(frame.axis, direction);
  return Object.assign(reserve(context, index), {
    kind: 'slot' as const,
    index,
    name: source.name,
    source,
    driver: source.drives === 'fork' ? pinLever : fork,
    driven: source.drives === 'fork' ? fork : pinLever,
    pinLever,
    fork,
    pin,
    direction: recorder.emitVector(direction),
    normal: recorder.emitVector(normal),
    forkPivot: forkLever.model.pivot,
    offset: recorder.emit(recorder.value(source.offset, 0)),
    play: isPositive(source.play) ? recorder.emit(recorder.value(source.play, 0)) : undefined,
  });
}

function recordCoupling({ recorder, leverIndex, definition }: Context, step: Step, index: number): Joint | undefined {
  const source = definition.couplings.find((coupling) => coupling.name === step.joint.name);
  if (source === undefined) return undefined;
  const driver = leverIndex.get(source.from.name);
  const driven = leverIndex.get(source.to.name);
  if (driver === undefined || driven === undefined) return undefined;
  return {
    kind: 'coupling',
    index,
    name: source.name,
    source,
    driver,
    driven,
    ratio: recorder.emit(recorder.value(source.ratio, 1)),
    lag: isPositive(source.lag) ? recorder.emit(recorder.value(source.lag, 0)) : undefined,
    oneWay: source.oneWay,
  };
}

/** Whether free play can be other than none: such a joint is solved another way. */
function isPositive(value: Value | undefined): boolean {
  return value !== undefined && (value.nominal > 0 || value.formula !== undefined);
}

function driveOf(definition: Definition, joints: readonly Joint[], root: number | undefined, travel: Parameter): Drive | undefined {
  const { pedal } = definition;
  if (pedal?.kind === 'lever' && root !== undefined) {
    return { kind: 'lever', lever: root, sense: pedal.opens === 'counterclockwise' ? 1 : -1, travel };
  }
  const joint = joints.find((each) => each.kind === 'cable' && each.driver === undefined);
  return joint && { kind: 'cable', joint: joint.index, travel };
}

/** Levers that no cable parts; a lever that nothing drives and the pedal does not reach stands in no group. */
function groupLevers(joints: readonly Joint[], root: number | undefined, leverCount: number): Group[] {
  const groups: { index: number; root: number; levers: number[]; joints: number[]; cable: number | undefined }[] = [];
  const groupOf = new Array<number>(leverCount).fill(-1);
  const open = (lever: number, cable: number | undefined): void => {
    groupOf[lever] = groups.length;
    groups.push({ index: groups.length, root: lever, levers: [lever], joints: [], cable });
  };
  if (root !== undefined) open(root, undefined);
  for (const joint of joints) {
    if (joint.kind === 'cable') {
      open(joint.driven, joint.cable);
      continue;
    }
    const group = groups[groupOf[joint.driver] ?? -1];
    if (group === undefined) continue;
    groupOf[joint.driven] = group.index;
    group.levers.push(joint.driven);
    group.joints.push(joint.index);
  }
  return groups;
}

function recordDirections({ recorder, recorded, definition }: Context): Mechanism['directions'] {
  const bolts = new Map<string, { from: Parameter; to: Parameter }>();
  for (const rod of definition.rods) {
    const from = recorded.get(rod.from.lever)?.bolts.get(rod.from.part);
    const to = recorded.get(rod.to.lever)?.bolts.get(rod.to.part);
    if (from !== undefined && to !== undefined) bolts.set(rod.name, { from, to });
  }
  const housings = new Map<string, { leaves?: Parameter; enters?: Parameter }>();
  for (const cable of definition.cables) {
    const unit = (direction: typeof cable.leavesAlong): Parameter | undefined =>
      direction && recorder.emitVector(recorder.vectors.unit(recorder.direction(direction)));
    const leaves = unit(cable.leavesAlong);
    const enters = unit(cable.entersAlong);
    housings.set(cable.name, { ...(leaves !== undefined && { leaves }), ...(enters !== undefined && { enters }) });
  }
  return { bolts, housings };
}
