import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Value } from '../../src/definition/definition.ts';
import { readDefinition } from '../../src/definition/read.ts';
import { checkProblems } from '../support/checkProblems.ts';
import { LINKED } from '../support/linkage.ts';
import { walkValues } from '../support/walkValues.ts';

const SAMPLE = readFileSync(new URL('../support/sample.throttle.yaml', import.meta.url), 'utf8');

/** Every block and key of the format. */
const EVERYTHING = `format: 1
title: Four-barrel conversion, rev B
let:
  reach: 38 mm ± 0.1 mm
points:
  shaft_centre: [184, 62]
  second_point: [120, 40, 10]
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: 220, angle: -75}, clevis: {radius: 70, angle: 100}}}
  bellcrank:
    pivot: [120, 40]
    axis: {through: second_point}
    reference: [1, 0, 0]
    opens: clockwise
    arms:
      cable: {radius: 40 mm, angle: 160 deg}
      out:   {radius: reach, angle: 62 deg, offset: 0 mm, bolt: [0, 0, 1]}
      tang:  {at: [131, 18]}
    drums:
      quadrant: {radius: 24 mm, wraps: clockwise, groove: 110 deg}
      snail:    {profile: [[0 deg, 18 mm], [40 deg, 24 mm], [80 deg, 33 mm]], wraps: clockwise}
    stops: {closed: 0 deg, open: 82 deg}
    friction: 15 N*mm
    bearing: {diameter: 8 mm, friction: 0.15}
    inertia: 95 kg*mm^2
    width: 12 mm
    outline: [[100, 20], [140, 20], [120, 60]]
    layer: 0
  shaft: {pivot: shaft_centre, axis: [0, 0, 1], arms: {arm: {radius: 30, angle: 200}, spring_arm: {radius: 18, angle: 300}}}
  idler: {pivot: [140, 0]}
  rotor: {pivot: [190, 62]}
pedal: {lever: pedal, opens: clockwise, travel: 22 deg, pad: pad}
cables:
  main: {from: pedal.clevis, leaves: [30, 66], enters: [90, 95], leaves_along: [1, 0.1], enters_along: [1, -0.8], to: bellcrank.cable, slack: 1 mm, bend: 180 deg, friction: 0.12, stiffness: 50 N/mm}
rods:
  drag_link:
    from: bellcrank.out
    to: shaft.arm
    length: 71.5 mm
    adjust: {min: 69 mm, max: 75 mm, pitch: 1 mm}
    lost: 0 mm
    ends: {kind: rod_end, misalignment: 12 deg, pin: 6 mm, friction: 0.1, play: 0.02 mm}
    width: 8 mm
slots:
  link_fork: {pin: bellcrank.tang, fork: idler, drives: fork, angle: 92 deg, offset: 0 mm, reach: [12 mm, 30 mm], play: 0 mm, friction: 0.15}
couplings:
  drive: {from: shaft, to: rotor, ratio: -1, lag: 0 deg, one_way: false}
plates:
  bank_a: {lever: shaft, count: 4, bore: 45 mm, shaft: 8 mm, seat: 6 deg, idle: 1.5 deg, vacuum: 70 kPa}
sensors:
  tps: {lever: shaft, at_closed: 14 deg, reversed: false, range: [0 deg, 110 deg], signal: [0.5 V, 4.5 V], mechanical: [-5 deg, 115 deg], supply: 5 V, bits: 10}
springs:
  first:  {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}
  second: {from: [150, 10], to: shaft.spring_arm, rate: 0.9 N/mm, free_length: 46 mm, initial_tension: 4 N}
  wound:  {lever: shaft, wire: {diameter: 2 mm, mean_coil: 18 mm, active_turns: 5.25, material: music_wire}, preload: 120 N*mm}
  in_sensor: {lever: shaft, rate: 0.2 N*mm/deg, preload: 10 N*mm, counts_as_return: false}
keep_out:
  fuel_rail: {circle: [140, 120], radius: 11 mm, clearance: 3 mm, layer: 0}
  bonnet:    {polygon: [[60, 150], [260, 150], [260, 160], [60, 160]], clearance: 8 mm}
movements: {rock: {moves: [shaft, main.enters, second.from], shift: [0, 6, 0], turn: 2 deg, about: shaft_centre, axis: [0, 0, 1]}}
limits:
  transmission: [40 deg, 25 deg]
require:
  opens fully: at(100%, shaft.opening) >= 80 deg
  soft tip-in: at(25%, bank_a.area) <= 12% * max(bank_a.area)
`;

