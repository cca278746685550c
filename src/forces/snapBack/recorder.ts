/** Keeps how the levers stood, for playing. */
import type { Pose } from '../../kinematics/pose.ts';
import type { Trace } from './snapBack.ts';

export interface Recorder {
  add(time: number, pose: Pose): void;
  trace(): Trace;
}

export function createRecorder(levers: number): Recorder {
  const times: number[] = [];
  const rotations = Array.from({ length: levers }, (): number[] => []);
  return {
    add(time, pose) {
      times.push(time);
      for (let lever = 0; lever < levers; lever++) rotations[lever]!.push(pose.rotation[lever]!);
    },
    trace: () => ({ times: Float64Array.from(times), rotations: rotations.map((each) => Float64Array.from(each)) }),
  };
}
