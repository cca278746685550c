/**
 * Random builds of a linkage with two loops: 10 000 of them at 101 stations, positions alone, and with every outcome that is read of
 * them. One core. Beside it what the stations alone would take, at the engine's own time for a spatial loop in the same run.
 */
import { advance } from '../../src/kinematics/advance.ts';
import { createBuild } from '../../src/kinematics/createBuild.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { solve } from '../../src/solve.ts';
import { randomBuilds } from '../../src/studies/tolerance/monteCarlo.ts';
import { STATIONS } from '../../src/studies/tolerance/gauge.ts';
import { outcomesOf, type Outcome } from '../../src/studies/tolerance/outcomes.ts';
import { createSettle } from '../../src/studies/tolerance/quickSettle.ts';
import { middleValues, tolerancedDimensions } from '../../src/kinematics/toleranced.ts';
import { randomOf } from '../../src/numeric/random.ts';
import { finished } from '../../src/studies/finished.ts';
import { cpuTime } from '../support/cpuTime.ts';
import { inTurns, report } from './stopwatch.ts';

const BUILDS = 10_000;
/** s, of positions on one core. */
const BUDGET = 0.4;

/** Two spatial loops in a row, every length toleranced. */
const twoLoops = (stops: string): string => `format: 1
levers:
  foot: {pivot: [0, 0, 0], axis: [0.1, -0.2, 1], arms: {pin: {radius: 40 mm ± 0.1 mm, angle: 80 deg, offset: 4 mm}}}
  middle:
    pivot: [150, 20, 30]
    axis: [-0.3, 0.15, 1]
    arms: {in: {radius: 55 mm ± 0.1 mm, angle: 100 deg}, out: {radius: 45 mm ± 0.1 mm, angle: 80 deg}}
  shaft: {pivot: [290, 40, 10], axis: [0.1, 0.1, 1], arms: {arm: {radius: 50 mm ± 0.1 mm, angle: 95 deg}}${stops}}
pedal: {lever: foot, opens: clockwise, travel: 40 deg}
rods:
  first: {from: foot.pin, to: middle.in, length: 138.35 mm ± 0.1 mm}
  second: {from: middle.out, to: shaft.arm, length: 132.22 mm ± 0.1 mm}
plates:
  bank: {lever: shaft, bore: 40 mm, shaft: 8 mm, seat: 5 deg}
`;

function loopTime(): number {
  const { study } = solve(twoLoops(''));
  const { build, mechanism } = study!.travel;
  const pose = createPose(mechanism);
  const [time] = inTurns(
    50_000,
    [
      (calls) => {
        for (let i = 0; i < calls; i++) advance(build, (i & 127) / 127, pose);
      },
    ],
    20,
  ) as [number];
  return time;
}

const station = loopTime();
report('one station of two loops, position, ratio and curvature', `${station.toFixed(1)} ns`);
const alone = (station * BUILDS * STATIONS) / 1e9;
for (const [what, stops] of [
  ['without open stop', ''],
  ['with an open stop', ', stops: {open: 10 deg ± 0.3 deg}'],
] as const) {
  const { study, problems } = solve(twoLoops(stops));
  if (study === undefined || problems.length > 0) throw new Error(JSON.stringify(problems));
  const { mechanism } = study.travel;
  const outcomes = outcomesOf(study);
  const toleranced = tolerancedDimensions(mechanism);
  const best = (run: () => void): number =>
    Math.min(
      ...Array.from({ length: 5 }, () => {
        const start = cpuTime();
        run();
        return (cpuTime() - start) / 1e3;
      }),
    );
  const timeOf = (seconds: number, budget = ''): string =>
    `${seconds.toFixed(3)} s, ${(seconds / alone).toFixed(2)} × the stations alone${budget}`;
  const all = (of: readonly Outcome[]) => () =>
    finished(randomBuilds(mechanism, of, toleranced, { seed: 1, law: 'normal', from: 0, to: BUILDS }));
  report(
    `10 000 builds × 101 stations × 2 loops, ${what}, positions`,
    timeOf(
      best(() => positions()),
      ` (budget ${BUDGET} s)`,
    ),
  );
  report(`  of them put in and settled alone`, timeOf(best(() => positions(0))));
  report(`  openings at both ends alone`, timeOf(best(all(outcomes.filter(({ reading }) => reading.kind === 'rotations')))));
  report(`  every outcome, least angles among them`, timeOf(best(all(outcomes))));

  function positions(stations = STATIONS): void {
    const random = randomOf(1);
    const values = middleValues(mechanism);
    const build = createBuild(mechanism, values);
    const pose = createPose(mechanism);
    const settle = createSettle(mechanism, values);
    for (let k = 0; k < BUILDS; k++) {
      toleranced.forEach(({ index, middle, half }, j) => (values[index] = middle + (half / 3) * random.normal(k, j)));
      settle(build, values);
      for (let i = 0; i < stations; i++) advance(build, i / (STATIONS - 1), pose);
    }
  }
}
