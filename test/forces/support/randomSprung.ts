/** Random linkages with springs on their levers: torsion springs, and springs from a place or another lever's pin, near and far. */
import fc from 'fast-check';
import { anyMechanism, type MechanismChoice } from '../../support/mechanisms.ts';
import { leverNamed, type Sketch, type SketchEnd, type SketchLever } from '../../support/sketch.ts';
import { minus, plus, size, type Vector } from '../../support/vector.ts';
import { isPlace, type LinearSketch, type SpringSketch, type SprungSketch } from './sprung.ts';

export function anySprung(choice: MechanismChoice = {}): fc.Arbitrary<SprungSketch> {
  const draws = fc.array(fc.integer({ min: 0, max: FINENESS - 1 }), { minLength: DRAWS, maxLength: DRAWS, size: 'max' });
  return fc.tuple(anyMechanism(choice), draws).map(([sketch, numbers]) => {
    let at = 0;
    return hangSprings(sketch, () => numbers[at++ % DRAWS]! / FINENESS);
  });
}

const FINENESS = 2 ** 24;
const DRAWS = 120;
type Draw = () => number;
const between = (draw: Draw, low: number, high: number): number => low + (high - low) * draw();

function hangSprings(bare: Sketch, draw: Draw): SprungSketch {
  const isSpatial = bare.levers.some(({ axis }) => String(axis) !== '0,0,1');
  const around = (place: Vector, reach: number): Vector =>
    plus(place, [between(draw, -reach, reach), between(draw, -reach, reach), isSpatial ? between(draw, -reach / 3, reach / 3) : 0]);
  const levers = bare.levers.map((lever): SketchLever => {
    const arms: Record<string, Vector> = { ...lever.arms, hook: around(lever.pivot, 60), eye: around(lever.pivot, 60) };
    return { ...lever, arms: lever.name === 'foot' ? { ...arms, pad: around(lever.pivot, 200) } : arms };
  });
  const sketch = { ...bare, levers };
  const springs: SpringSketch[] = levers.flatMap(({ name: lever }): readonly SpringSketch[] => {
    if (draw() < 0.4) return [];
    return [{ kind: 'torsion', name: `wound_${lever}`, lever, rate: between(draw, 0.1, 8), preload: between(draw, -50, 400) }];
  });
  const count = 1 + Math.floor(draw() * 3);
  for (let i = 0; i < count; i++) {
    const lever = levers[Math.floor(draw() * levers.length)]!;
    const other = levers[Math.floor(draw() * levers.length)]!;
    const to: SketchEnd = { lever: lever.name, part: 'hook' };
    const from = draw() < 0.5 && other !== lever ? { lever: other.name, part: 'eye' } : around(lever.pivot, 120);
    const start = isPlace(from) ? from : leverNamed(sketch, from.lever).arms[from.part]!;
    const drawn = size(minus(lever.arms.hook!, start));
    const common = { name: `spring_${i}`, from, to, rate: between(draw, 0.1, 3) };
    const spring: LinearSketch =
      draw() < 0.6
        ? { ...common, kind: 'extension', freeLength: drawn * between(draw, 0.3, 1.1), initialTension: between(draw, 0, 10) }
        : { ...common, kind: 'compression', freeLength: drawn * between(draw, 0.9, 1.6) };
    springs.push(spring);
  }
  const stiffness = Object.fromEntries(
    bare.joints.flatMap((joint) => (joint.kind === 'cable' && draw() < 0.8 ? [[joint.name, between(draw, 5, 80)] as const] : [])),
  );
  if (bare.pedal.kind === 'lever') return { ...sketch, springs, stiffness, pad: 'pad' };
  return { ...sketch, springs, stiffness, ...(draw() < 0.5 && { leverRatio: between(draw, 1.5, 7) }) };
}
