/**
 * How the cost grows: with the loops of a chain, the stations of a travel, the length of a file; and what a build costs. Each should
 * stay in proportion, so ratios near the ratio of the sizes are what to look for.
 */
import { readDefinition } from '../../src/definition/read.ts';
import { advance } from '../../src/kinematics/advance.ts';
import { createBuild, putDimensions } from '../../src/kinematics/createBuild.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { settleStops } from '../../src/travel/stops.ts';
import { mechanismOf } from '../support/solveSketch.ts';
import { millisecondsOf, nanosecondsPerCall, report } from './stopwatch.ts';

/** A chain of four-bars, each lever driving the next by a rod. */
function chain(loops: number): string {
  const levers = Array.from({ length: loops + 1 }, (_, i) => {
    const stops = i === loops ? '\n    stops: {closed: 0, open: 70 deg}' : '';
    return `  lever_${i}:\n    pivot: [${i * 120}, ${(i % 2) * 15}]\n    arms: {in: {radius: 40, angle: 95}, out: {radius: 40.5, angle: 85}}${stops}`;
  });
  const rods = Array.from(
    { length: loops },
    (_, i) => `  rod_${i}:\n    from: lever_${i}.out\n    to: lever_${i + 1}.in\n    ends: {kind: rod_end}`,
  );
  return `format: 1\nlevers:\n${levers.join('\n')}\npedal: {lever: lever_0, opens: clockwise, travel: 20 deg}\nrods:\n${rods.join('\n')}\n`;
}

let before: number | undefined;
for (const loops of [1, 2, 4, 8, 16, 32, 64]) {
  const mechanism = mechanismOf(chain(loops));
  const build = createBuild(mechanism);
  const pose = createPose(mechanism);
  const time = nanosecondsPerCall(20_000, (calls) => {
    for (let i = 0; i < calls; i++) advance(build, (i & 1023) / 1024, pose);
  });
  report(
    `a station of ${loops} loops`,
    `${time.toFixed(0)} ns, ${(time / loops).toFixed(1)} a loop${before === undefined ? '' : `, ${(time / before).toFixed(2)} × half as many`}`,
  );
  before = time;
}

const mechanism = mechanismOf(chain(2));
const build = createBuild(mechanism);
const pose = createPose(mechanism);
let tenth: number | undefined;
for (const stations of [10, 100, 1000, 10_000, 100_000]) {
  const time = nanosecondsPerCall(
    Math.ceil(200_000 / stations),
    (calls) => {
      for (let call = 0; call < calls; call++) for (let i = 0; i < stations; i++) advance(build, i / stations, pose);
    },
    5,
  );
  report(
    `${stations} stations of two loops`,
    `${(time / 1e6).toFixed(4)} ms${tenth === undefined ? '' : `, ${(time / tenth).toFixed(2)} × a tenth of them`}`,
  );
  tenth = time;
}

const values = Float64Array.from(mechanism.nominal);
const put = nanosecondsPerCall(5000, (calls) => {
  for (let i = 0; i < calls; i++) {
    values[0] = mechanism.nominal[0]! + 1e-6 * (i & 7);
    putDimensions(build, values);
  }
});
const settled = nanosecondsPerCall(1000, (calls) => {
  for (let i = 0; i < calls; i++) {
    values[0] = mechanism.nominal[0]! + 1e-6 * (i & 7);
    putDimensions(build, values);
    settleStops(build);
  }
});
report('other dimensions into a build of two loops, at rest', `${(put / 1e3).toFixed(1)} µs`);
report('the same with its open stop settled', `${(settled / 1e3).toFixed(1)} µs`);

const small = chain(21);
const large = chain(214);
const smallTime = millisecondsOf(60, () => readDefinition(small));
const largeTime = millisecondsOf(20, () => readDefinition(large));
const lines = (text: string): number => text.split('\n').length - 1;
report(`reading ${lines(small)} lines`, `${smallTime.median.toFixed(2)} ms, p95 ${smallTime.p95.toFixed(2)}`);
report(
  `reading ${lines(large)} lines`,
  `${largeTime.median.toFixed(2)} ms, p95 ${largeTime.p95.toFixed(2)}; ${(largeTime.median / smallTime.median).toFixed(1)} × the shorter`,
);
