/**
 * What is left of a linkage when one of its joints is lost, each part a linkage of its own: the one that the pedal still moves, and the
 * one that has nothing to drive it. The second has its first lever for a pedal, which turns it through all the openings that it had
 * before, so that it is solved as any other. Made from the definition's data and not from its text.
 */
import type { Definition, Value } from '../definition/definition.ts';
import { findLoadPath } from '../definition/loadPath.ts';
import { compileMechanism } from '../kinematics/compile.ts';
import { isBehind } from '../kinematics/isBehind.ts';
import type { Joint, Mechanism } from '../kinematics/model.ts';
import { solveTravel, type Travel } from '../travel/travel.ts';

/** What the pedal still moves without a joint; undefined where that is nothing that carries plates. */
export function drivenWithout(whole: Travel, joint: Joint): Travel | undefined {
  const { mechanism } = whole;
  const left = mechanism.levers.filter((lever) => lever.plates.length > 0 && lever.group >= 0 && !isBehind(mechanism, joint, lever));
  return left.length === 0 ? undefined : solved(withoutJoint(mechanism.definition, joint), whole);
}

/** What a joint drove, by the opening of its first lever. @param reached greatest opening of that lever over the travel, rad */
export function freedBy(whole: Travel, joint: Joint, reached: number): Travel | undefined {
  const { mechanism } = whole;
  return solved(drivenBy(withoutJoint(mechanism.definition, joint), mechanism, joint, reached), whole, joint.driven);
}

function withoutJoint(definition: Definition, { kind, name }: Joint): Definition {
  const others = <Part extends { readonly name: string }>(parts: readonly Part[]): readonly Part[] =>
    parts.filter((part) => part.name !== name);
  switch (kind) {
    case 'rod':
      return { ...definition, rods: others(definition.rods) };
    case 'slot':
      return { ...definition, slots: others(definition.slots) };
    case 'coupling':
      return { ...definition, couplings: others(definition.couplings) };
    case 'cable': {
      const { pedal, ...rest } = definition;
      const isPedal = pedal?.kind === 'cable' && pedal.cable.name === name;
      return { ...rest, ...(pedal && !isPedal && { pedal }), cables: others(definition.cables) };
    }
  }
}

function drivenBy(definition: Definition, { levers, senses }: Mechanism, { driven }: Joint, reached: number): Definition {
  const { name, source } = levers[driven]!;
  const travel: Value = { span: source.nameSpan, path: `levers.${name}`, dimension: 'angle', nominal: Math.max(reached, 0), unit: 'deg' };
  return {
    ...definition,
    pedal: {
      kind: 'lever',
      span: source.span,
      lever: { name, span: source.nameSpan },
      opens: senses[driven] === 1 ? 'counterclockwise' : 'clockwise',
      travel,
    },
  };
}

/** @param freed the lever that stands in for the pedal and has none of its stops */
function solved(definition: Definition, { mechanism: whole, build }: Travel, freed?: number): Travel | undefined {
  const { path } = findLoadPath(definition);
  const mechanism = path && compileMechanism(definition, path);
  if (mechanism === undefined) return undefined;
  // Which way a lever opens does not change with what is lost.
  mechanism.senses.set(whole.senses);
  const levers = mechanism.levers.map((lever) => {
    if (lever.index !== freed || whole.levers[freed]!.closedStop !== undefined) return lever;
    const { closedStop: _of, ...without } = lever;
    return without;
  });
  // What is left is of the same build: its figures are those of the whole.
  const indices = new Map(whole.dimensions.map(({ path, index }) => [path, index]));
  const values = mechanism.dimensions.map(({ path, nominal }) => build.values[indices.get(path) ?? -1] ?? nominal);
  return solveTravel({ ...mechanism, levers }, Float64Array.from(values));
}
