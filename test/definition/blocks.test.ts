import { describe, expect, it } from 'vitest';
import { checkProblems } from '../support/checkProblems.ts';
import { LEVERS, LINKED } from '../support/linkage.ts';

const lever = (keys: string): string => `format: 1
levers:
  pedal:
    pivot: [0, 0]
${keys
  .split('\n')
  .map((line) => (line === '' ? line : `    ${line}`))
  .join('\n')}
pedal: {lever: pedal, opens: clockwise, travel: 20}
`;

describe('levers', () => {
  it('need a pivot', () => {
    checkProblems(`format: 1
levers:
  pedal: {arms: {}}
# ^^^^^ error[missing-key]: no \`pivot\`
pedal: {lever: pedal, opens: clockwise, travel: 20}
`);
  });

  it('have arms by radius and angle, or by a place, not both', () => {
    checkProblems(
      lever(`arms:
  a: {radius: 3, angle: 4, offset: 1}
  b: {at: [3, 4], bolt: [0, 1]}
  c: {at: [3, 4], radius: 3}
  #               ^^^^^^ error[wrong-shape]: \`radius\` does not go with \`at\`
  d: {radius: 3}
# ^ error[missing-key]: no \`angle\`
  e: {bolt: [0, 1]}
# ^ error[missing-key]: does not say where its pin is`),
    );
  });

  it('have positive radii', () => {
    checkProblems(
      lever(`arms:
  a: {radius: 0 mm, angle: 4}
  #           ^^^^ error[out-of-range]: \`radius\` must be greater than 0, not 0 mm
  b: {radius: -3 mm, angle: 4}
  #           ^^^^^ error[out-of-range]: not -3 mm`),
    );
  });

  it('have directions that point somewhere', () => {
    checkProblems(
      lever(`axis: [0, 0, 0]
#     ^^^^^^^^^ error[out-of-range]: all zeros`),
    );
  });

  it('have an axis through two places', () => {
    checkProblems(
      lever(`axis: {through: [0, 0, 0]}
#     ^^^^^^^^^^^^^^^^^^^^ error[out-of-range]: two places that are the same`),
    );
    checkProblems(lever('axis: {through: [0, 3, 0]}'));
    checkProblems(
      lever(`axis: {thru: [0, 3, 0]}
#^^^ error[missing-key]: no \`through\`
#      ^^^^ error[unknown-key]: Known here: \`through\``),
    );
  });

  it('have drums, round or by a profile that rises', () => {
    checkProblems(
      lever(`drums:
  a: {radius: 3, wraps: clockwise, groove: 90}
  b: {profile: [[0, 3], [10, 4]], wraps: counterclockwise}
  c: {radius: 3}
# ^ error[missing-key]: no \`wraps\`
  d: {wraps: clockwise}
# ^ error[missing-key]: does not say its radius
  e: {profile: [[0, 3]], wraps: clockwise}
  #            ^^^^^^^^ error[wrong-shape]: needs 2
  f: {profile: [[10, 3], [10, 4]], wraps: clockwise}
  #                       ^^ error[out-of-range]: must rise
  g: {profile: [[0, 3], [10, 0]], wraps: clockwise}
  #                          ^ error[out-of-range]: greater than 0`),
    );
  });

  it('turn one of two ways', () => {
    const { problems } = checkProblems(
      lever(`opens: ccw
#      ^^^ error[wrong-value]: Did you mean \`counterclockwise\`?`),
    );
    expect(problems[0]?.replacements?.[0]?.text).toBe('counterclockwise');
    checkProblems(
      lever(`opens: sideways
#      ^^^^^^^^ error[wrong-value]: Write \`counterclockwise\` or \`clockwise\``),
    );
  });

  it('have the open stop above the closed one', () => {
    checkProblems(
      lever(`stops: {closed: 5, open: 5}
#                        ^ error[out-of-range]: above the closed stop`),
    );
  });

  it('stand without what does not move them, and say so', () => {
    const { definition } = checkProblems(
      lever(`friction: -3
#         ^^ error[out-of-range]: 0 or more
width: [1]
#      ^^^ error[wrong-shape]: must be one figure, not a list
layer: 1.5
#      ^^^ error[out-of-range]: whole number`),
    );
    expect(definition?.levers).toHaveLength(1);
    expect(definition?.unread?.map((entry) => entry.path)).toEqual(['levers.pedal.friction', 'levers.pedal.width', 'levers.pedal.layer']);
  });

  it('have places of two or three figures or a known point', () => {
    checkProblems(`format: 1
points:
  centre: [1, 2, 3]
  one: [1]
  #    ^^^ error[wrong-shape]: two or three figures, not 1
  word: here
  #     ^^^^ error[wrong-shape]: must be a place
levers:
  pedal: {pivot: center}
  #              ^^^^^^ error[unknown-name]: Did you mean \`centre\`?
  b: {pivot: nowhere}
  #          ^^^^^^^ error[unknown-name]: There is no point
pedal: {lever: pedal, opens: clockwise, travel: 20}
`);
  });

  it('take the figures of a named point as they are', () => {
    const { definition } = checkProblems(`format: 1
points: {centre: [1, 2]}
levers:
  pedal: {pivot: centre}
pedal: {lever: pedal, opens: clockwise, travel: 20}
`);
    expect(definition?.levers[0]?.pivot.x).toBe(definition?.points[0]?.place.x);
    expect(definition?.levers[0]?.pivot.point?.name).toBe('centre');
  });
});