describe('reading a whole file', () => {
  it('finds nothing wrong with the sample and with every key of the format', () => {
    expect(readDefinition(SAMPLE).problems).toEqual([]);
    const { definition, problems } = readDefinition(EVERYTHING);
    expect(problems).toEqual([]);
    expect(definition?.requirements.every((requirement) => requirement.expression !== undefined)).toBe(true);
    expect(definition?.unread).toBeUndefined();
  });

  it('puts every figure into SI', () => {
    const { definition } = readDefinition(EVERYTHING);
    const values = new Map((definition === undefined ? [] : walkValues(definition)).map((value) => [value.path, value]));
    const si = (path: string): number => values.get(path)?.nominal ?? NaN;
    expect(si('let.reach')).toBe(0.038);
    expect(si('points.shaft_centre.0')).toBe(0.184);
    expect(si('levers.bellcrank.arms.out.radius')).toBe(0.038);
    expect(si('levers.bellcrank.arms.cable.angle')).toBeCloseTo((160 * Math.PI) / 180, 15);
    expect(si('levers.bellcrank.drums.snail.profile.1.1')).toBe(0.024);
    expect(si('levers.bellcrank.friction')).toBeCloseTo(0.015, 15);
    expect(si('levers.bellcrank.inertia')).toBeCloseTo(95e-6, 15);
    expect(si('levers.bellcrank.outline.2.1')).toBe(0.06);
    expect(si('cables.main.stiffness')).toBeCloseTo(50e3, 9);
    expect(si('cables.main.enters_along.1')).toBe(-0.8);
    expect(si('slots.link_fork.reach.1')).toBe(0.03);
    expect(si('couplings.drive.ratio')).toBe(-1);
    expect(si('plates.bank_a.vacuum')).toBe(70_000);
    expect(si('sensors.tps.signal.1')).toBe(4.5);
    expect(si('springs.first.rate')).toBeCloseTo((0.0024 * 180) / Math.PI, 12);
    expect(si('springs.second.rate')).toBeCloseTo(900, 9);
    expect(si('springs.wound.wire.active_turns')).toBe(5.25);
    expect(si('keep_out.bonnet.polygon.2.0')).toBe(0.26);
    expect(si('movements.rock.shift.1')).toBe(0.006);
    expect(si('limits.transmission.1')).toBeCloseTo((25 * Math.PI) / 180, 15);
  });

  it('gives every figure the place of its own text, whatever the line ends', () => {
    for (const text of [EVERYTHING, `\ufeff${EVERYTHING}`, EVERYTHING.replaceAll('\n', '\r\n')]) {
      const { definition } = readDefinition(text);
      const values = definition === undefined ? [] : walkValues(definition);
      expect(values.length).toBeGreaterThan(110);
      const paths = values.map((value) => value.path);
      expect(new Set(paths).size).toBe(paths.length);
      for (const value of values)
        expect(sliceOf(text, value)).toMatch(
          /^(?:reach|-?\d[\d.]*(?: (?:mm|deg|N\*mm|N\/mm|N|V|kPa|kg\*mm\^2|N\*mm\/deg)(?: ± 0\.1 mm)?)?)$/,
        );
    }
  });

  it('gives names, entries and references their places', () => {
    const { definition } = readDefinition(EVERYTHING);
    const rod = definition?.rods[0];
    const slice = (span: { start: number; end: number } | undefined): string => EVERYTHING.slice(span?.start, span?.end);
    expect(slice(rod?.nameSpan)).toBe('drag_link');
    expect(slice(rod?.span)).toMatch(/^drag_link:[^]*width: 8 mm$/);
    expect(slice(rod?.from.span)).toBe('bellcrank.out');
    expect(slice(definition?.levers[1]?.arms[1]?.span)).toBe('out:   {radius: reach, angle: 62 deg, offset: 0 mm, bolt: [0, 0, 1]}');
    expect(slice(definition?.lets[0]?.value.tolerance?.span)).toContain('0.1 mm');
    expect(slice(definition?.requirements[0]?.expressionSpan)).toBe('at(100%, shaft.opening) >= 80 deg');
  });

  it('keeps formulas with what they use', () => {
    const { definition } = readDefinition(`format: 1
let:
  a: 3 mm
  b: 2 * a
points:
  p: [b, "max(a, b) + 1 mm"]
`);
    const place = definition?.points[0]?.place;
    expect(place?.x.nominal).toBeCloseTo(0.006, 15);
    expect(place?.y.nominal).toBeCloseTo(0.007, 15);
    expect(place?.y.formula?.uses).toEqual([0, 1]);
    expect(place?.x.unit).toBe('');
    expect(definition?.lets[1]?.value.formula?.uses).toEqual([0]);
  });

  it('says once that a let is broken, and goes on without what uses it', () => {
    const { definition } = checkProblems(`format: 1
let:
  a: 3 mmm
  #    ^^^ error[unknown-unit]
  b: 2 * a
  c: 2 * d
  #      ^ error[unknown-name]
  d: 4 mm
points:
  p: [b, 3]
  q: [d, 3]
`);
    expect(definition?.points.map((point) => point.name)).toEqual(['q']);
    expect(definition?.lets.map((entry) => entry.name)).toEqual(['d']);
  });

  it('knows the columns of each part in requirements', () => {
    checkProblems(`${LINKED}require:
  a: max(shaft.opening) > 10 deg
  b: min(link.transmission) > 40 deg and max(pedal.effort) < 50 N
  c: max(shaft.openning) > 10 deg
  #            ^^^^^^^^ error[unknown-name]: opening
  d: max(shaff.opening) > 10 deg
  #      ^^^^^ error[unknown-name]: shaft
  e: max(shaft.opening) > 10 mm
  #                       ^^^^^ error[formula-dimension]
  f: shaft.opening
  #  ^^^^^^^^^^^^^ error[formula-dimension]: condition
  g:
# ^ error[wrong-shape]: has no value
`);
  });
});

