/** What must not change the answer: where the whole linkage lies, how large it is, its mirror image, the order in the file. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closureOf, jacobian, magnification, type Rotations } from '../support/closure.ts';
import { anyMechanism } from '../support/mechanisms.ts';
import type { Sketch } from '../support/sketch.ts';
import { sensesOf, solveSketch } from '../support/solveSketch.ts';
import { mirrored, reordered, scaled, turnedAndMoved } from '../support/transform.ts';

const LINKAGES = 500;
const STATIONS = [0, 0.1, 0.4, 0.7, 1];
/** rad. */
const SAME = 1e-11;
/** Relative error of figures that are turned, written and read once more. */
const ROUNDING = 1e-12;
/** Beyond this magnification a linkage stands at its dead centre, where rounding decides whether it can be assembled. */
const AT_DEAD_CENTRE = 1e5;

interface Linkage {
  readonly sketch: Sketch;
  /** At each station. */
  readonly stands: readonly { readonly travel: number; readonly rotations: Rotations; readonly magnified: number }[];
}

function linkagesOf(linkages: fc.Arbitrary<Sketch>): readonly Linkage[] {
  return fc.sample(linkages, { numRuns: LINKAGES, seed: 31 }).map((sketch) => {
    const solved = solveSketch(sketch);
    const closure = closureOf(sketch, sensesOf(solved.mechanism));
    const stands = STATIONS.map((travel) => {
      const rotations = solved.rotationsAt(travel);
      return { travel, rotations, magnified: magnification(jacobian(closure, rotations, travel)) };
    });
    return { sketch, stands };
  });
}

let free: readonly Linkage[] | undefined;

/** Without stops; the same for every test, so solved once. */
const freeLinkages = (): readonly Linkage[] => (free ??= linkagesOf(anyMechanism()));

function differences(change: (sketch: Sketch) => Sketch, sign: 1 | -1, linkages = freeLinkages()): readonly string[] {
  return linkages.flatMap(({ sketch, stands }, index) => {
    const other = solveSketch(change(sketch));
    return stands.flatMap(({ travel, rotations, magnified }) => {
      const others = other.rotationsAt(travel);
      return Object.entries(rotations).flatMap(([lever, rotation]) => {
        const found = sign * others[lever]!;
        if (Number.isNaN(rotation) && Number.isNaN(found)) return [];
        if (magnified > AT_DEAD_CENTRE) return [];
        return Math.abs(rotation - found) <= SAME + ROUNDING * magnified
          ? []
          : [`#${index} ${lever} at ${travel}: ${rotation}, ${found} (${magnified})`];
      });
    });
  });
}

describe('rotations are the same', { timeout: 60_000 }, () => {
  test('for a linkage turned and moved in space', () => {
    expect(differences((sketch) => turnedAndMoved(sketch, [0.3, -1, 0.5], 1.1, [40, -25, 90]), 1)).toEqual([]);
  });

  test('for a linkage turned and moved in its plane', () => {
    expect(differences((sketch) => turnedAndMoved(sketch, [0, 0, 1], 2.2, [-310, 75, 0]), 1)).toEqual([]);
  });

  test('for a linkage of another size', () => {
    expect(differences((sketch) => scaled(sketch, 3.7), 1)).toEqual([]);
  });

  test('for a file with its parts in the opposite order', () => {
    expect(differences(reordered, 1)).toEqual([]);
  });

  test('for a file with stops and with its parts in the opposite order', () => {
    expect(differences(reordered, 1, linkagesOf(anyMechanism({ stops: true, joints: ['cable', 'coupling', 'slot'] })))).toEqual([]);
  });

  test('but for their sign for the mirror image', () => {
    expect(differences(mirrored, -1)).toEqual([]);
  });
});
