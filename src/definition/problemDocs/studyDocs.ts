/** Problems of what is asked of a search for dimensions, and of readings. */
import type { ProblemDoc } from './problemDoc.ts';

export const STUDY_DOCS = {
  'not-free': {
    what: 'A value under `free` of `tune`, or a dimension under `fit` of `measured`, cannot be chosen by itself: it follows from a formula, or no dimension of the linkage rests on it.',
    example: `format: 1
let:
  reach: 38 mm
  half: reach / 2
levers:
  pedal: {pivot: [0, 0], arms: {pad: {radius: half, angle: 90 deg}}}
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
tune:
  free:
    half: {from: 15 mm, to: 25 mm}
#   ^^^^ error[not-free]: Free \`reach\`, from which it follows
  curve: {of: pedal.opening, through: [[0 %, 0 deg], [100 %, 40 deg]]}
`,
    cure: 'Name the plain figure from which it follows, use it where it belongs, or leave it out.',
  },
  'too-few-readings': {
    what: 'There are fewer readings than dimensions to be found from them. Positions of the pedal do not count, nor do readings that were not taken.',
    example: `format: 1
levers:
  pedal: {pivot: [0, 0], arms: {out: {radius: 30 mm, angle: 90 deg}}}
  shaft: {pivot: [100, 0], arms: {arm: {radius: 30 mm, angle: 90 deg}}}
pedal: {lever: pedal, opens: clockwise, travel: 40 deg}
rods:
  link: {from: pedal.out, to: shaft.arm}
measured:
#^^^^^^^ error[too-few-readings]: 1 reading cannot tell 2 dimensions
  fit: [link.length, shaft.arm.radius]
  runs:
    bench:
      columns: [pedal.travel, shaft.opening]
      rows: [[100 %, 39.5 deg], [50 %, ~]]
`,
    cure: 'Name fewer dimensions in `fit`, or take more readings.',
  },
} as const satisfies Readonly<Record<string, ProblemDoc>>;
