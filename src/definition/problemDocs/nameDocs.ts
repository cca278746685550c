/** Problems of names, and of what is joined to what by them. */
import type { ProblemDoc } from './problemDoc.ts';

export const NAME_DOCS = {
  'bad-name': {
    what: 'A name is not made of small letters, figures and `_`, beginning with a letter.',
    example: `format: 1
let:
  arm-length: 38 mm
# ^^^^^^^^^^ error[bad-name]: for example \`arm_length\`
`,
    cure: 'Write it with small letters and `_`, such as `arm_length`; a `-` would be a minus in formulas.',
  },
  'reserved-name': {
    what: 'A name is a unit, a function, a constant or an operator of formulas.',
    example: `format: 1
let:
  min: 38 mm
# ^^^ error[reserved-name]: a function in formulas
`,
    cure: 'Take a longer name, such as `min_reach`.',
  },
  'duplicate-name': {
    what: 'Two parts of the file, or an arm and a drum of one lever, have the same name.',
    example: `format: 1
let:
  foot: 8 mm
levers:
  foot: {pivot: [0, 0]}
# ^^^^ error[duplicate-name]: Give one of the two another name
pedal: {lever: foot, opens: clockwise, travel: 40 deg}
`,
    cure: 'Give one of the two another name, so that formulas, columns and messages can tell them apart.',
  },
  'unknown-name': {
    what: 'Nothing in the file has the name that is used here.',
    example: `format: 1
levers:
  pedal: {pivot: pedal_axis}
#                ^^^^^^^^^^ error[unknown-name]: There is no point
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`,
    cure: 'Check how it is spelt, or describe the part. Parts of a lever are written `lever.part`.',
  },
  'load-path-loop': {
    what: 'Levers drive one another in a circle.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 200]}
  crank: {pivot: [0, 0], arms: {out: {radius: 30 mm, angle: 90 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 30 mm, angle: 90 deg}}}
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
rods:
  there: {from: crank.out, to: shaft.arm}
  back: {from: shaft.arm, to: crank.out}
#                             ^^^^^^^^^ error[load-path-loop]: turn one round
`,
    cure: 'Leave out or turn round one of the joints, so that everything is driven from the pedal outwards.',
  },
  'driven-twice': {
    what: 'Two joints, or a joint and the foot, drive one lever.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 30 mm, angle: 90 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 30 mm, angle: 90 deg}}}
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
rods:
  one: {from: pedal.out, to: shaft.arm}
  two: {from: pedal.out, to: shaft.arm}
#                            ^^^^^^^^^ error[driven-twice]: which \`one\` drives already
`,
    cure: 'Leave out the joint that does not drive it. A spring is no joint; it stands under `springs`.',
  },
  'not-driven': {
    what: 'Nothing drives the lever; it stands still. A warning, and an error where plates stand still with it.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 0]}
  shaft: {pivot: [100, 0]}
# ^^^^^ warning[not-driven]: so it stands still
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`,
    cure: 'Join it to the load path by a rod, a cable, a slot or a coupling, or take it out.',
  },
} as const satisfies Readonly<Record<string, ProblemDoc>>;
