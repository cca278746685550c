/** Problems of quantities and their tolerances. */
import type { ProblemDoc } from './problemDoc.ts';

export const QUANTITY_DOCS = {
  'bad-quantity': {
    what: 'The text is no quantity: a decimal comma, leading zeros, hexadecimal, more than one line, words.',
    example: `format: 1
let:
  reach: 38,5 mm
#        ^^^^ error[bad-quantity]: decimal comma
`,
    cure: 'Write a number with a decimal point and its unit, such as `38.5 mm`.',
  },
  'missing-unit': {
    what: 'The figure needs its unit here, because nothing says which one is meant.',
    example: `format: 1
let:
  reach: 38 ± 0.1 mm
#        ^^ error[missing-unit]: has no unit
`,
    cure: 'Write the unit behind the figure.',
  },
  'unknown-unit': {
    what: 'The unit is not known.',
    example: `format: 1
let:
  reach: 38 milimetres
#           ^^^^^^^^^^ error[unknown-unit]: is not a unit
`,
    cure: 'Take one of the units in the [reference](../reference.md#units), such as `mm`, `inch`, `deg` or `N*mm`.',
  },
  'wrong-unit': {
    what: 'The unit measures something else than this place needs.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 30 deg, angle: 90 deg}}}
#                                                ^^^ error[wrong-unit]: a length is wanted here
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`,
    cure: 'Give the figure in a unit of what the place is: a radius is a length, a rate of a torsion spring a torque per angle.',
  },
  'bad-tolerance': {
    what: 'The tolerance cannot be read, is negative, or stands behind a formula. A warning where one end of it takes a figure out of what its place allows, a length that comes out at 0 or less, and where a figure is taken as it stands: a bound in `free`, a point of a curve, a reading.',
    example: `format: 1
let:
  reach: 38 mm +0.2 -0.1 mm
#              ^^^^^^^^^^^^ error[bad-tolerance]: a slash between them
`,
    cure: 'Write `38 mm ± 0.1 mm`, or `38 mm +0.2/-0.1 mm` with the slash. Put the tolerance on the plain figures that a formula uses.',
  },
  'out-of-range': {
    what: 'The figure cannot be at this place: a radius of 0, a stop below the other, a range with nothing in it.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 0], stops: {closed: 10 deg, open: 5 deg}}
#                                                      ^^^^^ error[out-of-range]: above the closed stop
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`,
    cure: 'Give a figure within the bounds that the message names.',
  },
} as const satisfies Readonly<Record<string, ProblemDoc>>;
