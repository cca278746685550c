/** Springs wound from wire: what they bring, what they are stressed to, and each finding with springs that just have it and just have not. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alongDimensions } from '../../src/kinematics/sensitivity.ts';
import { createBuild } from '../../src/kinematics/createBuild.ts';
import { springTorques } from '../../src/forces/springs.ts';
import { createPose } from '../../src/kinematics/pose.ts';
import { advance } from '../../src/kinematics/advance.ts';
import { hoverAt } from '../../src/language/hover.ts';
import { solve, type Answers } from '../../src/solve.ts';
import { solveFor } from '../../src/studies/solveFor.ts';
import { checkFindings, marked } from '../support/checkFindings.ts';

const TRAVEL = 60;
const file = (spring: string, head = ''): string => `format: 1
${head}levers:
  shaft: {pivot: [0, 0], arms: {tail: {radius: 30 mm, angle: 200 deg}}, stops: {open: ${TRAVEL} deg}}
pedal: {lever: shaft, opens: counterclockwise, travel: ${TRAVEL} deg}
springs:
  only: ${spring}
`;
const torsion = (wire: string, preload = 100): string => file(`{lever: shaft, preload: ${preload} N*mm, wire: {${wire}}}`);
const extension = (wire: string, free = 60): string =>
  file(`{from: [-10, 60], to: shaft.tail, free_length: ${free} mm, initial_tension: 3 N, wire: {${wire}}}`);
const compression = (wire: string, free = 80): string =>
  file(`{from: [10, -60], to: shaft.tail, kind: compression, free_length: ${free} mm, wire: {${wire}}}`);

const values = (answers: Answers, column: string, stations: readonly number[]): readonly number[] =>
  (answers.table(stations, [column]).columns[0]?.values ?? []).map((value) => value ?? NaN);
const fact = (answers: Answers, key: string): number | undefined => answers.facts.find((each) => each.key === key)?.figure?.value;
const codes = (text: string): readonly string[] => {
  const answers = solve(text);
  expect(answers.problems).toEqual([]);
  return answers.findings.map(({ code, severity }) => `${severity}[${code}]`);
};
/** Pa·mᵐ figures by hand: 201 kpsi·inᵐ of music wire at 1.6 mm. */
const KPSI = (1000 * 0.45359237 * 9.80665) / 0.0254 ** 2;
const strength = (mm: number): number => 201 * KPSI * (mm / 25.4) ** -0.145;

const SOFT = 'diameter: 1.6 mm, mean_coil: 16 mm, active_turns: 12, material: music_wire';

