/**
 * Drums whose radius changes, as shapes: against a round drum of the same radius, and by what the format says of their radius. The inner
 * passes the axis at the effective radius at every opening, so the shape reaches exactly so far square to it, and no farther.
 */
import { describe, expect, it } from 'vitest';
import { clearanceOf } from '../../src/clearance/clearance.ts';
import { solve } from '../../src/solve.ts';

const file = (drum: string, more = ''): string => `format: 1
levers:
  shaft: {pivot: [100, 0], drums: {wheel: {${drum}, wraps: counterclockwise}}}
pedal: {cable: main, pull: 28 mm}
cables: {main: {enters: [20, 60], to: shaft.wheel, slack: 1 mm}}
${more}`;

const DEGREE = Math.PI / 180;
const SNAIL = 'profile: [[0 deg, 18 mm], [40 deg, 24 mm], [80 deg, 33 mm]]';
const ROUND = 'profile: [[0 deg, 22 mm], [40 deg, 22 mm], [80 deg, 22 mm]]';

type Place = readonly [number, number];

/** Corners of the drum as it stands at a pedal travel, mm, and what they are rounded by. */
function shapeAt(text: string, travel: number): { readonly corners: readonly Place[]; readonly radius: number } {
  const { study } = solve(text);
  const { poseAt, mechanism } = study!.travel;
  const lever = mechanism.leverIndex.get('shaft')!;
  const { cosine, sine } = poseAt(travel);
  const [c, s] = [cosine[lever]!, sine[lever]!];
  const { pieces } = clearanceOf(study!.travel).bodies.levers.find(({ name }) => name === 'shaft')!;
  const corners = pieces.flatMap((piece) =>
    piece.corners.map(({ base, perp, cross }): Place => [base[0] + c * perp[0] + s * cross[0], base[1] + c * perp[1] + s * cross[1]]),
  );
  return { corners, radius: Math.max(...pieces.map(({ radius }) => radius)) };
}

describe('a profiled drum', () => {
  it('reaches as far as its effective radius, square to the inner, wherever it stands', () => {
    const { columns, study } = solve(file(SNAIL));
    const opening = columns.find(({ name }) => name === 'shaft.opening')!;
    for (const travel of [0.1, 0.3, 0.5, 0.7, 0.9]) {
      const { corners, radius } = shapeAt(file(SNAIL), travel);
      const at = opening.read(study!.travel.build, study!.travel.poseAt(travel)) / DEGREE;
      // The tangent from the housing end to the shape on the side on which a pull turns it counter-clockwise, by all of its corners.
      const housing: Place = [20, 60];
      const distances = corners.map(([x, y]) => {
        const [ux, uy] = [housing[0] - x, housing[1] - y];
        // How far the line from this corner to the housing end passes from the axis, positive where a pull turns counter-clockwise.
        return ((x - 100) * uy - y * ux) / Math.hypot(ux, uy);
      });
      const reach = Math.max(...distances);
      expect(radius).toBeLessThan(0.01);
      // SciPy's PCHIP through the three points, by its own formulas: weighted harmonic mean inside, three-point slopes at the ends.
      expect(Math.abs(reach - effective(at))).toBeLessThan(0.012);
      expect(reach + radius + 1e-9).toBeGreaterThan(effective(at) - 1e-6);
    }
  });

  it('of one radius stands as far from a post as a round one, on its rim', () => {
    const post = 'keep_out: {post: {circle: [100, 40], radius: 6 mm}}\n';
    const gapOf = (drum: string): number =>
      solve(file(drum, post)).facts.find(({ key, part }) => key === 'keep-out-gap' && part === 'post')?.figure?.value ?? NaN;
    const [round, profiled] = [gapOf('radius: 22 mm'), gapOf(ROUND)];
    expect(round).toBeCloseTo(0.012, 9);
    // It is a polygon rounded by what its rim bulges: less than a hundredth of a millimetre nearer, and never farther.
    expect(profiled).toBeLessThanOrEqual(round);
    expect(profiled).toBeGreaterThan(round - 1e-5);
    const all = solve(file(ROUND, post)).notChecked.map(({ message }) => message);
    expect(all.filter((message) => message.includes('not round'))).toEqual([]);
  });

  it('is caught where it touches, and not where it passes by a tenth of a millimetre', () => {
    const at = (gap: number): string => {
      // Beyond the point of the rim that is farthest from the axis when the shaft stands open, along that way.
      const { corners } = shapeAt(file(SNAIL), 1);
      const far = corners.reduce((best, each) => (Math.hypot(each[0] - 100, each[1]) > Math.hypot(best[0] - 100, best[1]) ? each : best));
      const size = Math.hypot(far[0] - 100, far[1]);
      const out = (by: number): string => `[${100 + (far[0] - 100) * (1 + by / size)}, ${far[1] * (1 + by / size)}]`;
      return `keep_out: {post: {circle: ${out(gap + 5)}, radius: 5 mm}}\n`;
    };
    const codes = (gap: number): readonly string[] => solve(file(SNAIL, at(gap))).findings.map(({ code }) => code);
    expect(codes(-0.05)).toContain('touches-keep-out');
    expect(codes(0.1)).not.toContain('touches-keep-out');
  });

  it('on which no cable lies is not checked', () => {
    const loose = file(SNAIL, 'keep_out: {post: {circle: [100, 60], radius: 6 mm}}\n')
      .replace('drums: {wheel', 'drums: {round: {radius: 20 mm, wraps: counterclockwise}, wheel')
      .replace('to: shaft.wheel', 'to: shaft.round');
    expect(solve(loose).notChecked.map(({ message }) => message)).toContain(
      'Not checked: whether it clears the keep-outs with its drum shaft.wheel, which is not round, and of which no cable and profile tell the shape',
    );
  });
});

/** mm at an opening in degrees; the reference values of SciPy's PchipInterpolator need nothing but this. */
function effective(at: number): number {
  const [d0, d1] = [6 / 40, 9 / 40];
  const mean = (2 * d0 * d1) / (d0 + d1);
  const end = (d: number, other: number): number => Math.min(Math.max((3 * d - other) / 2, 0), 3 * d);
  const [x0, y0, y1, m0, m1] = at < 40 ? [0, 18, 24, end(d0, d1), mean] : [40, 24, 33, mean, end(d1, d0)];
  const t = (at - x0) / 40;
  const [h00, h10, h01, h11] = [2 * t ** 3 - 3 * t ** 2 + 1, t ** 3 - 2 * t ** 2 + t, -2 * t ** 3 + 3 * t ** 2, t ** 3 - t ** 2];
  return h00 * y0 + h10 * 40 * m0 + h01 * y1 + h11 * 40 * m1;
}
