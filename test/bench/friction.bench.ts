/**
 * What forces with friction cost at a station, against the station's kinematics alone, for the examples. Two passes over
 * the load path, both ways of the pedal, the frictionless forces with them.
 */
import { readFileSync } from 'node:fs';
import { createFriction } from '../../src/forces/friction/statics.ts';
import { createStatics } from '../../src/forces/closing.ts';
import { advance } from '../../src/kinematics/advance.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { mechanismOf } from '../support/solveSketch.ts';
import { inTurns, report } from './stopwatch.ts';

/** Times the kinematics of a station. */
const GOAL = 5;

for (const name of ['four-barrel', 'two-banks']) {
  const { build } = solveTravel(mechanismOf(readFileSync(`examples/${name}.throttle.yaml`, 'utf8')));
  const pose = createPose(build.mechanism);
  const frictionless = createStatics(build);
  const friction = createFriction(build);
  const along = (each: () => void) => (calls: number) => {
    for (let i = 0; i < calls; i++) {
      advance(build, (i % 1000) / 1000, pose);
      each();
    }
  };
  let sum = 0;
  const [alone = NaN, without = NaN, rubbing = NaN] = inTurns(20_000, [
    along(() => (sum += pose.rotation[0]!)),
    along(() => (sum += frictionless.at(pose).effort)),
    along(() => (sum += friction.at(pose).effort)),
  ]);
  if (Number.isNaN(sum)) throw new Error('A force is not known');
  report(`${name}: kinematics of a station`, `${alone.toFixed(0)} ns`);
  report(
    '  forces without friction besides',
    `${(without - alone).toFixed(0)} ns, ${((without - alone) / alone).toFixed(1)} × the kinematics`,
  );
  const times = (rubbing - alone) / alone;
  report('  forces with friction, both ways, besides', `${(rubbing - alone).toFixed(0)} ns, ${times.toFixed(1)} × (goal ${GOAL} ×)`);
}