describe('figures', () => {
  const figure = (text: string): string => `format: 1\npoints:\n  p: [0, ${text}]\n`;
  const codes = (text: string): string[] => readDefinition(figure(text)).problems.map((problem) => problem.code);

  it('are refused where they are no quantity, each at its place', () => {
    checkProblems(`format: 1
let:
  a: 1,5 mm
  #  ^^^ error[bad-quantity]
  b: 012 mm
  #  ^^^ error[bad-quantity]
  c: 0x1F mm
  #  ^^^^ error[bad-quantity]
  d: .inf
  #  ^^^^ error[bad-quantity]
  e: 38 mm +0.2 -0.1 mm
  #        ^^^^^^^^^^^^ error[bad-tolerance]
  f: 38 mm
  #  ^^^^^ error[bad-quantity]: several lines
    more
`);
  });

  it('take the unit of their place', () => {
    expect(codes('3 deg')).toEqual(['wrong-unit']);
    expect(codes('3 in')).toEqual([]);
    expect(codes('3 inhc')).toEqual(['unknown-unit']);
    expect(codes('3 %')).not.toEqual([]);
    const { definition } = readDefinition(figure('1.5 in'));
    expect(definition?.points[0]?.place.y.nominal).toBe(0.0381);
  });

  it('are warned of where their tolerance takes them out of the bounds of their place, and used', () => {
    const { definition } = checkProblems(`format: 1
levers:
  pedal: {pivot: [0 mm ± 1 mm, 0], arms: {a: {radius: 38 mm ± 40 mm, angle: 2 deg ± 4 deg}, b: {radius: 38 mm ± 37.9 mm, angle: 9}}}
  #                                                         ^^^^^^^ warning[bad-tolerance]: \`radius\` comes out at -2 mm at one end of this tolerance, and must be greater than 0
pedal: {lever: pedal, opens: clockwise, travel: 40 deg +1/-40 deg}
#                                                      ^^^^^^^^^^ warning[bad-tolerance]: comes out at 0 deg at one end
`);
    expect(definition?.levers[0]?.arms[0]?.position).toMatchObject({ radius: { nominal: 0.038, tolerance: { plus: 0.04, minus: 0.04 } } });
  });

  it('are warned of the tolerance of a `let` that takes one of them out of its bounds, once, at the `let`', () => {
    const text = (reach: string): string => `format: 1
let:
  reach: 38 mm ${reach}
  shift: 1 mm ± 2 mm
levers:
  pedal: {pivot: [shift, 0], arms: {a: {radius: reach, angle: 9}, b: {radius: reach, angle: 9}, c: {radius: reach - 20 mm, angle: 9}}}
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`;
    const told = (reach: string) =>
      readDefinition(text(reach)).problems.map(({ severity, code, span, message, related = [] }) => [
        `${severity} ${code} ${text(reach).slice(span.start, span.end)}: ${message}`,
        ...related.map((other) => text(reach).slice(other.span.start, other.span.end)),
      ]);
    expect(told('± 17 mm')).toEqual([]);
    expect(told('± 19 mm')).toEqual([
      [
        'warning bad-tolerance ± 19 mm: `radius` comes out at -1 mm at one end of this tolerance, and must be greater than 0',
        'reach - 20 mm',
      ],
    ]);
    expect(told('± 40 mm')).toEqual([
      ['warning bad-tolerance ± 40 mm: `radius` comes out at -2 mm at one end of this tolerance, and must be greater than 0', 'reach'],
    ]);
  });

  it('are read in quotes, and with escapes', () => {
    const { definition, problems } = readDefinition(figure('"38 mm \\xb1 0.1 mm"'));
    expect(problems).toEqual([]);
    expect(definition?.points[0]?.place.y.tolerance?.plus).toBeCloseTo(1e-4, 18);
    expect(readDefinition(figure("'38 mm'")).definition?.points[0]?.place.y.span).toEqual({ start: 28, end: 33 });
  });

  it('with a formula have no tolerance', () => {
    expect(readDefinition('format: 1\nlet:\n  a: 3 mm\n  b: 2 * a ± 0.1 mm\n').problems.map((problem) => problem.code)).toEqual([
      'bad-tolerance',
    ]);
  });
});

function sliceOf(text: string, value: Value): string {
  return text.slice(value.span.start, value.span.end);
}
