/** Where the solver has a place of the drawn position: read off the mechanism, not off the text. */
import { createBuild } from '../../src/kinematics/createBuild.ts';
import { compileMechanism } from '../../src/kinematics/compile.ts';
import { findLoadPath } from '../../src/definition/loadPath.ts';
import { readDefinition } from '../../src/definition/read.ts';
import type { Vector } from '../support/vector.ts';

/** @param path `levers.name.pivot` or `levers.name.arms.arm`; @returns mm */
export function drawnPlace(text: string, path: string): Vector {
  const { definition } = readDefinition(text);
  if (definition === undefined) throw new Error('nothing of the text can be read');
  const { path: loadPath } = findLoadPath(definition);
  const mechanism = loadPath && compileMechanism(definition, loadPath);
  if (mechanism === undefined) throw new Error('there is no load path');
  const { parameters } = createBuild(mechanism);
  const [, name, block, arm = ''] = path.split('.');
  const lever = mechanism.levers.find((each) => each.name === name);
  if (lever === undefined) throw new Error(`there is no lever ${String(name)}`);
  const vector = (at: number): Vector => [parameters[at]! * 1000, parameters[at + 1]! * 1000, parameters[at + 2]! * 1000];
  if (block === 'pivot') return vector(lever.pivot);
  const pin = lever.pins.get(arm);
  if (pin === undefined) throw new Error(`${path} is no pin`);
  const [base, perp] = [vector(pin), vector(pin + 3)];
  return [base[0] + perp[0], base[1] + perp[1], base[2] + perp[2]];
}
