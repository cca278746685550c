/** The whole check of the largest example, answers from text, against solving its positions alone at the stations of a fine table. */
import { readdirSync, readFileSync } from 'node:fs';
import { findLoadPath } from '../../src/definition/loadPath.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { advance } from '../../src/kinematics/advance.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { solve } from '../../src/solve.ts';
import { mechanismOf } from '../support/solveSketch.ts';
import { solveTravel } from '../../src/travel/travel.ts';
import { millisecondsOf, report } from './stopwatch.ts';

const STATIONS = 201;
const [largest] = readdirSync('examples')
  .filter((name) => name.endsWith('.throttle.yaml'))
  .map((name) => ({ name, text: readFileSync(`examples/${name}`, 'utf8') }))
  .sort((one, other) => other.text.length - one.text.length);
if (largest === undefined) throw new Error('there is no example');
const { name, text } = largest;

const mechanism = mechanismOf(text);
const { build } = solveTravel(mechanism);
const pose = createPose(mechanism);
const whole = millisecondsOf(60, () => {
  // What is left for later is asked for as well.
  const { facts, requirements, notChecked, parts } = solve(text);
  return facts.length + requirements.length + notChecked.length + parts.length;
});
const problems = millisecondsOf(60, () => solve(text));
const reading = millisecondsOf(60, () => {
  const { definition } = readDefinition(text);
  if (definition !== undefined) findLoadPath(definition);
});
const positions = millisecondsOf(200, () => {
  for (let i = 0; i < STATIONS; i++) advance(build, i / (STATIONS - 1), pose);
});
const shown = ({ median, p95 }: { readonly median: number; readonly p95: number }): string =>
  `${median.toFixed(3)} ms, p95 ${p95.toFixed(3)}`;
report(`the whole check of ${name}, ${text.split('\n').length - 1} lines`, shown(whole));
report('of which what problems and findings take', shown(problems));
report('of which reading the text', `${shown(reading)}; ${((100 * reading.median) / whole.median).toFixed(0)} % of the whole`);
report(
  `its positions alone at ${STATIONS} stations`,
  `${shown(positions)}; the whole is ${(whole.median / positions.median).toFixed(0)} × that`,
);