describe('a torsion spring', () => {
  it('brings preload and the rate of its wire', () => {
    const answers = solve(torsion(SOFT));
    const [rest, half, full] = values(answers, 'only.torque', [0, 0.5, 1]);
    // E of music wire is 29 Mpsi up to 0.063 in; 1.6 mm are 0.06299 in.
    const rate = (29e3 * KPSI * 0.0016 ** 4) / (64 * 0.016 * 12);
    expect(rest).toBeCloseTo(100, 9);
    expect(half! - rest!).toBeCloseTo(rate * (Math.PI / 6) * 1e3, 8);
    expect(full! - rest!).toBeCloseTo(rate * (Math.PI / 3) * 1e3, 8);
    expect(fact(answers, 'rate')).toBeCloseTo(rate, 12);
    expect(fact(answers, 'rate-in-practice')! / rate).toBeCloseTo(64 / (2 * Math.PI) / 10.8, 12);
  });

  it('tells its stress at both ends, and the share of what it bears', () => {
    const answers = solve(torsion(SOFT));
    const [, full] = values(answers, 'only.torque', [0, 1]);
    const inner = (4 * 100 - 10 - 1) / (4 * 10 * 9);
    const stress = (inner * 32 * full! * 1e-3) / (Math.PI * 0.0016 ** 3);
    expect(fact(answers, 'stress-at-full')! * 1e6).toBeCloseTo(stress, -2);
    expect(fact(answers, 'stress-at-rest')! / fact(answers, 'stress-at-full')!).toBeCloseTo(100 / full!, 9);
    expect(fact(answers, 'safety-at-full')).toBeCloseTo((0.78 * strength(1.6)) / stress, 6);
  });

  it('closes plates, and counts as a return spring', () => {
    const text = `${torsion(SOFT)}plates: {bank: {lever: shaft, bore: 40, shaft: 8, seat: 6 deg, idle: 1.5 deg}}\n`;
    const answers = solve(text);
    expect(answers.findings.map(({ code }) => code)).toContain('single-return-spring');
    expect(answers.notChecked.some(({ message }) => message.includes('is not known'))).toBe(false);
    expect(values(answers, 'shaft.closing', [0])[0]).toBeCloseTo(100, 9);
  });

  // The torque T at full is 100 N·mm + k θ: by hand, the preload at which its stress is a given share of the strength.
  const preloadFor = (share: number): number => {
    const inner = (4 * 100 - 10 - 1) / (4 * 10 * 9);
    const most = (share * strength(1.6) * Math.PI * 0.0016 ** 3) / (inner * 32);
    const rate = (29e3 * KPSI * 0.0016 ** 4) / (64 * 0.016 * 12);
    return (most - (rate * Math.PI) / 3) * 1e3;
  };

  it('is overstressed from the limit on and not before', () => {
    expect(codes(torsion(SOFT, preloadFor(0.7801)))).toEqual(['error[spring-overstressed]']);
    expect(codes(torsion(SOFT, preloadFor(0.7799)))).toEqual(['warning[spring-overstressed]']);
    expect(codes(torsion(SOFT, preloadFor(0.5001)))).toEqual(['warning[spring-overstressed]']);
    expect(codes(torsion(SOFT, preloadFor(0.4999)))).toEqual([]);
  });

  it('binds on its arbor where it narrows to it, and is warned of within a tenth', () => {
    const inside = fact(solve(torsion(SOFT)), 'wound-inside')!;
    // Twist from free by hand: all of its torque over its rate.
    const [full] = values(solve(torsion(SOFT)), 'only.torque', [1]);
    const twist = (full! * 1e-3) / ((29e3 * KPSI * 0.0016 ** 4) / (64 * 0.016 * 12));
    expect(inside).toBeCloseTo((0.016 * 12) / (12 + twist / (2 * Math.PI)) - 0.0016, 12);
    const on = (arbor: number): string => torsion(`${SOFT}, arbor: ${(arbor * 1e3).toFixed(6)} mm`);
    expect(codes(on(inside + 1e-6))).toEqual(['error[spring-binds-on-arbor]']);
    expect(codes(on(inside - 1e-6))).toEqual(['warning[spring-binds-on-arbor]']);
    expect(codes(on(0.9 * inside + 1e-6))).toEqual(['warning[spring-binds-on-arbor]']);
    expect(codes(on(0.9 * inside - 1e-6))).toEqual([]);
  });
});

describe('an extension spring', () => {
  const WIRE = 'diameter: 1 mm, mean_coil: 8 mm, active_turns: 14, material: music_wire';

  it('takes a set from the length that the finding gives', () => {
    const long = extension(WIRE, 40);
    const [found] = solve(long).findings.filter(({ code }) => code === 'spring-overextended');
    // The hook by hand: F ((K)_A 16 D / π d³ + 4 / π d²) = 0.75 of the strength, K of C₁ = D / d.
    const factor = (4 * 64 - 8 - 1) / (4 * 8 * 7);
    const force = (0.75 * strength(1)) / ((factor * 16 * 0.008) / (Math.PI * 1e-9) + 4 / (Math.PI * 1e-6));
    const rate = (11.85e3 * KPSI * 1e-12) / (8 * 0.008 ** 3 * 14);
    expect(found?.limit?.value).toBeCloseTo(0.04 + (force - 3) / rate, 9);
    expect(found?.worst?.value).toBeGreaterThan(found!.limit!.value);
    expect(found?.message).toContain('its hook');
    // Hung where it is just as long, from a free length as much longer.
    const free = (found!.worst!.value - (found!.limit!.value - 0.04)) * 1e3;
    const drawn = (by: number): readonly string[] => codes(extension(WIRE, free + by)).filter((each) => each.includes('overextended'));
    expect([drawn(-0.001), drawn(0.001)]).toEqual([['error[spring-overextended]'], []]);
    expect(codes(long).filter((each) => each.includes('overstressed'))).toEqual([]);
  });

  it('is held by a sharp bend into its hook, where that is given', () => {
    const sharp = solve(extension(`${WIRE}, hook_bend: 0.8 mm`)).facts.find(({ key }) => key === 'stress-at-full');
    const wide = solve(extension(`${WIRE}, hook_bend: 4 mm`)).facts.find(({ key }) => key === 'stress-at-full');
    expect([sharp?.label, wide?.label]).toEqual([
      'shear stress of its hook at full pedal, in MPa',
      'bending stress of its hook at full pedal, in MPa',
    ]);
  });
});

