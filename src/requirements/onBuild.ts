/** Lines of `require` decided on a build with other figures than the file's, such as one within its tolerances. */
import type { Definition } from '../definition/definition.ts';
import type { Expression, Requirement } from '../definition/formula/formula.ts';
import type { Build } from '../kinematics/build.ts';
import { columnsOf } from '../table/columns.ts';
import { travelOf } from '../travel/travel.ts';
import { decideRequirements } from './decide.ts';
import type { RequirementAnswer } from './requirement.ts';

/** In the order of the lines. No words of the file are quoted: reasons and texts are empty where they would be. */
export function decideOnBuild(definition: Definition, lines: readonly Requirement[], build: Build): readonly RequirementAnswer[] {
  const travel = travelOf(build);
  return decideRequirements({
    text: '',
    problems: [],
    definition: { ...definition, requirements: lines, lets: letsAt(definition, build) },
    travel,
    columns: columnsOf(travel),
  });
}

/** Values of `let` as a build has them. */
function letsAt({ lets }: Definition, { mechanism, values }: Build): Definition['lets'] {
  const of = new Map(mechanism.dimensions.map(({ path, index }) => [path, values[index]!]));
  const known = Float64Array.from(lets, ({ value }) => value.nominal);
  return lets.map((entry, i) => {
    // Each may use earlier ones.
    known[i] = entry.value.formula?.evaluate(known) ?? of.get(entry.value.path) ?? entry.value.nominal;
    return { ...entry, value: { ...entry.value, nominal: known[i] } };
  });
}

/** Whether a condition speaks of one of some columns. */
export function speaksOf(expression: Expression, columns: ReadonlySet<string>): boolean {
  switch (expression.kind) {
    case 'number':
    case 'let':
      return false;
    case 'column':
      return columns.has(`${expression.owner}.${expression.column}`);
    case 'unary':
      return speaksOf(expression.operand, columns);
    case 'binary':
      return speaksOf(expression.left, columns) || speaksOf(expression.right, columns);
    case 'call':
      return expression.arguments.some((part) => speaksOf(part, columns));
  }
}
