/** What the foot does in work is what springs and stretched cables hold; a spring's torque is the slope of its energy. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closureOf, type Closure } from '../support/closure.ts';
import { leverNamed } from '../support/sketch.ts';
import { minus, size, square, unit } from '../support/vector.ts';
import { balance, leastSine, type CableSketch } from './support/freeBody.ts';
import { integral } from './support/quadrature.ts';
import { anySprung } from './support/randomSprung.ts';
import { springEnergy, springLength } from './support/springForces.ts';
import { isPlace, solveSprung, type SolvedSprung, type SprungSketch, type TorsionSketch } from './support/sprung.ts';
import { standAt } from './support/standing.ts';

/** Of the work done either way. */
const KEPT = 1e-9;
const SCANNED = 24;
/** As in the comparison with free-body statics. */
const CLEAR = 1e-3;
/** Linkages wanted. */
const WANTED = 200;

describe('the work of the foot over the travel', () => {
  it('is the energy that springs store, with cables loose at first and stretched past open stops', { timeout: 400_000 }, () => {
    let checked = 0;
    let slack = 0;
    let stretched = 0;
    const faults: string[] = [];
    for (const drawn of fc.sample(anySprung({ stops: true }), { numRuns: 1200, seed: 51 })) {
      if (checked === WANTED) break;
      const sketch = heldByEveryLever(drawn);
      const solved = solveSprung(sketch);
      const closure = closureOf(sketch, solved.senses);
      const held = scan(closure, sketch, solved);
      if (held === undefined) continue;
      checked++;
      if (held.loose) slack++;
      if (held.stretched) stretched++;
      const { work, size: done } = workOfFoot(closure, sketch, solved);
      const stored = energyAt(closure, sketch, solved, 1) - energyAt(closure, sketch, solved, 0);
      const off = Math.abs(work - stored) / done;
      if (!(off <= KEPT)) faults.push(`#${checked}: ${work} N·mm done and ${stored} stored, ${off}\n${solved.text}`);
    }
    expect(faults).toEqual([]);
    expect(checked).toBe(WANTED);
    expect(slack).toBeGreaterThan(20);
    expect(stretched).toBeGreaterThan(20);
  });
});

/** With a strong spring on every driven lever, so that few cables are ever left without tension while they move. */
function heldByEveryLever(sketch: SprungSketch): SprungSketch {
  const strong = sketch.levers
    .filter(({ name }) => name !== 'foot')
    .map(({ name: lever }): TorsionSketch => ({ kind: 'torsion', name: `strong_${lever}`, lever, rate: 5, preload: 3000 }));
  const stiffness = Object.fromEntries(
    sketch.joints.flatMap((joint) => (joint.kind === 'cable' ? [[joint.name, sketch.stiffness?.[joint.name] ?? 20] as const] : [])),
  );
  // A spring from lever to lever past a stop changes the tension on which a cable's stretch comes: no energy goes with that.
  const springs = sketch.springs.filter((spring) => spring.kind === 'torsion' || isPlace(spring.from));
  return { ...sketch, springs: [...springs, ...strong], stiffness };
}

/** Undefined for a linkage that does not keep its energy: one that parts, or whose springs drive a cable's end faster than the cable. */
function scan(closure: Closure, sketch: SprungSketch, solved: SolvedSprung): { loose: boolean; stretched: boolean } | undefined {
  const seen = { loose: false, stretched: false };
  // Between the places where anything turns, and off the round figures, so that no cable stands at the very edge of its slack.
  const { all } = solved.travel.places;
  const middles = all.slice(1).map((to, i) => (all[i]! + to) / 2);
  for (const travel of [...middles, ...Array.from({ length: SCANNED }, (_, i) => (i + 0.5) / SCANNED)]) {
    const stand = standAt(closure, sketch, solved, travel);
    if (stand === undefined || Object.values(stand.rotations).some(Number.isNaN)) return undefined;
    if (!(leastSine(closure, sketch, stand.rotations) >= CLEAR)) return undefined;
    const { tension } = balance(closure, sketch, stand);
    for (const joint of sketch.joints) {
      if (joint.kind !== 'cable') continue;
      const stands = stand.cable(joint);
      if (stands === 'loose') seen.loose = true;
      else if (stands.stretch > 0) seen.stretched = true;
      if (stands !== 'loose' && !(heldTension(sketch, joint, tension[joint.name]!.value, stands.stretch) > 0)) return undefined;
    }
  }
  return seen;
}

function heldTension(sketch: SprungSketch, { name }: CableSketch, tension: number, stretch: number): number {
  return stretch === 0 ? tension : tension - sketch.stiffness![name]! * stretch;
}

function workOfFoot(closure: Closure, sketch: SprungSketch, solved: SolvedSprung): { work: number; size: number } {
  const way = wayOfPad(sketch);
  const places = [...solved.travel.places.all, ...springEdges(closure, sketch, solved)].sort((a, b) => a - b);
  const { value, size: done } = integral(solved.along('pedal.effort'), places, 1e-12);
  return { work: value * way, size: done * way };
}