describe('a compression spring', () => {
  const WIRE = 'diameter: 1 mm, mean_coil: 12 mm, active_turns: 20, material: music_wire';

  it('binds where its turns meet, and is warned of before', () => {
    const length = Math.min(...Array.from({ length: 2001 }, (_, i) => lengthAt((i / 2000) * TRAVEL)));
    const clear = (length - 0.15 * (80 - length)) / 1;
    const turns = (count: number): string => compression(`${WIRE}, total_turns: ${count.toFixed(6)}`);
    const found = (text: string): readonly string[] => codes(text).filter((each) => each.includes('coil-bind'));
    expect(found(turns(length + 0.001))).toEqual(['error[spring-coil-bind]']);
    expect(found(turns(length - 0.001))).toEqual(['warning[spring-coil-bind]']);
    expect(found(turns(clear + 0.001))).toEqual(['warning[spring-coil-bind]']);
    expect(found(turns(clear - 0.001))).toEqual([]);
  });

  /** mm, by hand. */
  const lengthAt = (opening: number): number => {
    const angle = ((200 + opening) * Math.PI) / 180;
    return Math.hypot(30 * Math.cos(angle) - 10, 30 * Math.sin(angle) + 60);
  };
});

describe('what is left open', () => {
  const left = (text: string): readonly string[] =>
    solve(text).notChecked.flatMap(({ part, message }) => (part === 'only' ? [message] : []));

  it('is told of each spring', () => {
    expect(left(torsion(SOFT))).toEqual(['Not checked: whether its coil binds on what stands in it, for want of `arbor`']);
    expect(left(torsion(`${SOFT}, arbor: 10 mm`))).toEqual([]);
    expect(left(extension('diameter: 1, mean_coil: 8, active_turns: 14, material: music_wire'))).toEqual([
      'Not checked: the twist where its hooks leave the coil, for want of `hook_bend`',
    ]);
    expect(left(compression('diameter: 1, mean_coil: 12, active_turns: 20, material: music_wire'))).toEqual([
      'Not checked: whether its turns meet, for want of `total_turns`',
      'Not checked: whether it buckles',
    ]);
    expect(left(file('{lever: shaft, rate: 2}'))).toEqual([
      'Not checked: whether it is stressed too much, since it is given by its `rate` and not by its `wire`',
    ]);
    expect(left(file('{lever: shaft, strip: {width: 6, thickness: 0.8, length: 600, material: carbon_steel}}')).join()).toContain(
      'its strip',
    );
  });

  it('is the strength of wire that nothing is known of', () => {
    const thick = torsion('diameter: 9 mm, mean_coil: 60 mm, active_turns: 12, material: music_wire, arbor: 20 mm');
    expect(left(thick)).toEqual(['Not checked: its stress, since the strength of music_wire (ASTM A228) of 9 mm is not known']);
    expect(solve(thick).facts.find(({ key }) => key === 'safety-at-full')?.why).toBe('the strength of its wire is not known');
    const drawn = torsion(SOFT.replace('music_wire', 'oil_tempered'));
    expect(left(drawn).join()).toContain('a million strokes');
  });
});

