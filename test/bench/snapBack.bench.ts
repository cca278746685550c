/** How many seconds of snap-back a second computes, for the examples, by both ways. */
import { readFileSync } from 'node:fs';
import { snapBack, type SnapBackOptions } from '../../src/forces/snapBack/snapBack.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { mechanismOf } from '../support/solveSketch.ts';
import { inTurns, report } from './stopwatch.ts';

for (const name of ['four-barrel', 'two-banks']) {
  const { build } = solveTravel(mechanismOf(readFileSync(`examples/${name}.throttle.yaml`, 'utf8')));
  for (const restitution of [0, 0.5]) {
    for (const method of ['equation-of-motion', 'planck'] as const) {
      const options: SnapBackOptions = { method, restitution };
      const answer = snapBack(build, options);
      if (answer.method === undefined) {
        report(`${name}, ${method}`, answer.reason);
        continue;
      }
      let sum = 0;
      const [nanoseconds = NaN] = inTurns(5, [
        (calls) => {
          for (let i = 0; i < calls; i++) sum += snapBack(build, options).method === undefined ? NaN : 1;
        },
      ]);
      if (Number.isNaN(sum)) throw new Error('A snap-back was not computed');
      const milliseconds = nanoseconds / 1e6;
      report(
        `${name}, ${method}, ${restitution === 0 ? 'no bounce' : 'bouncing'}`,
        `${milliseconds.toFixed(1)} ms for ${(answer.followed * 1e3).toFixed(0)} ms: ${((answer.followed * 1e3) / milliseconds).toFixed(1)} s a second`,
      );
    }
  }
}
