/**
 * How many random builds meet each line of `require`: the same builds as those of the outcomes (`monteCarlo.ts`), the first so many of them.
 *
 * A line may speak of any column over the whole travel, and is decided for each build as for the file itself. That takes a hundred times as
 * long as an outcome, and where what acts is looked at a thousand times: fewer builds are gone through.
 */
import type { Definition } from '../../definition/definition.ts';
import type { Requirement } from '../../definition/formula/formula.ts';
import type { Mechanism } from '../../kinematics/model.ts';
import { decideOnBuild, speaksOf } from '../../requirements/onBuild.ts';
import { columnsOf } from '../../table/columns.ts';
import { travelOf } from '../../travel/travel.ts';
import { yieldOf, type Yield } from './distribution.ts';
import { drawsOf, type Law } from './monteCarlo.ts';
import { createPlacing } from './placing.ts';
import type { Progress } from './stack.ts';
import type { Toleranced } from '../../kinematics/toleranced.ts';

export interface RequiredYield {
  readonly name: string;
  /** Builds that were gone through, and those of them in which it fails and cannot be decided. */
  readonly builds: number;
  readonly failed: number;
  readonly undecided: number;
  /** Undecided counts as not kept. */
  readonly kept: Yield;
}

export interface RequiredYields {
  /** In file order. */
  readonly lines: readonly RequiredYield[];
  /** Of each build that was gone through by every line, 1 where it meets them all; undefined without lines. */
  readonly kept: Uint8Array | undefined;
}

/** Builds for lines of positions alone, and for lines that speak of what acts. */
const BUILDS = 1000;
const BUILDS_ACTING = 100;

/** Yields after each build. @param most builds at most */
export function* requiredYields(
  definition: Definition,
  mechanism: Mechanism,
  varied: readonly Toleranced[],
  { seed, law, most }: { readonly seed: number; readonly law: Law; readonly most: number },
): Generator<Progress, RequiredYields> {
  const forces = new Set(
    columnsOf(travelOf(createPlacing(mechanism, varied, false).build))
      .filter((each) => each.forces)
      .map(({ name }) => name),
  );
  const { requirements } = definition;
  const acting = requirements.filter(({ expression }) => expression !== undefined && speaksOf(expression, forces));
  const parts = [
    { lines: requirements.filter((each) => !acting.includes(each)), builds: Math.min(BUILDS, most) },
    { lines: acting, builds: Math.min(BUILDS_ACTING, most) },
  ].filter(({ lines }) => lines.length > 0);
  const total = parts.reduce((sum, { builds }) => sum + builds, 0);
  const draw = drawsOf(seed, law, varied);
  const offsets = new Float64Array(varied.length);
  const found = new Map<Requirement, RequiredYield>();
  const kept = parts.length === 0 ? undefined : new Uint8Array(Math.min(...parts.map(({ builds }) => builds))).fill(1);
  let done = 0;
  for (const { lines, builds } of parts) {
    const counts = lines.map(() => ({ failed: 0, undecided: 0 }));
    const { build, put } = createPlacing(mechanism, varied, true);
    for (let k = 0; k < builds; k++) {
      for (let j = 0; j < varied.length; j++) offsets[j] = draw(k, j);
      put(offsets);
      const answers = decideOnBuild(definition, lines, build);
      answers.forEach(({ outcome }, i) => {
        if (outcome === 'passed') return;
        counts[i]![outcome]++;
        if (kept !== undefined && k < kept.length) kept[k] = 0;
      });
      yield { done: ++done, of: total };
    }
    lines.forEach((line, i) => {
      const { failed, undecided } = counts[i]!;
      found.set(line, { name: line.name, builds, failed, undecided, kept: yieldOf(builds - failed - undecided, builds) });
    });
  }
  return { lines: requirements.map((line) => found.get(line)!), kept };
}