/** Where a spring passes its free length: its force jumps or bends there, which a rule of integration may not see. */
function springEdges(closure: Closure, { springs }: SprungSketch, solved: SolvedSprung): readonly number[] {
  return springs.flatMap((spring) => {
    if (spring.kind === 'torsion') return [];
    const beyond = (travel: number): boolean => springLength(closure, spring, solved.rotationsAt(travel)) > spring.freeLength;
    const edges: number[] = [];
    for (let i = 0; i < SEARCHED; i++) {
      let [low, high] = [i / SEARCHED, (i + 1) / SEARCHED];
      if (beyond(low) === beyond(high)) continue;
      for (let halved = 0; halved < 50; halved++) {
        const middle = (low + high) / 2;
        if (beyond(middle) === beyond(low)) low = middle;
        else high = middle;
      }
      edges.push(high);
    }
    return edges;
  });
}

const SEARCHED = 400;

/** Way of the pad, or of the cable's end or of the pad before it, over the whole travel, mm. */
function wayOfPad({ pedal, pad, leverRatio, ...sketch }: SprungSketch): number {
  if (pedal.kind === 'cable') return pedal.pull * (leverRatio ?? 1);
  const { pivot, axis, arms } = leverNamed({ pedal, ...sketch }, pedal.lever);
  return size(square(minus(arms[pad!]!, pivot), unit(axis))) * ((pedal.travel * Math.PI) / 180);
}

/** N·mm. A cable held at a stop takes its stretch on top of the tension it had. */
function energyAt(closure: Closure, sketch: SprungSketch, solved: SolvedSprung, travel: number): number {
  const rotations = solved.rotationsAt(travel);
  const springs = sketch.springs.reduce((sum, spring) => sum + springEnergy(closure, solved.senses, spring, rotations), 0);
  if (travel === 0) return springs;
  const stand = standAt(closure, sketch, solved, travel)!;
  const { tension } = balance(closure, sketch, stand);
  const cables = sketch.joints.flatMap((joint) => {
    if (joint.kind !== 'cable') return [];
    const stands = stand.cable(joint);
    if (stands === 'loose' || stands.stretch === 0) return [];
    const { stretch } = stands;
    return [
      heldTension(sketch, joint, tension[joint.name]!.value, stretch) * stretch + (sketch.stiffness![joint.name]! * stretch ** 2) / 2,
    ];
  });
  return cables.reduce((sum, each) => sum + each, springs);
}

describe('the rule of integration', () => {
  it('is exact for polynomials up to the 22nd degree', () => {
    for (let degree = 0; degree <= 22; degree++) {
      const { value } = integral((x) => x ** degree, [-0.5, 1], Infinity);
      expect(Math.abs(value - (1 - (-0.5) ** (degree + 1)) / (degree + 1)), `degree ${degree}`).toBeLessThan(1e-15);
    }
  });

  it('finds a jump', () => {
    expect(Math.abs(integral((x) => (x < 0.3 ? 0 : x), [0, 1], 1e-12).value - 0.455)).toBeLessThan(1e-12);
  });
});

describe('the torque of a spring', () => {
  it('is the slope of its energy by the opening of its lever, the other lever held', () => {
    let compared = 0;
    const kinds = new Map<string, number>();
    for (const sketch of fc.sample(anySprung(), { numRuns: 500, seed: 52 })) {
      const solved = solveSprung(sketch);
      const closure = closureOf(sketch, solved.senses);
      for (const travel of [0, 0.3, 0.6, 1]) {
        const rotations = solved.rotationsAt(travel);
        const row = solved.rowAt(travel);
        for (const spring of sketch.springs) {
          const lever = spring.kind === 'torsion' ? spring.lever : spring.to.lever;
          const sense = solved.senses[lever]!;
          const energy = (by: number): number =>
            springEnergy(closure, solved.senses, spring, { ...rotations, [lever]: rotations[lever]! + sense * by });
          if (Number.isNaN(energy(0))) {
            expect(row(`${spring.name}.torque`)).toBeNaN();
            continue;
          }
          const [near, far] = [STEP, 2 * STEP].map((by) => (energy(by) - energy(-by)) / (2 * by)) as [number, number];
          // Richardson: the error of a central difference is quarter where its step is half.
          const slope = (4 * near - far) / 3;
          const scale = Math.abs(energy(0)) + Math.abs(energy(0.1)) + 100;
          // At the free length the slope or its own slope jumps, and a difference across it says nothing.
          const jumps = spring.kind !== 'torsion' && energy(2 * STEP) * energy(-2 * STEP) === 0 && energy(2 * STEP) + energy(-2 * STEP) > 0;
          if (jumps) continue;
          const off = Math.abs(row(`${spring.name}.torque`) - slope) / scale;
          expect(off, `${spring.name} at ${travel}: ${row(`${spring.name}.torque`)}, slope ${slope}\n${solved.text}`).toBeLessThan(1e-8);
          const kind = spring.kind !== 'torsion' && 'lever' in spring.from ? `${spring.kind} between pins` : spring.kind;
          kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
          compared++;
        }
      }
    }
    expect(compared).toBeGreaterThan(4000);
    expect(kinds.size).toBe(5);
    expect(Math.min(...kinds.values())).toBeGreaterThan(200);
  });
});

/** rad. */
const STEP = 3e-4;
