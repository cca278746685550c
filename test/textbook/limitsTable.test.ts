/** Dead centres, toggles, swing and transmission angle of the textbook four-bars, off the table and out of the findings. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { greatestOf } from '../../src/travel/extremes.ts';
import type { FourBar } from '../../src/kinematics/fourBar/index.ts';
import { foundBy, foundByRules } from '../support/foundBy.ts';
import { DEG, expectAngle, expectFigure } from './support/check.ts';
import { inputToggles, solveFourBar, type Root, type SolvedFourBar } from './support/offTheTable.ts';
import { angleBetweenLinks } from './support/pins.ts';
import { exampleLimits, positionRows, tableRows } from './values/positions.ts';

const { links, decimals } = exampleLimits;
const centres = [
  ['extended', exampleLimits.extended],
  ['overlapped', exampleLimits.overlapped],
] as const;
/** The crossed circuit is the open one in the mirror of the ground line. */
const mirrored = [
  ['open', -1, 1],
  ['crossed', 1, -1],
] as const;

/** Degrees: a rate under 1e-9 rad over the travel counts as none, so the edge of a turn back may lie that much to one side. */
const TURNS_WITHIN = 1e-6;

describe('the textbook example over a full turn of its crank', () => {
  const turn = solveFourBar({ links, root: -1, start: 300, travel: 360 });
  const back = solveFourBar({ links, root: -1, start: 300, travel: -360 });

  it('turns its rocker back between the published dead centres, by the published swing', () => {
    const found = the(turn, 'turns-back');
    expect(found.ranges).toHaveLength(1);
    expectAngle(turn.theta2(found.ranges![0]!.from) * DEG, exampleLimits.extended.theta2, decimals, 'from θ2');
    expectAngle(turn.theta2(found.ranges![0]!.to) * DEG, exampleLimits.overlapped.theta2, decimals, 'to θ2');
    expectAngle(found.worst?.value, exampleLimits.swing, decimals, 'swing');
  });

  it('turning clockwise, turns it back outside of them', () => {
    const edges = the(back, 'turns-back').ranges!.map(({ from, to }) => [back.theta2(from), back.theta2(to)] as const);
    expect(edges).toHaveLength(2);
    expectAngle(edges[0]![0] * DEG, 300, decimals, 'from the start');
    expectAngle(edges[0]![1] * DEG, exampleLimits.overlapped.theta2, decimals, 'to the overlapped dead centre');
    expectAngle(edges[1]![0] * DEG, exampleLimits.extended.theta2, decimals, 'from the extended dead centre');
    expectAngle(edges[1]![1] * DEG, 300, decimals, 'to the end');
  });

  it('is assembled everywhere', () => {
    expect(codes(turn)).not.toContain('not-assembled');
    expect(codes(back)).not.toContain('not-assembled');
    expect(codes(turn)).not.toContain('toggle-opening');
  });

  it('has the published least and greatest transmission angle where they are published', () => {
    for (const file of [turn, back]) {
      const least = the(file, 'transmission-angle').worst;
      expectAngle(least?.value, exampleLimits.leastTransmission.angle, decimals, 'least');
      expectAngle(file.theta2(least?.travel ?? NaN) * DEG, exampleLimits.leastTransmission.theta2, decimals, 'where it is least');
      const named = partFigure(file, 'least transmission angle');
      expect(named).toBe(least?.value);
      const stations = Array.from({ length: 721 }, (_, i) => i / 720);
      const greatest = greatestOf((station) => file.read('coupler.transmission', file.theta2(station)) ?? NaN, stations);
      expectAngle((greatest?.value ?? NaN) * DEG, exampleLimits.greatestTransmission.angle, decimals, 'greatest');
      // Found by search: at a flat top the place is known to half the digits of the value.
      expectAngle(
        file.theta2(greatest?.travel ?? NaN) * DEG,
        exampleLimits.greatestTransmission.theta2,
        decimals,
        'where it is greatest',
        1e-3,
      );
    }
  });

  it('has the published transmission angle and torque ratio at the drawn angle', () => {
    for (const file of [turn, back]) {
      // One turn on from 40°, which the travel from 300° passes.
      const theta2 = exampleLimits.theta2 + (file === turn ? 360 : 0);
      expectAngle((file.read('coupler.transmission', theta2) ?? NaN) * DEG, exampleLimits.transmissionAtTheta2, decimals, 'transmission');
      expectFigure(file.slope(theta2), exampleLimits.torqueRatio, decimals, 'T_in/T_out');
    }
  });
});

describe('dead centres of the textbook example', () => {
  for (const [circuit, root, mirror] of mirrored) {
    for (const [inLine, { theta2, theta4 }] of centres) {
      for (const way of [1, -1]) {
        it(`${circuit}, ${inLine}, input turning ${way > 0 ? 'counter-clockwise' : 'clockwise'}`, () => {
          const at = mirror * theta2;
          const file = solveFourBar({ links, root, start: at - way * 17, travel: way * 31 });
          const found = the(file, 'toggle-returning');
          expectAngle(file.theta2(found.worst?.travel ?? NaN) * DEG, at, decimals, 'θ2');
          expect(found.worst?.value).toBeLessThan(1e-6);
          expectAngle(file.theta4(at) * DEG, mirror * theta4, decimals, 'θ4');
          expect(Math.abs(file.slope(at))).toBeLessThan(1e-6);
          expect(file.read('coupler.drive', at)).toBeLessThan(1e-5);
          const turning = the(file, 'turns-back').ranges!;
          expect(turning).toHaveLength(1);
          const edge = turning[0]!.from === 0 ? turning[0]!.to : turning[0]!.from;
          expectAngle(file.theta2(edge) * DEG, at, decimals, 'turns back at', TURNS_WITHIN);
        });
      }

      it(`${circuit}, ${inLine}, drawn there`, () => {
        const file = solveFourBar({ links, root, start: mirror * theta2, travel: 20, drawnOff: 1 });
        expect(the(file, 'toggle-returning').worst?.travel).toBeLessThan(1e-6);
        expectAngle(file.theta4(file.start) * DEG, mirror * theta4, decimals, 'θ4');
      });
    }
  }

  it('are not found where the travel holds none', () => {
    const file = solveFourBar({ links, root: -1, start: 26, travel: 204 });
    expect(codes(file)).not.toContain('toggle-returning');
    expect(codes(file)).not.toContain('turns-back');
  });
});