describe('the pedal', () => {
  it('is missed where there are levers', () => {
    checkProblems(`format: 1
levers: {a: {pivot: [0, 0]}}
#^^^^^ error[missing-key]: no \`pedal\`
`);
  });

  it('is a lever or a cable', () => {
    const base = LEVERS.replace(/pedal: \{lever.*\n/, '');
    checkProblems(`${base}pedal: {lever: pedal, cable: main, travel: 3}
#                     ^^^^^ error[wrong-shape]: does not go with \`lever\`
#                            ^^^^ error[unknown-name]: There is no cable
`);
    checkProblems(`${base}pedal: {lever: pedal, travel: 3}
#^^^^ error[missing-key]: no \`opens\`
`);
    checkProblems(`${base}pedal: {}
#^^^^ error[missing-key]: Write \`lever\`, \`opens\` and \`travel\`, or \`cable\` and \`pull\`
`);
    checkProblems(`${base}pedal: {lever: pedal, opens: clockwise, travel: 0}
#                                               ^ error[out-of-range]: greater than 0
`);
    checkProblems(`${base}pedal: {lever: pedl, opens: clockwise, travel: 3}
#              ^^^^ error[unknown-name]: Did you mean \`pedal\`?
`);
  });

  it('has its pad on an arm of its lever', () => {
    const base = LINKED.replace('travel: 27', 'travel: 27, pad: PAD');
    checkProblems(base.replace('PAD', 'pad'));
    checkProblems(base.replace('PAD', 'pedal.pad'));
    checkProblems(
      base.replace(
        /pad: PAD.*\n/,
        'pad: clevs}\n#                                                               ^^^^^ error[unknown-name]: Did you mean `clevis`?\n',
      ),
    );
  });

  it('as a cable has no driving end', () => {
    const base = LEVERS.replace(/pedal: \{lever.*\n/, 'pedal: {cable: main, pull: 42 mm, lever_ratio: 4.5}\n').replace(
      / {2}pedal: .*\n/,
      '',
    );
    checkProblems(`${base}cables:
  main: {enters: [1, 2], to: shaft.arm}
`);
    checkProblems(`${base}cables:
  main: {leaves: [3, 4], enters: [1, 2], to: shaft.arm}
  #      ^^^^^^ error[wrong-shape]: has no \`leaves\`
`);
  });
});

describe('cables', () => {
  const cable = (keys: string): string => `${LEVERS}cables:\n  main: ${keys}\n`;

  it('need both ends and both housing ends', () => {
    checkProblems(
      cable(`{enters: [1, 2], to: shaft.arm}
# ^^^^ error[missing-key]: no \`from\` and \`leaves\``),
    );
    checkProblems(
      cable(`{from: pedal.clevis, leaves: [1, 2], to: shaft.quadrant}
# ^^^^ error[missing-key]: no \`enters\``),
    );
  });

  it('end at pins or drums', () => {
    const { definition } = checkProblems(cable('{from: pedal.clevis, leaves: [1, 2], enters: [3, 4], to: shaft.quadrant}'));
    expect(definition?.cables[0]?.from?.kind).toBe('arm');
    expect(definition?.cables[0]?.to.kind).toBe('drum');
  });

  it('have slack, bend and friction of 0 or more, and stiffness above', () => {
    checkProblems(
      cable(`{from: pedal.clevis, leaves: [1, 2], enters: [3, 4], to: shaft.quadrant, slack: -1, bend: -1, friction: -1, stiffness: 0}
  #                                                                                     ^^ error[out-of-range]
  #                                                                                               ^^ error[out-of-range]
  #                                                                                                             ^^ error[out-of-range]
  #                                                                                                                            ^ error[out-of-range]
  shaft: {from: pedal.clevis, leaves: [1, 2], enters: [3, 4], to: shaft.arm}
# ^^^^^ error[duplicate-name]: is the name of a lever already`),
    );
  });
});

describe('rods', () => {
  const rods = (lines: string): string => `${LEVERS}rods:\n${lines}\n`;

  it('join pins of two levers', () => {
    checkProblems(
      rods(`  a: {from: pedal.clevis, to: shaft.quadrant}
  #                                 ^^^^^^^^ error[wrong-value]: is a drum; a pin is needed
  b: {from: pedal.clevis, to: shaft}
  #                           ^^^^^ error[wrong-value]: Write \`shaft.arm\` or \`shaft.tang\`
  c: {from: pedal.clevis, to: shat.arm}
  #                           ^^^^ error[unknown-name]: Did you mean \`shaft\`?
  d: {from: pedal.clevis, to: shaft.arn}
  #                                 ^^^ error[unknown-name]: Did you mean \`arm\`?
  e: {from: shaft.tang, to: shaft.arm}
  #                         ^^^^^^^^^ error[wrong-value]: both ends on \`shaft\`
  k: {from: pedal.clevis, to: shaft.}
  #                           ^^^^^^ error[wrong-value]: Write \`arm\` or \`tang\` after the dot
  f: {from: pedal.clevis, to: [3, 4]}
  #                           ^^^^^^ error[wrong-shape]: \`lever.part\`
  gg: {from: pedal.clevis}
# ^^ error[missing-key]: no \`to\`
  h: {from: link.a, to: shaft.arm}
  #         ^^^^ error[unknown-name]: There is no lever \`link\`
  i: {from: a.a, to: shaft.arm}
  #         ^ error[unknown-name]: \`a\` is a rod; a lever is needed here`),
    );
  });

  it('have sound lengths and ends', () => {
    checkProblems(
      rods(`  a: {from: pedal.clevis, to: shaft.arm, adjust: {min: 75 mm, max: 69 mm}, lost: -1, ends: {kind: rod_ends}, width: 0}
  #                                                    ^^^^^ error[out-of-range]: greater than \`max\`
  #                                                                              ^^ error[out-of-range]
  #                                                                                               ^^^^^^^^ error[wrong-value]: Did you mean \`rod_end\`?
  #                                                                                                                 ^ error[out-of-range]`),
    );
    checkProblems(
      rods(
        '  a: {from: pedal.clevis, to: shaft.arm, length: 71.5 mm, adjust: {min: 69 mm, max: 75 mm, pitch: 1 mm}, ends: {kind: clevis, play: 0.02}}',
      ),
    );
    checkProblems(
      rods(`  a: {from: pedal.clevis, to: shaft.arm, ends: {misalignment: 3}}
  #                                      ^^^^ error[missing-key]: no \`kind\``),
    );
  });

  it('have a name', () => {
    checkProblems(
      rods(`  Drag-link: {from: pedal.clevis, to: shaft.arm}
# ^^^^^^^^^ error[bad-name]: for example \`drag_link\``),
    );
  });
});

describe('slots', () => {
  const slots = (lines: string): string => `${LEVERS}slots:\n${lines}\n`;

  it('join a pin and the fork of another lever', () => {
    checkProblems(slots('  s: {pin: pedal.clevis, fork: shaft, angle: 92, reach: [12, 30]}'));
    checkProblems(
      slots(`  s: {pin: shaft.tang, fork: shaft, angle: 92}
  #                          ^^^^^ error[wrong-value]: part of the forked lever itself
  t: {pin: pedal.clevis, fork: shaft.arm, angle: 92}
  #                            ^^^^^^^^^ error[unknown-name]: There is no lever
  u: {pin: pedal.clevis, fork: shaft, angle: 92, reach: [30, 12]}
  #                                                     ^^^^^^^^ error[out-of-range]: smaller value first`),
    );
  });

  it('are driven by the pin, unless it is the driven one', () => {
    checkProblems(
      slots(`  s: {pin: shaft.tang, fork: pedal, drives: both, angle: 92}
  #                                         ^^^^ error[wrong-value]: \`fork\` or \`pin\``),
    );
    checkProblems(slots('  s: {pin: shaft.tang, fork: pedal, drives: pin, angle: 92}'));
  });
});

describe('couplings', () => {
  it('join two levers in a ratio that is not 0', () => {
    checkProblems(`${LEVERS}couplings:
  a: {from: shaft, to: shaft}
  #                    ^^^^^ error[wrong-value]: to itself
  b: {from: pedal, to: shaft, ratio: 0}
  #                                  ^ error[out-of-range]: other than 0
  c: {from: pedal, to: shaft, one_way: yes}
  #                                    ^^^ error[wrong-value]: Write \`true\`
`);
  });
});

describe('plates and sensors', () => {
  it('sit on levers', () => {
    checkProblems(`${LINKED}plates:
  a: {lever: shaft, count: 4, bore: 45 mm, shaft: 8 mm, seat: 6, idle: 1.5, vacuum: 70}
  b: {lever: shaft, count: 1.5, bore: 45 mm}
  #                        ^^^ error[out-of-range]: whole number
  c: {lever: shaft, count: 0, bore: 45 mm}
  #                        ^ error[out-of-range]: 1 or more
  d: {lever: shaft, bore: 8 mm, shaft: 8 mm}
  #                                    ^^^^ error[out-of-range]: thinner than the bore
  e: {lever: shaft}
# ^ error[missing-key]: no \`bore\`
  f: {lever: shaft, bore: 45 mm, seat: 90 deg}
  #                                    ^^^^^^ error[out-of-range]: less than 90 deg
sensors:
  tps: {lever: shaft, at_closed: 14, range: [0, 110], signal: [4.5, 0.5], supply: 5, bits: 10}
  t1: {lever: shaft, at_closed: 14, range: [110, 0], signal: [0.5, 4.5]}
  #                                        ^^^^^^^^ error[out-of-range]: smaller value first
  t2: {lever: shaft, at_closed: 14, range: [0, 110], signal: [2, 2]}
  #                                                          ^^^^^^ error[out-of-range]: same value twice
  t3: {lever: shaft, at_closed: 14, range: [0, 110], signal: [0.5, 4.5], bits: 33}
  #                                                                            ^^ error[out-of-range]: 32 or less
  t4: {lever: shaft, at_closed: 14, range: [0, 110, 3], signal: [0.5, 4.5]}
  #                                        ^^^^^^^^^^^ error[wrong-shape]: two values, not 3
`);
  });
});

describe('springs', () => {
  const springs = (lines: string): string => `${LINKED}springs:\n${lines}\n`;

  it('turn about a lever or work between two places', () => {
    const { definition } = checkProblems(
      springs(`  a: {lever: shaft, rate: 2.4 N*mm/deg, preload: 180 N*mm}
  b: {from: [150, 10], to: shaft.arm, rate: 0.9 N/mm, free_length: 46 mm, initial_tension: 4 N}
  c: {from: pedal.pad, to: shaft.arm, kind: compression, rate: 0.9 N/mm, free_length: 46 mm}
  d: {lever: shaft, wire: {diameter: 2 mm, mean_coil: 18 mm, active_turns: 5.25, material: music_wire}}
  e: {lever: shaft, rate: 0.2, counts_as_return: false}`),
    );
    expect(definition?.springs.map((spring) => spring.kind)).toEqual(['torsion', 'extension', 'compression', 'torsion', 'torsion']);
    expect(definition?.springs.map((spring) => spring.countsAsReturn)).toEqual([true, true, true, true, false]);
  });

  it('are one or the other', () => {
    checkProblems(
      springs(`  a: {lever: shaft, rate: 2.4, free_length: 46 mm}
  #                            ^^^^^^^^^^^ error[wrong-shape]: does not go with \`lever\`
  b: {rate: 2.4}
# ^ error[missing-key]: does not say on what it works
  c: {lever: shaft}
# ^ error[missing-key]: does not say its rate
  d: {lever: shaft, rate: 2, wire: {diameter: 2, mean_coil: 18, active_turns: 5, material: music_wire}}
  #                          ^^^^ error[wrong-shape]: does not go with \`rate\`
  e: {from: [1, 2], rate: 2}
# ^ error[missing-key]: no \`to\`
  f: {from: [1, 2], to: shaft.arm, rate: 2, kind: compression, initial_tension: 3}
  #                                                            ^^^^^^^^^^^^^^^ error[wrong-shape]: no initial tension
  gg: {lever: shaft, wire: {diameter: 2, mean_coil: 2, active_turns: 5, material: music_wire}}
  #                                                 ^ error[out-of-range]: greater than the wire
  h: {from: shaft.tang, to: shaft.arm, rate: 3}
  #                         ^^^^^^^^^ error[wrong-value]: both ends on
  i: {lever: shaft, rate: 2 N/mm}
  #                         ^^^^ error[wrong-unit]
  j: spring
  #  ^^^^^^ error[wrong-shape]: must be a block of keys`),
    );
  });
});

describe('surroundings', () => {
  it('are circles or polygons', () => {
    checkProblems(`${LINKED}keep_out:
  a: {circle: [140, 120], radius: 11 mm, clearance: 3 mm, layer: 0}
  b: {polygon: [[60, 150], [260, 150], [260, 160]]}
  c: {polygon: [[60, 150], [260, 150]]}
  #            ^^^^^^^^^^^^^^^^^^^^^^^ error[wrong-shape]: needs 3
  d: {circle: [140, 120]}
# ^ error[missing-key]: no \`radius\`
  e: {radius: 3, polygon: [[60, 150], [260, 150], [260, 160]]}
  #              ^^^^^^^ error[wrong-shape]: does not go with \`radius\`
`);
  });

  it('move with the engine', () => {
    const { definition } = checkProblems(`${LEVERS}cables:
  main: {from: pedal.clevis, leaves: [1, 2], enters: [3, 4], to: shaft.quadrant}
springs:
  second: {from: [1, 2], to: shaft.arm, rate: 3}
movements:
  rock: {moves: [shaft, main.enters, second.from], shift: [0, 6, 0], turn: 2 deg, about: [1, 2], axis: [0, 0, 1]}
  a: {moves: [shafd], shift: [0, 1]}
  #           ^^^^^ error[unknown-name]: Did you mean \`shaft\`?
  b: {moves: [main.to], shift: [0, 1]}
  #           ^^^^^^^ error[wrong-value]: cannot be moved
  c: {moves: [mian.leaves], shift: [0, 1]}
  #           ^^^^^^^^^^^ error[unknown-name]: Did you mean \`main.leaves\`?
  d: {moves: [shaft]}
# ^ error[missing-key]: moves nothing
  e: {moves: [shaft], turn: 3}
  #                   ^^^^ error[missing-key]: no \`about\`
  f: {moves: [], shift: [0, 1]}
  #          ^^ error[wrong-shape]: needs 1
`);
    expect(definition?.movements.map((movement) => movement.moves.map((moved) => moved.kind))).toEqual([
      ['lever', 'cable-end', 'spring-anchor'],
    ]);
  });

  it('have limits as one figure or as warning and error', () => {
    const { definition } = checkProblems(`${LINKED}limits:
  transmission: [40 deg, 25 deg]
  lead: 5 deg
  drive: [10 deg, 20 deg]
  #               ^^^^^^ error[out-of-range]: below its warning
  step: [0.5 deg, 0.1 deg]
  #               ^^^^^^^ error[out-of-range]: above its warning
  closing_margin: [2, 1]
  transmision: 3
# ^^^^^^^^^^^ error[unknown-key]: Did you mean \`transmission\`?
`);
    expect(definition?.limits.map((limit) => [limit.key, limit.error === undefined])).toEqual([
      ['transmission', false],
      ['lead', true],
      ['closing_margin', false],
    ]);
  });

  it('have as many plates as may be on one shaft, and ranges with two ends', () => {
    checkProblems(`${LINKED}plates:
  whole: {lever: shaft, count: 100, bore: 45 mm}
  many: {lever: shaft, count: 1e9, bore: 45 mm}
  #                           ^^^ error[out-of-range]: must be 100 or less
sensors:
  tps: {lever: shaft, at_closed: 14 deg, range: [0, 0], signal: [0.5 V, 4.5 V]}
  #                                             ^^^^^^ error[out-of-range]: has the same value twice | Write two different values, the smaller first
  back: {lever: shaft, at_closed: 14 deg, range: [9, 0], signal: [0.5 V, 4.5 V]}
  #                                              ^^^^^^ error[out-of-range]: from the greater to the smaller
`);
  });
});
