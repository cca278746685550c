/** Problems of formulas. */
import type { ProblemDoc } from './problemDoc.ts';

export const FORMULA_DOCS = {
  'quote-formula': {
    what: 'Inside `{}` or `[]` a formula with `, [ ] { }` falls apart; it must be put in quotes.',
    example: `format: 1
let:
  reach: 38 mm
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: max(reach, 30 mm), angle: 90 deg}}}
#                                             ^^^^^^^^^^^^^^^^^ error[quote-formula]: Put it in quotes
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
`,
    cure: 'Put the whole formula in quotes, or name it in `let` and use the name.',
  },
  'formula-syntax': {
    what: 'The formula is not complete or not an expression.',
    example: `format: 1
let:
  reach: 38 mm
  half: (reach / 2
#       ^ error[formula-syntax]: is not closed
`,
    cure: 'Complete it where the mark stands: a bracket to close, an operator or a name between two others.',
  },
  'formula-not-allowed': {
    what: 'The formula uses something that formulas here do not have.',
    example: `format: 1
let:
  reach: 38 mm
  twice: "[reach, reach]"
#         ^^^^^^^^^^^^^^ error[formula-not-allowed]: lists are not part
`,
    cure: 'Make do with numbers with units, names, brackets, `+ - * / ^`, comparisons, `and or not` and the functions in the [reference](../reference.md#functions).',
  },
  'formula-too-long': {
    what: 'The formula is longer than 500 characters or nested more than 50 deep.',
    example: `format: 1
let:
  reach: ${'('.repeat(51)}38 mm${')'.repeat(51)}
#                                                          ^ error[formula-too-long]: 50 deep
`,
    cure: 'Name its parts in `let` and put it together from the names.',
  },
  'formula-dimension': {
    what: 'The formula adds, compares or returns quantities that do not fit.',
    example: `format: 1
let:
  reach: 38 mm + 25 deg
#                ^^^^^^ error[formula-dimension]: cannot be added
`,
    cure: 'Bring both sides to one kind of quantity. A length divided by a length is a number; an angle goes through `sin`, `cos` or `tan`.',
  },
  'formula-no-value': {
    what: 'The formula has no real value at the given dimensions.',
    example: `format: 1
let:
  reach: 38 mm
  height: sqrt(reach^2 - (40 mm)^2)
#         ^^^^^^^^^^^^^^^^^^^^^^^^^ error[formula-no-value]: no real value
`,
    cure: 'Check the figures that it uses: a root of something negative, a division by 0, an `acos` of more than 1.',
  },
} as const satisfies Readonly<Record<string, ProblemDoc>>;
