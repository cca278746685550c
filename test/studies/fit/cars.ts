/** Cars that were never built: random linkages with some dimensions off by a known amount, and readings of them with a known noise. */
import fc from 'fast-check';
import { applyEdits } from '../../../src/definition/edit.ts';
import type { Value } from '../../../src/definition/definition.ts';
import { fitNames } from '../../../src/definition/fitNames.ts';
import { readDefinition } from '../../../src/definition/read.ts';
import { advance } from '../../../src/kinematics/advance.ts';
import { createBuild } from '../../../src/kinematics/createBuild.ts';
import { createPose } from '../../../src/kinematics/pose.ts';
import { randomOf, type Random } from '../../../src/numeric/random.ts';
import { solve } from '../../../src/solve.ts';
import { columnsOf } from '../../../src/table/columns.ts';
import { travelOf } from '../../../src/travel/travel.ts';
import { anyMechanism, type MechanismChoice } from '../../support/mechanisms.ts';
import { sketchText, type Sketch } from '../../support/sketch.ts';

export interface BuiltCar {
  /** With tolerances and readings. */
  readonly text: string;
  /** SI, by name of the dimension. */
  readonly truth: ReadonlyMap<string, number>;
}

/** The same for the same seed. */
export function sketches(count: number, seed: number, choice: MechanismChoice = {}): readonly Sketch[] {
  return fc.sample(anyMechanism(choice), { seed, numRuns: count });
}

const NOISE_DEG = 0.1;
const NOISE = (NOISE_DEG * Math.PI) / 180;

/**
 * A few of the sketch's dimensions get a tolerance, and are off by draws of its normal law; the openings of all levers but the pedal are
 * read at sixteen places, each with its noise.
 * @returns undefined where some reading has no value
 */
export function builtCar(sketch: Sketch, seed: number, { most = 5 } = {}): BuiltCar | undefined {
  const random = randomOf(seed, 99);
  const plain = sketchText(sketch);
  const { definition } = readDefinition(plain);
  if (definition === undefined) return undefined;
  const chosen = pick(
    [...fitNames(definition).values()].flatMap(({ name, value }) =>
      value !== undefined && value.formula === undefined && isToleranced(name, value) ? [{ name, value }] : [],
    ),
    most,
    random,
  );
  const toleranced = applyEdits(
    plain,
    chosen.map(({ value }) => ({ span: value.span, text: withTolerance(plain, value) })),
  );
  const { study } = solve(toleranced);
  if (study === undefined) return undefined;
  const { mechanism } = study.travel;
  const values = Float64Array.from(mechanism.nominal);
  const truth = new Map<string, number>();
  chosen.forEach(({ name, value }, k) => {
    const dimension = mechanism.dimensions.find(({ path }) => path === value.path);
    if (dimension?.tolerance === undefined) return;
    // Within the tolerance, as a car that was measured when its parts came.
    const off = Math.max(-3, Math.min(3, random.normal(1, k)));
    values[dimension.index] = dimension.nominal + (off * dimension.tolerance.plus) / 3;
    truth.set(name, values[dimension.index]!);
  });
  const build = createBuild(mechanism, values);
  const columns = columnsOf(travelOf(build)).filter(({ key, owner }) => key === 'opening' && owner !== 'foot');
  const pose = createPose(mechanism);
  const rows = Array.from({ length: 16 }, (_, i) => {
    advance(build, i / 15, pose);
    const read = columns.map((column, c) => column.read(build, pose) + NOISE * random.normal(100 + i, c));
    return { at: i / 15, read };
  });
  if (rows.some(({ read }) => read.some(Number.isNaN))) return undefined;
  const lines = rows.map(
    ({ at, read }) =>
      `        - [${plainNumber(at * 100)} %, ${read.map((each) => `${plainNumber((each * 180) / Math.PI)} deg`).join(', ')}]`,
  );
  const text = `${toleranced}measured:
  fit: [${[...truth.keys()].join(', ')}]
  runs:
    bench:
      columns: [pedal.travel, ${columns.map(({ name }) => name).join(', ')}]
      rows:
${lines.join('\n')}
      noise: {${columns.map(({ name }) => `${name}: ${NOISE_DEG} deg`).join(', ')}}
`;
  return { text, truth };
}

function isToleranced(name: string, { dimension }: Value): boolean {
  return (dimension === 'length' || dimension === 'angle') && !name.startsWith('pedal.') && !/\.(?:axis|reference)\./.test(name);
}

function withTolerance(text: string, { span, dimension }: Value): string {
  const written = text.slice(span.start, span.end);
  return dimension === 'length' ? `${written} mm ± 0.3 mm` : `${written} deg ± 0.5 deg`;
}

function pick<T>(from: readonly T[], most: number, random: Random): readonly T[] {
  return from
    .map((each, i) => ({ each, at: random.uniform(2, i) }))
    .sort((a, b) => a.at - b.at)
    .slice(0, most)
    .map(({ each }) => each);
}

/** Without an exponent, which no quantity has. */
export function plainNumber(value: number): string {
  return value.toFixed(12);
}
