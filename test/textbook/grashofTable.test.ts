/** Grashof's condition read off the load path of a solved throttle file, for every four-bar that the classification is checked with. */
import { describe, expect, it } from 'vitest';
import type { FourBar } from '../../src/kinematics/fourBar/index.ts';
import { DEG } from './support/check.ts';
import { halfTangentAngles } from './support/halfTangent.ts';
import { inputToggles, solveFourBar, type Root } from './support/offTheTable.ts';
import { angleBetweenLinks } from './support/pins.ts';
import { grashofRows, inversionRows } from './values/grashof.ts';

describe('the load path names the type of every four-bar', () => {
  it.each(grashofRows)('$links.a, $links.b, $links.c on $links.d: $type', ({ links, type, sums }) => {
    for (const root of [-1, 1] as const) {
      const words = wordsOf(links, root);
      expect(typeIn(words)).toBe(type);
      expect(words).toContain(`Grashof class ${{ '<': 'I', '>': 'II', '=': 'III' }[sums[1]]};`);
      expect(words).toContain(`driving arm ${turns(links)}, driven arm ${turns({ ...links, a: links.c, c: links.a })})`);
    }
  });

  it.each(inversionRows)('$lengths goes by the place of the $deciding, in every order of the rest', ({ lengths, deciding, types }) => {
    let orders = 0;
    for (const a of lengths) {
      for (const b of lengths.filter((length) => length !== a)) {
        for (const c of lengths.filter((length) => length !== a && length !== b)) {
          const d = lengths.find((length) => length !== a && length !== b && length !== c)!;
          const links = { a, b, c, d };
          const place = (['a', 'b', 'c', 'd'] as const).find((name) => links[name] === deciding)!;
          expect(typeOf(links, -1), JSON.stringify(links)).toBe(types[place]);
          orders++;
        }
      }
    }
    expect(orders).toBe(24);
  });

  it('is the same in inches and however the linkage is scaled', () => {
    for (const { links, type } of grashofRows) {
      for (const by of [25.4, 0.37]) {
        const scaled = { a: by * links.a, b: by * links.b, c: by * links.c, d: by * links.d };
        expect(typeOf(scaled, -1), JSON.stringify(scaled)).toBe(type);
      }
    }
  });
});

function typeOf(links: FourBar, root: Root): string | undefined {
  return typeIn(wordsOf(links, root));
}

/** What the load path says of the rod's four-bar. */
function wordsOf(links: FourBar, root: Root): string | undefined {
  const { answers } = solveFourBar({ links, root, start: bestTheta2(links, root), travel: 1 });
  const rod = answers.parts.find(({ kind }) => kind === 'rod');
  return rod?.figures.find(({ label }) => label === 'four-bar')?.text;
}

function typeIn(words: string | undefined): string | undefined {
  return words === undefined ? undefined : (/\((\w+),/.exec(words)?.[1] ?? words);
}

/** Whether the input turns fully, by the limits of its angle and not by the rule: a limit at 0 or 180° is passed at a change point. */
function turns(links: FourBar): 'crank' | 'rocker' {
  const inWay = inputToggles(links).filter((toggle) => toggle > STRAIGHT && toggle < 180 - STRAIGHT);
  return inWay.length === 0 ? 'crank' : 'rocker';
}

/** Degrees; the arc cosine of nearly one keeps half the digits. */
const STRAIGHT = 1e-5;

/** The input angle, of a round of them, at which coupler and output stand nearest to square. */
function bestTheta2(links: FourBar, root: Root): number {
  let best = NaN;
  let least = Infinity;
  for (let theta2 = 3; theta2 < 360; theta2 += 7) {
    const theta4 = halfTangentAngles(links, theta2 * DEG, root).theta4 / DEG;
    const off = Math.abs(angleBetweenLinks(links, theta2, theta4) - 90);
    if (off < least) [least, best] = [off, theta2];
  }
  return best;
}