describe('limits of the input', () => {
  const rows = [
    ...tableRows.map((row) => ({ name: `table row ${row.row}`, links: row.links, toggles: row.toggles })),
    // Their toggles are ours, by the same equation as those of the table.
    ...positionRows.filter(({ name }) => name.startsWith('assignment')).map((row) => ({ ...row, toggles: inputToggles(row.links) })),
  ];

  it.each(rows.filter(({ toggles }) => toggles.length === 0))('$name: none, and a full turn is assembled on both circuits', (row) => {
    for (const root of [-1, 1] as const) {
      for (const travel of [360, -360]) {
        const file = solveFourBar({ links: row.links, root, start: 100, travel });
        expect(codes(file)).not.toContain('not-assembled');
        expect(codes(file)).not.toContain('toggle-opening');
        expect(partFigure(file, 'driving arm can open from drawn by')).toBeUndefined();
        expectAngle(file.theta4(100 + travel) * DEG, file.theta4(100), 9, 'θ4 after a full turn');
      }
    }
  });

  it('of table row d is a change point at the published angle, on both circuits and both ways', () => {
    const row = tableRows.find(({ type }) => type === 'SCRR')!;
    for (const root of [-1, 1] as const) {
      for (const way of [1, -1]) {
        const file = solveFourBar({ links: row.links, root, start: 180 - way * 30, travel: way * 70 });
        const found = the(file, 'change-point');
        expectAngle(file.theta2(found.worst?.travel ?? NaN) * DEG, row.toggles[0]!, 4, 'change point');
        expectAngle(partFigure(file, 'driving arm can open from drawn by'), 30, 4, 'turn to the change point');
        expect(codes(file)).not.toContain('not-assembled');
      }
    }
  });

  for (const { name, links: own, toggles } of rows.filter((row) => row.toggles.length > 0 && row.toggles[0] !== 180)) {
    for (const [circuit, root] of mirrored) {
      it.each(edgesOf(toggles))(`${name}, ${circuit}: not assembled beyond %d° coming from %d°`, (edge, inside) => {
        expectEdge(own, root, edge, inside);
      });
    }
  }
});

/** Each limit with a place in the stretch of the input that it ends; one toggle stands for a stretch from −toggle to toggle. */
function edgesOf(toggles: readonly number[]): readonly (readonly [number, number])[] {
  const [low, high] = toggles.length === 1 ? [-toggles[0]!, toggles[0]!] : [toggles[0]!, toggles[1]!];
  const middle = (low + high) / 2;
  const upper = [
    [low, middle],
    [high, middle],
  ] as const;
  return toggles.length === 1 ? upper : [...upper, [-low, -middle], [-high, -middle]];
}

function expectEdge(own: FourBar, root: Root, edge: number, inside: number): void {
  const travel = (edge - inside) * 1.1;
  const file = solveFourBar({ links: own, root, start: inside, travel });
  const found = the(file, 'not-assembled');
  expect(found.ranges).toHaveLength(1);
  expectAngle(file.theta2(found.ranges![0]!.from) * DEG, edge, 4, 'not assembled from');
  expect(found.ranges![0]!.to).toBe(1);
  expectAngle(partFigure(file, 'driving arm can open from drawn by'), Math.abs(edge - inside), 4, 'turn to the limit');
  // Drawn midway of the stretch that the input can turn through.
  expectAngle(partFigure(file, 'and close by'), Math.abs(edge - inside), 4, 'turn back to the other limit');
  const step = Math.sign(travel) * 1e-3;
  expect(file.read('driven.rotation', edge - step)).not.toBeNull();
  expect(file.read('driven.rotation', edge + step)).toBeNull();
  // Near the limit the transmission angle, or what it lacks to a straight line, goes to nothing with the root of the distance.
  const between = angleBetweenLinks(own, edge - step, file.theta4(edge - step));
  expect(Math.min(between, 180 - between)).toBeLessThan(2);
}

/** The only finding of a kind, also one told beside its cause. */
function the(file: SolvedFourBar, code: Finding['code']): Finding {
  const found = foundBy(file.answers, code);
  expect(found, `${code} among ${codes(file).join(', ')}`).toHaveLength(1);
  return found[0]!;
}

function codes(file: SolvedFourBar): readonly string[] {
  return foundByRules(file.answers).map(({ code }) => code);
}

/** A figure of the rod in the load path, SI. */
function partFigure(file: SolvedFourBar, label: string): number | undefined {
  const rod = file.answers.parts.find(({ kind }) => kind === 'rod');
  return rod?.figures.find((each) => each.label === label)?.figure?.value;
}