describe('dimensions of the wire', () => {
  const text = file(
    '{lever: shaft, preload: 100 N*mm, wire: {diameter: gauge, mean_coil: 10 * gauge, active_turns: 12, material: music_wire}}',
    'let: {gauge: 1.5 mm ± 0.02 mm}\n',
  );

  it('may follow from formulas, and a build with others has another rate', () => {
    const { mechanism } = solve(text).study!.travel;
    const [spring] = mechanism.attached.springs;
    const torqueAt = (gauge: number): number => {
      const build = createBuild(
        mechanism,
        mechanism.nominal.map((value, i) => (mechanism.dimensions[i]!.path === 'let.gauge' ? gauge : value)),
      );
      const pose = createPose(mechanism);
      advance(build, 1, pose);
      return springTorques(build, pose, spring!)[0]!.closing;
    };
    const [thin, thick] = [torqueAt(1.48e-3), torqueAt(1.52e-3)].map((torque) => torque - 0.1);
    // d⁴ / D: the third power.
    expect(thick! / thin!).toBeCloseTo((1.52 / 1.48) ** 3, 9);
    const direction = Float64Array.from(mechanism.dimensions, ({ path }) => (path === 'let.gauge' ? 1 : 0));
    const { parameterRates } = alongDimensions(createBuild(mechanism), direction);
    expect([parameterRates[spring!.wire!.diameter], parameterRates[spring!.wire!.meanCoil]]).toEqual([1, 10]);
  });

  it('can be solved for', () => {
    const answers = solve(torsion(SOFT));
    const { mechanism } = answers.study!.travel;
    const solved = solveFor(mechanism, {
      unknown: 'springs.only.wire.active_turns',
      outcome: { kind: 'at', column: 'only.torque', travel: 1 },
      target: 0.3,
      from: 2,
      to: 30,
    });
    const turns = solved.kind === 'solved' ? solved.roots.map(({ value }) => value) : [];
    expect(turns).toHaveLength(1);
    const written = torsion(SOFT.replace('active_turns: 12', `active_turns: ${turns[0]}`));
    expect(values(solve(written), 'only.torque', [1])[0]).toBeCloseTo(300, 6);
  });
});

it('is told on hover', () => {
  const text = torsion(SOFT);
  const said = hoverAt(solve(text), text.indexOf('only:') + 1)?.markdown ?? '';
  expect(said).toMatch(/Rate [\d.]+ N·mm\/deg from its wire/);
  expect(said).toMatch(/Stressed to \d+ MPa at rest, \d+ MPa at full pedal/);
  expect(said).toMatch(/Takes a set at [\d.]+ times its greatest stress/);
});

it('is found at the wire, with the range in which it holds', () => {
  const text = torsion(SOFT, 550);
  const { only } = checkFindings(marked(text, 'music_wire', 'error[spring-overstressed]: over the 78 %'));
  const [range] = only('spring-overstressed').ranges ?? [];
  const [at] = values(solve(text), 'only.torque', [range!.from]);
  const inner = (4 * 100 - 10 - 1) / (4 * 10 * 9);
  expect((inner * 32 * at! * 1e-3) / (Math.PI * 0.0016 ** 3)).toBeCloseTo(0.78 * strength(1.6), -3);
});

it('never throws, and never gives a figure that is none, whatever the wire', () => {
  const figure = fc.oneof(fc.double({ min: -5, max: 400, noNaN: true }), fc.constantFrom(0, 1e-9, 1e9));
  fc.assert(
    fc.property(figure, figure, figure, fc.constantFrom('torsion', 'extension', 'compression'), (d, coil, turns, kind) => {
      const wire = `diameter: ${d.toFixed(9)}, mean_coil: ${coil.toFixed(9)}, active_turns: ${turns.toFixed(9)}, material: hard_drawn`;
      const answers = solve(kind === 'torsion' ? torsion(wire) : kind === 'extension' ? extension(wire) : compression(wire));
      for (const { message } of [...answers.findings, ...answers.notChecked]) expect(message).not.toMatch(/NaN|Infinity|undefined/);
      for (const { figure: shown } of answers.facts) expect(shown === undefined || Number.isFinite(shown.value)).toBe(true);
    }),
    { numRuns: 60 },
  );
});
