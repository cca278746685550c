/** Springs, plates, sensors and the pad on the tape. */
import type { Definition, Plates, Sensor, Spring, Strip, Value, ValueRange, Wire } from '../definition/definition.ts';
import type { Attached, PadModel, PlatesModel, SensorModel, SpringAnchorModel, SpringModel, StripModel, WireModel } from './attached.ts';
import type { CableJoint, Parameter } from './model.ts';
import type { Recorder } from './record.ts';
import type { RecordedLever } from './recordLever.ts';

/** A part whose lever or pin the file does not have is left out; a problem names it. */
export function recordAttached(
  recorder: Recorder,
  definition: Definition,
  levers: ReadonlyMap<string, RecordedLever>,
  cables: readonly CableJoint[],
): Attached {
  const context: Context = { recorder, levers };
  return {
    springs: definition.springs.flatMap((spring) => recordSpring(context, spring) ?? []),
    plates: definition.plates.flatMap((plates) => recordPlates(context, plates) ?? []),
    sensors: definition.sensors.flatMap((sensor) => recordSensor(context, sensor) ?? []),
    pad: recordPad(context, definition),
    stiffness: cables.map(({ source: { stiffness } }) => stiffness && recorder.emit(recorder.value(stiffness, NaN))),
  };
}

interface Context {
  readonly recorder: Recorder;
  readonly levers: ReadonlyMap<string, RecordedLever>;
}

function recordSpring({ recorder, levers }: Context, spring: Spring): SpringModel | undefined {
  const on = levers.get(spring.kind === 'torsion' ? spring.lever.name : spring.to.lever)?.model;
  if (on === undefined) return undefined;
  const emit = (value: typeof spring.rate, absent: number): Parameter => recorder.emit(recorder.value(value, absent));
  const common = {
    name: spring.name,
    lever: on.index,
    rate: spring.rate && emit(spring.rate, NaN),
    wire: spring.wire && recordWire(recorder, spring.wire),
  };
  if (spring.kind === 'torsion') {
    const strip = spring.strip && recordStrip(recorder, spring.strip);
    const preload =
      spring.preload === undefined
        ? recorder.emit(recorder.implicit(`springs.${spring.name}.preload`, spring.nameSpan, 'torque', 'default', 0))
        : emit(spring.preload, 0);
    return { ...common, kind: 'torsion', source: spring, preload, strip };
  }
  const to = on.pins.get(spring.to.part);
  const from = recordAnchor({ recorder, levers }, spring.from);
  if (to === undefined || from === undefined) return undefined;
  return {
    ...common,
    kind: spring.kind,
    source: spring,
    from,
    to,
    freeLength: spring.freeLength && emit(spring.freeLength, NaN),
    initialTension: emit(spring.initialTension, 0),
  };
}

function recordWire(recorder: Recorder, source: Wire): WireModel {
  const emit = (value: Value): Parameter => recorder.emit(recorder.value(value, NaN));
  return {
    source,
    diameter: emit(source.diameter),
    meanCoil: emit(source.meanCoil),
    activeTurns: emit(source.activeTurns),
    totalTurns: source.totalTurns && emit(source.totalTurns),
    arbor: source.arbor && emit(source.arbor),
    hookBend: source.hookBend && emit(source.hookBend),
  };
}

function recordStrip(recorder: Recorder, source: Strip): StripModel {
  const emit = (value: Value): Parameter => recorder.emit(recorder.value(value, NaN));
  return { source, width: emit(source.width), thickness: emit(source.thickness), length: emit(source.length) };
}

function recordAnchor({ recorder, levers }: Context, from: Extract<Spring, { from: unknown }>['from']): SpringAnchorModel | undefined {
  if (from.kind === 'place') return { kind: 'place', place: recorder.emitVector(recorder.place(from.place)) };
  const lever = levers.get(from.pin.lever)?.model;
  const pin = lever?.pins.get(from.pin.part);
  return lever === undefined || pin === undefined ? undefined : { kind: 'pin', lever: lever.index, pin };
}

function recordPlates({ recorder, levers }: Context, plates: Plates): PlatesModel | undefined {
  const lever = levers.get(plates.lever.name)?.model;
  if (lever === undefined) return undefined;
  const emit = (value: Plates['count'], absent: number): Parameter => recorder.emit(recorder.value(value, absent));
  return {
    name: plates.name,
    source: plates,
    lever: lever.index,
    count: emit(plates.count, 1),
    bore: emit(plates.bore, NaN),
    shaft: emit(plates.shaft, 0),
    seat: emit(plates.seat, 0),
    idle: emit(plates.idle, 0),
  };
}

function recordSensor({ recorder, levers }: Context, sensor: Sensor): SensorModel | undefined {
  const lever = levers.get(sensor.lever.name)?.model;
  if (lever === undefined) return undefined;
  const ends = ({ from, to }: Pick<ValueRange, 'from' | 'to'>): readonly [Parameter, Parameter] => [
    recorder.emit(recorder.value(from, NaN)),
    recorder.emit(recorder.value(to, NaN)),
  ];
  return {
    name: sensor.name,
    source: sensor,
    lever: lever.index,
    atClosed: recorder.emit(recorder.value(sensor.atClosed, NaN)),
    way: sensor.reversed ? -1 : 1,
    range: ends(sensor.range),
    signal: ends(sensor.signal),
    mechanical: sensor.mechanical && ends(sensor.mechanical),
    supply: sensor.supply && recorder.emit(recorder.value(sensor.supply, NaN)),
    bits: sensor.bits && recorder.emit(recorder.value(sensor.bits, NaN)),
  };
}

function recordPad({ recorder, levers }: Context, { pedal }: Definition): PadModel | undefined {
  if (pedal === undefined) return undefined;
  if (pedal.kind === 'cable') {
    return { kind: 'cable', ratio: pedal.leverRatio && recorder.emit(recorder.value(pedal.leverRatio, NaN)) };
  }
  const pin = pedal.pad && levers.get(pedal.lever.name)?.model.pins.get(pedal.pad.name);
  return pin === undefined ? undefined : { kind: 'arm', pin };
}
