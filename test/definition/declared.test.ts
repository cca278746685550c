import { describe, expect, it } from 'vitest';
import { checkProblems } from '../support/checkProblems.ts';

describe('names', () => {
  it('are used once, are no words of formulas, and only a lever is called pedal', () => {
    checkProblems(`format: 1
let:
  reach: 3 mm
  sin: 3 mm
# ^^^ error[reserved-name]: a function
  deg: 3 deg
# ^^^ error[reserved-name]: a unit
levers:
  pedal: {pivot: [0, 0], arms: {reach: {radius: 3, angle: 4}}, drums: {reach: {radius: 3, wraps: clockwise}}}
  #                                                                    ^^^^^ error[duplicate-name]: both an arm and a drum
  reach: {pivot: [0, 1], arms: {a: {radius: 3, angle: 4}}}
# ^^^^^ error[duplicate-name]: a \`let\` value already
  in: {pivot: [0, 1], arms: {a: {radius: 3, angle: 4}}}
# ^^ error[reserved-name]: a unit
pedal: {lever: pedal, opens: clockwise, travel: 20}
rods:
  pedal: {from: pedal.reach, to: reach.a}
# ^^^^^ error[reserved-name]: Only a lever may be called
  and: {from: reach.a, to: in.a}
# ^^^ error[reserved-name]: an operator
`);
  });

  it('that are nearly right are told once, and not besides where the right one is used', () => {
    checkProblems(`format: 1
let: {Reach: 38 mm, half: reach / 2}
#     ^^^^^ error[bad-name]: for example \`reach\`
levers:
  pedal: {pivot: [0, 0]}
  Wälle: {pivot: [0, 0], arms: {a: {radius: reach, angle: 3}}}
# ^^^^^ error[bad-name]: for example \`walle\`
pedal: {lever: pedal, opens: clockwise, travel: 20}
rods: {link: {from: walle.a, to: nowhere.a}}
#                                ^^^^^^^ error[unknown-name]: There is no lever
springs: {one: {lever: walle, rate: 3, preload: 4}}
`);
  });

  it('begin with a small letter', () => {
    checkProblems(`format: 1
points:
  1st: [0, 1]
# ^^^ error[bad-name]: for example \`st\`
  A: [0, 1]
# ^ error[bad-name]: for example \`a\`
  a b: [0, 1]
# ^^^ error[bad-name]: for example \`a_b\`
  _: [0, 1]
# ^ error[bad-name]: Use small letters
`);
  });
});

describe('half-written files', () => {
  it('have keys without a value', () => {
    const { definition } = checkProblems(`format: 1
title:
#^^^^ error[wrong-shape]: has no value
levers:
  pedal:
    pivot: [0, 0]
    arms:
      pad: {radius: 3, angle: }
      #                ^^^^^ error[wrong-shape]: has no value
      out: {radius: 3, angle: 4}
pedal:
#^^^^ error[wrong-shape]: has no value
rods:
`);
    expect(definition?.levers[0]?.arms.map((arm) => arm.name)).toEqual(['out']);
  });

  it('lose only what hangs on a broken part', () => {
    const { definition } = checkProblems(`format: 1
levers:
  pedal: {pivot: [0, 0], arms: {a: {radius: 3, angle: 4}}}
  shaft: {pivot: [0], arms: {a: {radius: 3, angle: 4}}}
  #              ^^^ error[wrong-shape]: two or three figures
  idler: {pivot: [0, 1], arms: {a: {radius: 3, angle: 4}}}
pedal: {lever: pedal, opens: clockwise, travel: 20}
rods:
  r1: {from: pedal.a, to: shaft.a}
  r2: {from: shaft.a, to: idler.a}
plates:
  p: {lever: shaft, bore: 45}
`);
    expect(definition?.levers.map((part) => part.name)).toEqual(['pedal', 'idler']);
    expect(definition?.rods).toEqual([]);
    expect(definition?.plates).toEqual([]);
  });
});
