/** The figures of friction on the tape. */
import type { Definition, Value } from '../definition/definition.ts';
import type { PlatesModel } from './attached.ts';
import type { FrictionModel, JointFriction } from './frictionModel.ts';
import type { Joint, Parameter } from './model.ts';
import type { Recorder } from './record.ts';

export function recordFriction(
  recorder: Recorder,
  definition: Definition,
  joints: readonly Joint[],
  plates: readonly PlatesModel[],
): FrictionModel {
  const emit = (value: Value | undefined): Parameter | undefined => value && recorder.emit(recorder.value(value, NaN));
  return {
    levers: definition.levers.map(({ friction, bearing }) => ({
      drag: emit(friction),
      bearing: bearing && {
        diameter: recorder.emit(recorder.value(bearing.diameter, NaN)),
        friction: recorder.emit(recorder.value(bearing.friction, NaN)),
      },
    })),
    joints: joints.map((joint): JointFriction => {
      const none = { coefficient: undefined, pin: undefined, bend: undefined };
      switch (joint.kind) {
        case 'rod':
          return { ...none, coefficient: emit(joint.source.ends?.friction), pin: emit(joint.source.ends?.pin) };
        case 'slot':
          return { ...none, coefficient: emit(joint.source.friction) };
        case 'cable':
          return { ...none, coefficient: emit(joint.source.friction), bend: emit(joint.source.bend) };
        case 'coupling':
          return none;
      }
    }),
    vacuum: plates.map(({ source }) => emit(source.vacuum)),
  };
}
