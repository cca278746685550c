/**
 * What clearance costs: an example with a breadth for every lever and rod and four keep-outs around it, against its positions alone at the
 * stations of a fine table, in turns. Once as a key press asks for it, which wants to know what is too near, and once with every least gap, as the
 * picture shows them. planck is loaded before.
 */
import { readFileSync } from 'node:fs';
import { clearanceOf } from '../../src/clearance/clearance.ts';
import { advance } from '../../src/kinematics/advance.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { keepOutClearance } from '../../src/findings/rules/keepOutClearance.ts';
import { partsTouch } from '../../src/findings/rules/partsTouch.ts';
import { touchesKeepOut } from '../../src/findings/rules/touchesKeepOut.ts';
import { loadPlanck } from '../../src/numeric/planck.ts';
import { solve } from '../../src/solve.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { mechanismOf } from '../support/solveSketch.ts';
import { report } from './stopwatch.ts';

const STATIONS = 201;

const text = readFileSync('examples/four-barrel.throttle.yaml', 'utf8')
  .replace(/^( {4})pivot:/gm, '$1width: 12 mm\n$1pivot:')
  .replace(/^( {4})from: (bellcrank|shaft)/gm, '$1width: 8 mm\n$1from: $2');
const hemmed = `${text}
keep_out:
  rail: {circle: [560, 225], radius: 11 mm, clearance: 20 mm}
  fan: {circle: [330, 20], radius: 15 mm, clearance: 5 mm}
  bonnet: {polygon: [[60, 230], [700, 230], [700, 240], [60, 240]], clearance: 8 mm}
  bracket: {polygon: [[500, 70], [560, 70], [560, 90], [520, 90], [520, 98], [500, 98]], clearance: 2 mm}
`;

loadPlanck();
const { study } = solve(hemmed);
if (study === undefined) throw new Error('The linkage is not solved');
const mechanism = mechanismOf(hemmed);
const { build } = solveTravel(mechanism);
const pose = createPose(mechanism);
/** Of a travel whose places and poses the other checks have asked for. */
const fresh = () => {
  const travel = solveTravel(mechanism);
  for (const at of travel.samples) travel.poseAt(at);
  return { ...study, travel, figures: new Map() };
};
const ROUNDS = 12;
const CALLS = 40;
let found = 0;
/** ns a call, best of the round's: making a travel leaves much behind that is cleared away at some time. */
const best = (each: (study: ReturnType<typeof fresh>) => void): number => {
  let least = Infinity;
  for (let call = 0; call < CALLS; call++) {
    const made = fresh();
    const start = performance.now();
    each(made);
    least = Math.min(least, (performance.now() - start) * 1e6);
  }
  return least;
};
let [positions, typing, all] = [Infinity, Infinity, Infinity];
for (let i = 0; i < ROUNDS; i++) {
  const start = performance.now();
  for (let call = 0; call < CALLS; call++) for (let j = 0; j < STATIONS; j++) advance(build, j / (STATIONS - 1), pose);
  positions = Math.min(positions, ((performance.now() - start) * 1e6) / CALLS);
  typing = Math.min(
    typing,
    best((each) => (found += touchesKeepOut(each).length + keepOutClearance(each).length + partsTouch(each).length)),
  );
  all = Math.min(
    all,
    best(({ travel }) => {
      const { keepOuts, parts } = clearanceOf(travel);
      for (const gap of [...keepOuts, ...parts]) found += gap.search(Infinity).least === undefined ? 0 : 1;
    }),
  );
}
const { keepOuts, parts } = clearanceOf(study.travel);
report(`pairs of the four barrels: ${keepOuts.length} with keep-outs, ${parts.length} of parts`, `${found} found`);
report(`positions alone at ${STATIONS} stations`, `${(positions / 1e3).toFixed(0)} µs`);
report('what is too near, for a key press', `${(typing / 1e3).toFixed(0)} µs, ${(typing / positions).toFixed(1)} × that`);
report('every least gap', `${(all / 1e3).toFixed(0)} µs, ${(all / positions).toFixed(1)} × that`);
